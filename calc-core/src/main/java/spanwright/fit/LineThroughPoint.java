package spanwright.fit;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * Straight line {@code y = throughY + slope * (x - throughX)} through a given point, fitted by least squares;
 * through (0, 0) it is the line without intercept.
 *
 * <p>Units: x in the unit of the stimulus, y in that of the indication. Uncertainties are standard (k = 1),
 * Type A, with n - 1 degrees of freedom. The point is taken as exact.
 *
 * @param throughX   x of the point
 * @param throughY   y of the point
 * @param slope      change of y per unit of x
 * @param residualSd standard deviation of a single reading about the line
 * @param data       the readings it was fitted to
 */
public record LineThroughPoint(double throughX, double throughY, Estimate slope, double residualSd,
                               FittedData data) implements PredictingCurve {
    /** Checks the components. */
    public LineThroughPoint {
        Checks.finite("throughX", throughX);
        Checks.finite("throughY", throughY);
        Objects.requireNonNull(slope, "slope");
        Checks.notNegative("residual standard deviation", residualSd);
        Objects.requireNonNull(data, "data");
    }

    /**
     * Fits the line.
     *
     * @param x        stimulus, n values, n at least 2, not all equal to throughX; not modified
     * @param y        indication, n values; not modified
     * @param throughX x of the point
     * @param throughY y of the point
     * @throws IllegalArgumentException if the lengths differ, n is below 2, all x equal throughX, or a value
     *     is not finite
     */
    public static LineThroughPoint fit(double[] x, double[] y, double throughX, double throughY) {
        Checks.finitePairs(x, y, 2);
        Checks.finite("throughX", throughX);
        Checks.finite("throughY", throughY);
        final double sxx = Sums.ofProducts(x, throughX, x, throughX);
        if (sxx == 0) {
            throw new IllegalArgumentException(
                "all " + x.length + " stimuli equal that of the point, " + throughX + ": no slope");
        }
        final double slope = Sums.ofProducts(x, throughX, y, throughY) / sxx;
        double rest = 0;
        for (int i = 0; i < x.length; i++) {
            final double r = (y[i] - throughY) - slope * (x[i] - throughX);
            rest += r * r;
        }
        final double s = Math.sqrt(rest / (x.length - 1));
        return new LineThroughPoint(throughX, throughY,
            Estimate.of(slope, s / Math.sqrt(sxx), x.length - 1), s, FittedData.of(x, y));
    }

    /**
     * The same line with names for x and y, which stand at the axes of its chart.
     *
     * @param xName name and unit of x
     * @param yName name and unit of y
     * @throws IllegalArgumentException if a name is blank
     */
    public LineThroughPoint named(String xName, String yName) {
        return new LineThroughPoint(throughX, throughY, slope, residualSd, data.named(xName, yName));
    }

    /** Returns y at stimulus x; at the point itself u is 0. */
    @Override
    public Estimate at(double x) {
        final double d = x - throughX;
        return new Estimate(throughY + slope.value() * d, slope.u() * Math.abs(d), slope.dof());
    }

    @Override
    public DegreesOfFreedom dof() {
        return slope.dof();
    }

    @Override
    public double residual(int index) {
        return (data.y(index) - throughY) - slope.value() * (data.x(index) - throughX);
    }

    @Override
    public String toString() {
        return "slope " + slope + " through (" + NumberText.plain(throughX, 7) + ", "
            + NumberText.plain(throughY, 7) + "), residual standard deviation "
            + NumberText.uncertainty(residualSd);
    }
}
