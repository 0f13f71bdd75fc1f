package spanwright.fit;

import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import spanwright.quantity.Checks;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/** Student's t factor of an interval, and the interval about an estimate. */
final class StudentT {
    private StudentT() { }

    /**
     * The factor t such that a fraction {@code coverage} of the distribution lies within plus and minus t.
     *
     * @param coverage in the open interval (0, 1)
     */
    static double factor(double coverage, DegreesOfFreedom dof) {
        Checks.inside("coverage", coverage, 0, 1);
        final ContinuousDistribution d = dof.isUnlimited() ? NormalDistribution.of(0, 1)
            : TDistribution.of(dof.count());
        final double tail = (1 - coverage) / 2;
        final double t = d.inverseSurvivalProbability(tail);
        // The library's root search ends at about 1e-9; one Newton step takes that to rounding.
        final double density = d.density(t);
        return density > 0 ? t + (d.survivalProbability(t) - tail) / density : t;
    }

    static Interval about(Estimate e, double coverage) {
        final double half = factor(coverage, e.dof()) * e.u();
        return new Interval(e.value() - half, e.value() + half);
    }
}
