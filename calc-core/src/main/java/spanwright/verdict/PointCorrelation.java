package spanwright.verdict;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealVector;
import spanwright.quantity.Checks;

/**
 * Correlation between the points of one instrument: of their true errors, which a common zero or span shift
 * moves together, or of their measurements, which share a standard.
 *
 * @param rows the matrix: symmetric, 1 on the diagonal, no eigenvalue below 0
 */
public record PointCorrelation(List<List<Double>> rows) {
    private static final double ROUNDING = 1e-9;

    /** Checks the matrix and copies it. */
    public PointCorrelation {
        rows = rows.stream().map(List::copyOf).toList();
        Checks.atLeast("number of points", rows.size(), 1);
        for (int i = 0; i < rows.size(); i++) {
            checkRow(rows, i);
        }
        refuseContradiction(decompose(rows));
    }

    /**
     * The same correlation between every two points.
     *
     * @param points number of points, at least 1
     * @param r      correlation, in [-1 / (points - 1), 1]
     */
    public static PointCorrelation equal(int points, double r) {
        final List<List<Double>> rows = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            final List<Double> row = new ArrayList<>();
            for (int j = 0; j < points; j++) {
                row.add(i == j ? 1.0 : r);
            }
            rows.add(row);
        }
        return new PointCorrelation(rows);
    }

    /**
     * The correlation that a history of instruments shows.
     *
     * @param instruments one row of errors per instrument, at least 10, all of the same length
     * @throws IllegalArgumentException if there are fewer, the lengths differ, or a point has no spread
     */
    public static PointCorrelation ofHistory(List<List<Double>> instruments) {
        Checks.atLeast("number of instruments", instruments.size(), EmpiricalPrior.FEWEST);
        final int points = instruments.get(0).size();
        final double[][] scores = new double[points][];
        for (int j = 0; j < points; j++) {
            scores[j] = scores(instruments, j);
        }
        final List<List<Double>> rows = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            final List<Double> row = new ArrayList<>();
            for (int j = 0; j < points; j++) {
                double r = 0;
                for (int k = 0; k < instruments.size(); k++) {
                    r += scores[i][k] * scores[j][k];
                }
                row.add(i == j ? 1.0 : Math.max(-1, Math.min(1, r)));
            }
            rows.add(row);
        }
        return new PointCorrelation(rows);
    }

    /** Deviations from the mean, scaled to a sum of squares of 1. */
    private static double[] scores(List<List<Double>> instruments, int point) {
        final double[] x = column(instruments, point);
        final double mean = Moments.mean(x);
        final double scale = Math.sqrt(Moments.variance(x) * (x.length - 1));
        if (!(scale > 0)) {
            throw new IllegalArgumentException("point " + (point + 1) + " has the same error in all "
                + x.length + " instruments: no correlation");
        }
        for (int i = 0; i < x.length; i++) {
            x[i] = (x[i] - mean) / scale;
        }
        return x;
    }

    static double[] column(List<List<Double>> instruments, int point) {
        final int points = instruments.get(0).size();
        return instruments.stream().mapToDouble(row -> {
            if (row.size() != points) {
                throw new IllegalArgumentException("an instrument has " + row.size() + " points, another "
                    + points);
            }
            return Checks.finite("error at point " + (point + 1), row.get(point));
        }).toArray();
    }

    /** Number of points. */
    public int points() {
        return rows.size();
    }

    /** A matrix that makes correlated values from independent ones: its square is this one. */
    double[][] factor() {
        final EigenDecompositionSymmetric eigen = decompose(rows);
        final int n = points();
        final double[][] factor = new double[n][n];
        for (int j = 0; j < n; j++) {
            final double root = Math.sqrt(Math.max(0, eigen.getEigenvalue(j)));
            for (int i = 0; i < n; i++) {
                factor[i][j] = root * eigen.getV().getEntry(i, j);
            }
        }
        return factor;
    }

    private static EigenDecompositionSymmetric decompose(List<List<Double>> rows) {
        return new EigenDecompositionSymmetric(new Array2DRowRealMatrix(rows.stream()
            .map(r -> r.stream().mapToDouble(Double::doubleValue).toArray()).toArray(double[][]::new)));
    }

    private static void checkRow(List<List<Double>> rows, int i) {
        if (rows.get(i).size() != rows.size()) {
            throw new IllegalArgumentException("row " + (i + 1) + " of the correlation has "
                + rows.get(i).size()
                + " values, not " + rows.size());
        }
        for (int j = 0; j < rows.size(); j++) {
            final double r = rows.get(i).get(j);
            Checks.within("correlation of points " + (i + 1) + " and " + (j + 1), r, -1, 1);
            if (i == j && r != 1) {
                throw new IllegalArgumentException("correlation of point " + (i + 1) + " with itself is "
                    + r);
            }
            if (j < i && r != rows.get(j).get(i)) {
                throw new IllegalArgumentException("correlation of points " + (i + 1) + " and " + (j + 1)
                    + " is "
                    + r + " one way, " + rows.get(j).get(i) + " the other");
            }
        }
    }

    private static void refuseContradiction(EigenDecompositionSymmetric eigen) {
        final int last = eigen.getEigenvalues().length - 1;
        if (eigen.getEigenvalue(last) >= -ROUNDING) {
            return;
        }
        final RealVector worst = eigen.getEigenvector(last);
        int a = 0;
        int b = -1;
        for (int i = 1; i < worst.getDimension(); i++) {
            if (Math.abs(worst.getEntry(i)) > Math.abs(worst.getEntry(a))) {
                b = a;
                a = i;
            } else if (b < 0 || Math.abs(worst.getEntry(i)) > Math.abs(worst.getEntry(b))) {
                b = i;
            }
        }
        throw new IllegalArgumentException("the correlations contradict each other (eigenvalue "
            + eigen.getEigenvalue(last) + "), most at points " + (Math.min(a, b) + 1) + " and "
            + (Math.max(a, b) + 1));
    }
}
