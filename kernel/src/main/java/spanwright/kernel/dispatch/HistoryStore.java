package spanwright.kernel.dispatch;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Fields;
import spanwright.kernel.message.Json;
import spanwright.kernel.message.MalformedMessageException;
import spanwright.kernel.message.PastCell;
import spanwright.kernel.message.Request;

/**
 * The cells of this session and of earlier ones, in a folder with one file a session, one JSON line a cell. A
 * session takes its number by creating its file, so that several kernels can share the folder. If the folder
 * cannot be used, history lasts as long as the session; the log says so. Safe for several threads.
 */
final class HistoryStore implements AutoCloseable {
    /** Sessions kept; older files are deleted when a new one begins. */
    static final int SESSIONS_KEPT = 500;
    /** Of an output only so much is kept. */
    static final int OUTPUT_KEPT = 4_000;

    private static final Pattern FILE = Pattern.compile("session-(\\d{1,9})\\.jsonl");

    private final Path folder;
    private final Log log;
    private final List<PastCell> here = new ArrayList<>();
    private Optional<BufferedWriter> file = Optional.empty();
    private int session;
    private boolean broken;

    HistoryStore(Path folder, Log log) {
        this.folder = folder;
        this.log = log;
    }

    /** Keeps a cell that ran. */
    synchronized void add(int line, String input, Optional<String> output) {
        if (session == 0) {
            begin();
        }
        final PastCell cell = new PastCell(session, line, input,
            output.map(o -> o.length() <= OUTPUT_KEPT ? o : o.substring(0, OUTPUT_KEPT) + "..."));
        here.add(cell);
        file.ifPresent(f -> append(f, cell));
    }

    private void begin() {
        session = 1;
        try {
            Files.createDirectories(folder);
            final TreeMap<Integer, Path> earlier = files();
            session = earlier.isEmpty() ? 1 : earlier.lastKey() + 1;
            file = Optional.of(create());
            while (earlier.size() >= SESSIONS_KEPT) {
                Files.deleteIfExists(earlier.pollFirstEntry().getValue());
            }
        } catch (IOException e) {
            stopKeeping(e);
        }
    }

