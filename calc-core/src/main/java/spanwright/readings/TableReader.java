package spanwright.readings;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicBoolean;
import tech.tablesaw.api.Table;

/**
 * Reads a plain table. Text without quotation marks, in UTF-8, is read from its bytes, in parts side by side;
 * anything else goes through the decoder and the CSV reader, into the same columns.
 */
final class TableReader {
    private static final int SAMPLE = 1 << 16;
    private static final int SMALLEST_PART = 1 << 22;
    private static final int BIG = 1 << 23;

    private final TableReading settings;
    private final String file;

    private TableReader(TableReading settings) {
        this.settings = settings;
        this.file = RecordReader.name(settings.file());
    }

    static ReadingsTable read(TableReading settings) {
        final TableReader reader = new TableReader(settings);
        try {
            if (Workbooks.isWorkbook(settings.file())) {
                return reader.workbook();
            }
            try (FileChannel channel = FileChannel.open(settings.file(), StandardOpenOption.READ)) {
                if (channel.size() >= BIG) {
                    startTables();
                }
                return reader.bytes(channel);
            } catch (ColumnBuilder.NotPlain e) {
                final byte[] all = Files.readAllBytes(settings.file());
                return reader.cells(DelimitedGrid.of(TextFile.decode(all, reader.file), reader.file));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + settings.file() + ": " + e.getMessage(), e);
        }
    }

    private ReadingsTable bytes(FileChannel channel) throws IOException {
        final byte[] start = new byte[(int) Math.min(SAMPLE, channel.size())];
        channel.read(ByteBuffer.wrap(start), 0);
        final int mark = start.length >= 3 && start[0] == (byte) 0xEF && start[1] == (byte) 0xBB
            && start[2] == (byte) 0xBF ? 3 : 0;
        final int whole = start.length < channel.size() ? lastLineEnd(start) : start.length;
        final String sample = ColumnBuilder.decode(start, mark, Math.max(mark, whole));
        if (sample.indexOf('"') >= 0 || sample.replace("\r\n", "")
            .indexOf('\r') >= 0) {
            throw new ColumnBuilder.NotPlain();
        }
        if (sample.chars().anyMatch(c -> c < ' ' && c != '\t' && c != '\n' && c != '\r' || c == 127)) {
            throw new ColumnBuilder.NotPlain();
        }
        final char delimiter = DelimitedGrid.delimiter(sample);
        final Grid grid = DelimitedGrid.of(new TextFile(TableLayout.votes(delimiter, settings) ? sample
            : opening(sample, delimiter), List.of()), file, delimiter);
        final List<GridRow> rows = grid.rows().stream().filter(r -> !r.comment()).toList();
        if (rows.isEmpty() && whole < channel.size()) {
            throw new ColumnBuilder.NotPlain();
        }
        final TableLayout layout = TableLayout.of(delimiter, file, rows, settings);
        final List<String> before = grid.rows().stream().filter(r -> r.comment()
            && r.number() < rows.get(0).number()).map(r -> comment(r.cell(0).text())).toList();
        final long from = endOfLine(start, mark, rows.get(0).number());
        final int headLine = rows.get(0).number();
        final List<TableChunk> parts = parts(channel, layout, from, headLine,
            (sample.chars().filter(c -> c == '\n').count() + 1.0) / Math.max(1, whole - mark));
        return new TableJoin(file, layout, headLine, mark > 0).join(parts, before);
    }

    /**
     * Tablesaw searches the class path when its tables are first used, which takes as long as reading a large
     * file: begun early, it runs beside the reading.
     */
    private static void startTables() {
        final Thread thread = new Thread(() -> Table.create(""), "table start");
        thread.setDaemon(true);
        thread.start();
    }

