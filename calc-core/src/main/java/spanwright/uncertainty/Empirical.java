package spanwright.uncertainty;

import java.util.Arrays;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The distribution of recorded values, each equally likely: a year of hourly temperatures. The standard
 * uncertainty is that of one value drawn from the record (divisor n), not of their mean.
 */
public final class Empirical implements Distribution {
    private final double[] sorted;
    private final double mean;
    private final double u;

    private Empirical(double[] sorted) {
        this.sorted = sorted;
        double shift = 0;
        for (final double v : sorted) {
            shift += (v - sorted[0]) / sorted.length;
        }
        this.mean = sorted[0] + shift;
        double variance = 0;
        for (final double v : sorted) {
            variance += (v - mean) * (v - mean) / sorted.length;
        }
        this.u = Math.sqrt(variance);
    }

    /**
     * The distribution of these values.
     *
     * @param values at least 2, in any order; not modified
     * @throws IllegalArgumentException if there are fewer than 2, or one is not finite
     */
    public static Empirical of(double... values) {
        final double[] copy = Checks.finiteAll("values", values, 2);
        Arrays.sort(copy);
        return new Empirical(copy);
    }

    /** How many values there are. */
    public int size() {
        return sorted.length;
    }

    /** The value of a rank, 0 the smallest. */
    public double ranked(int rank) {
        return sorted[rank];
    }

    @Override
    public double mean() {
        return mean;
    }

    @Override
    public double standardUncertainty() {
        return u;
    }

    /** The smallest recorded value that at least the fraction p of the values do not exceed. */
    @Override
    public double quantile(double p) {
        Checks.inside("p", p, 0, 1);
        return sorted[Math.max(0, (int) Math.ceil(p * sorted.length) - 1)];
    }

    @Override
    public double cumulative(double x) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            final int middle = (low + high) >>> 1;
            if (sorted[middle] <= x) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return (double) low / sorted.length;
    }

    @Override
    public String kind() {
        return "empirical";
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Empirical e && Arrays.equals(e.sorted, sorted);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(sorted);
    }

    @Override
    public String toString() {
        return "Empirical[" + sorted.length + " values, mean " + NumberText.significant(mean, 4)
            + ", standard deviation " + NumberText.uncertainty(u) + "]";
    }
}
