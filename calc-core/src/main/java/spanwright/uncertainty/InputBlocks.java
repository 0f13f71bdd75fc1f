package spanwright.uncertainty;

import java.util.Arrays;
import java.util.List;

/**
 * Draws all inputs of a model for a block of trials: independent ones each by itself, correlated ones
 * together.
 */
final class InputBlocks {
    private static final Distribution STANDARD = new Normal(0, 1);

    private final List<InputQuantity> inputs;
    private final CorrelationMatrix matrix;
    private final BlockSampler[] samplers;
    private final BlockSampler standard;
    private final List<double[]> axes;

    InputBlocks(MeasurementModel model, Sampling sampling) {
        this.inputs = model.inputs();
        this.matrix = model.matrix();
        this.samplers = new BlockSampler[inputs.size()];
        for (int i = 0; i < samplers.length; i++) {
            samplers[i] = sampler(inputs.get(i).distribution(), sampling);
        }
        this.standard = sampler(STANDARD, sampling);
        this.axes = matrix.isIndependent() ? List.of() : GaussianCopula.axes(inputs, matrix);
    }

    private static BlockSampler sampler(Distribution distribution, Sampling sampling) {
        if (sampling == Sampling.RANDOM) {
            return BlockSampler.of(distribution);
        }
        return (random, out, n) -> Strata.fillQuantiles(random, out, n, distribution);
    }

    int size() {
        return samplers.length;
    }

    /** Fills the first n values of every input. */
    void fill(RandomStream random, double[][] out, int n) {
        if (matrix.isIndependent()) {
            for (int i = 0; i < samplers.length; i++) {
                samplers[i].fill(random, out[i], n);
            }
            return;
        }
        for (int i = 0; i < samplers.length; i++) {
            if (matrix.isCorrelated(i)) {
                Arrays.fill(out[i], 0, n, 0);
            } else {
                samplers[i].fill(random, out[i], n);
            }
        }
        fillCorrelated(random, out, n);
    }

    private void fillCorrelated(RandomStream random, double[][] out, int n) {
        final double[] z = new double[n];
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
                final Distribution distribution = inputs.get(i).distribution();
                for (int t = 0; t < n; t++) {
                    out[i][t] = GaussianCopula.quantileOfNormal(distribution, out[i][t]);
                }
            }
        }
    }
}
