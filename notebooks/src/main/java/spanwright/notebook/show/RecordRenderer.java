package spanwright.notebook.show;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.readings.CalibrationRecord;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.FileOutcome;
import spanwright.readings.RecordFinding;
import spanwright.readings.FolderOutcome;
import spanwright.readings.Outcome;
import spanwright.readings.ReadingsTable;
import spanwright.readings.RunRecord;
import spanwright.readings.TableColumn;

/**
 * Shows what was read: the values as written, faults marked at their cell, and under the table what was
 * understood, repaired, asked, flagged and refused.
 */
public final class RecordRenderer implements Renderer {
    private static final int ROWS_SHOWN = 200;

    /** For the service loader. */
    public RecordRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof CalibrationRecord record) {
            return Optional.of(record(record).bundle());
        }
        if (value instanceof CalibrationRun run) {
            return Optional.of(Sheet.saying(run.channel() + ", " + run.phase() + ": " + run.readings().size()
                + " readings from " + run.input() + " to " + run.output() + ".").with(run(run))
                    .bundle());
        }
        if (value instanceof FolderOutcome folder) {
            return Optional.of(folder(folder).bundle());
        }
        if (value instanceof ReadingsTable table) {
            return Optional.of(table(table).bundle());
        }
        return Optional.empty();
    }

    private static Sheet record(CalibrationRecord record) {
        final Map<CellAddress, String> marks = record.findings().stream()
            .collect(Collectors.toMap(RecordFinding::cell, RecordFinding::says, (a, b) -> a + "; " + b));
        Sheet sheet = Sheet.saying(record.file() + ": " + record.account() + "; "
            + counted(record.findings().size(), "thing") + " found.");
        if (record.questions().isEmpty()) {
            for (String channel : record.channels()) {
                for (RunRecord run : record.runRecords(channel)) {
                    sheet = sheet.with(run(run, marks));
                }
            }
        }
        for (Outcome outcome : Outcome.values()) {
            sheet = sheet.notes(heading(outcome), record.findings(outcome).stream()
                .map(RecordFinding::toString)
                .toList());
        }
        return sheet.notes("How the file was understood", record.understood());
    }

    private static String counted(int n, String noun) {
        return n == 0 ? "no " + noun + "s" : n == 1 ? "1 " + noun : n + " " + noun + "s";
    }

    private static String heading(Outcome outcome) {
        return switch (outcome) {
            case REFUSED -> "Refused";
            case ASKED -> "Asked: answer before using it";
            case REPAIRED -> "Repaired";
            case FLAGGED -> "Flagged: look at it";
        };
    }

    /** A run that is shown by itself: what it holds, without what its record kept beside it. */
    private static Grid run(CalibrationRun run) {
        return new RunRows(run, Map.of()).grid(caption(run));
    }

    private static Grid run(RunRecord record, Map<CellAddress, String> marks) {
        return new RunRows(record.run(), marks).with(record).grid(caption(record.run()));
    }

    private static String caption(CalibrationRun run) {
        return run.channel() + (run.serial().isEmpty() ? "" : ", serial " + run.serial()) + ", " + run.phase()
            + run.conditions().ambient().map(a -> ", at " + a).orElse("")
            + run.tolerance().map(t -> ", tolerance " + t).orElse(", no tolerance stated");
    }

    private static Sheet folder(FolderOutcome folder) {
        final Grid.Builder grid = Grid.of("What the reader makes of each file of " + folder.folder(), "file",
            "outcome", "row:column", "what");
        for (FileOutcome file : folder.files()) {
            if (file.findings().isEmpty()) {
                grid.row(file.file(), file.word(), "", file.account().toString());
            }
            for (RecordFinding f : file.findings()) {
                grid.row(
                    List.of(file.file(), f.outcome().toString(), f.cell().row() + ":" + f.cell().column(),
                        f.says() + (f.proposal().isEmpty() ? "" : "; proposed: " + f.proposal())),
                    false, f.written());
            }
        }
        return Sheet.saying(folder.summary() + ".").with(grid.build());
    }

    private static Sheet table(ReadingsTable table) {
        final int rows = Math.min(ROWS_SHOWN, table.rowCount());
        final List<TableColumn> columns = table.columns();
        final Grid.Builder grid = Grid.of(table.file() + (rows < table.rowCount() ? ", first " + rows + " of "
                + table.rowCount() + " rows" : ""), columns.stream()
            .map(c -> (c.isNumeric() ? "#" : "") + c.head()).toArray(String[]::new));
        for (int i = 0; i < rows; i++) {
            final int row = i;
            grid.row(columns.stream().map(c -> c.written(row)).toList(), false, "");
        }
        return Sheet.saying(table.file() + ": " + table.account() + ".").with(grid.build())
            .notes("Source, as the file states it", table.comments())
            .notes("Found", table.findings().stream().map(RecordFinding::toString).toList());
    }
}
