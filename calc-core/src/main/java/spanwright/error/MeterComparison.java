package spanwright.error;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;

/**
 * Set-ups side by side: which of my meters will do for this tolerance?
 *
 * @param output      range of the current, mA
 * @param ambient     temperature at the meters and the resistors
 * @param tolerance   half width of the tolerance
 * @param leastRatio  ratio of tolerance to expanded uncertainty that is asked for at every point
 * @param rows        one for each set-up that can read all the points, the best first
 * @param unfit       those that cannot, with the reason
 */
public record MeterComparison(Span output, Celsius ambient, PercentOfSpan tolerance, double leastRatio,
                              List<Row> rows, List<Unfit> unfit) {
    private static final List<Double> ENDS_AND_MIDDLE = List.of(0.0, 50.0, 100.0);

    /**
     * A set-up that cannot read a point.
     *
     * @param meter  the set-up
     * @param reason why not
     */
    public record Unfit(CurrentMeter meter, String reason) {
        /** Checks the components. */
        public Unfit {
            Objects.requireNonNull(meter, "meter");
            Checks.notBlank("reason", reason);
        }
    }

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

    /** Checks the components and copies the lists. */
    public MeterComparison {
        Objects.requireNonNull(output, "output");
        Objects.requireNonNull(ambient, "ambient");
        Objects.requireNonNull(tolerance, "tolerance");
        Checks.positive("least ratio", leastRatio);
        rows = List.copyOf(rows);
        unfit = List.copyOf(unfit);
    }

    /**
     * Compares set-ups at the lower, middle and upper value of a range.
     *
     * @param meters     at least one
     * @param output     range of the current, mA
     * @param ambient    temperature at the meter and the resistor
     * @param tolerance  half width of the tolerance
     * @param leastRatio ratio asked for, often 4
     * @throws IllegalArgumentException if there is no set-up, or the range is not in mA
     */
    public static MeterComparison of(List<? extends CurrentMeter> meters, Span output, Celsius ambient,
                                     PercentOfSpan tolerance, double leastRatio) {
        return of(meters, output, ambient, tolerance, leastRatio, ENDS_AND_MIDDLE);
    }

    /**
     * Compares set-ups at the points of a calibration; otherwise as the other.
     *
     * @param percent the points, percent of the range, at least one
     */
    public static MeterComparison of(List<? extends CurrentMeter> meters, Span output, Celsius ambient,
                                     PercentOfSpan tolerance, double leastRatio, List<Double> percent) {
        Checks.atLeast("number of set-ups", meters.size(), 1);
        Checks.atLeast("number of points", percent.size(), 1);
        if (!output.symbol().equals("mA")) {
            throw new IllegalArgumentException("the range must be in mA, not in " + output.symbol());
        }
        final double[] currents = percent.stream().mapToDouble(output::valueAt).toArray();
        final List<Row> rows = new ArrayList<>();
        final List<Unfit> unfit = new ArrayList<>();
        for (CurrentMeter meter : meters) {
            final Optional<String> reason = beyond(meter, currents, ambient);
            if (reason.isPresent()) {
                unfit.add(new Unfit(meter, reason.get()));
                continue;
            }
            final List<MeterReading> readings = Arrays.stream(currents)
                .mapToObj(c -> meter.at(c, ambient, output)).toList();
            final double ratio = readings.stream().mapToDouble(r -> r.ratioTo(tolerance)).min().orElseThrow();
            rows.add(new Row(meter, readings, ratio, ratio >= leastRatio));
        }
        rows.sort(Comparator.comparingDouble(Row::ratio).reversed());
        return new MeterComparison(output, ambient, tolerance, leastRatio, rows, unfit);
    }

    /** Why a set-up cannot read one of the currents, empty if it can read them all. */
    private static Optional<String> beyond(CurrentMeter meter, double[] currents, Celsius ambient) {
        for (double c : currents) {
            try {
                meter.deviations(c, ambient);
            } catch (IllegalArgumentException e) {
                return Optional.of("at " + NumberText.plain(c, 4) + " mA " + e.getMessage());
            }
        }
        return Optional.empty();
    }

    /** The set-ups that will do, the best first. */
    public List<CurrentMeter> willDo() {
        return rows.stream().filter(Row::willDo).<CurrentMeter>map(Row::meter).toList();
    }

    /** Which of them will do, in one sentence. */
    public String sentence() {
        final String who = willDo().isEmpty() ? "none will do" : willDo().stream().map(CurrentMeter::name)
            .collect(Collectors.joining("; ")) + " will do";
        return "For a tolerance of \u00b1" + tolerance + " and a ratio of " + NumberText.plain(leastRatio, 3)
            + ": " + who;
    }

    @Override
    public String toString() {
        return sentence() + rows.stream().map(r -> "\n" + r.meter().name() + ": " + r.readings().stream()
                .map(m -> NumberText.uncertainty(m.expandedOfSpan().value()))
                .collect(Collectors.joining(" / "))
                + " % of span at " + r.readings().stream().map(m -> NumberText.plain(m.milliamps(), 4))
                .collect(Collectors.joining(" / ")) + " mA; ratio " + NumberText.fixed(r.ratio(), 1))
                .collect(Collectors.joining())
            + unfit.stream().map(u -> "\n" + u.meter().name() + " cannot read it: " + u.reason())
                .collect(Collectors.joining());
    }
}
