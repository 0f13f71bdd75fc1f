package spanwright.uncertainty;

/**
 * One draw of a Latin hypercube: a block of probabilities, one in each of as many equal intervals, shuffled.
 */
final class Strata {
    private Strata() { }

    /** Fills {@code out[0..n)} with probabilities in (0, 1), one from each interval of length 1 / n. */
    static void fill(RandomStream random, double[] out, int n) {
        for (int t = 0; t < n; t++) {
            out[t] = (t + inside(random)) / n;
        }
        for (int t = n - 1; t > 0; t--) {
            final int other = random.nextInt(t + 1);
            final double kept = out[t];
            out[t] = out[other];
            out[other] = kept;
        }
    }

    /** Uniform in (0, 1): the middle of one of 2^52 steps. */
    private static double inside(RandomStream random) {
        return ((random.nextLong() >>> 12) + 0.5) * 0x1.0p-52;
    }

    /** As {@link #fill}, turned into quantiles of a distribution. */
    static void fillQuantiles(RandomStream random, double[] out, int n, Distribution distribution) {
        fill(random, out, n);
        for (int t = 0; t < n; t++) {
            out[t] = distribution.quantile(Math.min(out[t], 1 - 0x1.0p-53));
        }
    }
}
