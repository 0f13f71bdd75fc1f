package spanwright.notebook;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spanwright.kernel.display.Streams;

/**
 * Runs notebooks without Jupyter. A cell finds files relative to the folder of its notebook, as in Jupyter. A
 * process cannot change its folder, so notebooks that lie elsewhere run in a child process there, one for
 * each folder.
 */
@Command(name = "run", mixinStandardHelpOptions = true,
    description = "Runs notebooks from top to bottom and writes each as .ipynb and as one .html file.",
    exitCodeListHeading = "Exit status:%n", exitCodeList = {"0:every cell ran to its end",
        "1:a cell failed; the message names notebook, cell and error", "2:wrong call"})
final class RunCommand implements Callable<Integer> {
    /** Options that go on to the child processes. */
    static final class Choices {
        @Option(names = "--set", paramLabel = "NAME=VALUE",
            description = "Sets a variable of the cell tagged \"parameters\"; may be repeated.")
        private List<String> settings = new ArrayList<>();

        @Option(names = "--time-limit", paramLabel = "SECONDS", description =
            "Stops a cell that takes longer.")
        private Double timeLimit;

        @Option(names = "--keep-going", description = "Goes on with the next cell after an error.")
        private boolean keepGoing;

        List<String> words() {
            final List<String> words = new ArrayList<>();
            settings.forEach(setting -> words.addAll(List.of("--set", setting)));
            if (timeLimit != null) {
                words.addAll(List.of("--time-limit", timeLimit.toString()));
            }
            if (keepGoing) {
                words.add("--keep-going");
            }
            return words;
        }

        HeadlessRun run(Path out, PrintStream verdicts, PrintStream progress) {
            return new HeadlessRun(out, settings, limit(), keepGoing, verdicts, progress);
        }

        private Optional<Duration> limit() {
            if (timeLimit == null) {
                return Optional.empty();
            }
            if (timeLimit > 0 && timeLimit < 1e9) {
                return Optional.of(Duration.ofMillis(Math.max(1, Math.round(timeLimit * 1e3))));
            }
            throw new IllegalArgumentException("--time-limit " + timeLimit + " is not between 0 and 1e9 s");
        }
    }

    @Parameters(paramLabel = "NOTEBOOK", arity = "0..*",
        description = "Notebook files or folders of them; none for all worked notebooks.")
    private List<Path> notebooks = new ArrayList<>();

    @Option(names = "--out", paramLabel = "DIR", description = "Where to write; default: ${DEFAULT-VALUE}.")
    private Path out = Path.of("reports");

    @Option(names = "--here", hidden = true, description = "The working folder is the notebooks' folder.")
    private boolean here;

    @Mixin
    private Choices choices = new Choices();

    @Override
    public Integer call() throws Exception {
        final Path target = out.toAbsolutePath().normalize();
        final HeadlessRun run = choices.run(target, Streams.originalOut(), Streams.originalErr());
        if (here) {
            return run.all(notebooks) ? 0 : 1;
        }
        final Map<Path, List<Path>> folders = new LinkedHashMap<>();
        for (Path notebook : files()) {
            folders.computeIfAbsent(notebook.getParent(), f -> new ArrayList<>()).add(notebook);
        }
        checkTargets(folders, target);
        boolean passed = true;
        for (var folder : folders.entrySet()) {
            final boolean fine = folder.getKey().equals(Path.of("").toRealPath())
                ? run.all(folder.getValue()) : child(folder.getKey(), folder.getValue(), target);
            passed &= fine;
            if (!fine && !choices.keepGoing) {
                break;
            }
        }
        return passed ? 0 : 1;
    }

    private List<Path> files() throws IOException {
        final List<Path> files = new ArrayList<>();
        for (Path path : notebooks.isEmpty() ? List.of(workedNotebooks()) : notebooks) {
            if (Files.isDirectory(path)) {
                try (Stream<Path> inside = Files.list(path.toRealPath())) {
                    files.addAll(inside.filter(f -> f.toString().endsWith(".ipynb")).sorted().toList());
                }
            } else if (Files.isRegularFile(path)) {
                files.add(path.toRealPath());
            } else {
                throw new IOException("there is no notebook " + path);
            }
        }
        if (files.isEmpty()) {
            throw new IOException("there is no notebook in " + (notebooks.isEmpty() ? workedNotebooks()
                : notebooks));
        }
        return files.stream().distinct().toList();
    }

    /** The folder that the launcher names, else the one in the working folder. */
    private static Path workedNotebooks() throws IOException {
        final Path folder = Path.of(System.getProperty("spanwright.notebooks", "notebooks"));
        if (!Files.isDirectory(folder)) {
            throw new IOException("no notebook named, and there is no folder " + folder.toAbsolutePath());
        }
        return folder;
    }

    private static void checkTargets(Map<Path, List<Path>> folders, Path target) throws IOException {
        final Map<Path, Path> sources = new HashMap<>();
        for (List<Path> notebooks : folders.values()) {
            for (Path notebook : notebooks) {
                final Path written = target.resolve(notebook.getFileName());
                final Path other = sources.put(written, notebook);
                if (other != null) {
                    throw new IOException(other + " and " + notebook + " would both be written to "
                        + written);
                }
                if (Files.exists(written) && Files.isSameFile(written, notebook)) {
                    throw new IOException(notebook + " would be overwritten; choose another --out");
                }
            }
        }
    }

    private boolean child(Path folder, List<Path> files, Path target) throws IOException,
        InterruptedException {
        final List<String> words = new ArrayList<>(List.of("run", "--here", "--out", target.toString()));
        words.addAll(choices.words());
        files.forEach(file -> words.add(file.toString()));
        return new ProcessBuilder(JavaCommand.again(words)).directory(folder.toFile()).inheritIO().start()
            .waitFor() == 0;
    }
}
