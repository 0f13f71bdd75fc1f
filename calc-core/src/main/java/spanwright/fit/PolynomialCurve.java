package spanwright.fit;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import spanwright.quantity.Checks;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * Polynomial calibration curve by least squares. The fit is made on x scaled to [-1, 1], by QR, so that
 * neither a high degree nor a large x costs digits.
 *
 * <p>Units: x in the unit of the stimulus, y in that of the indication. Uncertainties are standard (k = 1),
 * Type A; the degrees of freedom are the readings less degree + 1. Limits: x is taken as exact and all y as
 * equally uncertain; do not use the curve beyond the readings. Immutable.
 */
public final class PolynomialCurve implements PredictingCurve {
    private final int degree;
    private final double middle;
    private final double halfRange;
    private final LinearRegression scaled;
    private final FittedData data;

    private PolynomialCurve(int degree, double middle, double halfRange, LinearRegression scaled,
                            FittedData data) {
        this.degree = degree;
        this.middle = middle;
        this.halfRange = halfRange;
        this.scaled = scaled;
        this.data = data;
    }

    /**
     * Fits a polynomial.
     *
     * @param x      stimulus, n values; not modified
     * @param y      indication, n values; not modified
     * @param degree 1 to 10; n must be at least degree + 2
     * @throws IllegalArgumentException if the lengths differ, n is too small, the degree is out of range, all
     *     x are equal, or a value is not finite
     * @throws NoFitException           if x takes too few different values for the degree
     */
    public static PolynomialCurve fit(double[] x, double[] y, int degree) {
        Checks.within("degree", degree, 1, 10);
        Checks.finitePairs(x, y, degree + 2);
        final double range = Sums.range(x);
        if (range == 0) {
            throw new IllegalArgumentException("all " + x.length + " stimuli equal " + x[0] + ": no curve");
        }
        final double distinct = IntStream.range(0, x.length).mapToDouble(i -> x[i]).distinct().count();
        if (distinct <= degree) {
            throw new NoFitException("x takes " + (int) distinct
                + " different values: a polynomial of degree "
                + degree + " needs " + (degree + 1));
        }
        final double least = IntStream.range(0, x.length).mapToDouble(i -> x[i]).min().orElseThrow();
        final double middle = least + range / 2;
        final double[][] rows = new double[x.length][];
        for (int i = 0; i < x.length; i++) {
            rows[i] = powers((x[i] - middle) / (range / 2), degree);
        }
        return new PolynomialCurve(degree, middle, range / 2, LinearRegression.fit(rows, y),
            FittedData.of(x, y));
    }

    /**
     * The same curve with names for x and y, which stand at the axes of its chart.
     *
     * @param xName name and unit of x
     * @param yName name and unit of y
     * @throws IllegalArgumentException if a name is blank
     */
    public PolynomialCurve named(String xName, String yName) {
        return new PolynomialCurve(degree, middle, halfRange, scaled, data.named(xName, yName));
    }

    @Override
    public FittedData data() {
        return data;
    }

    /** Degree of the polynomial. */
    public int degree() {
        return degree;
    }

    @Override
    public Estimate at(double x) {
        return scaled.at(powers(scale(x), degree));
    }

    /**
     * Coefficient of a power of the unscaled x.
     *
     * @param power 0 to {@link #degree()}
     * @throws IllegalArgumentException if the power is out of range
     */
    public Estimate coefficient(int power) {
        Checks.within("power", power, 0, degree);
        // ((x - m) / h)^j expanded: binomial(j, power) (-m)^(j - power) / h^j is what belongs to x^power.
        final double[] weights = new double[degree];
        for (int j = 1; j <= degree; j++) {
            double share = j < power ? 0 : Math.pow(-middle, j - power) / Math.pow(halfRange, j);
            for (int k = 1; k <= power && j >= power; k++) {
                share *= (double) (j - power + k) / k;
            }
            weights[j - 1] = power == 0 ? share - scaled.centre(j - 1) : share;
        }
        return scaled.combination(power == 0 ? 1 : 0, weights);
    }

    @Override
    public double residualSd() {
        return scaled.residualSd();
    }

    @Override
    public double residual(int index) {
        return scaled.residual(index);
    }

    @Override
    public DegreesOfFreedom dof() {
        return scaled.dof();
    }

    /** Share of the squares about the mean that the curve takes up. */
    public double rSquared() {
        return scaled.rSquared();
    }

    /** Curve against residual. */
    public AnalysisOfVariance analysisOfVariance() {
        return scaled.analysisOfVariance();
    }

    private double scale(double x) {
        return (Checks.finite("x", x) - middle) / halfRange;
    }

    private static double[] powers(double t, int degree) {
        final double[] powers = new double[degree];
        double power = 1;
        for (int j = 0; j < degree; j++) {
            power *= t;
            powers[j] = power;
        }
        return powers;
    }

    @Override
    public String toString() {
        return IntStream.rangeClosed(0, degree).mapToObj(k -> "x^" + k + ": " + coefficient(k))
            .collect(Collectors.joining("\n"));
    }
}
