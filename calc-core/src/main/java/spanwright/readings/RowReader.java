package spanwright.readings;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Turns the rows of one table into points. Each row is accepted, repaired with every repair listed, or
 * refused with the reason; none is dropped. Not thread safe; used once for one table.
 */
final class RowReader {
    private static final int MOST_CYCLES = 9999;

    private final Grid grid;
    private final Block block;
    private final ColumnPlan plan;
    private final List<RecordFinding> findings;
    private final List<Point> points = new ArrayList<>();
    private final DateText times;
    private final Set<Fault> timeFaults = EnumSet.noneOf(Fault.class);
    private final CellReader cells;
    private int accepted;
    private int repaired;
    private int refused;

    RowReader(Grid grid, Block block, ColumnPlan plan, DecimalSign decimal, DateText times,
              List<RecordFinding> findings) {
        this.times = times;
        this.grid = grid;
        this.block = block;
        this.plan = plan;
        this.findings = findings;
        this.cells = new CellReader(grid, plan, decimal, findings);
    }

    /** Reads all rows. */
    void read() {
        for (GridRow row : block.rows()) {
            final int before = findings.size();
            final int pointsBefore = points.size();
            final int absencesBefore = cells.absences().size();
            if (!raggedRow(row)) {
                points(row);
            }
            final List<RecordFinding> now = findings.subList(before, findings.size());
            if (now.stream().anyMatch(f -> f.outcome() == Outcome.REFUSED)) {
                refused++;
                points.subList(pointsBefore, points.size()).clear();
                cells.absences().subList(absencesBefore, cells.absences().size()).clear();
            } else if (now.stream().anyMatch(f -> f.outcome() == Outcome.REPAIRED)) {
                repaired++;
            } else {
                accepted++;
            }
        }
    }

    ColumnPlan plan() {
        return plan;
    }

    List<Point> points() {
        return points;
    }

    List<CellReader.Absence> absences() {
        return cells.absences();
    }

    int accepted() {
        return accepted;
    }

    int repaired() {
        return repaired;
    }

    int refused() {
        return refused;
    }

    private boolean raggedRow(GridRow row) {
        final int last = block.head().lastFilled();
        if (row.lastFilled() > last) {
            cells.refuse(Fault.RAGGED_ROW, row, last + 1, "more cells than the " + (last + 1)
                + " column names in row " + block.head().number()
                + " (a decimal comma does this where commas also separate cells)");
            return true;
        }
        final int needed = plan.columns().stream().filter(c -> c.role() == ColumnRole.APPLIED
            || c.role() == ColumnRole.INDICATED).mapToInt(ColumnMeaning::index).max().orElse(0);
        // A workbook does not store empty cells at the end of a row: there they are missing readings.
        if (row.cells().size() <= needed && grid.sheet().isEmpty()) {
            cells.refuse(Fault.RAGGED_ROW, row, row.cells().size() - 1, "the row ends after " + row.cells()
                .size()
                + " cells, before column " + (needed + 1) + " \"" + block.head().cell(needed).text() + "\"");
            return true;
        }
        return false;
    }

    private void points(GridRow row) {
        final Point.Key key = new Point.Key(channel(row), word(row, ColumnRole.SERIAL,
            plan.header().record().serial()), Optional.empty());
        final Optional<Phase> phase = phase(row);
        final Optional<Direction> direction = direction(row);
        final OptionalInt cycle = cycle(row);
        final Optional<Entry> nominalPoint = plainNumber(row, ColumnRole.NOMINAL);
        final OptionalDouble nominal = nominalPoint.isPresent() ? OptionalDouble.of(nominalPoint.get()
            .value())
            : OptionalDouble.empty();
        final Optional<Entry> ambient = plainNumber(row, ColumnRole.AMBIENT);
        final Optional<RecordDate> time = time(row);
        for (ColumnMeaning out : plan.columns(ColumnRole.INDICATED)) {
            final ColumnMeaning in = plan.appliedFor(out).orElseThrow();
            final Point.Key own = new Point.Key(key.channel(), key.serial(), out.phase().or(() -> phase));
            final int absent = cells.absences().size();
            final Optional<Entry> applied = cells.entry(row, in, own);
            final Optional<Entry> indicated = cells.entry(row, out, own);
            cells.beside(absent, applied.or(() -> indicated));
            if (applied.isPresent() && indicated.isPresent()) {
                points.add(new Point(own, out.direction().or(() -> direction),
                    out.cycle().isPresent() ? out.cycle() : cycle, nominal, applied.get(), indicated.get(),
                    ambient, time, out.direction().isPresent()));
            }
        }
    }

