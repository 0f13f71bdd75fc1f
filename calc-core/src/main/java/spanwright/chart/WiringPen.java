package spanwright.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import spanwright.chart.WiringItem.Part;

/** Draws the symbols. Those that stand upright are drawn from the same strokes with x and y exchanged. */
final class WiringPen {
    private static final BasicStroke THIN = new BasicStroke(1.3f);
    private static final BasicStroke THICK =
        new BasicStroke(3.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);
    private static final BasicStroke FRAME =
        new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {4, 3}, 0);
    private static final Font SMALL = new Font(Font.SANS_SERIF, Font.PLAIN, 12);

    private final Graphics2D g;
    private Part part;

    WiringPen(Graphics2D g) {
        this.g = g;
    }

    void draw(Part drawn) {
        part = drawn;
        g.setColor(Color.BLACK);
        g.setStroke(THIN);
        switch (part.symbol()) {
            case SUPPLY -> battery();
            case CORE -> core();
            case TRANSMITTER -> converter(false);
            case OWN_SUPPLY_TRANSMITTER -> converter(true);
            case RECEIVER -> receiver();
            case TAPPED_RECEIVER -> tapped();
            case FIELD_DEVICE -> fieldDevice();
            case METER -> meter();
            case RESISTOR -> resistor(0, 22);
            case BARRIER -> barrier();
            case SURGE_DEVICE -> surge();
            case FUSE -> fuse();
            default -> isolator();
        }
    }

    /** Along the wire and across it, from the middle of the symbol. */
    private void line(double a1, double c1, double a2, double c2) {
        g.draw(new Line2D.Double(x(a1, c1), y(a1, c1), x(a2, c2), y(a2, c2)));
    }

    private double x(double along, double across) {
        return part.upright() ? part.box().middleX() + across : part.box().middleX() + along;
    }

    private double y(double along, double across) {
        return part.upright() ? part.box().middleY() + along : part.railTop() + across;
    }

    private void rectangle(double a1, double c1, double a2, double c2) {
        outlined(new Rectangle2D.Double(Math.min(x(a1, c1), x(a2, c2)), Math.min(y(a1, c1), y(a2, c2)),
            Math.abs(x(a1, c1) - x(a2, c2)), Math.abs(y(a1, c1) - y(a2, c2))));
    }

    private void outlined(Shape shape) {
        g.setColor(Color.WHITE);
        g.fill(shape);
        g.setColor(Color.BLACK);
        g.draw(shape);
    }

    private void leads(double half) {
        final double end = part.symbol().halfWidth();
        line(-end, 0, -half, 0);
        line(half, 0, end, 0);
    }

    /** A long thin line at the plus, a short thick one at the minus, twice. */
    private void battery() {
        leads(9);
        line(-9, -14, -9, 14);
        line(4, -14, 4, 14);
        g.setStroke(THICK);
        line(-4, -7, -4, 7);
        line(9, -7, 9, 7);
        g.setStroke(THIN);
    }

    private void core() {
        g.setStroke(THICK);
        line(-22, 0, 22, 0);
        g.setStroke(THIN);
        leads(22);
    }

    private void converter(boolean ownSupply) {
        leads(18);
        rectangle(-18, -17, 18, 17);
        line(-18, 17, 18, -17);
        if (ownSupply) {
            // Two terminals of the supply of its own.
            dot(-8, -12);
            dot(0, -12);
        }
    }

    private void dot(double along, double across) {
        g.fill(new Ellipse2D.Double(x(along, across) - 1.8, y(along, across) - 1.8, 3.6, 3.6));
    }

    private void resistor(double across, double half) {
        leads(half);
        rectangle(-half, across - 7, half, across + 7);
    }

    private void frame(double half, double up, double down) {
        g.setStroke(FRAME);
        rectangle(-half, -up, half, down);
        g.setStroke(THIN);
    }

    private void receiver() {
        frame(29, 14, 14);
        leads(20);
        rectangle(-20, -6, 20, 6);
    }

    private void tapped() {
        frame(29, 38, 14);
        leads(18);
        rectangle(-18, -6, 18, 6);
        line(-24, 0, -24, -28);
        line(24, 0, 24, -28);
        line(-24, -28, -18, -28);
        line(18, -28, 24, -28);
        rectangle(-18, -34, 18, -22);
        dot(-24, 0);
        dot(24, 0);
    }

    private void fieldDevice() {
        leads(21);
        rectangle(-21, -15, 21, 15);
        final Path2D valve = new Path2D.Double();
        valve.moveTo(x(-13, -8), y(-13, -8));
        valve.lineTo(x(13, 8), y(13, 8));
        valve.lineTo(x(13, -8), y(13, -8));
        valve.lineTo(x(-13, 8), y(-13, 8));
        valve.closePath();
        g.draw(valve);
    }

    private void meter() {
        leads(15);
        outlined(new Ellipse2D.Double(x(-15, 0), y(0, -15), 30, 30));
        g.setFont(SMALL);
        g.drawString("mA", (float) (x(0, 0) - TextSize.width("mA", SMALL) / 2), (float) y(0, 4));
    }

    /** A resistor in the line, limiting diodes across it. */
    private void barrier() {
        frame(29, 12, 25);
        leads(20);
        rectangle(-20, -6, 4, 6);
        line(4, 0, 20, 0);
        line(14, 0, 14, 22);
        triangle(14, 16, 14, 8, 5);
        line(8, 8, 20, 8);
        line(8, 8, 8, 11);
        line(8, 22, 20, 22);
    }

    private void triangle(double baseA, double baseC, double tipA, double tipC, double half) {
        final Path2D shape = new Path2D.Double();
        shape.moveTo(x(baseA - half, baseC), y(baseA - half, baseC));
        shape.lineTo(x(baseA + half, baseC), y(baseA + half, baseC));
        shape.lineTo(x(tipA, tipC), y(tipA, tipC));
        shape.closePath();
        outlined(shape);
    }

    /** A resistor in the line, a spark gap to earth. */
    private void surge() {
        leads(18);
        rectangle(-18, -6, 4, 6);
        line(4, 0, 18, 0);
        line(12, 0, 12, 8);
        triangle(12, 6, 12, 13, 4);
        triangle(12, 22, 12, 15, 4);
        line(12, 22, 12, 24);
        line(5, 24, 19, 24);
        line(8, 27, 16, 27);
        line(10.5, 30, 13.5, 30);
    }

    private void fuse() {
        rectangle(-20, -6, 20, 6);
        line(-28, 0, 28, 0);
    }

    /** Input above, output below, the separation between; an arrow shows the way of the signal. */
    private void isolator() {
        final WiringItem.Box box = part.box();
        outlined(new Rectangle2D.Double(box.left(), box.top(), box.right() - box.left(),
            box.bottom() - box.top()));
        final double middle = (part.railTop() + part.railDown()) / 2;
        g.draw(new Line2D.Double(box.left(), middle - 2, box.right(), middle - 2));
        g.draw(new Line2D.Double(box.left(), middle + 2, box.right(), middle + 2));
        g.setFont(SMALL);
        centred("in", part.railTop() + 4);
        centred("out", part.railDown() + 4);
        // The half that the power comes from is marked with two dots: input, output, or neither but beside.
        final double at = switch (part.symbol()) {
            case INPUT_POWERED_ISOLATOR -> middle - 12;
            case OUTPUT_POWERED_ISOLATOR -> middle + 12;
            default -> middle;
        };
        power(box, at);
    }

    private void power(WiringItem.Box box, double y) {
        final double x = box.middleX();
        if (part.symbol() == WiringSymbol.SEPARATE_ISOLATOR) {
            for (double side : new double[] {-7, 7}) {
                outlined(new Ellipse2D.Double(box.left() - 2.5, y + side * 1.6 - 2.5, 5, 5));
            }
            return;
        }
        final Path2D bolt = new Path2D.Double();
        bolt.moveTo(x + 3, y - 8);
        bolt.lineTo(x - 4, y + 1);
        bolt.lineTo(x + 3, y - 1);
        bolt.lineTo(x - 3, y + 8);
        g.draw(bolt);
    }

    private void centred(String text, double baseline) {
        g.drawString(text, (float) (part.box().middleX() - TextSize.width(text, SMALL) / 2),
            (float) baseline);
    }
}
