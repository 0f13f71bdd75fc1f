package spanwright.fit;

import spanwright.quantity.Checks;

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
 */
public record MinimaxAdjustment(double offset, double tilt, double largest) {
    private static final double ROUNDING = 1e-13;

    /** Checks the components. */
    public MinimaxAdjustment {
        Checks.finite("offset", offset);
        Checks.finite("tilt", tilt);
        Checks.notNegative("largest", largest);
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
        return new Search(x, error, limit).run();
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

    /** One tilt tried. */
    private record Trial(MinimaxAdjustment adjustment, Cut cut) { }

    private static final class Search {
        private final double[] x;
        private final double[] error;
        private final double[] limit;

        Search(double[] x, double[] error, double[] limit) {
            this.x = x;
            this.error = error;
            this.limit = limit;
        }

        MinimaxAdjustment run() {
            int least = 0;
            int most = 0;
            for (int i = 1; i < x.length; i++) {
                least = x[i] < x[least] ? i : least;
                most = x[i] > x[most] ? i : most;
            }
            Cut rising = cut(most, least);
            Cut falling = cut(least, most);
            MinimaxAdjustment best = at(0).adjustment();
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
            return new Trial(new MinimaxAdjustment(offset.value(), tilt, offset.largest()),
                isAbove ? cut(first, last) : cut(last, first));
        }
    }
}
