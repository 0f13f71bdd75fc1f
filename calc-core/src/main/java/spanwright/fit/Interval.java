package spanwright.fit;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/**
 * A closed interval of values, in the unit of the quantity it is stated for.
 *
 * @param lower lower end
 * @param upper upper end, not below {@code lower}
 */
public record Interval(double lower, double upper) {
    /** Checks the components. */
    public Interval {
        Checks.finite("lower end", lower);
        Checks.finite("upper end", upper);
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("lower end " + lower + " is above upper end " + upper);
        }
    }

    /**
     * The interval about an estimate that covers it with a probability, by Student's t.
     *
     * @param coverage in the open interval (0, 1)
     */
    public static Interval about(Estimate estimate, double coverage) {
        return StudentT.about(estimate, coverage);
    }

    /** Whether a value lies in the interval, ends included. */
    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }

    /** Half the distance between the ends. */
    public double halfWidth() {
        return (upper - lower) / 2;
    }

    @Override
    public String toString() {
        final int decimals = NumberText.decimalsFor(halfWidth());
        return "[" + NumberText.fixed(lower, decimals) + ", " + NumberText.fixed(upper, decimals) + "]";
    }
}
