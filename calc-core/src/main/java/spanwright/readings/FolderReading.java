package spanwright.readings;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** Reads the records of a folder, file by file: a bad file stops only itself. */
final class FolderReading {
    private static final List<String> ENDINGS = List.of(".csv", ".tsv", ".txt", ".xlsx");

    private FolderReading() { }

    /**
     * Reads a file, or all records of a folder and the folders in it, in the order of their names.
     *
     * @throws CancellationException if the thread is interrupted; its interrupt status stays set
     */
    static FolderOutcome read(Path path, UnaryOperator<RecordReading> settings, FolderProgress progress) {
        final List<Path> files = files(path);
        final List<FileOutcome> outcomes = new ArrayList<>();
        final List<CalibrationRecord> records = new ArrayList<>();
        for (Path file : files) {
            if (Thread.currentThread().isInterrupted()) {
                throw new CancellationException("reading of " + path + " was interrupted after "
                    + outcomes.size() + " of " + files.size() + " files");
            }
            final RecordReading reading = settings.apply(RecordReading.of(file));
            final FileOutcome outcome = check(reading, records);
            outcomes.add(path.equals(file) ? outcome : new FileOutcome(path.relativize(file).toString(),
                outcome.runs(), outcome.account(), outcome.findings()));
            progress.at(outcomes.size(), files.size(), RecordReader.name(file));
        }
        return new FolderOutcome(RecordReader.name(path), outcomes, records);
    }

    private static List<Path> files(Path path) {
        if (Files.isRegularFile(path)) {
            return List.of(path);
        }
        try (Stream<Path> all = Files.walk(path)) {
            return all.filter(Files::isRegularFile).filter(f -> ENDINGS.stream().anyMatch(e ->
                RecordReader.name(f).toLowerCase(Locale.ROOT).endsWith(e))).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read folder " + path + ": " + e.getMessage(), e);
        }
    }

    /** The outcome of one file; its record is added where nothing was refused. */
    private static FileOutcome check(RecordReading reading, List<CalibrationRecord> records) {
        final String name = RecordReader.name(reading.file());
        try {
            return check(reading, () -> RecordReader.grid(reading.file()), () -> lines(reading.file()),
                records);
        } catch (UncheckedIOException e) {
            return new FileOutcome(name, 0, new RowAccount(0, 0, 0, 0, 0),
                List.of(RecordFinding.of(Fault.NOT_A_TEXT,
                new CellAddress(name, "", 1, 1), "", e.getMessage())));
        }
    }

    /** The outcome of cells from anywhere; {@code lines} counts the rows of a file that is refused whole. */
    static FileOutcome check(RecordReading reading, Supplier<Grid> cells, IntSupplier lines,
                             List<CalibrationRecord> records) {
        final String name = RecordReader.name(reading.file());
        try {
            final CalibrationRecord record = RecordReader.readAll(reading, cells.get());
            if (record.findings(Outcome.REFUSED).isEmpty()) {
                records.add(record);
            }
            return outcome(name, record);
        } catch (ReadingsFormatException e) {
            return new FileOutcome(name, 0, new RowAccount(0, 0, 0, 0, lines.getAsInt()), e.findings());
        }
    }

    private static FileOutcome outcome(String name, CalibrationRecord record) {
        return new FileOutcome(name, record.allRuns().size(), record.account(), record.findings());
    }

    /** Lines of a file that was refused as a whole, counted without understanding them. */
    private static int lines(Path file) {
        try {
            return lines(Files.readAllBytes(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static int lines(byte[] bytes) {
        int lines = 0;
        boolean filled = false;
        for (byte b : bytes) {
            if (b == '\n' || b == '\r') {
                lines += filled ? 1 : 0;
                filled = false;
            } else {
                filled |= b != ' ' && b != '\t';
            }
        }
        return lines + (filled ? 1 : 0);
    }
}
