package spanwright.uncertainty;

import org.apache.commons.statistics.distribution.TDistribution;
import spanwright.quantity.Checks;

/**
 * Student's t, scaled and shifted: the mean of a few readings, or a certificate that states its degrees of
 * freedom (JCGM 101:2008, 6.4.9). In a GUM budget it counts with {@code scale} as standard uncertainty and
 * {@code count} degrees of freedom; its standard deviation is larger, and infinite for 2 or fewer.
 *
 * @param mean  expectation; the mean of n readings
 * @param scale standard uncertainty of a GUM budget, at least 0; s / sqrt(n) of n readings
 * @param count degrees of freedom, above 0; n - 1 of n readings
 */
public record ScaledT(double mean, double scale, double count) implements Distribution {
    /** Checks the components. */
    public ScaledT {
        Checks.finite("mean", mean);
        Checks.notNegative("scale", scale);
        Checks.positive("degrees of freedom", count);
    }

    /**
     * From repeated readings: mean, s / sqrt(n) and n - 1 (JCGM 100:2008, 4.2).
     *
     * @param readings at least 2
     * @throws IllegalArgumentException if there are fewer than 2, or one is not finite
     */
    public static ScaledT ofReadings(double... readings) {
        final double[] x = Checks.finiteAll("readings", readings, 2);
        double shift = 0;
        for (final double v : x) {
            shift += (v - x[0]) / x.length;
        }
        final double mean = x[0] + shift;
        double squares = 0;
        for (final double v : x) {
            squares += (v - mean) * (v - mean);
        }
        final int dof = x.length - 1;
        return new ScaledT(mean, Math.sqrt(squares / dof / x.length), dof);
    }

    @Override
    public double standardUncertainty() {
        return scale;
    }

    @Override
    public DegreesOfFreedom dof() {
        return DegreesOfFreedom.of(count);
    }

    @Override
    public double quantile(double p) {
        Checks.inside("p", p, 0, 1);
        return mean + scale * TDistribution.of(count).inverseCumulativeProbability(p);
    }

    @Override
    public double cumulative(double x) {
        if (scale == 0) {
            return x < mean ? 0 : 1;
        }
        return TDistribution.of(count).cumulativeProbability((x - mean) / scale);
    }

    @Override
    public String kind() {
        return "t";
    }
}
