package spanwright.loop;

import java.util.Arrays;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;

/**
 * A continuous function of the loop current, straight between knots, from 0 to {@link #END} mA. Lift-off
 * curves, clamps and supplies in parallel all are of this kind, so that least margins and limits are found
 * at knots and crossings, exactly, and never by a search that could miss one.
 */
final class PiecewiseLine {
    /** Largest current any question may be about, in mA. */
    static final double END = 50;

    private final double[] x;
    private final double[] y;

    private PiecewiseLine(double[] x, double[] y) {
        this.x = x;
        this.y = y;
    }

    /** {@code level + slope * current}. */
    static PiecewiseLine line(double level, double slopePerMilliamp) {
        return new PiecewiseLine(new double[] {0, END}, new double[] {level, level + slopePerMilliamp * END});
    }

    /** A voltage and a resistance in ohm in series. */
    static PiecewiseLine ofOhms(double volts, double ohms) {
        return line(volts, ohms / 1000);
    }

    /** Through knots of ascending x within 0 to END; level before the first and after the last. */
    static PiecewiseLine through(double[] knotX, double[] knotY) {
        double[] xs = knotX.clone();
        double[] ys = knotY.clone();
        if (xs[0] > 0) {
            xs = insert(xs, 0, 0);
            ys = insert(ys, 0, ys[0]);
        }
        if (xs[xs.length - 1] < END) {
            xs = insert(xs, xs.length, END);
            ys = insert(ys, ys.length, ys[ys.length - 1]);
        }
        for (int i = 1; i < xs.length; i++) {
            Checks.inside("current of a knot in mA", xs[i], xs[i - 1], Math.nextUp(END));
        }
        return new PiecewiseLine(xs, ys);
    }

    private static double[] insert(double[] values, int at, double value) {
        final double[] longer = new double[values.length + 1];
        System.arraycopy(values, 0, longer, 0, at);
        longer[at] = value;
        System.arraycopy(values, at, longer, at + 1, values.length - at);
        return longer;
    }

    double at(double current) {
        int i = 1;
        while (i < x.length - 1 && x[i] < current) {
            i++;
        }
        return interpolate(i, current);
    }

    /** On the piece that ends at knot i; exact at both of its knots. */
    private double interpolate(int i, double current) {
        final double t = (current - x[i - 1]) / (x[i] - x[i - 1]);
        return y[i - 1] * (1 - t) + y[i] * t;
    }

    PiecewiseLine plus(PiecewiseLine other) {
        return combine(other, 1);
    }

    PiecewiseLine minus(PiecewiseLine other) {
        return combine(other, -1);
    }

    private PiecewiseLine combine(PiecewiseLine other, double sign) {
        final double[] knots = merge(x, other.x);
        final double[] sum = new double[knots.length];
        for (int i = 0; i < knots.length; i++) {
            sum[i] = at(knots[i]) + sign * other.at(knots[i]);
        }
        return new PiecewiseLine(knots, sum);
    }

    private static double[] merge(double[] a, double[] b) {
        if (Arrays.equals(a, b)) {
            return a;
        }
        final double[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return Arrays.stream(all).sorted().distinct().toArray();
    }

    /** The smaller of this and a constant. */
    PiecewiseLine capped(double cap) {
        double[] knots = x;
        for (int i = 1; i < x.length; i++) {
            if ((y[i - 1] - cap) * (y[i] - cap) < 0) {
                knots = merge(knots, new double[] {crossing(i, cap)});
            }
        }
        final double[] values = new double[knots.length];
        for (int i = 0; i < knots.length; i++) {
            values[i] = Math.min(at(knots[i]), cap);
        }
        return new PiecewiseLine(knots, values);
    }

    private double crossing(int i, double level) {
        final double t = (level - y[i - 1]) / (y[i] - y[i - 1]);
        return Math.min(x[i], Math.max(x[i - 1], x[i - 1] + t * (x[i] - x[i - 1])));
    }

    /** Where between two currents the function is least: the current. */
    double whereLeast(double from, double to) {
        double best = from;
        double least = at(from);
        for (double knot : x) {
            if (knot > from && knot < to && at(knot) < least) {
                best = knot;
                least = at(knot);
            }
        }
        return at(to) < least ? to : best;
    }

    /** The largest current from 0 to the given one at which the function is not negative. */
    OptionalDouble largestNotNegative(double upTo) {
        if (at(upTo) >= 0) {
            return OptionalDouble.of(upTo);
        }
        for (int i = x.length - 1; i > 0; i--) {
            if (x[i - 1] < upTo && y[i - 1] >= 0) {
                return OptionalDouble.of(Math.min(upTo, crossing(i, 0)));
            }
        }
        return OptionalDouble.empty();
    }

    /** The lowest current from which the function is not negative all the way up to the given one. */
    double lowestConnected(double upTo) {
        for (int i = x.length - 1; i > 0; i--) {
            if (x[i - 1] < upTo && y[i - 1] < 0) {
                return Math.min(upTo, crossing(i, 0));
            }
        }
        return 0;
    }
}
