package spanwright.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.knowm.xchart.internal.chartpart.Annotation;

/**
 * What is written or drawn into the plot in data coordinates: a label beside its line, a dashed limit, a
 * shaded band. XChart's own text annotation can only be centred, so labels would run out of the plot at its
 * edges.
 */
final class PlotNote extends Annotation {
    /** Which end of the text stands at the given place. */
    enum Anchor { LEFT, CENTRE, RIGHT }

    static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
    private static final BasicStroke DASHES =
        new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {6, 4}, 0);

    private final Painter painter;

    private PlotNote(Painter painter) {
        super(false);
        this.painter = painter;
    }

    /** Draws with the scale of the plot at hand. */
    interface Painter {
        void paint(PlotNote plot, Graphics2D graphics);
    }

    /** What a painter draws. */
    static PlotNote drawn(Painter painter) {
        return new PlotNote(painter);
    }

    /** Text on a ground of its own, so that lines behind it do not run through the letters. */
    static void label(Graphics2D g, String text, double left, double baseline, Color colour) {
        g.setFont(FONT);
        g.setColor(Color.WHITE);
        g.fill(new Rectangle2D.Double(left - 2, baseline - 11, TextSize.width(text, FONT) + 4, 14));
        g.setColor(colour);
        g.drawString(text, (float) left, (float) baseline);
    }

    /** Where a value of x stands on the screen. */
    double x(double value) {
        return getXAxisScreenValue(value);
    }

    /** Where a value of y stands on the screen. */
    double y(double value) {
        return getYAxisScreenValue(value);
    }

    /** Left edge of the plot on the screen. */
    double left() {
        return getXAxisScreenValueForMin();
    }

    /** Right edge of the plot on the screen. */
    double right() {
        return getXAxisScreenValueForMax();
    }

    /** Upper edge of the plot on the screen, whose values grow downwards. */
    double top() {
        return getYAxisScreenValueForMin();
    }

    /** Lower edge of the plot on the screen. */
    double bottom() {
        return getYAxisScreenValueForMax();
    }

    /** Text at a place in data coordinates, moved by pixels (down is positive). */
    static PlotNote text(String text, double x, double y, Anchor anchor, Color colour, int moveDown) {
        return new PlotNote((plot, g) -> {
            g.setFont(FONT);
            final double width = TextSize.width(text, FONT);
            double left = plot.x(x);
            if (anchor == Anchor.CENTRE) {
                left -= width / 2;
            } else if (anchor == Anchor.RIGHT) {
                left -= width;
            }
            left = Math.max(plot.left() + 2, Math.min(left, plot.right() - width - 2));
            final double baseline = plot.y(y) + moveDown;
            label(g, text, left, baseline, colour);
        });
    }

    /** A dashed line at a value of y, across the plot, its label above or below at the right end. */
    static PlotNote horizontalLimit(double y, String label, Color colour, boolean labelAbove) {
        return new PlotNote((plot, g) -> {
            final double at = plot.y(y);
            g.setColor(colour);
            g.setStroke(DASHES);
            g.draw(new Line2D.Double(plot.left(), at, plot.right(), at));
            g.setFont(FONT);
            final double left = plot.right() - TextSize.width(label, FONT) - 6;
            g.drawString(label, (float) left, (float) (labelAbove ? at - 4 : at + 14));
        });
    }

    /** A filled rectangle. */
    static PlotNote tile(double x1, double x2, double y1, double y2, Color colour) {
        return new PlotNote((plot, g) -> {
            final double left = plot.x(x1);
            final double top = plot.y(y2);
            g.setColor(colour);
            // Half a pixel more to the right and down, or hairlines show between tiles.
            g.fill(new Rectangle2D.Double(left, top, plot.x(x2) - left + 0.5, plot.y(y1) - top + 0.5));
        });
    }

    /** The room between two curves, tinted so that lines and grid show through. */
    static PlotNote band(double[] x, double[] low, double[] high, Ink ink) {
        final Color solid = ink.colour();
        return new PlotNote((plot, g) -> {
            final Path2D shape = new Path2D.Double();
            shape.moveTo(plot.x(x[0]), plot.y(low[0]));
            for (int i = 1; i < x.length; i++) {
                shape.lineTo(plot.x(x[i]), plot.y(low[i]));
            }
            for (int i = x.length - 1; i >= 0; i--) {
                shape.lineTo(plot.x(x[i]), plot.y(high[i]));
            }
            shape.closePath();
            g.setColor(new Color(solid.getRed(), solid.getGreen(), solid.getBlue(), 60));
            g.fill(shape);
        });
    }

    /** A line in pieces. */
    static PlotNote segments(List<Contours.Segment> pieces, Color colour, float width) {
        return new PlotNote((plot, g) -> {
            g.setColor(colour);
            g.setStroke(new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            for (Contours.Segment s : pieces) {
                g.draw(new Line2D.Double(plot.x(s.x1()), plot.y(s.y1()), plot.x(s.x2()), plot.y(s.y2())));
            }
        });
    }

    /** What the plot shows, in its lower right corner. */
    static PlotNote corner(String text, Color colour) {
        return new PlotNote((plot, g) -> {
            g.setFont(FONT);
            final double left = plot.right() - TextSize.width(text, FONT) - 10;
            final double baseline = plot.bottom() - 22;
            label(g, text, left, baseline, colour);
        });
    }

    /** Text at the left edge of the plot, above a value of y. */
    static PlotNote leftLabel(String text, double y, Color colour) {
        return new PlotNote((plot, g) -> {
            g.setFont(FONT);
            g.setColor(colour);
            g.drawString(text, (float) plot.left() + 6, (float) plot.y(y) - 5);
        });
    }

    /** A dashed line at a value of x, its label beside it, so many text lines below the top of the plot. */
    static PlotNote verticalLimit(double x, String label, Color colour, boolean labelRight, int textLine) {
        return new PlotNote((plot, g) -> {
            final double at = plot.x(x);
            g.setColor(colour);
            g.setStroke(DASHES);
            g.draw(new Line2D.Double(at, plot.top(), at, plot.bottom()));
            g.setFont(FONT);
            final double left = labelRight ? at + 5 : at - 5 - TextSize.width(label, FONT);
            final double baseline = plot.top() + 14 + 16.0 * textLine;
            label(g, label, left, baseline, colour);
        });
    }

    /** A horizontal bracket from x1 to x2 at y with end marks, its label to the right of it or above. */
    static PlotNote interval(double x1, double x2, double y, String label, Color colour) {
        return new PlotNote((plot, g) -> {
            final double left = plot.x(x1);
            final double right = plot.x(x2);
            final double at = plot.y(y);
            g.setColor(colour);
            g.setStroke(new BasicStroke(2f));
            g.draw(new Line2D.Double(left, at, right, at));
            g.draw(new Line2D.Double(left, at - 5, left, at + 5));
            g.draw(new Line2D.Double(right, at - 5, right, at + 5));
            g.setFont(FONT);
            final double width = TextSize.width(label, FONT);
            final double middle = (left + right) / 2 - width / 2;
            label(g, label, middle, at - 6, colour);
        });
    }

    @Override
    public void paint(Graphics2D graphics) {
        painter.paint(this, graphics);
    }
}
