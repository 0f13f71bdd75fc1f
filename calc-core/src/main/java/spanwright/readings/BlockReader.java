package spanwright.readings;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Reads the rows of one table, and reads them again where the numbers show that a column holds something else
 * than its head says and the call has agreed to that.
 */
final class BlockReader {
    private final RecordReading settings;
    private final Grid grid;
    private final BlockHeader header;
    private final DecimalSign decimal;
    private final List<RecordFinding> findings;

    BlockReader(RecordReading settings, Grid grid, BlockHeader header, DecimalSign decimal,
                List<RecordFinding> findings) {
        this.settings = settings;
        this.grid = grid;
        this.header = header;
        this.decimal = decimal;
        this.findings = findings;
    }

    /** The rows, or nothing if the columns cannot be used. */
    Optional<RowReader> read(Block block, List<String> understood) {
        final List<RecordFinding> planned = new ArrayList<>();
        final Optional<ColumnPlan> plan = ColumnPlan.of(block, header, grid, settings, planned);
        if (plan.isEmpty()) {
            findings.addAll(planned);
            return Optional.empty();
        }
        final List<RecordFinding> found = new ArrayList<>();
        final RowReader rows = new RowReader(grid, block, plan.get(), decimal,
            new DateText(settings.dayFirstOrMonthFirst(), zone(block)), found);
        rows.read();
        final Optional<Block> other = reconsidered(block, plan.get(), rows);
        if (other.isPresent()) {
            return read(other.get(), understood);
        }
        findings.addAll(planned);
        findings.addAll(found);
        understood.addAll(plan.get().sentences());
        return Optional.of(rows);
    }

    /** The zone of the call or of the header; one that cannot be read is a finding of the header already. */
    private Optional<ZoneId> zone(Block block) {
        return settings.zone().or(() -> block.preamble().find(PreambleKey.ZONE).map(Preamble.Value::text)
            .filter(z -> ZoneId.getAvailableZoneIds().contains(z)).map(ZoneId::of));
    }

    /** The table with a column understood differently, where the call agreed; else asks. */
    private Optional<Block> reconsidered(Block block, ColumnPlan plan, RowReader rows) {
        final Optional<UnitSuspicion.Suspect> unit = new UnitSuspicion(header).find(plan, rows.points());
        if (unit.isPresent()) {
            return otherUnit(block, unit.get());
        }
        if (plan.columns(ColumnRole.APPLIED).size() != 1 || plan.columns(ColumnRole.INDICATED).size() != 1) {
            return Optional.empty();
        }
        if (SwapCheck.onPoints(rows.points(), header)) {
            return exchanged(block, plan,
                "every output stands exactly on a point of the grid and the inputs do"
                + " not: the value that was set looks to be written under output");
        }
        return exchanged(block, rows.points()).filter(e -> SwapCheck.reciprocal(rows.points(), e, header))
            .flatMap(e -> exchanged(block, plan, String.format(Locale.ROOT, "as they stand the readings miss"
                + " the characteristic by %.0f %% of span (root mean square), exchanged by %.1f %%",
                SwapCheck.rms(rows.points(), header), SwapCheck.rms(e, header))));
    }

    /** The readings as they would be with the columns exchanged, if these can be exchanged at all. */
    private Optional<List<Point>> exchanged(Block block, List<Point> points) {
        if (SwapCheck.rms(points, header) <= SwapCheck.WRONG) {
            return Optional.empty();
        }
        final Block other = block.withColumns(SwappedUnits.exchanged(block));
        final List<RecordFinding> ignored = new ArrayList<>();
        return ColumnPlan.of(other, header, grid, settings, ignored).map(plan -> {
            final RowReader rows = new RowReader(grid, other, plan, decimal, new DateText(Optional.empty(),
                Optional.empty()), ignored);
            rows.read();
            return rows.points();
        });
    }

    private Optional<Block> otherUnit(Block block, UnitSuspicion.Suspect s) {
        final CellAddress at = grid.at(block.head(), s.column().index());
        final String head = s.column().head();
        if (settings.accepts(s.fault())) {
            findings.add(RecordFinding.of(Fault.ANSWERED, at, head, "column \"" + head + "\" read in "
                + s.unit()
                + " instead of " + s.said() + ", as told in the call"));
            final String[] unit = ColumnHead.across(s.unit());
            return Optional.of(block.withColumns(block.columns().stream().map(c ->
                c.index() == s.column().index() ? c.withUnit(unit[0], unit[1]) : c).toList()));
        }
        findings.add(RecordFinding.question(s.fault(), at, head, "the numbers of column \"" + head
            + "\" do not fit "
            + s.said() + ", but all fit " + s.unit(), "read the column in " + s.unit()));
        return Optional.empty();
    }

    private Optional<Block> exchanged(Block block, ColumnPlan plan, String why) {
        final ColumnMeaning applied = plan.columns(ColumnRole.APPLIED).get(0);
        final CellAddress at = grid.at(block.head(), applied.index());
        final boolean already = findings.stream().anyMatch(f -> f.fault() == Fault.ANSWERED
            && f.cell().equals(at));
        if (settings.accepts(Fault.COLUMNS_SWAPPED) && !already) {
            findings.add(RecordFinding.of(Fault.ANSWERED, at, applied.head(),
                "input and output columns exchanged, as"
                + " told in the call"));
            return Optional.of(block.withColumns(SwappedUnits.exchanged(block)));
        }
        if (!already) {
            findings.add(RecordFinding.question(Fault.COLUMNS_SWAPPED, at, applied.head(), why,
                "exchange the two columns"));
        }
        return Optional.empty();
    }
}
