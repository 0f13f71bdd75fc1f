package spanwright.readings;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import spanwright.quantity.UnitSymbols;

/**
 * What must be settled about a table before its rows are read: separator, heads, decimal sign.
 *
 * @param delimiter   what separates the cells
 * @param heads       heads of the columns
 * @param sign        decimal sign of the file
 * @param decidedBy   first cell that showed a decimal comma, empty if the sign is the point
 */
record TableLayout(char delimiter, List<Head> heads, DecimalSign sign, Optional<RecordFinding> decidedBy) {
    /**
     * Head of a column.
     *
     * @param head  as written
     * @param words without the unit
     * @param unit  its unit, empty if it states none
     */
    record Head(String head, String words, String unit) { }

    TableLayout {
        heads = List.copyOf(heads);
    }

    /**
     * Settles the layout from the first rows.
     *
     * @param delimiter separator
     * @param file      name of the file
     * @param sample    first rows of the file that are neither blank nor comments, heads first
     * @throws ReadingsFormatException if there is no head, a head stands twice, or the decimal sign is not
     *     clear
     */
    static TableLayout of(char delimiter, String file, List<GridRow> sample, TableReading settings) {
        if (sample.isEmpty()) {
            throw new ReadingsFormatException(RecordFinding.of(Fault.EMPTY_FILE,
                new CellAddress(file, "", 1, 1), "", "the file is empty: a row of column names is needed"));
        }
        final List<Head> heads = heads(sample.get(0), file);
        for (String name : settings.named()) {
            if (heads.stream().noneMatch(h -> h.head().equals(name) || h.words().equals(name))) {
                throw new ReadingsFormatException(RecordFinding.of(Fault.COLUMN_MISSING,
                    new CellAddress(file, "", sample.get(0).number(), 1), "", "no column \"" + name
                        + "\", only " + heads.stream().map(Head::head).toList()));
            }
        }
        final Optional<DecimalSign> said = settings.decimal();
        if (!votes(delimiter, settings)) {
            return new TableLayout(delimiter, heads, DecimalSign.POINT, Optional.empty());
        }
        final DecimalVote vote = new DecimalVote();
        sample.subList(1, sample.size()).forEach(r -> {
            for (int c = 0; c < r.cells().size(); c++) {
                vote.countNumber(r.cell(c), new CellAddress(file, "", r.number(), c + 1));
            }
        });
        final Optional<RecordFinding> comma = vote.onlyCommas();
        if (said.isEmpty() && comma.isPresent() && vote.mayBeThousands()) {
            throw new ReadingsFormatException(RecordFinding.question(Fault.COMMA_UNCLEAR, comma.get().cell(),
                comma.get().written(), "the comma in \"" + comma.get().written() + "\" may separate thousands"
                    + " or decimals, and so in every cell of the first rows",
                "say decimal(DecimalSign.COMMA) in the call"));
        }
        final DecimalSign sign = said.orElse(comma.isPresent() ? DecimalSign.COMMA : DecimalSign.POINT);
        return new TableLayout(delimiter, heads, sign, sign == DecimalSign.COMMA ? comma : Optional.empty());
    }

    /** Whether the cells decide the decimal sign; where the comma separates cells, the sign is the point. */
    static boolean votes(char delimiter, TableReading settings) {
        return delimiter != ',' || settings.decimal().isPresent();
    }

    private static List<Head> heads(GridRow row, String file) {
        final List<Head> heads = new ArrayList<>();
        final Set<String> seen = new HashSet<>();
        for (int i = 0; i <= row.lastFilled(); i++) {
            final String written = row.cell(i).text();
            final String plain = Characters.plain(written);
            final String head = plain.isEmpty() ? "column " + (i + 1) : plain;
            if (!seen.add(head)) {
                throw new ReadingsFormatException(RecordFinding.of(Fault.COLUMN_TWICE,
                    new CellAddress(file, "", row.number(), i + 1), written, "column name \"" + head
                        + "\" stands twice"));
            }
            final String[] parts = ColumnHead.withUnit(head);
            final boolean known = !parts[1].isEmpty()
                && UnitSymbols.find(ColumnHead.across(parts[1])[0]).isPresent();
            heads.add(known ? new Head(head, parts[0], parts[1]) : new Head(head, head, ""));
        }
        return heads;
    }
}
