package spanwright.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Lines of equal height over a rectangular grid. Each cell is parted into two triangles, in which the height
 * is plane: a line can then cross a cell one way only. Cells with a corner of unknown height are left out.
 */
final class Contours {
    private final double[] x;
    private final double[] y;
    private final double[][] height;

    /** A piece of a line in data coordinates. */
    record Segment(double x1, double y1, double x2, double y2) {
        double middleX() {
            return (x1 + x2) / 2;
        }

        double middleY() {
            return (y1 + y2) / 2;
        }
    }

    /**
     * A grid.
     *
     * @param height at x i and y j; NaN where it is not known
     */
    Contours(double[] x, double[] y, double[][] height) {
        this.x = x.clone();
        this.y = y.clone();
        this.height = new double[x.length][];
        for (int i = 0; i < x.length; i++) {
            this.height[i] = height[i].clone();
        }
    }

    /** The pieces of the line at a level. */
    List<Segment> at(double level) {
        final List<Segment> segments = new ArrayList<>();
        for (int i = 0; i + 1 < x.length; i++) {
            for (int j = 0; j + 1 < y.length; j++) {
                final double[] a = corner(i, j);
                final double[] b = corner(i + 1, j);
                final double[] c = corner(i, j + 1);
                final double[] d = corner(i + 1, j + 1);
                if (Double.isFinite(a[2] + b[2] + c[2] + d[2])) {
                    triangle(segments, level, a, b, c);
                    triangle(segments, level, d, b, c);
                }
            }
        }
        return segments;
    }

    private double[] corner(int i, int j) {
        return new double[] {x[i], y[j], height[i][j]};
    }

    private static void triangle(List<Segment> segments, double level, double[] a, double[] b, double[] c) {
        final List<double[]> crossings = new ArrayList<>();
        crossing(crossings, level, a, b);
        crossing(crossings, level, b, c);
        crossing(crossings, level, c, a);
        if (crossings.size() == 2) {
            segments.add(new Segment(crossings.get(0)[0], crossings.get(0)[1], crossings.get(1)[0],
                crossings.get(1)[1]));
        }
    }

    /** Where an edge passes the level; a corner on the level counts as above it, so none is met twice. */
    private static void crossing(List<double[]> crossings, double level, double[] a, double[] b) {
        if (a[2] >= level != b[2] >= level) {
            final double t = (level - a[2]) / (b[2] - a[2]);
            crossings.add(new double[] {a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])});
        }
    }
}
