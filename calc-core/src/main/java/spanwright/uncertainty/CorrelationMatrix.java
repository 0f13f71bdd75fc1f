package spanwright.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import spanwright.quantity.NumberText;

/** Correlation coefficients of all inputs of a model, checked to be possible together. */
final class CorrelationMatrix {
    private static final double ROUNDING = 1e-12;

    private final double[][] r;
    private final boolean independent;

    private CorrelationMatrix(double[][] r, boolean independent) {
        this.r = r;
        this.independent = independent;
    }

    /**
     * The matrix of these coefficients; what is not mentioned is uncorrelated.
     *
     * @throws IllegalArgumentException if a name is unknown, a pair is given twice, or the coefficients are
     *     not possible together; then the pair that contradicts the others most is named
     */
    static CorrelationMatrix of(List<String> names, List<Correlation> correlations) {
        final int n = names.size();
        final double[][] r = new double[n][n];
        for (int i = 0; i < n; i++) {
            r[i][i] = 1;
        }
        boolean independent = true;
        for (final Correlation c : correlations) {
            independent &= c.coefficient() == 0;
            final int i = index(names, c.first());
            final int j = index(names, c.second());
            if (r[i][j] != 0) {
                throw new IllegalArgumentException(
                    "the correlation of " + c.first() + " and " + c.second() + " is given twice");
            }
            r[i][j] = c.coefficient();
            r[j][i] = c.coefficient();
        }
        if (!independent) {
            checkPossible(names, r);
        }
        return new CorrelationMatrix(r, independent);
    }

    private static int index(List<String> names, String name) {
        final int i = names.indexOf(name);
        if (i < 0) {
            throw new IllegalArgumentException("no input is named " + name + "; there are " + names);
        }
        return i;
    }

    private static void checkPossible(List<String> names, double[][] r) {
        final EigenDecompositionSymmetric eigen =
            new EigenDecompositionSymmetric(MatrixUtils.createRealMatrix(r));
        final int last = r.length - 1;
        final double smallest = eigen.getEigenvalue(last);
        if (smallest >= -ROUNDING * r.length) {
            return;
        }
        final double[] v = eigen.getEigenvector(last).toArray();
        int first = 0;
        int second = 1;
        for (int i = 0; i < r.length; i++) {
            for (int j = i + 1; j < r.length; j++) {
                if (v[i] * v[j] * r[i][j] < v[first] * v[second] * r[first][second]) {
                    first = i;
                    second = j;
                }
            }
        }
        throw new IllegalArgumentException(String.format(Locale.ROOT,
            "the correlations are not possible together (not positive semi-definite, "
                + "smallest eigenvalue %s): r(%s, %s) = %s contradicts the others most",
            NumberText.significant(smallest, 3), names.get(first), names.get(second), r[first][second]));
    }

    boolean isIndependent() {
        return independent;
    }

    int size() {
        return r.length;
    }

    double at(int i, int j) {
        return r[i][j];
    }

    /** Whether input i is correlated with any other. */
    boolean isCorrelated(int i) {
        for (int j = 0; j < r.length; j++) {
            if (j != i && r[i][j] != 0) {
                return true;
            }
        }
        return false;
    }

    /**
     * Directions whose outer products sum to this matrix: the unit vectors where all inputs are independent,
     * else eigenvectors times the root of their eigenvalue. Those of length zero are left out.
     */
    List<double[]> axes() {
        final List<double[]> axes = new ArrayList<>();
        if (independent) {
            for (final double[] row : r) {
                axes.add(row);
            }
            return axes;
        }
        final EigenDecompositionSymmetric eigen =
            new EigenDecompositionSymmetric(MatrixUtils.createRealMatrix(r));
        for (int i = 0; i < r.length; i++) {
            final double length = eigen.getEigenvalue(i);
            if (length > ROUNDING * r.length) {
                axes.add(eigen.getEigenvector(i).mapMultiply(Math.sqrt(length)).toArray());
            }
        }
        return axes;
    }

    /** The group of each input: 0 for an uncorrelated one, else 1, 2, ... for those that hang together. */
    int[] groups() {
        final int[] group = new int[r.length];
        int last = 0;
        for (int i = 0; i < r.length; i++) {
            if (group[i] == 0 && isCorrelated(i)) {
                last++;
                mark(i, last, group);
            }
        }
        return group;
    }

    private void mark(int i, int label, int[] group) {
        group[i] = label;
        for (int j = 0; j < r.length; j++) {
            if (r[i][j] != 0 && group[j] == 0) {
                mark(j, label, group);
            }
        }
    }
}
