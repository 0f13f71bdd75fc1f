package spanwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The line with the least largest deviation from some points, exactly.
 *
 * <p>For a given slope the best line runs midway in the strip that holds all points. The height of that strip
 * is convex in the slope and made of straight pieces that meet where an edge of the convex hull lies along
 * the strip. So it suffices to try the slopes of the hull's edges: no iteration, no tolerance.
 */
final class MinimaxLine {
    private final double[] x;
    private final double[] y;
    private double slope;
    private double height = Double.POSITIVE_INFINITY;
    private int[] edge;

    private MinimaxLine(double[] x, double[] y) {
        this.x = x;
        this.y = y;
    }

    /** The independent line; x and y have been checked, and x takes two values at least. */
    static ReferenceLine through(double[] x, double[] y) {
        final MinimaxLine search = new MinimaxLine(x, y);
        search.tryEdges(1);
        search.tryEdges(-1);
        return search.result();
    }

    private void tryEdges(int side) {
        final List<Integer> hull = hull(side);
        for (int k = 1; k < hull.size(); k++) {
            final int i = hull.get(k - 1);
            final int j = hull.get(k);
            final double m = (y[j] - y[i]) / (x[j] - x[i]);
            final double h = extreme(m, i, 1) - extreme(m, i, -1);
            if (h < height) {
                height = h;
                slope = m;
                edge = new int[] {i, j};
            }
        }
    }

    private ReferenceLine result() {
        final int at = edge[0];
        final double above = extreme(slope, at, 1);
        final double below = extreme(slope, at, -1);
        // The edge lies on one side of the strip; the point farthest from it holds the other side.
        final int opposite = farthest(slope, at, above >= -below ? 1 : -1);
        final int[] fixed = {edge[0], edge[1], opposite};
        return ReferenceLine.of(ReferenceKind.INDEPENDENT, x[at], y[at] + (above + below) / 2, slope, x, y,
            Arrays.stream(fixed).sorted().distinct().boxed().toList());
    }

    /** Highest (side 1) or lowest (side -1) deviation from the line of slope m through point i. */
    private double extreme(double m, int i, int side) {
        final int k = farthest(m, i, side);
        return (y[k] - y[i]) - m * (x[k] - x[i]);
    }

    private int farthest(double m, int i, int side) {
        int best = i;
        double most = 0;
        for (int k = 0; k < x.length; k++) {
            final double d = side * ((y[k] - y[i]) - m * (x[k] - x[i]));
            if (d > most) {
                most = d;
                best = k;
            }
        }
        return best;
    }

    /** The upper (side 1) or lower (side -1) chain of the convex hull, one point for each x. */
    private List<Integer> hull(int side) {
        final List<Integer> order = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            order.add(i);
        }
        order.sort(Comparator.<Integer>comparingDouble(i -> x[i]).thenComparingDouble(i -> -side * y[i]));
        final List<Integer> chain = new ArrayList<>();
        for (int i : order) {
            if (!chain.isEmpty() && x[chain.get(chain.size() - 1)] == x[i]) {
                continue;
            }
            int last = chain.size() - 1;
            while (last > 0 && side * turn(chain.get(last - 1), chain.get(last), i) >= 0) {
                chain.remove(last--);
            }
            chain.add(i);
        }
        return chain;
    }

    private double turn(int a, int b, int c) {
        return (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
    }
}
