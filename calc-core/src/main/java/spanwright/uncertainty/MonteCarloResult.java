package spanwright.uncertainty;

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
    private final long seed;
    private final double mean;
    private final double u;
    private final double[] sorted;

    private MonteCarloResult(MeasurementModel model, long seed, double mean, double u, double[] sorted) {
        this.measurand = model.measurand();
        this.unit = model.unit();
        this.seed = seed;
        this.mean = mean;
        this.u = u;
        this.sorted = sorted;
    }

    static MonteCarloResult of(MeasurementModel model, long seed, double[] sorted) {
        final double reference = sorted[sorted.length / 2];
        double shift = 0;
        for (final double y : sorted) {
            shift += (y - reference) / sorted.length;
        }
        final double mean = reference + shift;
        double squares = 0;
        for (final double y : sorted) {
            squares += (y - mean) * (y - mean);
        }
        return new MonteCarloResult(model, seed, mean, Math.sqrt(squares / (sorted.length - 1)), sorted);
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
        return sorted.length;
    }

    /** The seed: with the model, it repeats the run. */
    public long seed() {
        return seed;
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
        final long rank = (long) Math.ceil(p * sorted.length);
        return sorted[(int) Math.min(Math.max(rank, 1), sorted.length) - 1];
    }

    /**
     * Standard error of a quantile from the number of trials: half the distance of the quantiles one
     * binomial standard
     * deviation of rank on either side.
     */
    public double quantileError(double p) {
        Checks.inside("p", p, 0, 1);
        final double step = Math.sqrt(p * (1 - p) / trials());
        final double least = 0.5 / trials();
        final double upper = quantile(Math.min(p + step, 1 - least));
        final double lower = quantile(Math.max(p - step, least));
        return (upper - lower) / 2;
    }

    /** Probabilistically symmetric coverage interval (JCGM 101:2008, 5.3.3). */
    public CoverageInterval interval(double probability) {
        Checks.inside("coverage probability", probability, 0, 1);
        return between((1 - probability) / 2, probability, CoverageInterval.Kind.SYMMETRIC);
    }

    /** Shortest coverage interval (JCGM 101:2008, 5.3.4 and 7.7.4). */
    public CoverageInterval shortest(double probability) {
        Checks.inside("coverage probability", probability, 0, 1);
        final int covered = (int) Math.ceil(probability * sorted.length);
        int best = 0;
        for (int i = 0; i + covered < sorted.length; i++) {
            if (sorted[i + covered] - sorted[i] < sorted[best + covered] - sorted[best]) {
                best = i;
            }
        }
        final double below = Math.max((best + 1.0) / sorted.length, 0.5 / sorted.length);
        return between(Math.min(below, 1 - probability), probability, CoverageInterval.Kind.SHORTEST);
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
            + " trials, seed " + seed;
    }
}
