package spanwright.fit;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Reading;
import spanwright.readings.Transfer;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * Straight calibration line {@code y = level + slope * (x - centre)}, fitted by least squares.
 *
 * <p>Units: {@code centre} and x are in the unit of the stimulus, {@code level} and y in that of the
 * indication,
 * {@code slope} in their quotient. Uncertainties are standard (k = 1), Type A.
 *
 * <p>Limits: x is taken as exact. Where the readings are not equally uncertain use
 * {@link #fitWeighted(double[], double[], double[])}.
 *
 * <p>Source: JCGM 100:2008 (GUM), H.3.2; kept about the (weighted) mean stimulus, where level and slope are
 * uncorrelated (H.3.5), so that a prediction needs no covariance.
 *
 * @param centre     (weighted) mean stimulus of the readings
 * @param level      y at {@code centre}
 * @param slope      change of y per unit of x
 * @param residualSd standard deviation of a single reading of weight 1 about the line
 * @param data       the readings it was fitted to
 */
public record CalibrationLine(double centre, Estimate level, Estimate slope, double residualSd,
                              FittedData data) implements PredictingCurve {
    /** Checks the components. */
    public CalibrationLine {
        Checks.finite("centre", centre);
        Objects.requireNonNull(level, "level");
        Objects.requireNonNull(slope, "slope");
        Checks.notNegative("residual standard deviation", residualSd);
        Objects.requireNonNull(data, "data");
    }

    /**
     * Fits the line to n readings; the degrees of freedom are n - 2.
     *
     * @param x stimulus, n values, n at least 3; not modified
     * @param y indication at each x, n values; not modified
     * @return the fitted line
     * @throws IllegalArgumentException if the lengths differ, n is below 3, all x are equal, or any value is
     *     not finite
     */
    public static CalibrationLine fit(double[] x, double[] y) {
        Checks.finitePairs(x, y, 3);
        final int n = x.length;
        final double meanX = Sums.mean(x);
        final double meanY = Sums.mean(y);
        final double sxx = sumAboutMean(x, meanX);
        final double slope = Sums.ofProducts(x, meanX, y, meanY) / sxx;
        final double[] r = residuals(x, meanX, y, meanY, slope);
        final double s = Math.sqrt(Sums.ofProducts(r, 0, r, 0) / (n - 2));
        return new CalibrationLine(meanX, Estimate.of(meanY, s / Math.sqrt(n), n - 2),
            Estimate.of(slope, s / Math.sqrt(sxx), n - 2), s, FittedData.of(x, y));
    }

    /**
     * Fits the line to n readings of unequal weight; the degrees of freedom are n - 2. A reading of twice the
     * standard uncertainty has a quarter of the weight. The scatter about the line sets the uncertainties,
     * not the weights themselves: only their ratios count.
     *
     * @param x       stimulus, n values, n at least 3; not modified
     * @param y       indication at each x, n values; not modified
     * @param weights of each reading, n values above 0; not modified
     * @throws IllegalArgumentException if the lengths differ, n is below 3, all x are equal, a weight is not
     *     above 0, or any value is not finite
     */
    public static CalibrationLine fitWeighted(double[] x, double[] y, double[] weights) {
        Checks.finitePairs(x, y, 3);
        Checks.finitePairs(x, weights, 3);
        for (int i = 0; i < weights.length; i++) {
            Checks.positive("weights[" + i + "]", weights[i]);
        }
        final int n = x.length;
        final double meanX = Sums.mean(x, weights);
        final double meanY = Sums.mean(y, weights);
        sumAboutMean(x, Sums.mean(x));
        final double sxx = Sums.ofProducts(weights, x, meanX, x, meanX);
        final double slope = Sums.ofProducts(weights, x, meanX, y, meanY) / sxx;
        final double[] r = residuals(x, meanX, y, meanY, slope);
        final double s = Math.sqrt(Sums.ofProducts(weights, r, 0, r, 0) / (n - 2));
        return new CalibrationLine(meanX, Estimate.of(meanY, s / Math.sqrt(Sums.of(weights)), n - 2),
            Estimate.of(slope, s / Math.sqrt(sxx), n - 2), s, FittedData.weighted(x, y, weights));
    }

    /**
     * Fits indicated against applied over all readings of a run, each in its own unit.
     *
     * @throws IllegalArgumentException if the run has fewer than 3 readings, all were applied at one input,
     *     or its characteristic is not straight
     */
    public static CalibrationLine fit(CalibrationRun run) {
        if (run.transfer() != Transfer.LINEAR) {
            throw new IllegalArgumentException("channel " + run.channel() + " has a " + run.transfer()
                + " characteristic: a straight line of indicated against applied does not describe it");
        }
        final List<Reading> r = run.readings();
        return fit(r.stream().mapToDouble(v -> v.applied().value()).toArray(),
            r.stream().mapToDouble(v -> v.indicated().value()).toArray())
            .named("applied (" + run.input().symbol() + ")", "indicated (" + run.output().symbol() + ")");
    }

    /**
     * The same line with names for x and y, which stand at the axes of its chart.
     *
     * @param xName name and unit of x: "applied (bar)"
     * @param yName name and unit of y: "indicated (mA)"
     * @throws IllegalArgumentException if a name is blank
     */
    public CalibrationLine named(String xName, String yName) {
        return new CalibrationLine(centre, level, slope, residualSd, data.named(xName, yName));
    }

    /** Returns y at stimulus x; outside the readings this extrapolates, and u grows with the distance. */
    @Override
    public Estimate at(double x) {
        final double d = x - centre;
        return new Estimate(level.value() + slope.value() * d,
            Math.hypot(level.u(), slope.u() * d), level.dof());
    }

    /** The line at x = 0. */
    public Estimate intercept() {
        return at(0);
    }

    /** Correlation coefficient of intercept and slope, 0 where the line is exact (GUM H.3.2). */
    public double correlationOfInterceptAndSlope() {
        final double u = intercept().u();
        return u == 0 ? 0 : -centre * slope.u() / u;
    }

    @Override
    public DegreesOfFreedom dof() {
        return level.dof();
    }

    @Override
    public double residual(int index) {
        return deviation(data.x(index), data.y(index));
    }

    /**
     * The stimulus that gave an indication, with its interval (Fieller), or the answer that it has no bounds.
     *
     * @param y        mean of the readings
     * @param readings how many were averaged, at least 1
     * @param coverage in the open interval (0, 1)
     * @throws IllegalArgumentException if an argument is out of range
     */
    public InverseInterval stimulusFor(double y, int readings, double coverage) {
        return InverseInterval.of(this, y, readings, coverage);
    }

    /**
     * Where the line itself takes a value, with its interval (Fieller), or the answer that it has no bounds.
     *
     * @param y        the value, taken as exact
     * @param coverage in the open interval (0, 1)
     * @throws IllegalArgumentException if an argument is out of range
     */
    public InverseInterval crossing(double y, double coverage) {
        return InverseInterval.of(this, Estimate.exactly(y), coverage);
    }

    /** How far y lies above the line at x. */
    public double deviation(double x, double y) {
        return (y - level.value()) - slope.value() * (x - centre);
    }

    private static double sumAboutMean(double[] x, double mean) {
        final double sxx = Sums.ofProducts(x, mean, x, mean);
        // The mean of equal values may differ from them by a rounding, so their own range decides.
        if (sxx > 0 && Sums.range(x) > 0) {
            return sxx;
        }
        throw new IllegalArgumentException("all " + x.length + " stimuli equal " + x[0] + ": no slope");
    }

    private static double[] residuals(double[] x, double meanX, double[] y, double meanY, double slope) {
        final double[] r = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            r[i] = (y[i] - meanY) - slope * (x[i] - meanX);
        }
        return r;
    }

    @Override
    public String toString() {
        final int places = NumberText.decimalsFor(level.u());
        final int slopePlaces = NumberText.decimalsFor(slope.u());
        return "y = " + NumberText.fixed(level.value(), places)
            + " + " + NumberText.fixed(slope.value(), slopePlaces) + " (x \u2212 "
            + NumberText.plain(centre, 7) + "); u of level " + NumberText.uncertainty(level.u())
            + ", u of slope " + NumberText.uncertainty(slope.u()) + ", residual standard deviation "
            + NumberText.uncertainty(residualSd) + ", " + level.dof() + " degrees of freedom";
    }
}
