package spanwright.chain;

import java.util.List;
import spanwright.uncertainty.BlockFormula;
import spanwright.uncertainty.Formula;
import spanwright.uncertainty.Gradient;

/**
 * The error of a chain whose temperatures are quantities of their own: offset plus the sum of
 * {@code weight * q * (steady + temperatures)}. Inputs are the rows in order, then the temperatures that are
 * spread over time. In the three forms a model may have.
 */
final class ChainFormula implements Formula, BlockFormula, Gradient {
    private final double offset;
    private final double[] weights;
    private final double[] steady;
    private final int[][] temperatures;
    private final int rows;

    /**
     * Takes the rows apart.
     *
     * @param fixed   values of all temperature variables; those spread over time are ignored
     * @param inputOf position of each temperature variable among the inputs, or -1 if it is fixed
     */
    ChainFormula(double offset, List<ErrorRow> list, double[] fixed, int[] inputOf) {
        this.offset = offset;
        this.rows = list.size();
        this.weights = new double[rows];
        this.steady = new double[rows];
        this.temperatures = new int[rows][];
        for (int i = 0; i < rows; i++) {
            final ErrorRow row = list.get(i);
            weights[i] = row.weight();
            steady[i] = 1;
            temperatures[i] = new int[0];
            if (row.temperature().isPresent()) {
                final ModuleTemperature t = row.temperature().get();
                steady[i] = t.steady() + t.variables().stream().filter(v -> inputOf[v] < 0)
                    .mapToDouble(v -> fixed[v]).sum();
                temperatures[i] = t.variables().stream().filter(v -> inputOf[v] >= 0)
                    .mapToInt(v -> inputOf[v]).toArray();
            }
        }
    }

    private double excursion(int row, double[] x) {
        double sum = steady[row];
        for (int input : temperatures[row]) {
            sum += x[input];
        }
        return sum;
    }

    @Override
    public double value(double[] x) {
        double sum = offset;
        for (int i = 0; i < rows; i++) {
            sum += weights[i] * x[i] * excursion(i, x);
        }
        return sum;
    }

    @Override
    public double[] at(double[] x) {
        final double[] slopes = new double[x.length];
        for (int i = 0; i < rows; i++) {
            slopes[i] = weights[i] * excursion(i, x);
            for (int input : temperatures[i]) {
                slopes[input] += weights[i] * x[i];
            }
        }
        return slopes;
    }

    @Override
    public void evaluate(double[][] inputs, double[] out, int n) {
        for (int t = 0; t < n; t++) {
            out[t] = offset;
        }
        for (int i = 0; i < rows; i++) {
            add(inputs, out, n, i);
        }
    }

    private void add(double[][] inputs, double[] out, int n, int row) {
        final double[] q = inputs[row];
        final double w = weights[row];
        final double k = steady[row];
        for (int t = 0; t < n; t++) {
            out[t] += w * k * q[t];
        }
        for (int input : temperatures[row]) {
            final double[] temperature = inputs[input];
            for (int t = 0; t < n; t++) {
                out[t] += w * q[t] * temperature[t];
            }
        }
    }
}