    private List<TableChunk> parts(FileChannel channel, TableLayout layout, long from, int headLine,
                                   double rowsPerByte) throws IOException {
        final long length = channel.size() - from;
        final int n = (int) Math.max(1, Math.min(Runtime.getRuntime().availableProcessors(),
            length / SMALLEST_PART));
        final long[] bounds = new long[n + 1];
        bounds[0] = from;
        bounds[n] = channel.size();
        for (int i = 1; i < n; i++) {
            bounds[i] = nextLine(channel, from + length * i / n);
        }
        final AtomicBoolean stop = new AtomicBoolean();
        final List<TableChunk> parts = new ArrayList<>();
        final List<FutureTask<Void>> tasks = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            final TableChunk part = new TableChunk(layout.delimiter(), builders(layout));
            final long a = bounds[i];
            final long b = Math.max(bounds[i], bounds[i + 1]);
            part.expect((int) Math.min(Integer.MAX_VALUE - 8, (long) ((b - a) * rowsPerByte * 1.02) + 16));
            parts.add(part);
            tasks.add(new FutureTask<>(() -> {
                part.read(channel, a, b, stop);
                return null;
            }));
        }
        tasks.subList(1, n).forEach(t -> {
            final Thread thread = new Thread(t, "table reader");
            thread.setDaemon(true);
            thread.start();
        });
        tasks.get(0).run();
        await(tasks, parts, stop, headLine);
        return parts;
    }

    /** Waits for all parts; the first that stopped, in the order of the file, is the one reported. */
    private void await(List<FutureTask<Void>> tasks, List<TableChunk> parts, AtomicBoolean stop,
                       int headLine) {
        int line = headLine;
        for (int i = 0; i < tasks.size(); i++) {
            try {
                tasks.get(i).get();
                line += parts.get(i).lineCount();
            } catch (InterruptedException e) {
                stop.set(true);
                Thread.currentThread().interrupt();
                throw new CancellationException("reading of " + file + " was interrupted");
            } catch (ExecutionException e) {
                stop.set(true);
                tasks.subList(i, tasks.size()).forEach(TableReader::settle);
                throw unwrapped(e.getCause(), line);
            }
        }
    }

    private static void settle(FutureTask<Void> task) {
        try {
            task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException e) {
            // An earlier part has stopped already: that one is reported.
            return;
        }
    }

    private RuntimeException unwrapped(Throwable cause, int linesBefore) {
        if (cause instanceof TableChunk.Stop stop) {
            return refusal(stop, linesBefore);
        }
        if (cause instanceof IOException io) {
            return new UncheckedIOException("cannot read " + settings.file() + ": " + io.getMessage(), io);
        }
        if (cause instanceof Error error) {
            throw error;
        }
        return (RuntimeException) cause;
    }

    private ReadingsFormatException refusal(TableChunk.Stop stop, int linesBefore) {
        final TableChunk.Note n = stop.note();
        final CellAddress at = new CellAddress(file, "", linesBefore + n.line(), n.column() + 1);
        return new ReadingsFormatException(RecordFinding.of(n.fault(), at, n.written(),
            (n.written().isEmpty() ? "" : "\"" + n.written() + "\": ") + stop.getMessage()));
    }

    /** The rows of a workbook go into the columns one by one; the workbook is never held as a whole. */
    private ReadingsTable workbook() {
        final List<GridRow> comments = new ArrayList<>();
        final List<TableChunk> part = new ArrayList<>();
        final List<TableLayout> layouts = new ArrayList<>();
        final String sheet;
        try {
            sheet = Workbooks.rows(settings.file(), row -> {
                if (Thread.currentThread().isInterrupted()) {
                    throw new CancellationException("reading of " + file + " was interrupted");
                }
                if (row.comment()) {
                    comments.add(row);
                } else if (part.isEmpty()) {
                    layouts.add(TableLayout.of(',', file, List.of(row), settings));
                    part.add(new TableChunk(',', builders(layouts.get(0))));
                } else {
                    part.get(0).addRow(row, layouts.get(0).heads().size());
                }
            });
        } catch (TableChunk.Stop e) {
            throw refusal(e, 0);
        }
        if (part.isEmpty()) {
            TableLayout.of(',', file, List.of(), settings);
        }
        return new TableJoin(file, layouts.get(0), 0, false).join(part.get(0),
            new Grid(file, sheet, "", comments, List.of()));
    }

    /** The table of a file whose cells were separated elsewhere. */
    private ReadingsTable cells(Grid grid) {
        final List<GridRow> rows = grid.rows().stream().filter(r -> !r.comment()).toList();
        final char delimiter = switch (grid.delimiter()) {
            case "comma" -> ',';
            case "tab" -> '\t';
            default -> ';';
        };
        final TableLayout layout = TableLayout.of(delimiter, file,
            rows.subList(0, Math.min(1000, rows.size())), settings);
        final TableChunk part = new TableChunk(delimiter, builders(layout));
        try {
            rows.subList(1, rows.size()).forEach(r -> part.addRow(r, 0));
        } catch (TableChunk.Stop e) {
            throw refusal(e, 0);
        }
        return new TableJoin(file, layout, 0, false).join(part, grid);
    }

    private List<ColumnBuilder> builders(TableLayout layout) {
        return layout.heads().stream().map(h -> new ColumnBuilder(settings.need(h), settings.unit(h),
            layout.sign())).toList();
    }

    /** The lines up to the heads, which are the first that is neither blank nor a comment. */
    private static String opening(String sample, char delimiter) {
        int from = 0;
        while (from < sample.length()) {
            final int lineEnd = sample.indexOf('\n', from);
            final int to = lineEnd < 0 ? sample.length() : lineEnd + 1;
            final String line = sample.substring(from, to);
            if (!line.startsWith("#") && !Characters.plain(line.replace(delimiter, ' ')).isBlank()) {
                return sample.substring(0, to);
            }
            from = to;
        }
        return sample;
    }

    static String comment(String text) {
        return text.strip();
    }

    private static int lastLineEnd(byte[] start) {
        int i = start.length;
        while (i > 0 && start[i - 1] != '\n') {
            i--;
        }
        if (i == 0) {
            throw new ColumnBuilder.NotPlain();
        }
        return i;
    }

    /** Where the line after a numbered one begins. */
    private static int endOfLine(byte[] start, int from, int number) {
        int line = 1;
        for (int i = from; i < start.length; i++) {
            if (start[i] == '\n' && line++ == number) {
                return i + 1;
            }
        }
        return start.length;
    }

    /** Where the first line that begins at or after a position begins. */
    private static long nextLine(FileChannel channel, long from) throws IOException {
        final byte[] block = new byte[1 << 13];
        long at = from;
        while (at < channel.size()) {
            final int n = channel.read(ByteBuffer.wrap(block), at);
            for (int i = 0; i < n; i++) {
                if (block[i] == '\n') {
                    return at + i + 1;
                }
            }
            at += Math.max(n, 1);
        }
        return channel.size();
    }
}
