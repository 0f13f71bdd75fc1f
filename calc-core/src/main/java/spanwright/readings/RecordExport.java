package spanwright.readings;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.InstantColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * The runs of a record as a notebook table: a row for each reading, clamped and absent ones too, with the
 * text of its cells and their place. Numbers are in the units of the ranges.
 */
final class RecordExport {
    private final Table table;
    private final List<RecordFinding> findings;

    private RecordExport(String file, List<RecordFinding> findings) {
        this.findings = findings;
        this.table = Table.create(file, StringColumn.create("channel"), StringColumn.create("serial"),
            StringColumn.create("phase"), DoubleColumn.create("ambient (\u00b0C)"), IntColumn.create("cycle"),
            StringColumn.create("direction"), DoubleColumn.create("point (%)"),
            DoubleColumn.create("applied"), StringColumn.create("applied as written"),
            StringColumn.create("applied unit"), DoubleColumn.create("indicated"),
            StringColumn.create("indicated as written"), StringColumn.create("indicated unit"),
            InstantColumn.create("time (UTC)"), StringColumn.create("time as written"),
            StringColumn.create("use"), StringColumn.create("flags"), StringColumn.create("applied at"),
            StringColumn.create("indicated at"));
    }

    /** One row per reading. */
    static Table table(String file, List<RunRecord> runs, List<RecordFinding> findings) {
        final RecordExport export = new RecordExport(file, findings);
        for (RunRecord r : runs) {
            r.run().readings().forEach(x -> export.row(r, x, r.plateau().contains(x) ? "plateau" : ""));
            r.clamped().forEach(x -> export.row(r, x, "clamped, not used"));
            r.absent().stream().filter(a -> a.role() == ColumnRole.INDICATED
                || a.role() == ColumnRole.APPLIED)
                .forEach(a -> export.absent(r, a));
        }
        return export.table;
    }

    private void row(RunRecord record, Reading r, String use) {
        run(record.run(), r.ambient().map(Entry::value));
        table.intColumn("cycle").append(r.cycle());
        text("direction", r.direction().toString());
        number("point (%)", r.nominalPercent());
        number("applied", OptionalDouble.of(r.applied().value()));
        text("applied as written", r.applied().written());
        number("indicated", OptionalDouble.of(r.indicated().value()));
        text("indicated as written", r.indicated().written());
        r.time().flatMap(RecordDate::instant).ifPresentOrElse(table.instantColumn("time (UTC)")::append,
            table.instantColumn("time (UTC)")::appendMissing);
        text("time as written", r.time().map(RecordDate::written).orElse(""));
        text("use", use);
        text("flags", flags(record.run(), List.of(r.applied().cell(), r.indicated().cell())));
        text("applied at", r.applied().cell().toString());
        text("indicated at", r.indicated().cell().toString());
    }

    private void absent(RunRecord record, AbsentReading a) {
        final boolean output = a.role() == ColumnRole.INDICATED;
        final Optional<Entry> applied = output ? a.beside() : Optional.empty();
        final Optional<Entry> indicated = output ? Optional.empty() : a.beside();
        run(record.run(), Optional.empty());
        table.intColumn("cycle").appendMissing();
        text("direction", "");
        number("point (%)", OptionalDouble.empty());
        number("applied", value(applied));
        text("applied as written", applied.map(Entry::written).orElse(output ? "" : a.written()));
        number("indicated", value(indicated));
        text("indicated as written", indicated.map(Entry::written).orElse(output ? a.written() : ""));
        table.instantColumn("time (UTC)").appendMissing();
        text("time as written", "");
        text("use", "absent: " + a.kind());
        text("flags", flags(record.run(), List.of(a.cell())));
        text("applied at", applied.map(e -> e.cell().toString()).orElse(output ? "" : a.cell().toString()));
        text("indicated at", indicated.map(e -> e.cell().toString()).orElse(output ? a.cell().toString()
            : ""));
    }

    private void run(CalibrationRun run, Optional<Double> ownAmbient) {
        text("channel", run.channel());
        text("serial", run.serial());
        text("phase", run.phase().toString());
        final Optional<Double> ambient = ownAmbient.or(() -> run.conditions().ambient().map(a -> a.value()));
        number("ambient (\u00b0C)", ambient.isPresent() ? OptionalDouble.of(ambient.get())
            : OptionalDouble.empty());
        text("applied unit", run.input().symbol());
        text("indicated unit", run.output().symbol());
    }

    /** What was flagged at the cells of a row, and what holds for every reading of the run. */
    private String flags(CalibrationRun run, List<CellAddress> cells) {
        return findings.stream().filter(f -> f.outcome() == Outcome.FLAGGED && (cells.contains(f.cell())
            || f.fault().concernsAllReadings() && f.channel().equals(run.channel())))
            .map(f -> f.fault().toString()).distinct().collect(Collectors.joining("; "));
    }

    private void text(String column, String text) {
        table.stringColumn(column).append(text);
    }

    private void number(String column, OptionalDouble value) {
        value.ifPresentOrElse(table.doubleColumn(column)::append, table.doubleColumn(column)::appendMissing);
    }

    private static OptionalDouble value(Optional<Entry> entry) {
        return entry.isPresent() ? OptionalDouble.of(entry.get().value()) : OptionalDouble.empty();
    }
}
