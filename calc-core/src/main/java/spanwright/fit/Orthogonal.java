package spanwright.fit;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Least squares by QR of columns scaled to unit length. Neither forming the normal equations nor columns of
 * unlike size (Pontius: x up to 3e6, squared) costs digits.
 */
final class Orthogonal {
    /** Below this a column is, to within rounding, a combination of those before it. */
    private static final double DEPENDENT = 1e-12;

    private final double[] scale;
    private final RealMatrix upper;
    private final double[] solution;

    /**
     * Solves columns * b = y.
     *
     * @param columns p columns of n values, n at least p
     * @param names   of the columns, for the message
     * @throws NoFitException if the columns depend on each other
     */
    Orthogonal(double[][] columns, double[] y, String[] names) {
        final int p = columns.length;
        final double[][] rows = new double[y.length][p];
        scale = new double[p];
        for (int j = 0; j < p; j++) {
            scale[j] = Math.sqrt(Sums.ofProducts(columns[j], 0, columns[j], 0));
            if (scale[j] == 0) {
                throw new NoFitException(names[j] + " does not vary: it has no coefficient of its own");
            }
            for (int i = 0; i < y.length; i++) {
                rows[i][j] = columns[j][i] / scale[j];
            }
        }
        final QRDecomposition qr = new QRDecomposition(new Array2DRowRealMatrix(rows, false));
        upper = qr.getR().getSubMatrix(0, p - 1, 0, p - 1);
        for (int j = 0; j < p; j++) {
            if (Math.abs(upper.getEntry(j, j)) < DEPENDENT) {
                throw new NoFitException(names[j]
                    + " is a combination of the columns before it: no unique fit");
            }
        }
        solution = qr.getSolver().solve(new ArrayRealVector(y, false)).toArray();
        for (int j = 0; j < p; j++) {
            solution[j] /= scale[j];
        }
    }

    double[] solution() {
        return solution.clone();
    }

    /**
     * Standard uncertainty of the combination {@code weights . b} for readings of standard deviation 1: the
     * length of z with transposed(R) z = weights, which no rounding can make negative.
     */
    double uncertaintyOf(double[] weights) {
        double squares = 0;
        final double[] z = new double[weights.length];
        for (int j = 0; j < z.length; j++) {
            double v = weights[j] / scale[j];
            for (int k = 0; k < j; k++) {
                v -= upper.getEntry(k, j) * z[k];
            }
            z[j] = v / upper.getEntry(j, j);
            squares += z[j] * z[j];
        }
        return Math.sqrt(squares);
    }
}
