package spanwright.readings;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * What became of the files of a folder: one row per file, and one summary.
 *
 * @param folder  the folder, or the one file
 * @param files   outcome of each file, by name
 * @param records the records of the files in which nothing was refused
 */
public record FolderOutcome(String folder, List<FileOutcome> files, List<CalibrationRecord> records) {
    private static final int WIDEST = 100;

    /** Checks the components and copies the lists. */
    public FolderOutcome {
        Objects.requireNonNull(folder, "folder");
        files = List.copyOf(files);
        records = List.copyOf(records);
    }

    /** How many files had which gravest outcome, by its word. */
    public Map<String, Integer> counts() {
        final Map<String, Integer> out = new TreeMap<>();
        files.forEach(f -> out.merge(f.word(), 1, Integer::sum));
        return out;
    }

    /** One sentence for the whole folder. */
    public String summary() {
        final int rows = files.stream().mapToInt(f -> f.account().readingRows()).sum();
        final int refused = files.stream().mapToInt(f -> f.account().refused()).sum();
        return files.size() + " files, " + rows + " rows of readings, " + refused + " refused; files "
            + counts().entrySet().stream().map(e -> e.getKey() + " " + e.getValue())
                .collect(Collectors.joining(", "));
    }

    /** As a notebook table: one row per finding, and one for each file without any. */
    public Table toTable() {
        final StringColumn file = StringColumn.create("file");
        final StringColumn outcome = StringColumn.create("outcome");
        final StringColumn fault = StringColumn.create("fault");
        final IntColumn row = IntColumn.create("row");
        final IntColumn column = IntColumn.create("column");
        final StringColumn written = StringColumn.create("written");
        final StringColumn says = StringColumn.create("what");
        for (FileOutcome f : files) {
            if (f.findings().isEmpty()) {
                file.append(f.file());
                outcome.append("accepted");
                fault.append("");
                row.appendMissing();
                column.appendMissing();
                written.append("");
                says.append(f.account().toString());
            }
            for (RecordFinding x : f.findings()) {
                file.append(f.file());
                outcome.append(x.outcome().toString());
                fault.append(x.fault().toString());
                row.append(x.cell().row());
                column.append(x.cell().column());
                written.append(x.written());
                says.append(x.says() + (x.proposal().isEmpty() ? "" : "; proposed: " + x.proposal()));
            }
        }
        return Table.create(folder, file, outcome, fault, row, column, written, says);
    }

    /** The outcome table as text: a line per file with its gravest finding, then the summary. */
    @Override
    public String toString() {
        final int width = files.stream().mapToInt(f -> f.file().length()).max().orElse(4);
        return files.stream().map(f -> String.format(Locale.ROOT, "%-" + Math.max(4, width) + "s  %-8s  %s",
            f.file(), f.word(), gravest(f))).collect(Collectors.joining("\n")) + "\n" + summary();
    }

    private static String gravest(FileOutcome f) {
        final String line = f.findings().stream().min(Comparator.comparingInt((RecordFinding x) ->
            FileOutcomeOrder.of(x.outcome()))).map(x -> x.cell().row() + ":" + x.cell().column() + " "
                + x.says()
                + (x.proposal().isEmpty() ? "" : "; proposed: " + x.proposal())).orElse(f.account()
                .toString());
        return line.length() <= WIDEST ? line : line.substring(0, WIDEST - 1) + "\u2026";
    }

    /** Order of gravity. */
    private static final class FileOutcomeOrder {
        private static int of(Outcome o) {
            return switch (o) {
                case REFUSED -> 0;
                case ASKED -> 1;
                case FLAGGED -> 2;
                case REPAIRED -> 3;
            };
        }
    }
}
