package spanwright.readings;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Decides the decimal sign of a whole file from the cells that must be numbers. Points and commas in one
 * file are refused: half of the numbers would be wrong by a power of ten.
 */
final class DecimalVote {
    private static final Pattern WITH_POINT = Pattern.compile("[<>\u2264\u2265=\\s]*[+-]?\\d*\\.\\d+.*");
    private static final Pattern WITH_COMMA = Pattern.compile("[<>\u2264\u2265=\\s]*[+-]?\\d*,\\d+.*");
    private static final Pattern LIKE_THOUSANDS = Pattern.compile("[+-]?\\d{1,3}(,\\d{3})+(\\D.*)?");

    private static final Pattern SINGLE = Pattern.compile("[+-]?\\d+[.,]\\d+(\\s*[^\\d\\s]{1,6})?");

    private Optional<RecordFinding> point = Optional.empty();
    private Optional<RecordFinding> comma = Optional.empty();
    private boolean commaIsDecimal;

    /** Takes the votes of the tables and of the header lines that hold numbers. */
    void count(Grid grid, List<Block> blocks) {
        for (Block block : blocks) {
            for (ColumnMeaning column : block.columns()) {
                if (isNumeric(column.role())) {
                    block.rows().forEach(r -> count(r.cell(column.index()), grid.at(r, column.index())));
                }
            }
        }
    }

    /**
     * The sign, by what was counted and what the call says.
     *
     * @throws ReadingsFormatException if both are in use
     */
    DecimalSign decide(RecordReading settings) {
        if (point.isPresent() && comma.isPresent()) {
            final RecordFinding p = point.get();
            final RecordFinding c = comma.get();
            final RecordFinding later = c.cell().row() >= p.cell().row() ? c : p;
            final RecordFinding earlier = later == c ? p : c;
            throw new ReadingsFormatException(RecordFinding.of(Fault.MIXED_DECIMAL_SIGN, later.cell(),
                later.written(), "\"" + later.written() + "\" here and \"" + earlier.written() + "\" at "
                    + earlier.cell()
                    + ": one file may use the decimal point or the decimal comma, not both"));
        }
        return settings.decimal().orElse(comma.isPresent() ? DecimalSign.COMMA : DecimalSign.POINT);
    }

    /** The first cell with a comma, where the file has only commas. */
    Optional<RecordFinding> firstComma() {
        return comma;
    }

    /** Every comma has three digits behind it and at most three before: it may separate thousands. */
    boolean mayBeThousands() {
        return comma.isPresent() && !commaIsDecimal;
    }

    /** The first cell with a comma, if no cell has a point. */
    Optional<RecordFinding> onlyCommas() {
        return point.isPresent() ? Optional.empty() : comma;
    }

    /** Takes the vote of a cell of unknown kind: only one that is a number by itself has one. */
    void countNumber(GridCell cell, CellAddress at) {
        if (SINGLE.matcher(Characters.plain(cell.text())).matches()) {
            count(cell, at);
        }
    }

    private void count(GridCell cell, CellAddress at) {
        if (cell.kind() != GridCell.Kind.TEXT) {
            return;
        }
        final String text = Characters.plain(cell.text());
        if (point.isEmpty() && WITH_POINT.matcher(text).matches()) {
            point = Optional.of(RecordFinding.of(Fault.MIXED_DECIMAL_SIGN, at, cell.text(), ""));
        }
        if (WITH_COMMA.matcher(text).matches()) {
            if (comma.isEmpty()) {
                comma = Optional.of(RecordFinding.of(Fault.DECIMAL_COMMA, at, cell.text(), ""));
            }
            commaIsDecimal |= !LIKE_THOUSANDS.matcher(text).matches();
        }
    }

    static boolean isNumeric(ColumnRole role) {
        return switch (role) {
            case NOMINAL, APPLIED, INDICATED, AMBIENT -> true;
            default -> false;
        };
    }
}
