package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spanwright.quantity.NumberText;
import spanwright.readings.AbsentReading;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.ColumnRole;
import spanwright.readings.Entry;
import spanwright.readings.Reading;
import spanwright.readings.RunRecord;

/**
 * The rows of a run as they stand in its file, the cells as written and marked where something was found.
 * With the record of the run also the readings that are kept beside it: clamped ones and absent ones.
 */
final class RunRows {
    private static final String MARK = "\u2691 ";

    private final CalibrationRun run;
    private final Map<CellAddress, String> marks;
    private final List<Row> rows = new ArrayList<>();
    private final boolean converted;
    private boolean timed;
    private boolean noted;

    /** One row: the place that orders it, what is said of it, and its two numbers. */
    private record Row(CellAddress at, Optional<Reading> reading, Cell applied, Cell indicated,
        String note) { }

    /** One cell: its text as written, its place, and the number if it is one. */
    private record Cell(String written, Optional<CellAddress> at, Optional<Entry> entry) {
        static Cell of(Entry e) {
            return new Cell(e.written(), Optional.of(e.cell()), Optional.of(e));
        }
    }

    RunRows(CalibrationRun run, Map<CellAddress, String> marks) {
        this.run = run;
        this.marks = marks;
        this.converted = run.readings().stream().anyMatch(r -> isConverted(r.applied()) || isConverted(
            r.indicated()));
        run.readings().forEach(r -> add(r, ""));
    }

    /** Adds what the record keeps beside the run. */
    RunRows with(RunRecord record) {
        rows.replaceAll(r -> r.reading().filter(record.plateau()::contains).isPresent() ? new Row(r.at(),
            r.reading(), r.applied(), r.indicated(), "on a plateau") : r);
        record.clamped().forEach(r -> add(r, "clamped, not used"));
        for (AbsentReading a : record.absent()) {
            final Cell own = new Cell(a.written(), Optional.of(a.cell()), Optional.empty());
            final Cell other = a.beside().map(Cell::of).orElse(new Cell("", Optional.empty(),
                Optional.empty()));
            if (a.role() == ColumnRole.INDICATED) {
                rows.add(new Row(a.cell(), Optional.empty(), other, own, "absent: " + a.kind()));
            } else if (a.role() == ColumnRole.APPLIED) {
                rows.add(new Row(a.cell(), Optional.empty(), own, other, "absent: " + a.kind()));
            }
        }
        noted = rows.stream().anyMatch(r -> !r.note().isEmpty());
        rows.sort(Comparator.comparingInt((Row r) -> r.at().row()).thenComparingInt(r -> r.at().column()));
        return this;
    }

    private void add(Reading r, String note) {
        timed |= r.time().isPresent();
        rows.add(new Row(r.indicated().cell(), Optional.of(r), Cell.of(r.applied()), Cell.of(r.indicated()),
            note));
    }

    Grid grid(String caption) {
        final String in = run.input().symbol();
        final String out = run.output().symbol();
        final List<String> heads = new ArrayList<>(List.of("#cycle", "direction", "#point (%)",
            "#applied" + (converted ? ", as written" : " (" + in + "), as written"),
            "#indicated" + (converted ? ", as written" : " (" + out + "), as written")));
        if (converted) {
            heads.addAll(List.of("#applied, taken as (" + in + ")", "#indicated, taken as (" + out + ")"));
        }
        if (timed) {
            heads.add("time, as written");
        }
        if (noted) {
            heads.add("kept as");
        }
        heads.add("row");
        final Grid.Builder grid = Grid.of(caption, heads.toArray(String[]::new));
        rows.forEach(r -> grid.row(cells(r), false, hover(r)));
        return grid.build();
    }

    private List<String> cells(Row row) {
        final List<String> cells = new ArrayList<>(List.of(
            row.reading().map(r -> Integer.toString(r.cycle())).orElse(""),
            row.reading().map(r -> r.direction().toString()).orElse(""),
            row.reading().filter(r -> r.nominalPercent().isPresent())
                .map(r -> NumberText.plain(r.nominalPercent().getAsDouble(), 5)).orElse(""),
            written(row.applied()), written(row.indicated())));
        if (converted) {
            cells.addAll(List.of(taken(row.applied()), taken(row.indicated())));
        }
        if (timed) {
            cells.add(row.reading().flatMap(Reading::time).map(t -> t.written()).orElse(""));
        }
        if (noted) {
            cells.add(row.note());
        }
        cells.add(Integer.toString(row.at().row()));
        return cells;
    }

    private String hover(Row row) {
        return Stream.of(row.applied(), row.indicated()).flatMap(c -> c.at().stream())
            .filter(marks::containsKey)
            .map(marks::get).collect(Collectors.joining("; "));
    }

    private String written(Cell cell) {
        return (cell.at().filter(marks::containsKey).isPresent() ? MARK : "") + cell.written();
    }

    private static String taken(Cell cell) {
        return cell.entry().map(e -> NumberText.fixed(e.value(), Math.max(0, NumberText.decimalsFor(
            e.resolution()) - 1))).orElse("");
    }

    /** Whether the number that counts is another than the one that stands in the cell. */
    private static boolean isConverted(Entry entry) {
        return !entry.written().strip().matches("[-+]?[0-9]+([.][0-9]+)?")
            || Double.parseDouble(entry.written().strip()) != entry.value();
    }
}
