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
import java.util.OptionalDouble;
import org.knowm.xchart.internal.chartpart.IChart;
import spanwright.loop.FaultTable;
import spanwright.loop.ReceiverReading;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Faults one under the other with what each receiver then reads, over the ranges that count as failure and
 * as measurement. A full mark is flagged as a failure, a hollow one is taken for a measurement or for
 * nothing certain: the fault that nobody sees.
 */
final class FaultPlot implements IChart {
    private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
    private static final Font AXIS = new Font(Font.SANS_SERIF, Font.PLAIN, 13);
    private static final Color FAILURE = Ink.ORANGE.tint(0.3);
    private static final Color MEASURING = Ink.BLUE.tint(0.15);
    private static final int ROW = 24;
    private static final int MARGIN = 12;
    private static final int HEAD = 30;
    private static final int FOOT = 46;

    private final FaultTable table;
    private final List<Row> rows = new ArrayList<>();

    /**
     * One reading with one fault.
     *
     * @param name    of fault and receiver
     * @param reading in mA
     * @param words   what becomes of it
     * @param full    whether it is flagged
     */
    private record Row(String name, OptionalDouble reading, String words, boolean full) { }

    FaultPlot(FaultTable table) {
        this.table = table;
        final boolean several = table.rows().stream().anyMatch(r -> r.readings().size() > 1);
        for (FaultTable.Row row : table.rows()) {
            for (ReceiverReading reading : row.readings()) {
                rows.add(row(row.fault().toString(), reading, several));
            }
        }
        Checks.atLeast("number of readings with faults", rows.size(), 1);
    }

    private Row row(String fault, ReceiverReading reading, boolean several) {
        final String name = fault + (several ? " \u2192 " + reading.receiver() : "");
        if (reading.milliamps().isEmpty()) {
            return new Row(name, OptionalDouble.empty(), "not determined", false);
        }
        final double read = reading.milliamps().getAsDouble();
        final boolean right = isRight(read);
        return new Row(name, reading.milliamps(), NumberText.fixed(read, 2) + " mA, " + (right
            ? "still right" : reading.ne43().orElseThrow().toString()), reading.ne43().orElseThrow()
            .isFlagged());
    }

    private boolean isRight(double read) {
        return Math.abs(read - table.milliamps()) <= 1e-6;
    }

    @Override
    public void paint(Graphics2D g, int width, int height) {
        g.setFont(TEXT);
        final double names = rows.stream().mapToDouble(r -> TextSize.width(r.name(), TEXT)).max().orElse(0);
        final double words = rows.stream().mapToDouble(r -> TextSize.width(r.words(), TEXT)).max()
            .orElse(0);
        final double left = MARGIN + names + 10;
        final double right = width - MARGIN - words - 12;
        final double low = Math.min(0, rows.stream().mapToDouble(r -> r.reading().orElse(0)).min()
            .orElse(0) - 1);
        final double high = Math.max(24, rows.stream().mapToDouble(r -> r.reading().orElse(0)).max()
            .orElse(0) + 1);
        final double scale = (right - left) / (high - low);
        paintZones(g, left, low, high, scale);
        for (int i = 0; i < rows.size(); i++) {
            final double middle = HEAD + (i + 0.5) * ROW;
            g.setColor(Color.BLACK);
            g.setFont(TEXT);
            g.drawString(rows.get(i).name(), (float) (left - 10 - TextSize.width(rows.get(i).name(), TEXT)),
                (float) (middle + 4));
            g.drawString(rows.get(i).words(), (float) (right + 12), (float) (middle + 4));
            paintMark(g, rows.get(i), left - low * scale, scale, middle);
        }
    }

    private static void paintMark(Graphics2D g, Row row, double zero, double scale, double middle) {
        if (row.reading().isEmpty()) {
            return;
        }
        final Ellipse2D dot = new Ellipse2D.Double(zero + row.reading().getAsDouble() * scale - 4.5,
            middle - 4.5, 9, 9);
        g.setColor(row.full() ? Color.BLACK : Color.WHITE);
        g.fill(dot);
        g.setColor(Color.BLACK);
        g.setStroke(new BasicStroke(1.6f));
        g.draw(dot);
    }

    private void paintZones(Graphics2D g, double left, double low, double high, double scale) {
        final double bottom = HEAD + rows.size() * (double) ROW;
        final double zero = left - low * scale;
        zone(g, left, zero + 3.6 * scale, bottom, FAILURE);
        zone(g, zero + 3.8 * scale, zero + 20.5 * scale, bottom, MEASURING);
        zone(g, zero + 21 * scale, zero + high * scale, bottom, FAILURE);
        g.setColor(Ink.SOFT_TEXT);
        centred(g, "failure", (left + zero + 3.6 * scale) / 2, HEAD - 8.0, TEXT);
        centred(g, "measurement", zero + 12.15 * scale, HEAD - 8.0, TEXT);
        centred(g, "failure", zero + (21 + high) / 2 * scale, HEAD - 8.0, TEXT);
        final double asked = zero + table.milliamps() * scale;
        g.setStroke(new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10,
            new float[] {6, 4}, 0));
        g.setColor(Color.BLACK);
        g.draw(new Line2D.Double(asked, HEAD, asked, bottom));
        g.setFont(TEXT);
        g.setColor(Ink.SOFT_TEXT);
        final double step = Steps.round((high - low) / 6);
        for (long k = (long) Math.ceil(low / step); k * step <= high; k++) {
            centred(g, NumberText.plain(k * step, 4), zero + k * step * scale, bottom + 16, TEXT);
        }
        g.setColor(Color.BLACK);
        centred(g, "reading (mA); dashed: what the process asks for", zero + (low + high) / 2 * scale,
            bottom + 36, AXIS);
    }

    private static void zone(Graphics2D g, double from, double to, double bottom, Color colour) {
        g.setColor(colour);
        g.fill(new Rectangle2D.Double(from, HEAD, to - from, bottom - HEAD));
    }

    private static void centred(Graphics2D g, String text, double x, double baseline, Font font) {
        g.setFont(font);
        g.drawString(text, (float) (x - TextSize.width(text, font) / 2), (float) baseline);
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
        final long hidden = table.rows().stream().filter(r -> r.readings().stream().anyMatch(
            m -> m.milliamps().isPresent() && !isRight(m.milliamps().getAsDouble())
                && !m.ne43().orElseThrow().isFlagged())).count();
        final long unknown = table.rows().stream().filter(r -> r.readings().stream().anyMatch(
            m -> m.milliamps().isEmpty())).count();
        return table.loop() + " at " + NumberText.plain(table.milliamps(), 5) + " mA: of "
            + table.rows().size() + " faults " + hidden + " give a wrong reading that no limit flags, "
            + unknown + " are not determined.";
    }
}
