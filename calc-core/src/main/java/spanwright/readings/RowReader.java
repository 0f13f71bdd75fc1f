package spanwright.readings;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import spanwright.quantity.UnitConversion;
import spanwright.quantity.UnitSymbols;

/**
 * Turns the rows of one table into points. Each row is accepted, repaired with every repair listed, or
 * refused with the reason; none is dropped. Not thread safe; used once for one table.
 */
final class RowReader {
    /** Beyond this no reading lies, in any unit of the table of units. */
    private static final double LARGEST = 1e15;
    private static final double FINEST = 1e-30;
    private static final int MOST_CYCLES = 9999;

    private final Grid grid;
    private final Block block;
    private final ColumnPlan plan;
    private final DecimalSign decimal;
    private final List<Finding> findings;
    private final List<Point> points = new ArrayList<>();
    private final DateText times;
    private final Set<Fault> timeFaults = EnumSet.noneOf(Fault.class);
    private final List<Absence> absences = new ArrayList<>();
    private int accepted;
    private int repaired;
    private int refused;

    /** An absent output, with the channel and phase it belongs to. */
    record Absence(Point.Key key, AbsentReading reading) { }

    RowReader(Grid grid, Block block, ColumnPlan plan, DecimalSign decimal, DateText times,
              List<Finding> findings) {
        this.times = times;
        this.grid = grid;
        this.block = block;
        this.plan = plan;
        this.decimal = decimal;
        this.findings = findings;
    }

    /** Reads all rows. */
    void read() {
        for (GridRow row : block.rows()) {
            final int before = findings.size();
            final int pointsBefore = points.size();
            final int absencesBefore = absences.size();
            if (!raggedRow(row)) {
                points(row);
            }
            final List<Finding> now = findings.subList(before, findings.size());
            if (now.stream().anyMatch(f -> f.outcome() == Outcome.REFUSED)) {
                refused++;
                points.subList(pointsBefore, points.size()).clear();
                absences.subList(absencesBefore, absences.size()).clear();
            } else if (now.stream().anyMatch(f -> f.outcome() == Outcome.REPAIRED)) {
                repaired++;
            } else {
                accepted++;
            }
        }
    }

    List<Point> points() {
        return points;
    }

