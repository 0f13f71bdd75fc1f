package spanwright.readings;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.UnitConversion;
import spanwright.quantity.UnitSymbols;

/** Turns the numeric cells of one table into entries in the unit of the range, or says why not. */
final class CellReader {
    /** Beyond this no reading lies, in any unit of the table of units. */
    private static final double LARGEST = 1e15;
    private static final double FINEST = 1e-30;

    private final Grid grid;
    private final ColumnPlan plan;
    private final DecimalSign decimal;
    private final List<RecordFinding> findings;
    private final List<Absence> absences = new ArrayList<>();

    /** An absent output, with the channel and phase it belongs to. */
    record Absence(Point.Key key, AbsentReading reading) { }

    CellReader(Grid grid, ColumnPlan plan, DecimalSign decimal, List<RecordFinding> findings) {
        this.grid = grid;
        this.plan = plan;
        this.decimal = decimal;
        this.findings = findings;
    }

    /** Says what stands beside the absent readings after a number of them. */
    void beside(int from, Optional<Entry> other) {
        absences.subList(from, absences.size()).replaceAll(a -> new Absence(a.key(), a.reading()
            .beside(other)));
    }

    /** Absent readings so far; the caller takes those of a refused row out. */
    List<Absence> absences() {
        return absences;
    }

    /** The number of a cell, or nothing where it is absent or refused. */
    Optional<Entry> entry(GridRow row, ColumnMeaning column, Point.Key key) {
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
        findings.add(RecordFinding.of(kind == AbsentReading.Kind.MISSING ? Fault.VALUE_MISSING
            : Fault.VALUE_CENSORED,
            at, text, column.role() + " is " + kind + (text.isBlank() ? "" : " (\"" + text + "\")")
                + ": no number is put in its place").inChannel(key.channel()));
        absences.add(new Absence(key, new AbsentReading(kind, bound, text, at, column.role(),
            Optional.empty())));
    }

    private void repair(Fault fault, CellAddress at, String written, String says) {
        findings.add(RecordFinding.of(fault, at, written, says));
    }

    void refuse(Fault fault, GridRow row, int column, String says) {
        final String text = row.cell(Math.max(0, column)).text();
        findings.add(RecordFinding.of(fault, grid.at(row, Math.max(0, column)), text, "\"" + text + "\": "
            + says));
    }
}
