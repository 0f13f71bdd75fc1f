package spanwright.fit;

import java.util.Arrays;
import java.util.Objects;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/**
 * Straight line {@code y = level + slope * (x - centre)} where the stimulus is uncertain as well as the
 * indication, because the standard has an uncertainty of its own.
 *
 * <p>Units: as {@link CalibrationLine}. The uncertainties follow from those stated for the readings, not from
 * the scatter about the line; {@link #chiSquaredByDof} shows whether the two agree (near 1).
 *
 * <p>Source: D. York et al., Am. J. Phys. 72 (2004) 367, from memory; with one ratio of uncertainties for all
 * readings and no correlation it is Deming's line.
 *
 * @param centre          weighted mean of the adjusted stimuli, where level and slope are uncorrelated
 * @param level           y at {@code centre}
 * @param slope           change of y per unit of x
 * @param chiSquaredByDof sum of the squared weighted deviations by n - 2
 * @param data            the readings it was fitted to, with their uncertainties
 */
public record LineWithBothUncertain(double centre, Estimate level, Estimate slope, double chiSquaredByDof,
                                    FittedData data) implements FittedCurve {
    private static final int MOST_STEPS = 500;

    /** Checks the components. */
    public LineWithBothUncertain {
        Checks.finite("centre", centre);
        Objects.requireNonNull(level, "level");
        Objects.requireNonNull(slope, "slope");
        Checks.notNegative("chi squared by degrees of freedom", chiSquaredByDof);
        Objects.requireNonNull(data, "data");
    }

    /**
     * Fits the line to readings with a standard uncertainty of each x and y, uncorrelated.
     *
     * @param x  stimulus, n values, n at least 3; not modified
     * @param y  indication; not modified
     * @param ux standard uncertainty of each x, at least 0; not modified
     * @param uy standard uncertainty of each y, above 0; not modified
     * @throws IllegalArgumentException if the lengths differ, n is below 3, all x are equal, an uncertainty
     *     is out of range, or a value is not finite
     * @throws NoFitException           if the iteration does not settle
     */
    public static LineWithBothUncertain fit(double[] x, double[] y, double[] ux, double[] uy) {
        Checks.finitePairs(x, y, 3);
        Checks.finitePairs(x, ux, 3);
        Checks.finitePairs(x, uy, 3);
        final int n = x.length;
        for (int i = 0; i < n; i++) {
            Checks.notNegative("ux[" + i + "]", ux[i]);
            Checks.positive("uy[" + i + "]", uy[i]);
        }
        return new York(x, y, ux, uy).solve();
    }

    /**
     * Deming's line: every x has the standard uncertainty ux, every y has uy.
     *
     * @throws IllegalArgumentException if the lengths differ, n is below 3, all x are equal, an uncertainty
     *     is out of range, or a value is not finite
     */
    public static LineWithBothUncertain deming(double[] x, double[] y, double ux, double uy) {
        final double[] eachX = new double[x.length];
        final double[] eachY = new double[x.length];
        Arrays.fill(eachX, ux);
        Arrays.fill(eachY, uy);
        return fit(x, y, eachX, eachY);
    }

    /**
     * The same line with names for x and y, which stand at the axes of its chart.
     *
     * @param xName name and unit of x
     * @param yName name and unit of y
     * @throws IllegalArgumentException if a name is blank
     */
    public LineWithBothUncertain named(String xName, String yName) {
        return new LineWithBothUncertain(centre, level, slope, chiSquaredByDof, data.named(xName, yName));
    }

    /** Returns y at stimulus x. */
    @Override
    public Estimate at(double x) {
        final double d = x - centre;
        return new Estimate(level.value() + slope.value() * d, Math.hypot(level.u(), slope.u() * d),
            level.dof());
    }

    /** The line at x = 0. */
    public Estimate intercept() {
        return at(0);
    }

    /**
     * Probability of so large a sum of squared deviations, or a larger one, if the uncertainties stated for
     * the readings are right and a straight line describes them. Small: one of both is not so.
     */
    public double probabilityOfChiSquared() {
        final int dof = data.size() - 2;
        return ChiSquaredDistribution.of(dof).survivalProbability(chiSquaredByDof * dof);
    }

    @Override
    public double residual(int index) {
        return (data.y(index) - level.value()) - slope.value() * (data.x(index) - centre);
    }

    /** The iteration for the slope; the rest follows from it. */
    private static final class York {
        private final double[] x;
        private final double[] y;
        private final double[] ux;
        private final double[] uy;
        private final double[] weight;
        private double meanX;
        private double meanY;

        York(double[] x, double[] y, double[] ux, double[] uy) {
            this.x = x;
            this.y = y;
            this.ux = ux;
            this.uy = uy;
            weight = new double[x.length];
        }

        LineWithBothUncertain solve() {
            double b = CalibrationLine.fit(x, y).slope().value();
            for (int step = 0; step < MOST_STEPS; step++) {
                final double next = improved(b);
                final boolean isSettled = Math.abs(next - b) <= 1e-15 * Math.abs(next);
                b = next;
                if (isSettled) {
                    return result(b);
                }
            }
            if (Math.abs(improved(b) - b) <= 1e-12 * Math.abs(b)) {
                return result(b);
            }
            throw new NoFitException("the slope did not settle in " + MOST_STEPS + " steps, last " + b);
        }

        private double improved(double b) {
            weigh(b);
            double top = 0;
            double bottom = 0;
            for (int i = 0; i < x.length; i++) {
                final double beta = adjusted(i, b);
                top += weight[i] * beta * (y[i] - meanY);
                bottom += weight[i] * beta * (x[i] - meanX);
            }
            return top / bottom;
        }

        /** Adjusted stimulus about the mean: between what was applied and what the indication says. */
        private double adjusted(int i, double b) {
            return weight[i] * ((x[i] - meanX) * uy[i] * uy[i] + b * (y[i] - meanY) * ux[i] * ux[i]);
        }

        private void weigh(double b) {
            for (int i = 0; i < x.length; i++) {
                weight[i] = 1 / (uy[i] * uy[i] + b * b * ux[i] * ux[i]);
            }
            meanX = Sums.mean(x, weight);
            meanY = Sums.mean(y, weight);
        }

        private LineWithBothUncertain result(double b) {
            weigh(b);
            final int n = x.length;
            final double[] beta = new double[n];
            double chi = 0;
            for (int i = 0; i < n; i++) {
                beta[i] = adjusted(i, b);
                final double d = (y[i] - meanY) - b * (x[i] - meanX);
                chi += weight[i] * d * d;
            }
            final double total = Sums.of(weight);
            final double meanBeta = Sums.mean(beta, weight);
            final double u = 1 / Math.sqrt(Sums.ofProducts(weight, beta, meanBeta, beta, meanBeta));
            return new LineWithBothUncertain(meanX + meanBeta,
                Estimate.of(meanY + b * meanBeta, 1 / Math.sqrt(total)), Estimate.of(b, u), chi / (n - 2),
                FittedData.uncertain(x, y, ux, uy));
        }
    }

    @Override
    public String toString() {
        return "level " + level + " at x = " + NumberText.plain(centre, 7) + ", slope " + slope
            + ", chi squared by degrees of freedom " + NumberText.significant(chiSquaredByDof, 3);
    }
}
