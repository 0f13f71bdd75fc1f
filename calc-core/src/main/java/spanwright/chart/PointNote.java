package spanwright.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.knowm.xchart.internal.chartpart.Annotation;

/** What belongs to single points of a plot, in data coordinates: rings, bars of uncertainty, brackets. */
final class PointNote extends Annotation {
    private static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
    private static final double RING = 8;
    private static final double FOOT = 5;

    private final Painter painter;

    private PointNote(Painter painter) {
        super(false);
        this.painter = painter;
    }

    /** Draws with the scale of the plot at hand. */
    private interface Painter {
        void paint(PointNote plot, Graphics2D graphics);
    }

    /** A point with half widths of what is drawn about it. */
    record Cross(double x, double y, double halfWidth, double halfHeight) { }

    /** A ring about a point. */
    static PointNote ring(double x, double y, Color colour) {
        return new PointNote((plot, g) -> {
            g.setColor(colour);
            g.setStroke(new BasicStroke(2f));
            g.draw(new Ellipse2D.Double(plot.getXAxisScreenValue(x) - RING,
                plot.getYAxisScreenValue(y) - RING, 2 * RING, 2 * RING));
        });
    }

    /** Bars of uncertainty along x and y. */
    static PointNote crosses(List<Cross> crosses, Color colour) {
        return new PointNote((plot, g) -> {
            g.setColor(colour);
            g.setStroke(new BasicStroke(1.2f));
            for (Cross c : crosses) {
                final double x = plot.getXAxisScreenValue(c.x());
                final double y = plot.getYAxisScreenValue(c.y());
                if (c.halfWidth() > 0) {
                    g.draw(new Line2D.Double(plot.getXAxisScreenValue(c.x() - c.halfWidth()), y,
                        plot.getXAxisScreenValue(c.x() + c.halfWidth()), y));
                }
                if (c.halfHeight() > 0) {
                    g.draw(new Line2D.Double(x, plot.getYAxisScreenValue(c.y() - c.halfHeight()), x,
                        plot.getYAxisScreenValue(c.y() + c.halfHeight())));
                }
            }
        });
    }

    /** An upright bracket from y1 to y2 at x, with its label to the right, or to the left near the edge. */
    static PointNote bracket(double x, double y1, double y2, String label, Color colour) {
        return new PointNote((plot, g) -> {
            final double at = plot.getXAxisScreenValue(x);
            final double low = plot.getYAxisScreenValue(y1);
            final double high = plot.getYAxisScreenValue(y2);
            g.setColor(colour);
            g.setStroke(new BasicStroke(2f));
            g.draw(new Line2D.Double(at, low, at, high));
            g.draw(new Line2D.Double(at - FOOT, low, at + FOOT, low));
            g.draw(new Line2D.Double(at - FOOT, high, at + FOOT, high));
            final double width = TextSize.width(label, FONT);
            final boolean right = at + 12 + width < plot.getXAxisScreenValueForMax();
            label(g, label, right ? at + 12 : at - 12 - width, (low + high) / 2 + 4, colour);
        });
    }

    /** From y down to the axis at x1 and x2, and a thick line between the two on the axis. */
    static PointNote drops(double x1, double x2, double y, Color colour) {
        return new PointNote((plot, g) -> {
            final double left = plot.getXAxisScreenValue(x1);
            final double right = plot.getXAxisScreenValue(x2);
            final double floor = plot.getYAxisScreenValueForMax();
            g.setColor(colour);
            g.setStroke(new BasicStroke(1.2f));
            g.draw(new Line2D.Double(left, plot.getYAxisScreenValue(y), left, floor));
            g.draw(new Line2D.Double(right, plot.getYAxisScreenValue(y), right, floor));
            g.setStroke(new BasicStroke(4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
            g.draw(new Line2D.Double(left, floor, Math.max(right, left + 1), floor));
        });
    }

    /** A label beside a point, to its right, or left near the edge; moved by pixels (down positive). */
    static PointNote label(double x, double y, String text, Color colour, int moveDown) {
        return new PointNote((plot, g) -> {
            final double at = plot.getXAxisScreenValue(x);
            final double width = TextSize.width(text, FONT);
            final boolean right = at + 14 + width < plot.getXAxisScreenValueForMax();
            label(g, text, right ? at + 14 : at - 14 - width, plot.getYAxisScreenValue(y) + moveDown, colour);
        });
    }

    /** What a mark or a line means, at the top of the plot: left, or right aligned, on a text line from 0. */
    static PointNote key(String text, Color colour, boolean left, int textLine) {
        return new PointNote((plot, g) -> {
            final double from = left ? plot.getXAxisScreenValueForMin() + 8.0
                : plot.getXAxisScreenValueForMax() - TextSize.width(text, FONT) - 8;
            // Screen values grow downwards: the smallest is the top of the plot.
            label(g, text, from, plot.getYAxisScreenValueForMin() + 15 + 16.0 * textLine, colour);
        });
    }

    private static void label(Graphics2D g, String text, double left, double baseline, Color colour) {
        g.setFont(FONT);
        g.setColor(Color.WHITE);
        g.fill(new Rectangle2D.Double(left - 2, baseline - 11, TextSize.width(text, FONT) + 4, 14));
        g.setColor(colour);
        g.drawString(text, (float) left, (float) baseline);
    }

    @Override
    public void paint(Graphics2D graphics) {
        painter.paint(this, graphics);
    }
}
