package spanwright.readings;

import java.util.List;
import java.util.Optional;
import spanwright.quantity.Span;

/**
 * Catches input and output columns that are exchanged where their units tell: each unit fits the other range
 * only. Asks, and exchanges when told so.
 */
final class SwappedUnits {
    private final Block block;
    private final BlockHeader header;
    private final Grid grid;
    private final RecordReading settings;
    private final List<RecordFinding> findings;

    SwappedUnits(Block block, BlockHeader header, Grid grid, RecordReading settings,
        List<RecordFinding> findings) {
        this.block = block;
        this.header = header;
        this.grid = grid;
        this.settings = settings;
        this.findings = findings;
    }

    /** The columns of the table, exchanged if the call said so. */
    List<ColumnMeaning> columns() {
        final List<ColumnMeaning> applied = block.columns(ColumnRole.APPLIED);
        final List<ColumnMeaning> indicated = block.columns(ColumnRole.INDICATED);
        if (applied.size() != 1 || indicated.isEmpty() || !crossed(applied.get(0), indicated.get(0))
            || settings.declines(Fault.COLUMNS_SWAPPED)) {
            return block.columns();
        }
        final ColumnMeaning a = applied.get(0);
        final CellAddress at = grid.at(block.head(), a.index());
        if (settings.accepts(Fault.COLUMNS_SWAPPED) && indicated.size() == 1) {
            findings.add(RecordFinding.of(Fault.ANSWERED, at, a.head(),
                "input and output columns exchanged, as told in"
                + " the call"));
            return exchanged(block);
        }
        findings.add(RecordFinding.question(Fault.COLUMNS_SWAPPED, at, a.head(), "the unit of \"" + a.head()
            + "\" fits the output range " + header.output() + " only, and that of \"" + indicated.get(0)
            .head()
            + "\" the input range " + header.input(), "exchange the two columns"));
        return block.columns();
    }

    /** The columns of a table with input and output exchanged. */
    static List<ColumnMeaning> exchanged(Block block) {
        return block.columns().stream().map(c -> switch (c.role()) {
            case APPLIED -> c.withRole(ColumnRole.INDICATED);
            case INDICATED -> c.withRole(ColumnRole.APPLIED);
            default -> c;
        }).toList();
    }

    private boolean crossed(ColumnMeaning applied, ColumnMeaning indicated) {
        return !fits(applied, header.input(), header.inputScale())
            && !fits(indicated, header.output(), header.outputScale())
            && fits(applied, header.output(), header.outputScale())
            && fits(indicated, header.input(), header.inputScale());
    }

    private static boolean fits(ColumnMeaning column, Span range, Optional<Span> scale) {
        try {
            ColumnConversion.of(column.unit(), column.ohms(), range, scale);
            return true;
        } catch (IllegalArgumentException e) {
            return column.unit().isEmpty();
        }
    }
}
