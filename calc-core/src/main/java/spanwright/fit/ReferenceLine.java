package spanwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A reference line {@code y = anchorY + slope * (x - anchorX)} and how far some points lie from it. The line
 * is exact: it has no uncertainty of its own.
 *
 * <p>Units: those of the x and y it was made from. In a channel's analysis both are percent of span.
 *
 * @param kind       how the line was placed
 * @param anchorX    x of a point on the line
 * @param anchorY    y of that point
 * @param slope      change of y per unit of x
 * @param data       the points
 * @param deviations of each point, y minus the line, in the order of the points
 * @param fixedBy    indices of the points that fix the line, from 0; empty where no single points do
 */
public record ReferenceLine(ReferenceKind kind, double anchorX, double anchorY, double slope,
                            FittedData data, List<Double> deviations, List<Integer> fixedBy) {
    /** Checks the components and copies the lists. */
    public ReferenceLine {
        Objects.requireNonNull(kind, "kind");
        Checks.finite("anchorX", anchorX);
        Checks.finite("anchorY", anchorY);
        Checks.finite("slope", slope);
        deviations = List.copyOf(deviations);
        fixedBy = List.copyOf(fixedBy);
        Checks.atLeast("number of deviations", deviations.size(), 2);
        deviations.forEach(d -> Checks.finite("deviation", d));
        if (deviations.size() != data.size()) {
            throw new IllegalArgumentException(deviations.size() + " deviations of " + data.size()
                + " points");
        }
        final int last = deviations.size() - 1;
        fixedBy.forEach(i -> Checks.within("index of a point that fixes the line", i, 0, last));
    }

    /**
     * The line whose largest deviation is the least of all lines, exactly (Chebyshev, minimax). Three points
     * fix it: two on one side, one between them on the other.
     *
     * @param x n values, n at least 2, not all equal; not modified
     * @param y n values; not modified
     * @throws IllegalArgumentException if the lengths differ, n is below 2, all x are equal, or a value is
     * not finite
     */
    public static ReferenceLine independent(double[] x, double[] y) {
        checked(x, y);
        return MinimaxLine.through(x, y);
    }

    /**
     * The line through the point of lowest x whose largest deviation from the others is the least, exactly.
     *
     * @param x n values, n at least 2, the lowest of them only once; not modified
     * @param y n values; not modified
     * @throws IllegalArgumentException if the lengths differ, n is below 2, the lowest x occurs twice, or a
     *     value is not finite
     */
    public static ReferenceLine zeroBased(double[] x, double[] y) {
        checked(x, y);
        final int first = end(x, 1);
        final double[] run = IntStream.range(0, x.length).mapToDouble(i -> x[i] - x[first]).toArray();
        final double[] rise = IntStream.range(0, x.length).mapToDouble(i -> y[i] - y[first]).toArray();
        final MinimaxFactor m = MinimaxFactor.of(run, rise);
        final List<Integer> fixed = new ArrayList<>(m.fixedBy());
        fixed.add(first);
        return of(ReferenceKind.ZERO_BASED, x[first], y[first], m.value(), x, y,
            fixed.stream().sorted().distinct().toList());
    }

    /**
     * The line through the points of lowest and highest x.
     *
     * @param x n values, n at least 2, the lowest and the highest of them only once; not modified
     * @param y n values; not modified
     * @throws IllegalArgumentException if the lengths differ, n is below 2, the lowest or highest x occurs
     *     twice, or a value is not finite
     */
    public static ReferenceLine terminalBased(double[] x, double[] y) {
        checked(x, y);
        final int first = end(x, 1);
        final int last = end(x, -1);
        final double slope = (y[last] - y[first]) / (x[last] - x[first]);
        return of(ReferenceKind.TERMINAL_BASED, x[first], y[first], slope, x, y,
            List.of(Math.min(first, last), Math.max(first, last)));
    }

    /**
     * A given line, such as the specified characteristic.
     *
     * @param x         n values, n at least 2, not all equal; not modified
     * @param y         n values; not modified
     * @param slope     of the specified characteristic
     * @param intercept of the specified characteristic at x = 0
     * @throws IllegalArgumentException if the lengths differ, n is below 2, all x are equal, or a value is
     * not finite
     */
    public static ReferenceLine absolute(double[] x, double[] y, double slope, double intercept) {
        checked(x, y);
        return of(ReferenceKind.ABSOLUTE, 0, intercept, slope, x, y, List.of());
    }

    /**
     * The least-squares line, for comparison.
     *
     * @param x n values, n at least 2, not all equal; not modified
     * @param y n values; not modified
     * @throws IllegalArgumentException if the lengths differ, n is below 2, all x are equal, or a value is
     * not finite
     */
    public static ReferenceLine leastSquares(double[] x, double[] y) {
        checked(x, y);
        final double meanX = Sums.mean(x);
        final double meanY = Sums.mean(y);
        return of(ReferenceKind.LEAST_SQUARES, meanX, meanY,
            Sums.ofProducts(x, meanX, y, meanY) / Sums.ofProducts(x, meanX, x, meanX), x, y, List.of());
    }

    static ReferenceLine of(ReferenceKind kind, double anchorX, double anchorY, double slope,
                            double[] x, double[] y, List<Integer> fixedBy) {
        final List<Double> deviations = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            deviations.add((y[i] - anchorY) - slope * (x[i] - anchorX));
        }
        return new ReferenceLine(kind, anchorX, anchorY, slope, FittedData.of(x, y), deviations, fixedBy);
    }

    /**
     * The same line with names for x and y, which stand at the axes of its chart.
     *
     * @param xName name and unit of x
     * @param yName name and unit of y
     * @throws IllegalArgumentException if a name is blank
     */
    public ReferenceLine named(String xName, String yName) {
        return new ReferenceLine(kind, anchorX, anchorY, slope, data.named(xName, yName), deviations,
            fixedBy);
    }

    /** y of the line at x. */
    public double at(double x) {
        return anchorY + slope * (x - anchorX);
    }

    /** y of the line at x = 0. */
    public double intercept() {
        return at(0);
    }

    /** The highest of the deviations; negative only where all points lie below the line. */
    public double highestDeviation() {
        return deviations.stream().mapToDouble(d -> d).max().orElseThrow();
    }

    /** The lowest of the deviations; positive only where all points lie above the line. */
    public double lowestDeviation() {
        return deviations.stream().mapToDouble(d -> d).min().orElseThrow();
    }

    /** The largest deviation without its sign: the non-linearity by this line. */
    public double largestDeviation() {
        return Math.max(highestDeviation(), -lowestDeviation());
    }

    private static void checked(double[] x, double[] y) {
        Checks.finitePairs(x, y, 2);
        if (Sums.range(x) == 0) {
            throw new IllegalArgumentException("all " + x.length + " x equal " + x[0] + ": no slope");
        }
    }

    /** Index of the lowest (side 1) or highest (side -1) x. */
    private static int end(double[] x, int side) {
        int best = 0;
        for (int i = 1; i < x.length; i++) {
            best = side * x[i] < side * x[best] ? i : best;
        }
        for (int i = 0; i < x.length; i++) {
            if (i != best && x[i] == x[best]) {
                throw new IllegalArgumentException("x = " + x[i] + " is the "
                    + (side > 0 ? "lowest" : "highest")
                        + " and occurs twice: average the readings of a point before drawing this line");
            }
        }
        return best;
    }

    @Override
    public String toString() {
        return kind + ": largest deviation " + NumberText.fixed(largestDeviation(), 4) + " ("
            + NumberText.signed(highestDeviation(), 4) + " / " + NumberText.signed(lowestDeviation(), 4)
            + "), slope "
            + NumberText.significant(slope, 7) + ", intercept " + NumberText.significant(intercept(), 5);
    }
}
