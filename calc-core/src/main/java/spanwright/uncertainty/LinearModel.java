package spanwright.uncertainty;

/** Offset plus the sum of coefficient times input, in the three forms a model may have. */
final class LinearModel implements Formula, BlockFormula, Gradient {
    private final double offset;
    private final double[] coefficients;

    LinearModel(double offset, double[] coefficients) {
        this.offset = offset;
        this.coefficients = coefficients;
    }

    @Override
    public double value(double[] x) {
        double sum = offset;
        for (int i = 0; i < coefficients.length; i++) {
            sum += coefficients[i] * x[i];
        }
        return sum;
    }

    @Override
    public void evaluate(double[][] inputs, double[] out, int n) {
        for (int t = 0; t < n; t++) {
            out[t] = offset;
        }
        for (int i = 0; i < coefficients.length; i++) {
            final double c = coefficients[i];
            final double[] x = inputs[i];
            for (int t = 0; t < n; t++) {
                out[t] += c * x[t];
            }
        }
    }

    @Override
    public double[] at(double[] x) {
        return coefficients.clone();
    }
}
