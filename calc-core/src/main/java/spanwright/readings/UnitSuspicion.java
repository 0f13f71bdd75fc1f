package spanwright.readings;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import spanwright.quantity.Span;
import spanwright.quantity.UnitConversion;

/**
 * Looks whether the numbers of a column follow the other column only in another unit than its head says:
 * volts across a resistor written as milliamperes, amperes, percent. A column is suspected when most of its
 * readings miss the ideal characteristic by more than a fifth of the span and another unit brings all of them
 * within a tenth. Nothing is changed here; the reader asks.
 */
final class UnitSuspicion {
    private static final double MISSES = 20;
    private static final double HITS = 10;
    private static final int FEWEST = 3;
    private static final List<String> UNITS = List.of("mA", "A", "uA", "V across 250 ohm", "V across 100 ohm",
        "V across 500 ohm", "V across 10 ohm", "V across 50 ohm", "mV across 10 ohm", "mV across 100 ohm",
        "mV across 250 ohm", "mV across 50 ohm", "mV across 1 ohm", "% of span");

    private final BlockHeader header;

    UnitSuspicion(BlockHeader header) {
        this.header = header;
    }

    /**
     * A suspicion.
     *
     * @param column the column
     * @param unit   the unit that fits
     * @param fault  which question this is
     */
    record Suspect(ColumnMeaning column, String unit, Fault fault) {
        String said() {
            return column.unit() + (column.ohms().isEmpty() ? "" : " across " + column.ohms() + " ohm");
        }
    }

    /** The column that is suspected, if one is: an output first. */
    Optional<Suspect> find(ColumnPlan plan, List<Point> points) {
        for (ColumnMeaning column : plan.columns()) {
            if (column.role() == ColumnRole.INDICATED) {
                final Optional<Suspect> s = suspect(plan, column, points, p -> p.indicated().value(),
                    p -> header.transfer().ideal(header.input(), header.output(), p.applied().value()),
                    header.output());
                if (s.isPresent()) {
                    return s;
                }
            }
        }
        for (ColumnMeaning column : plan.columns()) {
            if (column.role() == ColumnRole.APPLIED) {
                final Optional<Suspect> s = suspect(plan, column, points, p -> p.applied().value(),
                    p -> header.transfer().inputFor(header.input(), header.output(), p.indicated().value()),
                    header.input());
                if (s.isPresent()) {
                    return s;
                }
            }
        }
        return Optional.empty();
    }

    private Optional<Suspect> suspect(ColumnPlan plan, ColumnMeaning column, List<Point> points,
                                      ToDoubleFunction<Point> value, ToDoubleFunction<Point> ideal,
                                      Span range) {
        final Optional<UnitConversion> head = Optional.ofNullable(plan.conversions().get(column.index()));
        final List<Point> own = points.stream().filter(p -> cell(p, column).column() == column.index() + 1)
            .toList();
        if (head.isEmpty() || own.size() < FEWEST || misses(own, value, ideal, range) * 2 <= own.size()) {
            return Optional.empty();
        }
        for (String unit : UNITS) {
            final String[] parts = ColumnHead.across(unit);
            final Optional<UnitConversion> other = conversion(column, parts);
            if (other.isPresent() && !other.get().equals(head.get())
                && own.stream()
                    .allMatch(p -> percent(
                        reread(value.applyAsDouble(p), head.get(), other.get()) - ideal.applyAsDouble(p),
                        range) <= HITS)) {
                return Optional.of(new Suspect(column, unit,
                    parts[1].isEmpty() ? Fault.UNIT_MISMATCH : Fault.VOLTAGE_AS_CURRENT));
            }
        }
        return Optional.empty();
    }

    private static CellAddress cell(Point p, ColumnMeaning column) {
        return (column.role() == ColumnRole.APPLIED ? p.applied() : p.indicated()).cell();
    }

    private static long misses(List<Point> points, ToDoubleFunction<Point> value,
        ToDoubleFunction<Point> ideal,
                               Span range) {
        return points.stream().filter(p ->
            percent(value.applyAsDouble(p) - ideal.applyAsDouble(p), range) > MISSES).count();
    }

    private static double percent(double difference, Span range) {
        return Math.abs(100 * difference / range.width());
    }

    private Optional<UnitConversion> conversion(ColumnMeaning column, String[] unit) {
        try {
            return Optional.of(ColumnPlan.convert(column, unit[0], unit[1], header));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The number as written, read with another conversion. */
    private static double reread(double value, UnitConversion head, UnitConversion other) {
        final BigDecimal written = BigDecimal.valueOf(value).subtract(head.offset()).multiply(head.divisor())
            .divide(head.factor(), java.math.MathContext.DECIMAL64);
        return other.apply(written).doubleValue();
    }
}
