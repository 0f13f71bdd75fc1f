package spanwright.uncertainty;

import java.util.Arrays;
import java.util.List;

/**
 * Draws all inputs of a model for a block of trials: independent ones each by its sampler, correlated ones
 * together.
 */
final class InputBlocks {
    private final List<InputQuantity> inputs;
    private final CorrelationMatrix matrix;
    private final BlockSampler[] samplers;
    private final List<double[]> axes;

    InputBlocks(MeasurementModel model) {
        this.inputs = model.inputs();
        this.matrix = model.matrix();
        this.samplers = new BlockSampler[inputs.size()];
        for (int i = 0; i < samplers.length; i++) {
            samplers[i] = BlockSampler.of(inputs.get(i).distribution());
        }
        this.axes = matrix.isIndependent() ? List.of() : matrix.axes();
    }

    int size() {
        return samplers.length;
    }

    /** Fills the first n values of every input. */
    void fill(RandomStream random, double[][] out, int n) {
        for (int i = 0; i < samplers.length; i++) {
            if (!matrix.isCorrelated(i)) {
                samplers[i].fill(random, out[i], n);
            }
        }
        if (!matrix.isIndependent()) {
            fillCorrelated(random, out, n);
        }
    }

    /** Gaussian copula (JCGM 101:2008, 6.4.8.4 for normal inputs). */
    private void fillCorrelated(RandomStream random, double[][] out, int n) {
        for (int i = 0; i < samplers.length; i++) {
            if (matrix.isCorrelated(i)) {
                Arrays.fill(out[i], 0, n, 0);
            }
        }
        final double[] z = new double[n];
        final BlockSampler standard = BlockSampler.of(new Normal(0, 1));
        for (final double[] axis : axes) {
            standard.fill(random, z, n);
            for (int i = 0; i < samplers.length; i++) {
                if (matrix.isCorrelated(i) && axis[i] != 0) {
                    for (int t = 0; t < n; t++) {
                        out[i][t] += axis[i] * z[t];
                    }
                }
            }
        }
        for (int i = 0; i < samplers.length; i++) {
            if (matrix.isCorrelated(i)) {
                toDistribution(inputs.get(i).distribution(), out[i], n);
            }
        }
    }

    private static void toDistribution(Distribution distribution, double[] z, int n) {
        if (distribution instanceof Normal normal) {
            for (int t = 0; t < n; t++) {
                z[t] = normal.mean() + normal.standardUncertainty() * z[t];
            }
            return;
        }
        for (int t = 0; t < n; t++) {
            final double p = Normal.standardCumulative(z[t]);
            z[t] = distribution.quantile(Math.min(Math.max(p, Double.MIN_NORMAL), 1 - 0x1.0p-53));
        }
    }
}
