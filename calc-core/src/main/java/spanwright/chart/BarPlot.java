package spanwright.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Objects;
import org.knowm.xchart.internal.chartpart.IChart;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Horizontal bars with their names written before them and their figures behind, in the order given. XChart's
 * own horizontal bars give every name the same narrow column and cut it; ours take the room the longest name
 * needs.
 */
final class BarPlot implements IChart {
    private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
    private static final Font AXIS = new Font(Font.SANS_SERIF, Font.PLAIN, 13);
    private static final int ROW = 30;
    private static final int MARGIN = 12;
    private static final int FOOT = 44;

    private final String axis;
    private final List<Bar> bars;

    /**
     * One bar.
     *
     * @param name   before the bar
     * @param from   where it begins, usually 0
     * @param to     where it ends
     * @param figure behind the bar
     * @param ink    its colour
     */
    record Bar(String name, double from, double to, String figure, Ink ink) {
        Bar {
            Checks.notBlank("name", name);
            Checks.finite("from", from);
            Checks.finite("to", to);
            Objects.requireNonNull(figure, "figure");
            Objects.requireNonNull(ink, "ink");
        }
    }

    BarPlot(String axis, List<Bar> bars) {
        this.axis = Checks.notBlank("axis", axis);
        this.bars = List.copyOf(bars);
        Checks.atLeast("number of bars", this.bars.size(), 1);
    }

    @Override
    public void paint(Graphics2D g, int width, int height) {
        final double names = bars.stream().mapToDouble(b -> TextSize.width(b.name(), TEXT)).max().orElse(0);
        final double figures = bars.stream().mapToDouble(b -> TextSize.width(b.figure(), TEXT)).max()
            .orElse(0);
        final double left = MARGIN + Math.min(names, width * 0.5) + 8;
        final double right = width - MARGIN - figures - 8;
        final double low = Math.min(0, bars.stream().mapToDouble(b -> Math.min(b.from(), b.to())).min()
            .orElse(0));
        final double high = Math.max(0, bars.stream().mapToDouble(b -> Math.max(b.from(), b.to())).max()
            .orElse(0));
        final double scale = (right - left) / (high > low ? high - low : 1);
        paintAxis(g, left, low, high, scale);
        for (int i = 0; i < bars.size(); i++) {
            final Bar bar = bars.get(i);
            final double top = MARGIN + i * (double) ROW;
            final double x1 = left + (Math.min(bar.from(), bar.to()) - low) * scale;
            final double x2 = left + (Math.max(bar.from(), bar.to()) - low) * scale;
            g.setColor(bar.ink().colour());
            g.fill(new Rectangle2D.Double(x1, top + 4, Math.max(1, x2 - x1), ROW - 10));
            g.setFont(TEXT);
            g.setColor(Color.BLACK);
            final float baseline = (float) (top + ROW / 2.0 + 3);
            g.drawString(bar.name(), (float) (left - 8 - TextSize.width(bar.name(), TEXT)), baseline);
            g.drawString(bar.figure(), (float) (x2 + 6), baseline);
        }
    }

    private void paintAxis(Graphics2D g, double left, double low, double high, double scale) {
        final double bottom = MARGIN + bars.size() * (double) ROW + 2;
        final double step = Steps.round((high - low) / 5);
        g.setFont(TEXT);
        for (long k = (long) Math.ceil(low / step - 1e-9); k * step <= high * (1 + 1e-9); k++) {
            final double x = left + (k * step - low) * scale;
            g.setColor(Ink.QUIET);
            g.setStroke(new BasicStroke(k == 0 ? 1.4f : 0.7f));
            g.draw(new Line2D.Double(x, MARGIN, x, bottom));
            g.setColor(Ink.SOFT_TEXT);
            final String tick = NumberText.plain(k * step, 4);
            g.drawString(tick, (float) (x - TextSize.width(tick, TEXT) / 2), (float) (bottom + 15));
        }
        g.setFont(AXIS);
        g.setColor(Color.BLACK);
        g.drawString(axis, (float) (left + (high - low) * scale / 2 - TextSize.width(axis, AXIS) / 2),
            (float) (bottom + 35));
    }

    @Override
    public int getWidth() {
        return Plot.WIDTH;
    }

    @Override
    public int getHeight() {
        return MARGIN + bars.size() * ROW + FOOT;
    }

    @Override
    public String getTitle() {
        return axis;
    }
}
