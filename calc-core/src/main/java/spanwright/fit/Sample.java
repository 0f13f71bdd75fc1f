package spanwright.fit;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/**
 * Repeated readings of one thing: their number, mean and experimental standard deviation.
 *
 * <p>Source: JCGM 100:2008 (GUM), 4.2.
 *
 * @param count number of readings, at least 2
 * @param mean  arithmetic mean
 * @param sd    experimental standard deviation, with {@code count - 1} degrees of freedom
 */
public record Sample(int count, double mean, double sd) {
    /** Checks the components. */
    public Sample {
        Checks.atLeast("count", count, 2);
        Checks.finite("mean", mean);
        Checks.notNegative("standard deviation", sd);
    }

    /**
     * The sample of some readings.
     *
     * @param values at least 2 readings; not modified
     * @throws IllegalArgumentException if there are fewer than 2, or one is not finite
     */
    public static Sample of(double... values) {
        final double[] v = Checks.finiteAll("readings", values, 2);
        final double mean = Sums.mean(v);
        return new Sample(v.length, mean, Math.sqrt(Sums.ofProducts(v, mean, v, mean) / (v.length - 1)));
    }

    /** The mean with its standard uncertainty, sd / sqrt(count) (GUM 4.2.3). */
    public Estimate meanEstimate() {
        return Estimate.of(mean, sd / Math.sqrt(count), count - 1);
    }

    /**
     * Relative standard uncertainty of {@code sd} itself, 1 / sqrt(2 (count - 1)), for normally distributed
     * readings (GUM E.4.3): 24 % with ten readings.
     */
    public double relativeUncertaintyOfSd() {
        return 1 / Math.sqrt(2.0 * (count - 1));
    }

    /**
     * Lag-1 autocorrelation of a series of readings in the order taken; near 0 where they are independent.
     *
     * @param values at least 2 readings, not all equal; not modified
     * @throws IllegalArgumentException if there are fewer than 2, one is not finite, or all are equal
     */
    public static double lag1Autocorrelation(double... values) {
        final double[] v = Checks.finiteAll("readings", Objects.requireNonNull(values, "values"), 2);
        final double mean = Sums.mean(v);
        final double all = Sums.ofProducts(v, mean, v, mean);
        if (all == 0) {
            throw new IllegalArgumentException("all readings equal " + v[0] + ": no autocorrelation");
        }
        double lagged = 0;
        for (int i = 1; i < v.length; i++) {
            lagged += (v[i] - mean) * (v[i - 1] - mean);
        }
        return lagged / all;
    }

    @Override
    public String toString() {
        final int decimals = NumberText.decimalsFor(sd);
        return "mean " + NumberText.fixed(mean, decimals) + ", standard deviation "
            + NumberText.fixed(sd, decimals) + " (" + count + " readings)";
    }
}
