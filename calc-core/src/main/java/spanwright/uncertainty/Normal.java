package spanwright.uncertainty;

import org.apache.commons.statistics.distribution.NormalDistribution;
import spanwright.quantity.Checks;

/**
 * Normal distribution: a certificate's value, or the mean of many readings (JCGM 101:2008, 6.4.7).
 *
 * @param mean                expectation
 * @param standardUncertainty standard deviation, at least 0
 */
public record Normal(double mean, double standardUncertainty) implements Distribution {

    /** Made when first asked for: drawing needs none of it, and a short run should not wait for it. */
    private static final class Standard {
        static final NormalDistribution DISTRIBUTION = NormalDistribution.of(0, 1);
    }

    /** Checks the components. */
    public Normal {
        Checks.finite("mean", mean);
        Checks.notNegative("standard uncertainty", standardUncertainty);
    }

    /** Expectation 0. */
    public static Normal ofUncertainty(double standardUncertainty) {
        return new Normal(0, standardUncertainty);
    }

    /**
     * From a certificate that states an expanded uncertainty: u = U / k (JCGM 100:2008, 4.3.3).
     *
     * @param mean     the certificate's value
     * @param expanded U, at least 0
     * @param k        the coverage factor the certificate states, above 0
     */
    public static Normal ofExpanded(double mean, double expanded, double k) {
        return new Normal(mean,
            Checks.notNegative("expanded uncertainty", expanded) / Checks.positive("k", k));
    }

    @Override
    public double quantile(double p) {
        return mean + standardUncertainty * standardQuantile(p);
    }

    @Override
    public double cumulative(double x) {
        if (standardUncertainty == 0) {
            return x < mean ? 0 : 1;
        }
        return standardCumulative((x - mean) / standardUncertainty);
    }

    @Override
    public String kind() {
        return "normal";
    }

    static double standardQuantile(double p) {
        return Standard.DISTRIBUTION.inverseCumulativeProbability(Checks.inside("p", p, 0, 1));
    }

    static double standardCumulative(double z) {
        return Standard.DISTRIBUTION.cumulativeProbability(z);
    }
}
