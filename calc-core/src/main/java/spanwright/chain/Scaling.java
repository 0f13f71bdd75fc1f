package spanwright.chain;

import spanwright.uncertainty.Constant;
import spanwright.uncertainty.Distribution;
import spanwright.uncertainty.Normal;
import spanwright.uncertainty.Rectangular;
import spanwright.uncertainty.ScaledT;
import spanwright.uncertainty.Triangular;
import spanwright.uncertainty.UShaped;

/** Distributions stretched about their expectation: the kinds that error terms use. */
final class Scaling {
    private Scaling() { }

    static Distribution aboutMean(Distribution d, double factor) {
        final double mean = d.mean();
        if (d instanceof Constant) {
            return d;
        }
        if (d instanceof Normal n) {
            return new Normal(mean, n.standardUncertainty() * factor);
        }
        if (d instanceof ScaledT t) {
            return new ScaledT(mean, t.scale() * factor, t.count());
        }
        if (d instanceof Rectangular r) {
            return Rectangular.around(mean, (r.upper() - r.lower()) / 2 * factor);
        }
        if (d instanceof Triangular r) {
            final double half = (r.upper() - r.lower()) / 2 * factor;
            return new Triangular(mean - half, mean + half);
        }
        if (d instanceof UShaped r) {
            final double half = (r.upper() - r.lower()) / 2 * factor;
            return new UShaped(mean - half, mean + half);
        }
        throw new IllegalArgumentException("a " + d.kind() + " error term cannot be scaled");
    }
}
