package spanwright.fit;

import java.util.Arrays;
import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * What a line or curve was fitted to: the readings in the order they were given, what was stated of each, and
 * the names of both quantities with their units, as they stand at an axis. Immutable.
 *
 * <p>Weights are 1 and uncertainties 0 where none were stated.
 */
public final class FittedData {
    private static final double[] NONE = {};

    private final String xName;
    private final String yName;
    private final double[] x;
    private final double[] y;
    private final double[] weights;
    private final double[] ux;
    private final double[] uy;

    private FittedData(String xName, String yName, double[][] columns) {
        this.xName = Checks.notBlank("name of x", xName);
        this.yName = Checks.notBlank("name of y", yName);
        x = columns[0];
        y = columns[1];
        weights = columns[2];
        ux = columns[3];
        uy = columns[4];
    }

    private static FittedData copied(double[] x, double[] y, double[] weights, double[] ux, double[] uy) {
        return new FittedData("stimulus", "indication",
            new double[][] {x.clone(), y.clone(), weights.clone(), ux.clone(), uy.clone()});
    }

    /** Checked pairs. */
    static FittedData of(double[] x, double[] y) {
        return copied(x, y, NONE, NONE, NONE);
    }

    /** Checked pairs of unequal weight. */
    static FittedData weighted(double[] x, double[] y, double[] weights) {
        return copied(x, y, weights, NONE, NONE);
    }

    /** Checked pairs with the standard uncertainty of both. */
    static FittedData uncertain(double[] x, double[] y, double[] ux, double[] uy) {
        return copied(x, y, NONE, ux, uy);
    }

    /**
     * The same readings under other names.
     *
     * @param newX name and unit of x: "applied (bar)"
     * @param newY name and unit of y: "indicated (mA)"
     * @throws IllegalArgumentException if a name is blank
     */
    public FittedData named(String newX, String newY) {
        return new FittedData(newX, newY, new double[][] {x, y, weights, ux, uy});
    }

    /** Name of x, with its unit where it was given. */
    public String xName() {
        return xName;
    }

    /** Name of y, with its unit where it was given. */
    public String yName() {
        return yName;
    }

    /** Number of readings. */
    public int size() {
        return x.length;
    }

    /** x of a reading, counted from 0. */
    public double x(int index) {
        return x[index];
    }

    /** y of a reading, counted from 0. */
    public double y(int index) {
        return y[index];
    }

    /** Whether weights were stated. */
    public boolean isWeighted() {
        return weights.length > 0;
    }

    /** Weight of a reading, counted from 0. */
    public double weight(int index) {
        return isWeighted() ? weights[index] : 1;
    }

    /** Whether standard uncertainties of x and y were stated. */
    public boolean isUncertain() {
        return ux.length > 0;
    }

    /** Standard uncertainty stated for the x of a reading, counted from 0. */
    public double xUncertainty(int index) {
        return isUncertain() ? ux[index] : 0;
    }

    /** Standard uncertainty stated for the y of a reading, counted from 0. */
    public double yUncertainty(int index) {
        return isUncertain() ? uy[index] : 0;
    }

    /** Lowest x of the readings. */
    public double lowestX() {
        return Arrays.stream(x).min().orElseThrow();
    }

    /** Highest x of the readings. */
    public double highestX() {
        return Arrays.stream(x).max().orElseThrow();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FittedData d && xName.equals(d.xName) && yName.equals(d.yName)
            && Arrays.equals(x, d.x) && Arrays.equals(y, d.y) && Arrays.equals(weights, d.weights)
            && Arrays.equals(ux, d.ux) && Arrays.equals(uy, d.uy);
    }

    @Override
    public int hashCode() {
        return Objects.hash(xName, yName, Arrays.hashCode(x), Arrays.hashCode(y));
    }

    @Override
    public String toString() {
        return size() + " readings of " + yName + " against " + xName;
    }
}
