package spanwright.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import spanwright.quantity.NumberText;

/**
 * Correlated inputs of any distribution: normal numbers z with correlations, each turned into its
 * distribution by
 * {@code F^-1(Phi(z))}.
 *
 * <p>The correlations of z are set so that those of the inputs come out as stated. For two inputs
 * {@code r(rho) = sum a_k b_k rho^k}, with a and b the coefficients of their standardised quantile functions
 * in normalised Hermite polynomials (Mehler's formula), what the series leaves out at full correlation being
 * added as one more term; the root is bisected. For rectangular inputs it is
 * {@code 2 sin(pi r / 6)}. A t distribution counts as normal here, since for few degrees of freedom it has no
 * variance.
 */
final class GaussianCopula {
    private static final int TERMS = 60;
    /**
     * Power that stands for all terms left out: right within 0.001 for a distribution of two values, the
     * worst.
     */
    private static final int REST_POWER = 4 * TERMS;
    private static final double REACH = 9;
    private static final int STEPS = 1800;
    private static final double ROUNDING = 1e-9;
    private static final int BISECTIONS = 60;

    private final List<InputQuantity> inputs;
    private final CorrelationMatrix matrix;
    private final Shape[] shapes;

    private GaussianCopula(List<InputQuantity> inputs, CorrelationMatrix matrix) {
        this.inputs = inputs;
        this.matrix = matrix;
        this.shapes = new Shape[inputs.size()];
        for (int i = 0; i < shapes.length; i++) {
            if (matrix.isCorrelated(i)) {
                shapes[i] = Shape.of(inputs.get(i).distribution());
            }
        }
    }

    /**
     * For each input the weights of independent standard normal numbers that make its z; uncorrelated inputs
     * have weights of no meaning.
     *
     * @throws IllegalArgumentException if two inputs cannot have the correlation stated for them
     */
    static List<double[]> axes(List<InputQuantity> inputs, CorrelationMatrix matrix) {
        final GaussianCopula copula = new GaussianCopula(inputs, matrix);
        final int n = inputs.size();
        final double[][] rho = new double[n][n];
        boolean changed = false;
        for (int i = 0; i < n; i++) {
            rho[i][i] = 1;
            for (int j = 0; j < i; j++) {
                rho[i][j] = matrix.at(i, j) == 0 ? 0 : copula.correlationOfNormal(i, j);
                rho[j][i] = rho[i][j];
                changed |= rho[i][j] != matrix.at(i, j);
            }
        }
        return changed ? nearestAxes(rho) : matrix.axes();
    }

    /**
     * Where the changed coefficients just miss being possible together, the nearest possible ones are taken.
     */
    private static List<double[]> nearestAxes(double[][] rho) {
        final int n = rho.length;
        final EigenDecompositionSymmetric eigen =
            new EigenDecompositionSymmetric(MatrixUtils.createRealMatrix(rho));
        final List<double[]> axes = new ArrayList<>();
        final double[] length = new double[n];
        for (int k = 0; k < n; k++) {
            final double value = Math.max(0, eigen.getEigenvalue(k));
            final double[] axis = eigen.getEigenvector(k).mapMultiply(Math.sqrt(value)).toArray();
            axes.add(axis);
            for (int i = 0; i < n; i++) {
                length[i] += axis[i] * axis[i];
            }
        }
        for (final double[] axis : axes) {
            for (int i = 0; i < n; i++) {
                axis[i] /= Math.sqrt(length[i]);
            }
        }
        return axes;
    }

    private double correlationOfNormal(int i, int j) {
        final double asked = matrix.at(i, j);
        final double sign = Math.signum(asked);
        final double most = extreme(i, j, sign);
        if (Math.abs(asked) > Math.abs(most) + ROUNDING) {
            throw new IllegalArgumentException(String.format(Locale.ROOT,
                "%s and %s cannot have the correlation %s: with these distributions it lies within %s",
                name(i), name(j), asked, NumberText.significant(most, 4)));
        }
        final double leftOut = most - correlation(i, j, sign);
        double low = 0;
        double high = 1;
        for (int k = 0; k < BISECTIONS; k++) {
            final double middle = (low + high) / 2;
            final double r = correlation(i, j, sign * middle) + leftOut * Math.pow(middle, REST_POWER);
            if (r * sign < Math.abs(asked)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return sign * high;
    }

    private String name(int i) {
        return inputs.get(i).name();
    }

    private double correlation(int i, int j, double rho) {
        double sum = 0;
        for (int k = TERMS; k >= 1; k--) {
            sum = (sum + shapes[i].terms[k] * shapes[j].terms[k]) * rho;
        }
        return sum;
    }

    /** Correlation of two inputs that follow one z, or one z and its opposite. */
    private double extreme(int i, int j, double sign) {
        double sum = 0;
        for (int s = 0; s <= STEPS; s++) {
            sum += shapes[i].values[s] * shapes[j].values[sign > 0 ? s : STEPS - s] * weight(s);
        }
        return sum;
    }

    private static double place(int s) {
        return REACH * (2.0 * s / STEPS - 1);
    }

    /** Weight of a place in an integral over the standard normal density, by the trapezium rule. */
    private static double weight(int s) {
        final double z = place(s);
        return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) * 2 * REACH / STEPS;
    }

    /**
     * The quantile function of z, standardised: at equal places, and as terms of normalised Hermite
     * polynomials.
     */
    private record Shape(double[] values, double[] terms) {

        static Shape of(Distribution distribution) {
            final boolean asNormal = distribution instanceof Normal || distribution instanceof ScaledT;
            final double[] values = new double[STEPS + 1];
            double mean = 0;
            for (int s = 0; s <= STEPS; s++) {
                values[s] = asNormal ? place(s) : quantileOfNormal(distribution, place(s));
                mean += values[s] * weight(s);
            }
            double variance = 0;
            for (int s = 0; s <= STEPS; s++) {
                values[s] -= mean;
                variance += values[s] * values[s] * weight(s);
            }
            for (int s = 0; s <= STEPS && variance > 0; s++) {
                values[s] /= Math.sqrt(variance);
            }
            return new Shape(values, terms(values));
        }

        private static double[] terms(double[] values) {
            final double[] terms = new double[TERMS + 1];
            for (int s = 0; s <= STEPS; s++) {
                double before = 0;
                double polynomial = 1;
                for (int k = 0; k <= TERMS; k++) {
                    terms[k] += values[s] * polynomial * weight(s);
                    final double next = (place(s) * polynomial - Math.sqrt(k) * before) / Math.sqrt(k + 1.0);
                    before = polynomial;
                    polynomial = next;
                }
            }
            return terms;
        }
    }

    /** The quantile at the probability that a standard normal number is at most z. */
    static double quantileOfNormal(Distribution distribution, double z) {
        if (distribution instanceof Normal normal) {
            return normal.mean() + normal.standardUncertainty() * z;
        }
        final double p = Normal.standardCumulative(z);
        return distribution.quantile(Math.min(Math.max(p, Double.MIN_NORMAL), 1 - 0x1.0p-53));
    }
}
