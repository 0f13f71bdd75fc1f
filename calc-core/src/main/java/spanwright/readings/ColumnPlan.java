package spanwright.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import spanwright.quantity.Span;
import spanwright.quantity.UnitConversion;

/**
 * How the columns of one table become readings: which applied input goes with which output, and the
 * conversion of each numeric column, where its head has a unit.
 *
 * @param header      understood header lines
 * @param columns     columns of the table
 * @param conversions conversion by column index; a column that is not in it has its units in the cells
 */
record ColumnPlan(BlockHeader header, List<ColumnMeaning> columns, Map<Integer, UnitConversion> conversions) {
    private static final Span CELSIUS = Span.of(-273.15, 5000, "degC");
    private static final Span PERCENT = Span.of(0, 100, "%");

    ColumnPlan {
        columns = List.copyOf(columns);
        conversions = Map.copyOf(conversions);
    }

    /** The plan of a table, or nothing if a needed column or unit is missing; then the findings say so. */
    static Optional<ColumnPlan> of(Block block, BlockHeader header, Grid grid, RecordReading settings,
                                   List<RecordFinding> findings) {
        final int before = findings.size();
        final List<ColumnMeaning> columns = new SwappedUnits(block, header, grid, settings, findings)
            .columns();
        needed(columns, block, grid, findings);
        twice(columns, block, grid, findings);
        final Map<Integer, UnitConversion> conversions = new TreeMap<>();
        for (ColumnMeaning c : columns) {
            if (DecimalVote.isNumeric(c.role()) && !stops(findings, before)) {
                convert(c, block, header, grid, findings).ifPresent(u -> conversions.put(c.index(), u));
            }
        }
        return stops(findings, before) ? Optional.empty()
            : Optional.of(new ColumnPlan(header, columns, conversions));
    }

    /** An output column without any entry, beside others, is one sentence and not one per row. */
    private static List<ColumnMeaning> withoutEmpty(List<ColumnMeaning> columns, Block block, Grid grid,
                                                    List<RecordFinding> findings) {
        final List<ColumnMeaning> out = new ArrayList<>();
        for (ColumnMeaning c : columns) {
            final boolean empty = c.role() == ColumnRole.INDICATED && !block.rows().isEmpty()
                && block.rows().stream().allMatch(r -> r.cell(c.index()).isBlank());
            if (empty && block.columns(ColumnRole.INDICATED).size() > 1) {
                findings.add(RecordFinding.of(Fault.VALUE_MISSING, grid.at(block.head(), c.index()), c.head(),
                    "column \"" + c.head() + "\" is empty: it is not used"));
            } else {
                out.add(c);
            }
        }
        return out;
    }

    private static boolean stops(List<RecordFinding> findings, int from) {
        return findings.subList(from, findings.size()).stream()
            .anyMatch(f -> f.outcome() == Outcome.REFUSED || f.isOpenQuestion());
    }

    List<ColumnMeaning> columns(ColumnRole role) {
        return columns.stream().filter(c -> c.role() == role).toList();
    }

    Optional<ColumnMeaning> column(ColumnRole role) {
        return columns.stream().filter(c -> c.role() == role).findFirst();
    }

    /** The applied column that belongs to an output column: the one that says the same, else the only one. */
    Optional<ColumnMeaning> appliedFor(ColumnMeaning indicated) {
        final List<ColumnMeaning> applied = columns(ColumnRole.APPLIED);
        return applied.size() == 1 ? Optional.of(applied.get(0))
            : applied.stream().filter(a -> a.withRole(ColumnRole.INDICATED).sameAs(indicated)).findFirst();
    }

    /** The conversion for a unit that stands in a cell of a column. */
    UnitConversion forCell(ColumnMeaning column, String unit) {
        final String[] own = ColumnHead.across(unit);
        return convert(column, own[0], own[1].isEmpty() ? column.ohms() : own[1], header);
    }