    List<Absence> absences() {
        return absences;
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
            refuse(Fault.RAGGED_ROW, row, last + 1, "more cells than the " + (last + 1)
                + " column names in row "
                + block.head().number() + " (a decimal comma in a comma-separated file does this)");
            return true;
        }
        final int needed = plan.columns().stream().filter(c -> c.role() == ColumnRole.APPLIED
            || c.role() == ColumnRole.INDICATED).mapToInt(ColumnMeaning::index).max().orElse(0);
        if (row.cells().size() <= needed) {
            refuse(Fault.RAGGED_ROW, row, row.cells().size() - 1, "the row ends after " + row.cells().size()
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
        final OptionalDouble nominal = plainNumber(row, ColumnRole.NOMINAL);
        final OptionalDouble ambient = plainNumber(row, ColumnRole.AMBIENT);
        time(row);
        for (ColumnMeaning out : plan.columns(ColumnRole.INDICATED)) {
            final ColumnMeaning in = plan.appliedFor(out).orElseThrow();
            final Point.Key own = new Point.Key(key.channel(), key.serial(), out.phase().or(() -> phase));
            final Optional<Entry> applied = entry(row, in, own);
            final Optional<Entry> indicated = entry(row, out, own);
            if (applied.isPresent() && indicated.isPresent()) {
                points.add(new Point(own, out.direction().or(() -> direction),
                    out.cycle().isPresent() ? out.cycle() : cycle, nominal, applied.get(), indicated.get(),
                    ambient, out.direction().isPresent()));
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
            refuse(Fault.WORD_UNKNOWN, row, column(ColumnRole.PHASE), "phase is not known: "
                + PhaseWord.ALLOWED);
        }
        return phase.or(() -> plan.header().phase());
    }

    private Optional<Direction> direction(GridRow row) {
        final String text = word(row, ColumnRole.DIRECTION, "");
        final Optional<Direction> direction = PhaseWord.direction(text);
        if (!text.isEmpty() && direction.isEmpty()) {
            refuse(Fault.WORD_UNKNOWN, row, column(ColumnRole.DIRECTION),
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
            refuse(Fault.NOT_A_NUMBER, row, column(ColumnRole.CYCLE),
                "cycle is no whole number from 1 to " + MOST_CYCLES);
            return OptionalInt.empty();
        }
        return OptionalInt.of(n);
    }

    /** Times are checked, not used: one sentence per table and kind is enough. */
    private void time(GridRow row) {
        final String text = word(row, ColumnRole.TIME, "");
        if (text.isEmpty() || row.cell(column(ColumnRole.TIME)).kind() == GridCell.Kind.DATE) {
            return;
        }
        final DateText.Answer answer = times.read(text);
        if (answer.fault().isPresent() && timeFaults.add(answer.fault().get())) {
            findings.add(Finding.of(answer.fault().get() == Fault.HEADER_UNREADABLE ? Fault.NOT_UNDERSTOOD
                : answer.fault().get(), grid.at(row, column(ColumnRole.TIME)), text, answer.says()));
        }
    }

    private int column(ColumnRole role) {
        return plan.column(role).map(ColumnMeaning::index).orElse(0);
    }

    private OptionalDouble plainNumber(GridRow row, ColumnRole role) {
        final Optional<ColumnMeaning> column = plan.column(role);
        if (column.isEmpty() || row.cell(column.get().index()).isBlank()) {
            return OptionalDouble.empty();
        }
        return entry(row, column.get(), new Point.Key("", "", Optional.empty()))
            .map(e -> OptionalDouble.of(e.value())).orElse(OptionalDouble.empty());
    }

    private Optional<Entry> entry(GridRow row, ColumnMeaning column, Point.Key key) {
        final GridCell cell = row.cell(column.index());
        final CellContent content = CellContent.of(cell, decimal);
        switch (content.kind()) {
            case NUMBER:
                return number(row, column, cell, content);
            case MISSING, CENSORED, OVERLOAD:
                absent(row, column, content, key);
                return Optional.empty();
            case DATE:
                refuse(Fault.DATE_FOR_NUMBER, row, column.index(), "a date stands where a number is needed: a"
                    + " spreadsheet makes dates of entries like 4-20");
                return Optional.empty();
            case OTHER_DECIMAL_SIGN:
                refuse(Fault.NOT_A_NUMBER, row, column.index(),
                    "no number: the decimal sign of this file is \""
                    + decimal.sign() + "\" and digits are not grouped");
                return Optional.empty();
            case TOO_LARGE:
                refuse(Fault.OUT_OF_RANGE_NUMBER, row, column.index(), "more than " + CellContent.MOST_DIGITS
                    + " digits or an exponent beyond 300");
                return Optional.empty();
            default:
                refuse(Fault.NOT_A_NUMBER, row, column.index(), "no number: digits with one decimal sign \""
                    + decimal.sign() + "\" are allowed, and a unit behind them");
                return Optional.empty();
        }
    }

    private Optional<Entry> number(GridRow row, ColumnMeaning column, GridCell cell, CellContent content) {
        final Optional<UnitConversion> conversion = conversion(row, column, content);
        if (conversion.isEmpty()) {
            return Optional.empty();
        }
        final BigDecimal number = content.number().orElseThrow();
        final double value = conversion.get().apply(number).doubleValue() + 0.0;
        final double step = cell.decimals() >= 0 ? Math.pow(10, -cell.decimals())
            : CellContent.resolution(number);
        final double resolution = step * conversion.get().step();
        if (!(Math.abs(value) <= LARGEST && resolution <= LARGEST && resolution >= FINEST)) {
            refuse(Fault.OUT_OF_RANGE_NUMBER, row, column.index(), "no reading is that large or that finely"
                + " resolved: at most 1e15, and steps from 1e-30 to 1e15");
            return Optional.empty();
        }
        final CellAddress at = grid.at(row, column.index());
        if (Characters.hasSpecial(cell.text())) {
            repair(Fault.CHARACTER, at, cell.text(), "character " + Characters.special(cell.text())
                + " read as a plain space or minus sign");
        }
        if (number.signum() == 0 && Characters.plain(cell.text()).startsWith("-")) {
            repair(Fault.NEGATIVE_ZERO, at, cell.text(), "\"" + cell.text() + "\" read as zero");
        }
        return Optional.of(new Entry(value, resolution, cell.text(), at));
    }

    private Optional<UnitConversion> conversion(GridRow row, ColumnMeaning column, CellContent content) {
        final Optional<UnitConversion> head = Optional.ofNullable(plan.conversions().get(column.index()));
        if (content.unit().isEmpty()) {
            if (head.isEmpty()) {
                refuse(Fault.UNIT_MISSING, row, column.index(),
                    "no unit in the cell, and none in the head \"" + column.head() + "\"");
            }
            return head;
        }
        try {
            final UnitConversion own = plan.forCell(column, content.unit());
            repair(Fault.UNIT_IN_CELL, grid.at(row, column.index()), row.cell(column.index()).text(),
                "unit \"" + content.unit() + "\" in the cell, number taken in it");
            return Optional.of(own);
        } catch (ColumnConversion.OtherKind e) {
            refuse(Fault.UNIT_OF_OTHER_KIND, row, column.index(), e.getMessage());
        } catch (IllegalArgumentException e) {
            refuse(UnitSymbols.find(content.unit()).isPresent() ? Fault.UNIT_OF_OTHER_KIND
                : Fault.NOT_A_NUMBER,
                row, column.index(), "no number with a unit behind it that is known: \"" + content.unit()
                    + "\"");
        }
        return Optional.empty();
    }

    private void absent(GridRow row, ColumnMeaning column, CellContent content, Point.Key key) {
        final CellAddress at = grid.at(row, column.index());
        final String text = row.cell(column.index()).text();
        final AbsentReading.Kind kind = content.kind() == CellContent.Kind.MISSING
            ? AbsentReading.Kind.MISSING
            : content.kind() == CellContent.Kind.OVERLOAD ? AbsentReading.Kind.OVERLOAD
            : content.sign().equals("<") ? AbsentReading.Kind.BELOW : AbsentReading.Kind.ABOVE;
        OptionalDouble bound = OptionalDouble.empty();
        if (content.number().isPresent()) {
            final Optional<UnitConversion> conversion = conversion(row, column, content);
            if (conversion.isEmpty()) {
                return;
            }
            bound = OptionalDouble.of(conversion.get().apply(content.number().get()).doubleValue());
        }
        findings.add(Finding.of(kind == AbsentReading.Kind.MISSING ? Fault.VALUE_MISSING
            : Fault.VALUE_CENSORED,
            at, text, column.role() + " is " + kind + (text.isBlank() ? "" : " (\"" + text + "\")")
                + ": no number is put in its place").inChannel(key.channel()));
        absences.add(new Absence(key, new AbsentReading(kind, bound, text, at)));
    }

    private void repair(Fault fault, CellAddress at, String written, String says) {
        findings.add(Finding.of(fault, at, written, says));
    }

    private void refuse(Fault fault, GridRow row, int column, String says) {
        final String text = row.cell(Math.max(0, column)).text();
        findings.add(Finding.of(fault, grid.at(row, Math.max(0, column)), text, "\"" + text + "\": " + says));
    }
}
