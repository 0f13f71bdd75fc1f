package spanwright.uncertainty;

import java.util.Arrays;
import org.apache.commons.rng.sampling.distribution.TSampler;

/** Draws a distribution for many trials at once. */
@FunctionalInterface
interface BlockSampler {
    /** Fills {@code out[0..n)} with independent draws. */
    void fill(RandomStream random, double[] out, int n);

    /** The sampler of a distribution. */
    static BlockSampler of(Distribution distribution) {
        if (distribution instanceof Rectangular d) {
            return (random, out, n) -> random.fillUniform(out, n, d.mean(), (d.upper() - d.lower()) / 2);
        }
        if (distribution instanceof Normal d) {
            return (random, out, n) -> Ziggurat.fill(random, out, n, d.mean(), d.standardUncertainty());
        }
        if (distribution instanceof Constant d) {
            return (random, out, n) -> Arrays.fill(out, 0, n, d.mean());
        }
        if (distribution instanceof ScaledT d) {
            return (random, out, n) -> student(random, out, n, d);
        }
        if (distribution instanceof LogNormal d) {
            return (random, out, n) -> logNormal(random, out, n, d);
        }
        if (distribution instanceof Empirical d) {
            return (random, out, n) -> empirical(random, out, n, d);
        }
        return bounded(distribution);
    }

    private static BlockSampler bounded(Distribution distribution) {
        if (distribution instanceof Triangular d) {
            final double half = (d.upper() - d.lower()) / 2;
            return (random, out, n) -> sumOfTwo(random, out, n, new double[] {d.lower(), half, half});
        }
        if (distribution instanceof Trapezoidal d) {
            final double half = (d.upper() - d.lower()) / 2;
            final double[] parts = {d.lower(), half * (1 + d.beta()), half * (1 - d.beta())};
            return (random, out, n) -> sumOfTwo(random, out, n, parts);
        }
        if (distribution instanceof CurvilinearTrapezoid d) {
            return (random, out, n) -> curvilinear(random, out, n, d);
        }
        final UShaped d = (UShaped) distribution;
        final double half = (d.upper() - d.lower()) / 2;
        return (random, out, n) -> uShaped(random, out, n, new double[] {d.mean(), half});
    }

    private static void student(RandomStream random, double[] out, int n, ScaledT d) {
        final TSampler standard = TSampler.of(random, d.count());
        for (int t = 0; t < n; t++) {
            out[t] = d.mean() + d.scale() * standard.sample();
        }
    }

    private static void logNormal(RandomStream random, double[] out, int n, LogNormal d) {
        Ziggurat.fill(random, out, n, d.logMean(), d.logU());
        for (int t = 0; t < n; t++) {
            out[t] = Math.exp(out[t]);
        }
    }

    private static void empirical(RandomStream random, double[] out, int n, Empirical d) {
        for (int t = 0; t < n; t++) {
            out[t] = d.ranked(random.nextInt(d.size()));
        }
    }

    /**
     * Sum of two rectangular draws: parts are the lower limit and the two widths (JCGM 101:2008, 6.4.4.4).
     */
    private static void sumOfTwo(RandomStream random, double[] out, int n, double[] parts) {
        for (int t = 0; t < n; t++) {
            out[t] = parts[0] + parts[1] * random.nextDouble() + parts[2] * random.nextDouble();
        }
    }

    /** JCGM 101:2008, 6.4.3.4. */
    private static void curvilinear(RandomStream random, double[] out, int n, CurvilinearTrapezoid d) {
        for (int t = 0; t < n; t++) {
            final double lower = d.lower() - d.inexact() + 2 * d.inexact() * random.nextDouble();
            final double upper = d.lower() + d.upper() - lower;
            out[t] = lower + (upper - lower) * random.nextDouble();
        }
    }

    /** JCGM 101:2008, 6.4.6.4: parts are the centre and the half-width. */
    private static void uShaped(RandomStream random, double[] out, int n, double[] parts) {
        for (int t = 0; t < n; t++) {
            out[t] = parts[0] + parts[1] * Math.sin(2 * Math.PI * random.nextDouble());
        }
    }
}