    private static void needed(List<ColumnMeaning> columns, Block block, Grid grid,
        List<RecordFinding> findings) {
        for (ColumnRole role : List.of(ColumnRole.APPLIED, ColumnRole.INDICATED)) {
            if (columns.stream().noneMatch(c -> c.role() == role)) {
                findings.add(RecordFinding.of(Fault.COLUMN_MISSING, grid.at(block.head(), 0), "",
                    "no column for the "
                    + role + ": head one like \"" + (role == ColumnRole.APPLIED ? "Applied" : "Indicated")
                    + " (mA)\", or name it in the call with column(...).as(ColumnRole." + role.name() + ")"));
            }
        }
        for (ColumnMeaning c : columns) {
            final boolean several = columns.stream().filter(a -> a.role() == ColumnRole.APPLIED).count() > 1;
            if (several && c.role() == ColumnRole.INDICATED && columns.stream().noneMatch(
                a -> a.role() == ColumnRole.APPLIED && a.withRole(c.role()).sameAs(c))) {
                findings.add(RecordFinding.of(Fault.COLUMN_MISSING, grid.at(block.head(), c.index()),
                    c.head(), "no applied column goes with \"" + c.head() + "\""));
            }
        }
    }

    private static void twice(List<ColumnMeaning> columns, Block block, Grid grid,
        List<RecordFinding> findings) {
        for (int i = 0; i < columns.size(); i++) {
            final ColumnMeaning c = columns.get(i);
            for (ColumnMeaning earlier : columns.subList(0, i)) {
                if (c.sameAs(earlier) && c.role() != ColumnRole.REMARK && c.role() != ColumnRole.RESULT
                    && c.role() != ColumnRole.ERROR && c.role() != ColumnRole.EXPECTED) {
                    findings.add(RecordFinding.of(Fault.COLUMN_TWICE, grid.at(block.head(), c.index()),
                        c.head(), "\"" + c.head() + "\" and \"" + earlier.head() + "\" both mean " + c.role()
                            + ": name them apart, or in the call"));
                }
            }
        }
    }

    private static Optional<UnitConversion> convert(ColumnMeaning c, Block block, BlockHeader header,
        Grid grid,
                                                    List<RecordFinding> findings) {
        final CellAddress at = grid.at(block.head(), c.index());
        if (c.unit().isEmpty()) {
            if (block.rows().stream().noneMatch(r -> hasUnit(r.cell(c.index())))) {
                findings.add(RecordFinding.of(Fault.UNIT_MISSING, at, c.head(), "column \"" + c.head()
                    + "\" has no unit: write it in the head, such as \"" + c.head()
                    + " (mA)\", in the cells, or"
                    + " in the call"));
            }
            return Optional.empty();
        }
        try {
            return Optional.of(convert(c, c.unit(), c.ohms(), header));
        } catch (ColumnConversion.OtherKind e) {
            findings.add(RecordFinding.of(Fault.UNIT_OF_OTHER_KIND, at, c.head(), e.getMessage()));
        } catch (IllegalArgumentException e) {
            findings.add(RecordFinding.of(Fault.UNIT_UNKNOWN, at, c.head(), e.getMessage()));
        }
        return Optional.empty();
    }

    static UnitConversion convert(ColumnMeaning c, String unit, String ohms, BlockHeader header) {
        return switch (c.role()) {
            case APPLIED -> ColumnConversion.of(unit, ohms, header.input(), header.inputScale());
            case INDICATED -> ColumnConversion.of(unit, ohms, header.output(), header.outputScale());
            case AMBIENT -> ColumnConversion.of(unit, "", CELSIUS, Optional.empty());
            default -> unit.startsWith("%") ? UnitConversion.NONE
                : ColumnConversion.of(unit, ohms, header.input(), header.inputScale())
                    .andThen(UnitConversion.scaling(header.input(), PERCENT));
        };
    }

    private static boolean hasUnit(GridCell cell) {
        final String text = Characters.plain(cell.text());
        return !CellContent.of(text, DecimalSign.POINT).unit().isEmpty()
            || !CellContent.of(text, DecimalSign.COMMA).unit().isEmpty();
    }

    /** The columns as sentences, for what was understood. */
    List<String> sentences() {
        final List<String> out = new ArrayList<>();
        columns.forEach(c -> out.add(c.toString()));
        return out;
    }
}
