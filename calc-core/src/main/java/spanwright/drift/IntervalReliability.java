package spanwright.drift;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Share of instruments that are found within tolerance at the end of their interval.
 *
 * @param share in the open interval (0, 1)
 */
public record IntervalReliability(double share) {
    /** Checks the component. */
    public IntervalReliability {
        Checks.inside("reliability", share, 0, 1);
    }

    /** The reliability as a person writes it in a cell, in percent. */
    public static IntervalReliability ofPercent(double percent) {
        return new IntervalReliability(percent / 100);
    }

    /**
     * How many instruments must be found within tolerance, none outside, to show at least this reliability:
     * {@code n >= ln(1 - C) / ln(R)}, the smallest whole n. They must be drawn independently from one
     * population.
     *
     * @param confidence C, in the open interval (0, 1)
     */
    public int failureFreeSample(double confidence) {
        return (int) Math.ceil(exactFailureFreeSample(confidence));
    }

    /** The bound that {@link #failureFreeSample} rounds up. */
    double exactFailureFreeSample(double confidence) {
        Checks.inside("confidence", confidence, 0, 1);
        return Math.log1p(-confidence) / Math.log(share);
    }

    /**
     * The interval at whose end this reliability is expected, from what was observed at the end of another:
     * {@code t ln(R_target) / ln(R_observed)}. It takes for granted that instruments leave their tolerance at
     * a constant rate, and that the observed share is well known; a few calibrations do not tell it.
     *
     * @param interval the interval that was used, above 0, in any unit of time; the answer is in the same
     * @param observed share found within tolerance at its end
     */
    public double intervalFrom(double interval, IntervalReliability observed) {
        Checks.positive("interval", interval);
        return interval * (Math.log(share) / Math.log(Objects.requireNonNull(observed, "observed").share()));
    }

    @Override
    public String toString() {
        return NumberText.plain(100 * share, 4) + " % within tolerance at the end of the interval";
    }
}
