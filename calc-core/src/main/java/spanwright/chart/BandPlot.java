package spanwright.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.knowm.xchart.internal.chartpart.IChart;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.verdict.Acceptance;
import spanwright.verdict.JudgedPoint;
import spanwright.verdict.MeasurementUncertainty;
import spanwright.verdict.ToleranceInterval;

/**
 * Judged points one under the other: what the limit allows, what of it the rule accepts, the guard band
 * between, the error with its coverage interval, and the decision by mark and word. Each point has its own
 * limit, since a limit may change over the range.
 */
final class BandPlot implements IChart {
    private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
    private static final Font AXIS = new Font(Font.SANS_SERIF, Font.PLAIN, 13);
    private static final BasicStroke DASHES =
        new BasicStroke(1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {6, 4}, 0);
    private static final Color ACCEPTED = Ink.BLUE.tint(0.22);
    private static final Color GUARD = Ink.ORANGE.tint(0.45);
    private static final int ROW = 28;
    private static final int MARGIN = 12;
    private static final int HEAD = 26;
    private static final int FOOT = 46;

    private final String axis;
    private final List<Row> rows;

    /** A judged point under its name. */
    record Row(String name, JudgedPoint point) {
        Row {
            Checks.notBlank("name", name);
        }

        String decision() {
            return point.word().mark() + " " + point.word();
        }
    }

    BandPlot(String axis, List<Row> rows) {
        this.axis = Checks.notBlank("axis", axis);
        this.rows = List.copyOf(rows);
        Checks.atLeast("number of judged points", this.rows.size(), 1);
    }

    @Override
    public void paint(Graphics2D g, int width, int height) {
        final double names = rows.stream().mapToDouble(r -> TextSize.width(r.name(), TEXT)).max().orElse(0);
        final double words =
            rows.stream().mapToDouble(r -> TextSize.width(r.decision(), TEXT)).max().orElse(0);
        final double left = MARGIN + Math.min(names, width * 0.4) + 10;
        final double right = width - MARGIN - words - 10;
        final Scale scale = Scale.of(reach(), left, right);
        paintKey(g, left);
        paintAxis(g, scale, HEAD + rows.size() * (double) ROW);
        for (int i = 0; i < rows.size(); i++) {
            paintBands(g, rows.get(i).point(), scale, HEAD + i * (double) ROW);
        }
        for (int i = 0; i < rows.size(); i++) {
            final double top = HEAD + i * (double) ROW;
            paintPoint(g, rows.get(i).point(), scale, top);
            g.setFont(TEXT);
            g.setColor(Color.BLACK);
            final float baseline = (float) (top + ROW / 2.0 + 4);
            g.drawString(rows.get(i).name(), (float) (left - 10 - TextSize.width(rows.get(i).name(), TEXT)),
                baseline);
            g.drawString(rows.get(i).decision(), (float) (right + 10), baseline);
        }
    }

    /** From an error to its place in pixels; what lies beyond the ends is drawn at the end. */
    private record Scale(double low, double high, double left, double right) {
        static Scale of(double reach, double left, double right) {
            final double range = Steps.symmetricRange(reach);
            return new Scale(-range, range, left, right);
        }

        double at(double value) {
            return left + (Math.max(low, Math.min(high, value)) - low) / (high - low) * (right - left);
        }
    }

    /** The largest of all limits, errors and ends of intervals, without sign. */
    private double reach() {
        final List<Double> all = new ArrayList<>();
        for (Row row : rows) {
            final double error = row.point().finding().error();
            all.add(error);
            row.point().finding().uncertainty().ifPresent(u -> {
                all.add(error - u.below());
                all.add(error + u.above());
            });
            row.point().limit().ifPresent(t -> {
                t.lower().ifPresent(all::add);
                t.upper().ifPresent(all::add);
            });
        }
        return all.stream().mapToDouble(Math::abs).max().orElseThrow();
    }

