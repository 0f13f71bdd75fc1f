package spanwright.fit;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The correction {@code offset + tilt * x} that makes the largest of {@code |error[i] + offset + tilt * x[i]|
 * / limit[i]} as small as it can be, exactly: zero and span adjusted together, with a limit of its own at
 * each point.
 *
 * <p>For a given tilt the best offset is a {@link MinimaxFactor}, fixed by two of the points. What these two
 * leave, over the tilt, is a straight line that the least largest error nowhere undercuts. The search keeps
 * one such line that falls and one that rises, looks where they cross, and ends when the crossing is reached.
 *
 * @param offset  what to add everywhere, in the unit of the errors
 * @param tilt    what to add per unit of x
 * @param largest largest absolute error after the correction, in limits
 * @param data    x and error of each point before the correction
 * @param limits  half width of what is allowed at each point
 */
public record MinimaxAdjustment(double offset, double tilt, double largest, FittedData data,
                                List<Double> limits) {
    private static final double ROUNDING = 1e-13;
    private static final double SAME = 1e-9;

    /** Checks the components. */
    public MinimaxAdjustment {
        Checks.finite("offset", offset);
        Checks.finite("tilt", tilt);
        Checks.notNegative("largest", largest);
        Objects.requireNonNull(data, "data");
        limits = List.copyOf(limits);
    }

    /**
     * Finds the correction.
     *
     * @param x     n values, not all equal; not modified
     * @param error error at each x; not modified
     * @param limit half width of what is allowed at each x, above 0; not modified
     * @throws IllegalArgumentException if the lengths differ, all x are equal, a limit is not above 0, or a
     *     value is not finite
     */
    public static MinimaxAdjustment of(double[] x, double[] error, double[] limit) {
        Checks.finitePairs(x, error, 2);
        Checks.finitePairs(x, limit, 2);
        for (int i = 0; i < limit.length; i++) {
            Checks.positive("limit[" + i + "]", limit[i]);
        }
        if (Sums.range(x) == 0) {
            throw new IllegalArgumentException("all " + x.length + " x equal " + x[0] + ": no tilt");
        }
        final Correction best = new Search(x, error, limit).run();
        return new MinimaxAdjustment(best.offset(), best.tilt(), best.largest(),
            FittedData.of(x, error).named("x", "error"), Arrays.stream(limit).boxed().toList());
    }

    /**
     * The same correction with names for x and the error, which stand at the axes of its chart.
     *
     * @param xName     name and unit of x
     * @param errorName name and unit of the error
     * @throws IllegalArgumentException if a name is blank
     */
    public MinimaxAdjustment named(String xName, String errorName) {
        return new MinimaxAdjustment(offset, tilt, largest, data.named(xName, errorName), limits);
    }

    /** Error of a point, counted from 0, after the correction. */
    public double after(int index) {
        return data.y(index) + offset + tilt * data.x(index);
    }

    /** Error of a point, counted from 0, before the correction, as a share of its limit. */
    public double shareBefore(int index) {
        return data.y(index) / limits.get(index);
    }

    /** Error of a point, counted from 0, after the correction, as a share of its limit. */
    public double shareAfter(int index) {
        return after(index) / limits.get(index);
    }

    /** Largest absolute error before the correction, in limits. */
    public double largestBefore() {
        return IntStream.range(0, data.size()).mapToDouble(i -> Math.abs(shareBefore(i))).max().orElseThrow();
    }

    /**
     * Indices, from 0, of the points at which the largest error is reached after the correction: they fix it.
     * Empty where nothing is left, since then any point may.
     */
    public List<Integer> fixedBy() {
        return IntStream.range(0, data.size())
            .filter(i -> largest > SAME && Math.abs(shareAfter(i)) >= largest * (1 - SAME)).boxed().toList();
    }

    /**
     * A bound on the largest error, straight over the tilt: what point {@code above} and point {@code below}
     * leave.
     */
    private record Cut(double atZero, double slope) {
        double at(double tilt) {
            return atZero + slope * tilt;
        }
    }

    /** A correction and what it leaves. */
    private record Correction(double offset, double tilt, double largest) { }

    /** One tilt tried. */
    private record Trial(Correction adjustment, Cut cut) { }

    private static final class Search {
        private final double[] x;
        private final double[] error;
        private final double[] limit;

        Search(double[] x, double[] error, double[] limit) {
            this.x = x;
            this.error = error;
            this.limit = limit;
        }

        Correction run() {
            int least = 0;
            int most = 0;
            for (int i = 1; i < x.length; i++) {
                least = x[i] < x[least] ? i : least;
                most = x[i] > x[most] ? i : most;
            }
            Cut rising = cut(most, least);
            Cut falling = cut(least, most);
            Correction best = at(0).adjustment();
            double reached = -1;
            while (true) {
                final double tilt = (falling.atZero() - rising.atZero()) / (rising.slope() - falling.slope());
                final double bound = rising.at(tilt);
                final Trial here = at(tilt);
                best = here.adjustment().largest() <= best.largest() ? here.adjustment() : best;
                final double aim = bound + ROUNDING * (1 + Math.abs(bound));
                if (here.adjustment().largest() <= aim || here.cut().slope() == 0 || !(bound > reached)) {
                    return best;
                }
                reached = bound;
                rising = here.cut().slope() > 0 ? here.cut() : rising;
                falling = here.cut().slope() < 0 ? here.cut() : falling;
            }
        }

        private Cut cut(int above, int below) {
            final double both = limit[above] + limit[below];
            return new Cut((error[above] - error[below]) / both, (x[above] - x[below]) / both);
        }

        /** The best offset for a tilt, and the bound that the two points which fix it leave. */
        private Trial at(double tilt) {
            final double[] a = new double[x.length];
            final double[] b = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                a[i] = 1 / limit[i];
                b[i] = -(error[i] + tilt * x[i]) / limit[i];
            }
            final MinimaxFactor offset = MinimaxFactor.of(a, b);
            final int first = offset.fixedBy().get(0);
            final int last = offset.fixedBy().get(offset.fixedBy().size() - 1);
            final boolean isAbove = a[first] * offset.value() > b[first];
            return new Trial(new Correction(offset.value(), tilt, offset.largest()),
                isAbove ? cut(first, last) : cut(last, first));
        }
    }

    @Override
    public String toString() {
        return "offset " + NumberText.significant(offset, 4) + ", tilt " + NumberText.significant(tilt, 4)
            + " per unit of x: the largest error goes from " + NumberText.fixed(largestBefore(), 3) + " to "
            + NumberText.fixed(largest, 3) + " of its limit";
    }
}
