package spanwright.verdict;

import java.util.Objects;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.DegreesOfFreedom;

/**
 * Normally distributed true errors, biased or not, whole or truncated.
 *
 * @param mean       mean of the untruncated population
 * @param sd         its standard deviation, above 0
 * @param truncation the errors that occur at all, where others were sorted out before; absent for all
 * @param basis      what the figures rest on, in words
 */
public record NormalPrior(double mean, double sd, Optional<ToleranceInterval> truncation, String basis)
    implements Prior {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
    private static final double SMALLEST_SPREAD = 1e-8;
    private static final double LARGEST_SPREAD = 1e7;
    private static final double SMALLEST_PROPORTION = 1e-6;

    /** Checks the components. */
    public NormalPrior {
        Checks.finite("mean of the population", mean);
        Checks.positive("standard deviation of the population", sd);
        Objects.requireNonNull(truncation, "truncation");
        Checks.notBlank("basis of the population", basis);
        if (truncation.isPresent() && !(Conformance.probability(mean, sd,
            DegreesOfFreedom.UNLIMITED, truncation.get()) > 1e-12)) {
            throw new IllegalArgumentException("truncation to " + truncation.get()
                + " leaves nothing of a normal"
                + " population with mean " + mean + " and standard deviation " + sd);
        }
    }

    /** A population whose mean and spread of true errors are given. */
    public static NormalPrior of(double mean, double sd, String basis) {
        return new NormalPrior(mean, sd, Optional.empty(), basis);
    }

    /**
     * The centred population of which a proportion of the true errors lies inside a limit.
     *
     * @param proportion true in-tolerance proportion, in (1e-6, 1); in (0.5, 1) for a one-sided limit
     * @param limit      the limit it refers to; centred on its middle, or on 0 if one-sided
     * @throws IllegalArgumentException if the proportion is out of range or no spread gives it
     */
    public static NormalPrior ofTrueReliability(double proportion, ToleranceInterval limit) {
        return ofTrueReliability(proportion, limit, middle(limit));
    }

    /**
     * The population of a given mean of which a proportion of the true errors lies inside a limit.
     *
     * @param mean mean of the population, inside the limit
     * @throws IllegalArgumentException if the mean lies outside, the proportion is out of range, or no spread
     *                                  gives it
     */
    public static NormalPrior ofTrueReliability(double proportion, ToleranceInterval limit, double mean) {
        return of(mean, spread(proportion, limit, mean), "true in-tolerance proportion "
            + percent(proportion) + " of " + limit);
    }

    /**
     * The population of a given mean of which a proportion was observed inside a limit: the variance of the
     * measurement is taken out.
     *
     * @param proportion observed in-tolerance proportion, by the limit itself without guard band
     * @param u          standard uncertainty of those measurements, above 0
     * @throws IllegalArgumentException as for {@link #ofTrueReliability(double, ToleranceInterval, double)},
     *     or if the measurement alone explains the observed spread
     */
    public static NormalPrior ofObservedReliability(double proportion, ToleranceInterval limit, double mean,
                                                    double u) {
        final double observed = spread(proportion, limit, mean);
        return of(mean, withoutMeasurement(observed, u), "observed in-tolerance proportion "
            + percent(proportion) + " of " + limit + ", less the measurement's u = "
            + NumberText.uncertainty(u));
    }

    /**
     * The population behind a history of observed errors: their mean, and their variance less that of the
     * measurement.
     *
     * @param observed at least 10 observed errors; not modified
     * @param u        standard uncertainty of each, at least 0
     * @throws IllegalArgumentException if there are fewer, one is not finite, or the measurement alone
     *     explains their spread
     */
    public static NormalPrior ofHistory(double[] observed, double u) {
        final double[] x = Checks.finiteAll("observed errors", observed, 10);
        final double mean = Moments.mean(x);
        return of(mean, withoutMeasurement(Math.sqrt(Moments.variance(x)), u), x.length
            + " observed errors, less the measurement's u = " + NumberText.uncertainty(u));
    }

    /** This population without the errors outside an interval. */
    public NormalPrior truncatedTo(ToleranceInterval interval) {
        return new NormalPrior(mean, sd, Optional.of(interval), basis);
    }

    /** Standard deviation of true errors from that of observed ones; refuses if nothing is left. */
    static double withoutMeasurement(double observedSd, double u) {
        Checks.notNegative("standard uncertainty of the observations", u);
        if (observedSd > u) {
            return Math.sqrt((observedSd - u) * (observedSd + u));
        }
        throw new IllegalArgumentException("observed standard deviation " + observedSd + " is not above the"
            + " measurement's u = " + u + ": the spread of the true errors is not determined");
    }

    private static double spread(double proportion, ToleranceInterval limit, double mean) {
        Checks.inside("in-tolerance proportion", proportion,
            limit.isTwoSided() ? SMALLEST_PROPORTION : 0.5, 1);
        final double room = limit.room(mean);
        if (!(room > 0)) {
            throw new IllegalArgumentException("mean " + mean + " lies outside " + limit
                + ": no spread is to be had from an in-tolerance proportion");
        }
        if (!limit.isTwoSided()) {
            return room / STANDARD.inverseSurvivalProbability(1 - proportion);
        }
        // In units of the room and of the logarithm the spread is found as well when it is tiny as when huge.
        final double lower = (limit.lower().getAsDouble() - mean) / room;
        final double upper = (limit.upper().getAsDouble() - mean) / room;
        final double largest = LARGEST_SPREAD * Math.max(-lower, upper);
        final double log = new BracketingNthOrderBrentSolver(1e-15, 1e-14, 1e-16, 5).solve(500,
            s -> outside(lower, upper, Math.exp(s)) - (1 - proportion),
            Math.log(SMALLEST_SPREAD), Math.log(largest));
        return room * Math.exp(log);
    }

    private static double outside(double lower, double upper, double sd) {
        return STANDARD.cumulativeProbability(lower / sd) + STANDARD.survivalProbability(upper / sd);
    }

    private static double middle(ToleranceInterval limit) {
        return limit.isTwoSided() ? (limit.lower().getAsDouble() + limit.upper().getAsDouble()) / 2 : 0;
    }

    private static String percent(double proportion) {
        return NumberText.plain(100 * proportion, 4) + " %";
    }

    @Override
    public double probabilityWithin(ToleranceInterval interval) {
        return new RiskIntegral(interval, Acceptance.guarded(interval, 0, 0), sd).ofNormal(this).within();
    }

    @Override
    public String sentence() {
        return "Normal population, in the unit of the limit: mean " + NumberText.plain(mean, 3)
            + ", standard deviation "
            + NumberText.plain(sd, 3) + truncation.map(t -> ", truncated to " + t).orElse("") + ", from "
            + basis + ".";
    }

    @Override
    public String toString() {
        return sentence();
    }
}