    private static void paintBands(Graphics2D g, JudgedPoint point, Scale scale, double top) {
        if (point.limit().isEmpty()) {
            return;
        }
        final ToleranceInterval limit = point.limit().get();
        if (point.acceptance().filter(a -> a.unmet().isEmpty()).isPresent()) {
            band(g, limit, scale, top, GUARD);
            final Optional<ToleranceInterval> zone = point.acceptance().flatMap(Acceptance::zone);
            zone.ifPresent(z -> band(g, z, scale, top, ACCEPTED));
        }
        g.setColor(Color.BLACK);
        g.setStroke(DASHES);
        limit.lower().ifPresent(v -> g.draw(new Line2D.Double(scale.at(v), top, scale.at(v), top + ROW)));
        limit.upper().ifPresent(v -> g.draw(new Line2D.Double(scale.at(v), top, scale.at(v), top + ROW)));
    }

    private static void band(Graphics2D g, ToleranceInterval where, Scale scale, double top, Color colour) {
        final double from = scale.at(where.lower().orElse(scale.low()));
        final double to = scale.at(where.upper().orElse(scale.high()));
        g.setColor(colour);
        g.fill(new Rectangle2D.Double(from, top + 1, to - from, ROW - 2));
    }

    private static void paintPoint(Graphics2D g, JudgedPoint point, Scale scale, double top) {
        final double error = point.finding().error();
        final double middle = top + ROW / 2.0;
        final double x = scale.at(error);
        g.setColor(Color.BLACK);
        g.setStroke(new BasicStroke(1.8f));
        final Optional<MeasurementUncertainty> u = point.finding().uncertainty();
        u.ifPresent(m -> {
            final double from = scale.at(error - m.below());
            final double to = scale.at(error + m.above());
            g.draw(new Line2D.Double(from, middle, to, middle));
            g.draw(new Line2D.Double(from, middle - 5, from, middle + 5));
            g.draw(new Line2D.Double(to, middle - 5, to, middle + 5));
        });
        final Ellipse2D dot = new Ellipse2D.Double(x - 4.5, middle - 4.5, 9, 9);
        // Full where accepted, hollow where not: the decision can be seen without reading.
        g.setColor(point.word().isAccepted() ? Color.BLACK : Color.WHITE);
        g.fill(dot);
        g.setColor(Color.BLACK);
        g.draw(dot);
    }

    private static void paintKey(Graphics2D g, double left) {
        double x = left;
        x = key(g, x, ACCEPTED, "accepted by the rule");
        x = key(g, x, GUARD, "guard band");
        g.setColor(Color.BLACK);
        g.setStroke(DASHES);
        g.draw(new Line2D.Double(x + 6, 4, x + 6, 20));
        g.drawString("limit", (float) (x + 16), 16f);
    }

    private static double key(Graphics2D g, double x, Color colour, String text) {
        g.setFont(TEXT);
        g.setColor(colour);
        g.fill(new Rectangle2D.Double(x, 6, 14, 12));
        g.setColor(Color.BLACK);
        g.drawString(text, (float) (x + 20), 16f);
        return x + 20 + TextSize.width(text, TEXT) + 18;
    }

    private void paintAxis(Graphics2D g, Scale scale, double bottom) {
        final double step = Steps.round((scale.high() - scale.low()) / 8);
        g.setFont(TEXT);
        final long last = (long) Math.floor(scale.high() / step + 1e-9);
        for (long k = -last; k <= last; k++) {
            final double x = scale.at(k * step);
            g.setColor(k == 0 ? Ink.SOFT_TEXT : Ink.QUIET);
            g.setStroke(new BasicStroke(k == 0 ? 1f : 0.7f));
            g.draw(new Line2D.Double(x, HEAD, x, bottom + 3));
            g.setColor(Ink.SOFT_TEXT);
            final String tick = NumberText.plain(k * step, 4);
            g.drawString(tick, (float) (x - TextSize.width(tick, TEXT) / 2), (float) (bottom + 17));
        }
        g.setFont(AXIS);
        g.setColor(Color.BLACK);
        g.drawString(axis, (float) ((scale.left() + scale.right() - TextSize.width(axis, AXIS)) / 2),
            (float) (bottom + 37));
    }

    @Override
    public int getWidth() {
        return Plot.WIDTH;
    }

    @Override
    public int getHeight() {
        return HEAD + rows.size() * ROW + FOOT;
    }

    @Override
    public String getTitle() {
        return axis;
    }
}