    private BufferedWriter create() throws IOException {
        while (true) {
            try {
                return Files.newBufferedWriter(folder.resolve("session-" + session + ".jsonl"),
                    StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            } catch (FileAlreadyExistsException e) {
                session++;
            }
        }
    }

    private void append(BufferedWriter to, PastCell cell) {
        final ObjectNode json = Json.object().put("line", cell.line()).put("input", cell.input());
        cell.output().ifPresent(o -> json.put("output", o));
        try {
            to.write(Json.write(json).utf8());
            to.write('\n');
            to.flush();
        } catch (IOException e) {
            stopKeeping(e);
        }
    }

    private void stopKeeping(IOException why) {
        file = Optional.empty();
        if (!broken) {
            broken = true;
            log.line("history is not kept beyond this session: " + why);
        }
    }

    /** What the request asks for, oldest first. */
    synchronized List<PastCell> find(Request.History wanted) {
        return switch (wanted.access()) {
            case TAIL -> last(all(), wanted.limit().orElse(Integer.MAX_VALUE));
            case RANGE -> range(wanted);
            case SEARCH -> search(wanted);
        };
    }

    private List<PastCell> range(Request.History wanted) {
        final int number = wanted.session() > 0 ? wanted.session() : current() + wanted.session();
        final int stop = wanted.stop().orElse(Integer.MAX_VALUE);
        return (number == session ? here : read(number)).stream()
            .filter(c -> c.line() >= wanted.start() && c.line() < stop).toList();
    }

    /** The number of this session, also before its first cell. */
    private int current() {
        if (session > 0) {
            return session;
        }
        final TreeMap<Integer, Path> earlier = filesOrNone();
        return earlier.isEmpty() ? 1 : earlier.lastKey() + 1;
    }

    private List<PastCell> search(Request.History wanted) {
        final Pattern glob = glob(wanted.pattern());
        List<PastCell> found = all().stream().filter(c -> glob.matcher(c.input()).matches()).toList();
        if (wanted.unique()) {
            final Map<String, PastCell> latest = new LinkedHashMap<>();
            for (final PastCell c : found) {
                latest.remove(c.input());
                latest.put(c.input(), c);
            }
            found = List.copyOf(latest.values());
        }
        return last(found, wanted.limit().orElse(Integer.MAX_VALUE));
    }

    private static List<PastCell> last(List<PastCell> cells, int limit) {
        return cells.subList(Math.max(0, cells.size() - Math.max(0, limit)), cells.size());
    }

    /**
     * The pattern of a glob: * any text, ? one character, [abc] or [a-z] one of these, [^...] none of them.
     */
    static Pattern glob(String glob) {
        final StringBuilder regex = new StringBuilder();
        for (int i = 0; i < glob.length(); i++) {
            final char c = glob.charAt(i);
            final int close = c == '[' ? glob.indexOf(']', i + 2) : -1;
            if (c == '*') {
                regex.append(".*");
            } else if (c == '?') {
                regex.append('.');
            } else if (close > 0) {
                final String set = glob.substring(i + 1, close);
                final boolean not = set.startsWith("^") || set.startsWith("!");
                regex.append(not ? "[^" : "[")
                    .append(set.substring(not ? 1 : 0).replaceAll("([\\\\\\[\\]&^])", "\\\\$1")).append(']');
                i = close;
            } else {
                regex.append(Pattern.quote(String.valueOf(c)));
            }
        }
        try {
            return Pattern.compile(regex.toString(), Pattern.DOTALL);
        } catch (java.util.regex.PatternSyntaxException e) {
            // A set such as [z-a] names no character: the text itself is looked for.
            return Pattern.compile(Pattern.quote(glob));
        }
    }

    private List<PastCell> all() {
        final List<PastCell> cells = new ArrayList<>();
        for (final int number : filesOrNone().keySet()) {
            if (number != session) {
                cells.addAll(read(number));
            }
        }
        cells.addAll(here);
        return cells;
    }

    private TreeMap<Integer, Path> filesOrNone() {
        try {
            return files();
        } catch (IOException e) {
            return new TreeMap<>();
        }
    }

    private TreeMap<Integer, Path> files() throws IOException {
        final TreeMap<Integer, Path> found = new TreeMap<>();
        if (!Files.isDirectory(folder)) {
            return found;
        }
        try (Stream<Path> paths = Files.list(folder)) {
            paths.forEach(p -> {
                final Matcher m = FILE.matcher(p.getFileName().toString());
                if (m.matches()) {
                    found.put(Integer.parseInt(m.group(1)), p);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        return found;
    }

    private List<PastCell> read(int number) {
        final Path path = folder.resolve("session-" + number + ".jsonl");
        final List<PastCell> cells = new ArrayList<>();
        try {
            for (final String line : Files.exists(path) ? Files.readAllLines(path) : List.<String>of()) {
                cell(number, line).ifPresent(cells::add);
            }
        } catch (IOException e) {
            log.line("history of session " + number + " cannot be read: " + e);
        }
        return cells;
    }

    /** A line that another kernel has only begun to write, or that was cut by a crash, counts as absent. */
    private static Optional<PastCell> cell(int number, String line) {
        try {
            final Fields f = new Fields("history", Json.readObject("history", Bytes.of(line)));
            return Optional.of(new PastCell(number, f.whole("line").orElse(0), f.text("input"),
                f.optionalText("output")));
        } catch (MalformedMessageException e) {
            return Optional.empty();
        }
    }

    @Override
    public synchronized void close() {
        file.ifPresent(f -> {
            try {
                f.close();
            } catch (IOException e) {
                log.line("history: " + e);
            }
        });
        file = Optional.empty();
    }
}
