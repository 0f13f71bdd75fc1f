package spanwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import spanwright.quantity.Checks;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * Linear least squares with several regressors,
 * {@code y = level + b1 (x1 - centre1) + b2 (x2 - centre2) + ...}, or without level and centres through the
 * origin. Kept about the mean of each regressor, where the level is uncorrelated with the coefficients.
 *
 * <p>Units: each coefficient is in the unit of y by that of its regressor. Uncertainties are standard (k =
 * 1), Type A; the degrees of freedom are the readings less the coefficients fitted.
 *
 * <p>Source: JCGM 100:2008 (GUM), H.3 for one regressor; solved by QR. Immutable.
 */
public final class LinearRegression {
    private final boolean hasIntercept;
    private final double totalWeight;
    private final double[] centre;
    private final double level;
    private final double[] slopes;
    private final Orthogonal solved;
    private final double[] residuals;
    private final AnalysisOfVariance variance;
    private final List<Double> observed;
    private final List<String> names;

    private LinearRegression(double[][] rows, double[] y, double[] weights, boolean hasIntercept) {
        final int n = y.length;
        final int p = rows[0].length;
        this.hasIntercept = hasIntercept;
        totalWeight = Sums.of(weights);
        final double[][] columns = new double[p][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < p; j++) {
                columns[j][i] = rows[i][j];
            }
        }
        centre = new double[p];
        if (hasIntercept) {
            for (int j = 0; j < p; j++) {
                centre[j] = Sums.range(columns[j]) == 0 ? columns[j][0] : Sums.mean(columns[j], weights);
            }
        }
        level = hasIntercept ? Sums.mean(y, weights) : 0;
        final double[] root = Arrays.stream(weights).map(Math::sqrt).toArray();
        final double[] target = new double[n];
        for (int i = 0; i < n; i++) {
            target[i] = (y[i] - level) * root[i];
            for (int j = 0; j < p; j++) {
                columns[j][i] = (columns[j][i] - centre[j]) * root[i];
            }
        }
        solved = new Orthogonal(columns, target,
            IntStream.rangeClosed(1, p).mapToObj(j -> "regressor " + j).toArray(String[]::new));
        slopes = solved.solution();
        residuals = new double[n];
        double explained = 0;
        double rest = 0;
        for (int i = 0; i < n; i++) {
            double fitted = 0;
            for (int j = 0; j < p; j++) {
                fitted += slopes[j] * columns[j][i];
            }
            final double left = target[i] - fitted;
            residuals[i] = left / root[i];
            explained += fitted * fitted;
            rest += left * left;
        }
        variance = AnalysisOfVariance.of(List.of(
            new AnalysisOfVariance.Source("regression", explained, p),
            new AnalysisOfVariance.Source("residual", rest, n - p - (hasIntercept ? 1 : 0))));
        observed = Arrays.stream(y).boxed().toList();
        names = IntStream.rangeClosed(0, p).mapToObj(j -> j == 0 ? "y" : "x" + j).toList();
    }

    private LinearRegression(LinearRegression from, List<String> names) {
        hasIntercept = from.hasIntercept;
        totalWeight = from.totalWeight;
        centre = from.centre;
        level = from.level;
        slopes = from.slopes;
        solved = from.solved;
        residuals = from.residuals;
        variance = from.variance;
        observed = from.observed;
        this.names = names;
    }

    /**
     * Fits with an intercept.
     *
     * @param x n rows of the p regressors; n at least p + 2; not modified
     * @param y n values; not modified
     * @throws IllegalArgumentException if the sizes do not agree, n is too small, or a value is not finite
     * @throws NoFitException           if a regressor does not vary or depends on others
     */
    public static LinearRegression fit(double[][] x, double[] y) {
        return new LinearRegression(checked(x, y, 2), y, ones(y.length), true);
    }

    /**
     * Fits with an intercept and weights, of which only the ratios count.
     *
     * @param weights of each reading, n values above 0; not modified
     * @throws IllegalArgumentException if the sizes do not agree, n is too small, a weight is not above 0, or
     *     a value is not finite
     * @throws NoFitException           if a regressor does not vary or depends on others
     */
    public static LinearRegression fitWeighted(double[][] x, double[] y, double[] weights) {
        final double[][] rows = checked(x, y, 2);
        Checks.finitePairs(y, weights, 1);
        for (int i = 0; i < weights.length; i++) {
            Checks.positive("weights[" + i + "]", weights[i]);
        }
        return new LinearRegression(rows, y, weights, true);
    }

    /**
     * Fits without an intercept: y is 0 where all regressors are 0.
     *
     * @param x n rows of the p regressors; n at least p + 1; not modified
     * @param y n values; not modified
     * @throws IllegalArgumentException if the sizes do not agree, n is too small, or a value is not finite
     * @throws NoFitException           if a regressor is 0 throughout or depends on others
     */
    public static LinearRegression fitThroughOrigin(double[][] x, double[] y) {
        return new LinearRegression(checked(x, y, 1), y, ones(y.length), false);
    }

    /**
     * The same fit with names, which stand in its table and at the axes of its chart.
     *
     * @param yName      name and unit of y: "error (% of span)"
     * @param regressors name and unit of each regressor, in order; as many as were fitted
     * @throws IllegalArgumentException if there are not as many, or a name is blank
     */
    public LinearRegression named(String yName, String... regressors) {
        final List<String> given = new ArrayList<>(List.of(Checks.notBlank("name of y", yName)));
        for (String regressor : regressors) {
            given.add(Checks.notBlank("name of a regressor", regressor));
        }
        if (regressors.length != slopes.length) {
            throw new IllegalArgumentException(regressors.length + " names given, " + slopes.length
                + " regressors fitted");
        }
        return new LinearRegression(this, List.copyOf(given));
    }

    /** Name of y, with its unit where it was given. */
    public String yName() {
        return names.get(0);
    }

    /** Names of the regressors, with their units where they were given. */
    public List<String> regressorNames() {
        return names.subList(1, names.size());
    }

    /** Whether an intercept was fitted; without, the fit goes through the origin. */
    public boolean hasIntercept() {
        return hasIntercept;
    }

    /** The y that were given, in their order. */
    public List<Double> observed() {
        return observed;
    }

    /** y by the fit of a reading counted from 0. */
    public double fitted(int index) {
        return observed.get(index) - residuals[index];
    }

    /** Reading minus fit of a reading counted from 0. */
    public double residual(int index) {
        return residuals[index];
    }

    /**
     * y where all regressors are 0.
     *
     * @throws IllegalStateException if fitted through the origin
     */
    public Estimate intercept() {
        if (!hasIntercept) {
            throw new IllegalStateException("fitted through the origin: the intercept is 0 by choice, "
                + "not found");
        }
        return at(new double[slopes.length]);
    }

    /**
     * The coefficient of a regressor.
     *
     * @param regressor from 1
     * @throws IllegalArgumentException if there is no such regressor
     */
    public Estimate coefficient(int regressor) {
        Checks.within("regressor", regressor, 1, slopes.length);
        final double[] unit = new double[slopes.length];
        unit[regressor - 1] = 1;
        return combination(0, unit);
    }

    /**
     * y at given regressors, with the uncertainty of the fit.
     *
     * @param x the p regressors; not modified
     * @throws IllegalArgumentException if there are not p, or one is not finite
     */
    public Estimate at(double... x) {
        final double[] d = Checks.finiteAll("regressors", x, slopes.length);
        if (d.length != slopes.length) {
            throw new IllegalArgumentException(d.length + " regressors given, " + slopes.length + " fitted");
        }
        for (int j = 0; j < d.length; j++) {
            d[j] -= centre[j];
        }
        return combination(hasIntercept ? 1 : 0, d);
    }

    /** What one more reading of weight 1 will be. */
    public Estimate oneReadingAt(double... x) {
        final Estimate e = at(x);
        return new Estimate(e.value(), Math.hypot(e.u(), residualSd()), e.dof());
    }

    /** Where the fitted y lies, for this one x. */
    public Interval confidenceBand(double coverage, double... x) {
        return StudentT.about(at(x), coverage);
    }

    /** Where one more reading of weight 1 will lie, for this one x. */
    public Interval predictionBand(double coverage, double... x) {
        return StudentT.about(oneReadingAt(x), coverage);
    }

    /** levelShare * level + weights . slopes. */
    Estimate combination(double levelShare, double[] weights) {
        double value = levelShare * level;
        for (int j = 0; j < weights.length; j++) {
            value += weights[j] * slopes[j];
        }
        return new Estimate(value, residualSd() * Math.hypot(levelShare / Math.sqrt(totalWeight),
            solved.uncertaintyOf(weights)), dof());
    }

    double centre(int index) {
        return centre[index];
    }

    /** Standard deviation of a single reading of weight 1 about the fit. */
    public double residualSd() {
        return Math.sqrt(variance.last().meanSquare());
    }

    /** Degrees of freedom of the residuals. */
    public DegreesOfFreedom dof() {
        return DegreesOfFreedom.of(variance.last().degreesOfFreedom());
    }

    /** Reading minus fit, in the order of the readings. */
    public List<Double> residuals() {
        return Arrays.stream(residuals).boxed().toList();
    }

    /**
     * Share of the squares that the regression takes up; about 0, not about the mean, where through the
     * origin.
     */
    public double rSquared() {
        final double explained = variance.source("regression").sumOfSquares();
        final double rest = variance.last().sumOfSquares();
        return explained + rest == 0 ? 1 : explained / (explained + rest);
    }

    /** Regression against residual. */
    public AnalysisOfVariance analysisOfVariance() {
        return variance;
    }

    private static double[] ones(int n) {
        final double[] w = new double[n];
        Arrays.fill(w, 1);
        return w;
    }

    private static double[][] checked(double[][] x, double[] y, int more) {
        Objects.requireNonNull(x, "x");
        Checks.finiteAll("y", y, 1);
        if (x.length != y.length) {
            throw new IllegalArgumentException(x.length + " rows of x but " + y.length + " y: pairs needed");
        }
        final int p = Checks.atLeast("number of regressors", x[0].length, 1);
        Checks.atLeast("number of readings for " + p + " regressors", y.length, p + more);
        for (int i = 0; i < x.length; i++) {
            if (Checks.finiteAll("x[" + i + "]", x[i], 1).length != p) {
                throw new IllegalArgumentException("row " + i + " has " + x[i].length + " regressors, not "
                    + p);
            }
        }
        return x;
    }

    @Override
    public String toString() {
        return IntStream.rangeClosed(1, slopes.length).mapToObj(j -> "b" + j + " = " + coefficient(j))
            .reduce(hasIntercept ? "b0 = " + intercept() : "through the origin", (a, b) -> a + "\n" + b);
    }
}
