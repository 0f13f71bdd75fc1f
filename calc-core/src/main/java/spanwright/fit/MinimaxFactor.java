package spanwright.fit;

import java.util.List;
import spanwright.quantity.Checks;

/**
 * The factor g for which the largest of {@code |a[i] g - b[i]|} is as small as it can be, exactly.
 *
 * <p>Each residual is a V over g, so the largest is convex and made of straight pieces; its lowest place is
 * where one rising and one falling piece cross. Starting from a pair, the worst residual elsewhere replaces
 * the member of its own side; the crossing rises each time, so the search ends, after few steps, at the pair
 * that fixes g.
 *
 * @param value   the factor g
 * @param largest largest of the absolute residuals at g, in the unit of b
 * @param fixedBy indices of the one or two residuals that fix g
 */
public record MinimaxFactor(double value, double largest, List<Integer> fixedBy) {
    /** Checks the components. */
    public MinimaxFactor {
        Checks.finite("factor", value);
        Checks.notNegative("largest residual", largest);
        fixedBy = List.copyOf(fixedBy);
    }

    /**
     * Finds the factor.
     *
     * @param a multipliers, at least one of them not 0; not modified
     * @param b targets, as many; not modified
     * @throws IllegalArgumentException if the lengths differ, there are none, a value is not finite, or every
     *                                  multiplier is 0
     */
    public static MinimaxFactor of(double[] a, double[] b) {
        Checks.finitePairs(a, b, 1);
        return new Search(a, b).run();
    }

    /** The search: residuals turned so that every multiplier is positive, and each rises with g. */
    private static final class Search {
        private final double[] a;
        private final double[] b;
        private int rising;
        private int falling;

        Search(double[] a, double[] b) {
            this.a = a.clone();
            this.b = b.clone();
            int steepest = 0;
            for (int i = 0; i < a.length; i++) {
                if (a[i] < 0) {
                    this.a[i] = -a[i];
                    this.b[i] = -b[i];
                }
                steepest = this.a[i] > this.a[steepest] ? i : steepest;
            }
            if (this.a[steepest] == 0) {
                throw new IllegalArgumentException(
                    "all " + a.length + " multipliers are 0: no factor is best");
            }
            rising = steepest;
            falling = steepest;
        }

        MinimaxFactor run() {
            double g = b[rising] / a[rising];
            double bound = 0;
            while (true) {
                final int above = worst(g, 1);
                final int below = worst(g, -1);
                final double over = a[above] * g - b[above];
                final double under = b[below] - a[below] * g;
                if (over >= under) {
                    rising = above;
                } else {
                    falling = below;
                }
                final double raised = (a[rising] * b[falling] - a[falling] * b[rising])
                    / (a[rising] + a[falling]);
                if (!(raised > bound)) {
                    return new MinimaxFactor(g, largestAt(g), List.copyOf(pairAt(g)));
                }
                bound = raised;
                g = (b[rising] + b[falling]) / (a[rising] + a[falling]);
            }
        }

        private int worst(double g, int sign) {
            int worst = -1;
            for (int i = 0; i < a.length; i++) {
                if (a[i] > 0 && (worst < 0
                    || sign * (a[i] * g - b[i]) > sign * (a[worst] * g - b[worst]))) {
                    worst = i;
                }
            }
            return worst;
        }

        private double largestAt(double g) {
            double largest = 0;
            for (int i = 0; i < a.length; i++) {
                largest = Math.max(largest, Math.abs(a[i] * g - b[i]));
            }
            return largest;
        }

        private List<Integer> pairAt(double g) {
            final int above = worst(g, 1);
            final int below = worst(g, -1);
            return above == below ? List.of(above)
                : List.of(Math.min(above, below), Math.max(above, below));
        }
    }
}
