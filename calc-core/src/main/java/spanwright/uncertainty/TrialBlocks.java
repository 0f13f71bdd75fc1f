package spanwright.uncertainty;

import java.util.StringJoiner;

/** Draws and evaluates trials block by block. Not thread safe: one for each thread. */
final class TrialBlocks {
    private static final int CHECKED = 16;
    private static final double AGREEMENT = 1e-9;

    private final MeasurementModel model;
    private final InputBlocks inputs;
    private final BlockFormula formula;
    private final RandomStream random = new RandomStream(0, 0);
    private final double[][] x;
    private final double[] out = new double[RandomStream.BLOCK];

    TrialBlocks(MeasurementModel model, InputBlocks inputs) {
        this.model = model;
        this.inputs = inputs;
        this.formula = model.blocks().orElseGet(() -> trialByTrial(model));
        this.x = new double[inputs.size()][RandomStream.BLOCK];
    }

    void restart(long seed, long stream) {
        random.restart(seed, stream);
    }

    /** The next n outcomes; the array is used again by the next call. */
    double[] next(int n) {
        inputs.fill(random, x, n);
        formula.evaluate(x, out, n);
        return out;
    }

    /**
     * As {@link #next}, and compares the first outcomes with the scalar formula.
     *
     * @throws IllegalArgumentException if they differ
     */
    double[] nextChecked(int n) {
        inputs.fill(random, x, n);
        final double[] expected = new double[Math.min(CHECKED, n)];
        trialByTrial(model).evaluate(x, expected, expected.length);
        formula.evaluate(x, out, n);
        for (int t = 0; t < expected.length; t++) {
            if (Math.abs(out[t] - expected[t]) > AGREEMENT * Math.max(1, Math.abs(expected[t]))) {
                throw new IllegalArgumentException("the block formula of " + model.measurand() + " gives "
                    + out[t]
                    + " where the formula gives " + expected[t] + ": they must agree");
            }
        }
        return out;
    }

    /** The inputs of a trial of the last block: "a = 1.5, b = 2". */
    String describe(int trial) {
        final StringJoiner text = new StringJoiner(", ");
        for (int i = 0; i < x.length; i++) {
            text.add(model.inputs().get(i).name() + " = " + x[i][trial]);
        }
        return text.toString();
    }

    private static BlockFormula trialByTrial(MeasurementModel model) {
        final Formula formula = model.formula();
        final double[] row = new double[model.inputs().size()];
        return (inputs, out, n) -> {
            for (int t = 0; t < n; t++) {
                for (int i = 0; i < row.length; i++) {
                    row[i] = inputs[i][t];
                }
                out[t] = formula.value(row);
            }
        };
    }
}
