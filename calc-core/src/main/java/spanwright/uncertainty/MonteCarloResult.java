package spanwright.uncertainty;

import java.util.List;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What a Monte Carlo run found: the distribution of the measurand (JCGM 101:2008, 7.5 to 7.7).
 *
 * <p>Immutable.
 */
public final class MonteCarloResult {
    private final String measurand;
    private final String unit;
    private final MonteCarlo settings;
    private final double mean;
    private final double u;
    private final Outcomes outcomes;
    private final boolean stable;

    MonteCarloResult(MeasurementModel model, MonteCarlo settings, double[] moments, Outcomes outcomes,
                     boolean stable) {
        this.measurand = model.measurand();
        this.unit = model.unit();
        this.settings = settings;
        this.mean = moments[0];
        this.u = moments[1];
        this.outcomes = outcomes;
        this.stable = stable;
    }

    /** What is measured. */
    public String measurand() {
        return measurand;
    }

    /** Its unit; may be empty. */
    public String unit() {
        return unit;
    }

    /** Number of trials. */
    public long trials() {
        return outcomes.trials();
    }

    /** The seed: with the model, it repeats the run. */
    public long seed() {
        return settings.seed();
    }

    /** The settings of the run. */
    public MonteCarlo settings() {
        return settings;
    }

    /** The generator, for the record of a report. */
    public String generator() {
        return "xoroshiro128++, 512 side by side, 32 bits a draw, a stream for each task, "
            + "states by SplitMix64; " + settings.sampling().words();
    }

    /** What a reader must know before using the figures. */
    public List<String> warnings() {
        if (stable) {
            return List.of();
        }
        return List.of("The results were not yet stable to " + settings.stability().orElseThrow().digits()
            + " significant digits after " + trials() + " trials, the most that were allowed.");
    }

    /** Mean of the trials: the estimate of the measurand. */
    public double mean() {
        return mean;
    }

    /** Standard deviation of the trials: the standard uncertainty. */
    public double u() {
        return u;
    }

    /** Standard error of the mean from the number of trials. */
    public double meanError() {
        return u / Math.sqrt(trials());
    }

    /** Mean and standard uncertainty. */
    public Estimate estimate() {
        return Estimate.of(mean, u);
    }

    /** The value that the fraction p of the trials does not exceed; p in (0, 1). */
    public double quantile(double p) {
        Checks.inside("p", p, 0, 1);
        return outcomes.quantile(p);
    }

    /**
     * Bound of the error that counting in bins makes in a quantile: the width of its bin. It comes on top of
     * {@link #quantileError(double)}, and is the smaller of the two up to about 1e8 trials.
     */
    public double quantileBound(double p) {
        Checks.inside("p", p, 0, 1);
        return outcomes.binWidthAt(p);
    }

    /** Fraction of the trials that are at most x. */
    public double cumulative(double x) {
        return outcomes.cumulative(Checks.finite("x", x));
    }

    /** The smallest outcome, within the width of a bin. */
    public double least() {
        return outcomes.least();
    }

    /** The greatest outcome, within the width of a bin. */
    public double greatest() {
        return outcomes.greatest();
    }

    /**
     * Standard error of a quantile from the number of trials: the binomial standard deviation of its rank,
     * times the slope of the quantile function over three of these on either side.
     */
    public double quantileError(double p) {
        Checks.inside("p", p, 0, 1);
        final double deviation = Math.sqrt(p * (1 - p) / trials());
        final double least = 0.5 / trials();
        final double upper = Math.max(p, Math.min(p + 3 * deviation, 1 - least));
        final double lower = Math.min(p, Math.max(p - 3 * deviation, least));
        return deviation * (quantile(upper) - quantile(lower)) / (upper - lower);
    }

    /** Probabilistically symmetric coverage interval (JCGM 101:2008, 5.3.3). */
    public CoverageInterval interval(double probability) {
        Checks.inside("coverage probability", probability, 0, 1);
        return between((1 - probability) / 2, probability, CoverageInterval.Kind.SYMMETRIC);
    }

    /** Shortest coverage interval (JCGM 101:2008, 5.3.4 and 7.7.4). */
    public CoverageInterval shortest(double probability) {
        Checks.inside("coverage probability", probability, 0, 1);
        return between(outcomes.belowShortest(probability), probability, CoverageInterval.Kind.SHORTEST);
    }

    private CoverageInterval between(double below, double probability, CoverageInterval.Kind kind) {
        final double least = 0.5 / trials();
        final double lower = Math.max(below, least);
        final double upper = Math.min(below + probability, 1 - least);
        return new CoverageInterval(quantile(lower), quantile(upper), probability, kind, quantileError(lower),
            quantileError(upper));
    }

    @Override
    public String toString() {
        return measurand + " = " + NumberText.fixed(mean, NumberText.decimalsFor(u))
            + (unit.isEmpty() ? "" : " " + unit)
            + ", u = " + NumberText.uncertainty(u) + ", interval " + interval(0.95) + ", " + trials()
            + " trials, seed " + seed();
    }
}
