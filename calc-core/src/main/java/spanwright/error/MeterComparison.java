package spanwright.error;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;

/**
 * Set-ups side by side: which of my meters will do for this tolerance?
 *
 * @param tolerance   half width of the tolerance
 * @param leastRatio  ratio of tolerance to expanded uncertainty that is asked for at every point
 * @param rows        one for each set-up, the best first
 */
public record MeterComparison(PercentOfSpan tolerance, double leastRatio, List<Row> rows) {
    /**
     * One set-up.
     *
     * @param meter    the set-up
     * @param readings its readings, in the order of the points
     * @param ratio    tolerance by expanded uncertainty at the worst of the points
     * @param willDo   whether the ratio is reached
     */
    public record Row(CurrentMeter meter, List<MeterReading> readings, double ratio, boolean willDo) {
        /** Checks the components and copies the list. */
        public Row {
            Objects.requireNonNull(meter, "meter");
            readings = List.copyOf(readings);
            Checks.notNegative("ratio", ratio);
        }
    }

    /** Checks the components and copies the list. */
    public MeterComparison {
        Objects.requireNonNull(tolerance, "tolerance");
        Checks.positive("least ratio", leastRatio);
        rows = List.copyOf(rows);
    }

    /**
     * Compares set-ups at the lower, middle and upper value of a range.
     *
     * @param meters     at least one
     * @param output     range of the current, mA
     * @param ambient    temperature at the meter and the resistor
     * @param tolerance  half width of the tolerance
     * @param leastRatio ratio asked for, often 4
     * @throws IllegalArgumentException if there is no set-up, or the range goes beyond that of a meter
     */
    public static MeterComparison of(List<? extends CurrentMeter> meters, Span output, Celsius ambient,
                                     PercentOfSpan tolerance, double leastRatio) {
        Checks.atLeast("number of set-ups", meters.size(), 1);
        final List<Row> rows = new ArrayList<>();
        for (CurrentMeter meter : meters) {
            final List<MeterReading> readings = List.of(0.0, 50.0, 100.0).stream()
                .map(p -> meter.at(output.valueAt(p), ambient, output)).toList();
            final double ratio = readings.stream().mapToDouble(r -> r.ratioTo(tolerance)).min().orElseThrow();
            rows.add(new Row(meter, readings, ratio, ratio >= leastRatio));
        }
        rows.sort(Comparator.comparingDouble(Row::ratio).reversed());
        return new MeterComparison(tolerance, leastRatio, rows);
    }

    /** The set-ups that will do, the best first. */
    public List<CurrentMeter> willDo() {
        return rows.stream().filter(Row::willDo).<CurrentMeter>map(Row::meter).toList();
    }

    @Override
    public String toString() {
        final String who = willDo().isEmpty() ? "none will do" : willDo().stream().map(CurrentMeter::name)
            .collect(Collectors.joining(", ")) + " will do";
        return "For a tolerance of \u00b1" + tolerance + " and a ratio of " + NumberText.plain(leastRatio, 3)
            + ": "
            + who + rows.stream().map(r -> "\n" + r.meter().name() + ": " + r.readings().stream()
                .map(m -> NumberText.uncertainty(m.expandedOfSpan().value()))
                .collect(Collectors.joining(" / "))
                + " % of span at " + r.readings().stream().map(m -> NumberText.plain(m.milliamps(), 4))
                .collect(Collectors.joining(" / ")) + " mA; ratio " + NumberText.fixed(r.ratio(), 1))
                .collect(Collectors.joining());
    }
}
