package spanwright.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.knowm.xchart.internal.chartpart.IChart;
import spanwright.chart.WiringItem.Box;
import spanwright.chart.WiringItem.Label;
import spanwright.chart.WiringItem.Part;
import spanwright.chart.WiringItem.Style;
import spanwright.chart.WiringItem.Wire;
import spanwright.loop.Corner;
import spanwright.loop.CurrentLoop;
import spanwright.loop.LoopState;

/**
 * A loop drawn as a circuit, with the voltages the solver found. Current runs clockwise; an isolator stands
 * between the ring at its input and the ring at its output. Potentials count from the minus of the source of
 * each ring, which is a ring of its own: nothing joins them.
 */
public final class WiringDiagram implements IChart {
    private static final double MARGIN = 16;
    private static final double FOOT = 44;

    private final String sentence;
    private final List<WiringItem> items;
    private final int width;
    private final int height;

    private WiringDiagram(CurrentLoop loop, LoopState state) {
        this.sentence = state.sentence();
        final List<WiringItem> raw = WiringLayout.of(WiringRing.of(loop, state));
        final double left = raw.stream().mapToDouble(i -> i.box().left()).min().orElseThrow();
        final double right = raw.stream().mapToDouble(i -> i.box().right()).max().orElseThrow();
        final double top = raw.stream().mapToDouble(i -> i.box().top()).min().orElseThrow();
        final double bottom = raw.stream().mapToDouble(i -> i.box().bottom()).max().orElseThrow();
        this.width = (int) Math.ceil(Math.max(Plot.WIDTH, right - left + 2 * MARGIN));
        this.height = (int) Math.ceil(bottom - top + 2 * MARGIN + FOOT);
        final double dx = (width - (right - left)) / 2 - left;
        final List<WiringItem> placed = new ArrayList<>();
        raw.forEach(i -> placed.add(i.moved(dx, MARGIN - top)));
        placed.add(new Label("At a wire: its potential above the minus of the source of its ring. At a "
            + "symbol: the voltage across it.", MARGIN, height - 28.0, Style.POTENTIAL));
        placed.add(new Label(
            (state.corner() == Corner.NOMINAL ? "All parameters nominal."
                : "Every parameter at its limit (" + state.corner() + ").")
                + " The current runs clockwise; each ring is a circuit of its own.",
            MARGIN, height - 12.0, Style.PLAIN));
        this.items = List.copyOf(placed);
    }

    /**
     * The wiring of a loop at a current, all parameters nominal.
     *
     * @throws IllegalStateException if the loop has no solution there, with the reason
     */
    public static Picture of(CurrentLoop loop, double milliamps) {
        return of(loop, loop.at(milliamps));
    }

    /**
     * The wiring of a loop with the voltages of a state of it.
     *
     * @throws IllegalStateException    if the state has no solution, with the reason
     * @throws IllegalArgumentException if the state is not of this loop
     */
    public static Picture of(CurrentLoop loop, LoopState state) {
        final WiringDiagram diagram = drawn(loop, state);
        return Picture.of(state.sentence(), "Wiring diagram of " + loop.name() + ": " + state.circuits()
            .stream().map(c -> c.name() + " from " + c.source() + " through " + c.elements().stream()
            .map(e -> e.label() + " " + WiringText.volts(e.volts())).collect(Collectors.joining(", ")))
            .collect(Collectors.joining("; ")) + ".", diagram);
    }

    static WiringDiagram drawn(CurrentLoop loop, LoopState state) {
        Objects.requireNonNull(loop, "loop");
        if (!state.loop().equals(loop.name())) {
            throw new IllegalArgumentException("the state is of " + state.loop() + ", the loop is "
                + loop.name());
        }
        return new WiringDiagram(loop, state);
    }

    /** Everything on it, in its place. */
    List<WiringItem> items() {
        return items;
    }

    @Override
    public void paint(Graphics2D g, int givenWidth, int givenHeight) {
        g.setColor(Color.BLACK);
        final WiringPen pen = new WiringPen(g);
        for (WiringItem item : items) {
            if (item instanceof Wire wire) {
                g.setColor(Color.BLACK);
                g.setStroke(new BasicStroke(1.3f));
                g.draw(new Line2D.Double(wire.x1(), wire.y1(), wire.x2(), wire.y2()));
            } else if (item instanceof Part part) {
                pen.draw(part);
                terminals(g, part);
            } else if (item instanceof Label label) {
                g.setFont(label.style().font());
                g.setColor(label.style().colour());
                g.drawString(label.text(), (float) label.left(), (float) label.baseline());
            }
        }
    }

    private static void terminals(Graphics2D g, Part part) {
        final Box box = part.box();
        if (part.upright()) {
            terminal(g, box.middleX(), box.top());
            terminal(g, box.middleX(), box.bottom());
            return;
        }
        terminal(g, box.left(), part.railTop());
        terminal(g, box.right(), part.railTop());
        if (part.symbol().isIsolator()) {
            terminal(g, box.left(), part.railDown());
            terminal(g, box.right(), part.railDown());
        }
    }

    private static void terminal(Graphics2D g, double x, double y) {
        final Ellipse2D ring = new Ellipse2D.Double(x - 2.5, y - 2.5, 5, 5);
        g.setColor(Color.WHITE);
        g.fill(ring);
        g.setColor(Color.BLACK);
        g.setStroke(new BasicStroke(1.2f));
        g.draw(ring);
    }

    @Override
    public int getWidth() {
        return width;
    }

    @Override
    public int getHeight() {
        return height;
    }

    @Override
    public String getTitle() {
        return sentence;
    }
}
