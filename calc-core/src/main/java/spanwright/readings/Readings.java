package spanwright.readings;

import java.nio.file.Path;
import java.util.function.UnaryOperator;

/** Where reading begins: records and plain tables, one file or a folder. */
public final class Readings {
    private Readings() { }

    /**
     * Reads a calibration record.
     *
     * @throws ReadingsFormatException      if anything in it is refused; the message names file, row and
     *     column
     * @throws java.io.UncheckedIOException if the file cannot be opened
     */
    public static CalibrationRecord read(String file) {
        return read(Path.of(file));
    }

    /**
     * Reads a calibration record.
     *
     * @throws ReadingsFormatException      if anything in it is refused; the message names file, row and
     *     column
     * @throws java.io.UncheckedIOException if the file cannot be opened
     */
    public static CalibrationRecord read(Path file) {
        return reading(file).read();
    }

    /** Begins to say how a record is to be read, where the file does not say it by itself. */
    public static RecordReading reading(String file) {
        return reading(Path.of(file));
    }

    /** Begins to say how a record is to be read, where the file does not say it by itself. */
    public static RecordReading reading(Path file) {
        return RecordReading.of(file);
    }

    /**
     * Reads a plain table: any columns of numbers and text under one row of heads.
     *
     * @throws ReadingsFormatException      if anything in it is refused; the message names file, row and
     *     column
     * @throws java.io.UncheckedIOException if the file cannot be opened
     */
    public static ReadingsTable table(String file) {
        return table(Path.of(file));
    }

    /**
     * Reads a plain table: any columns of numbers and text under one row of heads.
     *
     * @throws ReadingsFormatException      if anything in it is refused; the message names file, row and
     *     column
     * @throws java.io.UncheckedIOException if the file cannot be opened
     */
    public static ReadingsTable table(Path file) {
        return tableReading(file).read();
    }

    /** Begins to say how a plain table is to be read. */
    public static TableReading tableReading(String file) {
        return tableReading(Path.of(file));
    }

    /** Begins to say how a plain table is to be read. */
    public static TableReading tableReading(Path file) {
        return TableReading.of(file);
    }

    /**
     * Reads a record or all records of a folder, and says what became of each; nothing a file holds stops the
     * others.
     *
     * @throws java.io.UncheckedIOException if the folder cannot be opened
     */
    public static FolderOutcome check(String path) {
        return check(Path.of(path));
    }

    /**
     * Reads a record or all records of a folder, and says what became of each; nothing a file holds stops the
     * others.
     *
     * @throws java.io.UncheckedIOException if the folder cannot be opened
     */
    public static FolderOutcome check(Path path) {
        return folder(path, reading -> reading, FolderProgress.SILENT);
    }

    /**
     * Reads all records of a folder and the folders in it, with settings for each file and with progress.
     *
     * @param settings what the call says of each file, such as {@code r -> r.dayFirst()}
     * @throws java.util.concurrent.CancellationException if the thread is interrupted
     * @throws java.io.UncheckedIOException               if the folder cannot be opened
     */
    public static FolderOutcome folder(Path path, UnaryOperator<RecordReading> settings,
        FolderProgress progress) {
        return FolderReading.read(path, settings, progress);
    }
}
