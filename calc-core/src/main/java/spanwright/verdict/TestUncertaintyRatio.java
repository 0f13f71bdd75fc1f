package spanwright.verdict;

import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Width of the tolerance over twice the 95 % expanded uncertainty of the whole calibration process, with the
 * resolution and repeatability of the unit under test. Not to be mistaken for {@link TestAccuracyRatio}.
 *
 * @param value the ratio, above 0
 */
public record TestUncertaintyRatio(double value) implements Comparable<TestUncertaintyRatio> {
    /** Checks the component. */
    public TestUncertaintyRatio {
        Checks.positive("test uncertainty ratio", value);
    }

    /**
     * The ratio of a two-sided limit and an uncertainty; absent for a one-sided limit, where there is none.
     */
    public static Optional<TestUncertaintyRatio> of(ToleranceInterval limit,
                                                              MeasurementUncertainty uncertainty) {
        final OptionalDouble half = limit.halfWidth();
        return half.isEmpty() ? Optional.empty()
            : Optional.of(new TestUncertaintyRatio(half.getAsDouble() / uncertainty.expanded()));
    }

    @Override
    public int compareTo(TestUncertaintyRatio other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return NumberText.plain(value, 3) + " : 1 (test uncertainty ratio)";
    }
}
