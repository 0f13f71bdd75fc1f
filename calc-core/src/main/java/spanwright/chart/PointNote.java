package spanwright.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.List;

/** What belongs to single points of a plot, in data coordinates: rings, bars of uncertainty, brackets. */
final class PointNote {
    private static final Font FONT = PlotNote.FONT;
    private static final double RING = 8;
    private static final double FOOT = 5;

    private PointNote() { }

    /** A point with half widths of what is drawn about it. */
    record Cross(double x, double y, double halfWidth, double halfHeight) { }

    /** A ring about a point. */
    static PlotNote ring(double x, double y, Color colour) {
        return PlotNote.drawn((plot, g) -> {
            g.setColor(colour);
            g.setStroke(new BasicStroke(2f));
            g.draw(new Ellipse2D.Double(plot.x(x) - RING, plot.y(y) - RING, 2 * RING, 2 * RING));
        });
    }

    /** Bars of uncertainty along x and y. */
    static PlotNote crosses(List<Cross> crosses, Color colour) {
        return PlotNote.drawn((plot, g) -> {
            g.setColor(colour);
            g.setStroke(new BasicStroke(1.2f));
            for (Cross c : crosses) {
                final double x = plot.x(c.x());
                final double y = plot.y(c.y());
                if (c.halfWidth() > 0) {
                    g.draw(new Line2D.Double(plot.x(c.x() - c.halfWidth()), y,
                        plot.x(c.x() + c.halfWidth()), y));
                }
                if (c.halfHeight() > 0) {
                    g.draw(new Line2D.Double(x, plot.y(c.y() - c.halfHeight()), x,
                        plot.y(c.y() + c.halfHeight())));
                }
            }
        });
    }

    /** An upright bracket from y1 to y2 at x, with its label to the right, or to the left near the edge. */
    static PlotNote bracket(double x, double y1, double y2, String label, Color colour) {
        return PlotNote.drawn((plot, g) -> {
            final double at = plot.x(x);
            final double low = plot.y(y1);
            final double high = plot.y(y2);
            g.setColor(colour);
            g.setStroke(new BasicStroke(2f));
            g.draw(new Line2D.Double(at, low, at, high));
            g.draw(new Line2D.Double(at - FOOT, low, at + FOOT, low));
            g.draw(new Line2D.Double(at - FOOT, high, at + FOOT, high));
            final double width = TextSize.width(label, FONT);
            final boolean right = at + 12 + width < plot.right();
            PlotNote.label(g, label, right ? at + 12 : at - 12 - width, (low + high) / 2 + 4, colour);
        });
    }

    /** From y down to the axis at x1 and x2, and a thick line between the two on the axis. */
    static PlotNote drops(double x1, double x2, double y, Color colour) {
        return PlotNote.drawn((plot, g) -> {
            final double left = plot.x(x1);
            final double right = plot.x(x2);
            final double floor = plot.bottom();
            g.setColor(colour);
            g.setStroke(new BasicStroke(1.2f));
            g.draw(new Line2D.Double(left, plot.y(y), left, floor));
            g.draw(new Line2D.Double(right, plot.y(y), right, floor));
            g.setStroke(new BasicStroke(4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
            g.draw(new Line2D.Double(left, floor, Math.max(right, left + 1), floor));
        });
    }

    /** A label beside a point, to its right, or left near the edge; moved by pixels (down positive). */
    static PlotNote label(double x, double y, String text, Color colour, int moveDown) {
        return PlotNote.drawn((plot, g) -> {
            final double at = plot.x(x);
            final double width = TextSize.width(text, FONT);
            final boolean right = at + 14 + width < plot.right();
            PlotNote.label(g, text, right ? at + 14 : at - 14 - width, plot.y(y) + moveDown, colour);
        });
    }

    /** What a mark or a line means, at the top of the plot: left, or right aligned, on a text line from 0. */
    static PlotNote key(String text, Color colour, boolean left, int textLine) {
        return PlotNote.drawn((plot, g) -> {
            final double from = left ? plot.left() + 8.0
                : plot.right() - TextSize.width(text, FONT) - 8;
            PlotNote.label(g, text, from, plot.top() + 15 + 16.0 * textLine, colour);
        });
    }
}