    private String channel(GridRow row) {
        final String tag = word(row, ColumnRole.TAG, plan.header().record().tag());
        final String number = word(row, ColumnRole.CHANNEL, "");
        final String name = number.isEmpty() || plan.column(ColumnRole.TAG).isPresent() ? tag
            : (tag.isEmpty() ? "channel " : tag + " channel ") + number;
        if (!name.isEmpty()) {
            return name;
        }
        final String one = plan.header().record().channelNumber();
        return one.isEmpty() ? "channel 1" : "channel " + one;
    }

    private String word(GridRow row, ColumnRole role, String otherwise) {
        final String text = plan.column(role).map(c -> Characters.plain(row.cell(c.index()).text()))
            .orElse("");
        return text.isEmpty() ? otherwise : text;
    }

    private Optional<Phase> phase(GridRow row) {
        final String text = word(row, ColumnRole.PHASE, "");
        final Optional<Phase> phase = PhaseWord.read(text);
        if (!text.isEmpty() && phase.isEmpty()) {
            cells.refuse(Fault.WORD_UNKNOWN, row, column(ColumnRole.PHASE), "phase is not known: "
                + PhaseWord.ALLOWED);
        }
        return phase.or(() -> plan.header().phase());
    }

    private Optional<Direction> direction(GridRow row) {
        final String text = word(row, ColumnRole.DIRECTION, "");
        final Optional<Direction> direction = PhaseWord.direction(text);
        if (!text.isEmpty() && direction.isEmpty()) {
            cells.refuse(Fault.WORD_UNKNOWN, row, column(ColumnRole.DIRECTION),
                "direction is not known: \"up\" or \"down\" is allowed");
        }
        return direction;
    }

    private OptionalInt cycle(GridRow row) {
        final String text = word(row, ColumnRole.CYCLE, "");
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        final int n = text.matches("\\d{1,4}") ? Integer.parseInt(text) : 0;
        if (n < 1 || n > MOST_CYCLES) {
            cells.refuse(Fault.NOT_A_NUMBER, row, column(ColumnRole.CYCLE),
                "cycle is no whole number from 1 to " + MOST_CYCLES);
            return OptionalInt.empty();
        }
        return OptionalInt.of(n);
    }

    /** When a row was taken; a doubt is listed once for a table and kind, not in every row. */
    private Optional<RecordDate> time(GridRow row) {
        final String text = word(row, ColumnRole.TIME, "");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        final DateText.Answer answer = times.read(text, plan.header().record().date().map(RecordDate::day));
        if (answer.fault().isPresent() && timeFaults.add(answer.fault().get())) {
            findings.add(RecordFinding.of(answer.fault().get() == Fault.HEADER_UNREADABLE
                ? Fault.NOT_UNDERSTOOD
                : answer.fault().get(), grid.at(row, column(ColumnRole.TIME)), text, answer.says()));
        }
        return answer.date();
    }

    private int column(ColumnRole role) {
        return plan.column(role).map(ColumnMeaning::index).orElse(0);
    }

    private Optional<Entry> plainNumber(GridRow row, ColumnRole role) {
        final Optional<ColumnMeaning> column = plan.column(role);
        if (column.isEmpty() || row.cell(column.get().index()).isBlank()) {
            return Optional.empty();
        }
        return cells.entry(row, column.get(), new Point.Key("", "", Optional.empty()));
    }
}
