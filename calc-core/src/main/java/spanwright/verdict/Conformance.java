package spanwright.verdict;

import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * Conformance probability: how probable it is, after the measurement, that the true value is permissible.
 *
 * <p>The true value is taken as normal about the result, or, where the degrees of freedom are finite, as a
 * scaled and shifted t (JCGM 101:2008, 6.4.9.7, from memory). Source of the formula: JCGM 106:2012, 7.3
 * (from memory): {@code Phi((TU - y) / u) - Phi((TL - y) / u)}.
 */
public final class Conformance {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    private Conformance() { }

    /**
     * Probability that the true value lies in the interval.
     *
     * @param result the measured value with its standard uncertainty, above 0, in the unit of the interval
     * @throws IllegalArgumentException if u is 0
     */
    public static double probability(Estimate result, ToleranceInterval permissible) {
        return probability(result.value(), result.u(), result.dof(), permissible);
    }

    /**
     * Probability that the true value lies outside the interval: the specific risk of accepting this result.
     * It is added up from both tails, so that it keeps its digits where it is small.
     *
     * @throws IllegalArgumentException if u is 0
     */
    public static double risk(Estimate result, ToleranceInterval permissible) {
        return risk(result.value(), result.u(), result.dof(), permissible);
    }

    static double probability(double value, double u, DegreesOfFreedom dof, ToleranceInterval permissible) {
        final ContinuousDistribution unit = unit(u, dof);
        if (permissible.isTwoSided()) {
            return between(unit, (permissible.lower().getAsDouble() - value) / u,
                (permissible.upper().getAsDouble() - value) / u);
        }
        return permissible.upper().isPresent()
            ? unit.cumulativeProbability((permissible.upper().getAsDouble() - value) / u)
            : unit.survivalProbability((permissible.lower().getAsDouble() - value) / u);
    }

    static double risk(double value, double u, DegreesOfFreedom dof, ToleranceInterval permissible) {
        final ContinuousDistribution unit = unit(u, dof);
        double risk = 0;
        if (permissible.lower().isPresent()) {
            risk += unit.cumulativeProbability((permissible.lower().getAsDouble() - value) / u);
        }
        if (permissible.upper().isPresent()) {
            risk += unit.survivalProbability((permissible.upper().getAsDouble() - value) / u);
        }
        return risk;
    }

    /** Probability between two bounds of a distribution about 0, from the tail that is the smaller. */
    private static double between(ContinuousDistribution unit, double from, double to) {
        return from > 0 ? unit.survivalProbability(from) - unit.survivalProbability(to)
            : unit.probability(from, to);
    }

    private static ContinuousDistribution unit(double u, DegreesOfFreedom dof) {
        if (!(u > 0)) {
            throw new IllegalArgumentException("standard uncertainty is " + u
                + ": a conformance probability needs one above 0");
        }
        return dof.isUnlimited() ? STANDARD : TDistribution.of(dof.count());
    }
}
