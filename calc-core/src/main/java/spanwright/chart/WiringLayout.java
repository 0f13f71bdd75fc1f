package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.chart.WiringItem.Box;
import spanwright.chart.WiringItem.Label;
import spanwright.chart.WiringItem.Part;
import spanwright.chart.WiringItem.Style;
import spanwright.chart.WiringItem.Wire;
import spanwright.chart.WiringRing.Station;
import spanwright.loop.ElementState;

/**
 * Gives every symbol, wire and text of a ring its place, and hangs the rings behind its isolators below it.
 * Every distance is taken from the texts that must fit, so that nothing overlaps however long a name is.
 * The origin is where the upper wire meets the left edge or, behind an isolator, the middle of its output.
 */
final class WiringLayout {
    private static final double GAP = 14;
    private static final double SIGN_DOWN = 15;
    private static final double ISOLATOR = WiringSymbol.INPUT_POWERED_ISOLATOR.halfWidth();

    private final WiringRing ring;
    private final boolean hangs;
    private final double potentialWidth;
    private final List<Optional<WiringLayout>> behind = new ArrayList<>();
    private final double[] upperX;
    private final double[] lowerX;
    private final double left;
    private final double right;
    private final double height;
    private final double drop;
    private final List<WiringItem> items = new ArrayList<>();

    private WiringLayout(WiringRing ring, boolean hangs) {
        this.ring = ring;
        this.hangs = hangs;
        this.potentialWidth = GAP + potentials(ring).stream()
            .mapToDouble(p -> Style.POTENTIAL.width(WiringText.volts(p))).max().orElse(0);
        ring.lower().forEach(s -> behind.add(s.behind().map(b -> new WiringLayout(b, true))));
        this.left = !hangs ? 0 : ring.ownInput() ? -ISOLATOR - potentialWidth : -ISOLATOR - 2 * GAP;
        this.upperX = new double[ring.upper().size()];
        this.lowerX = new double[ring.lower().size()];
        new WiringColumns(ring, behind, potentialWidth, left, hangs ? ISOLATOR : left).place(upperX, lowerX);
        this.right = rightEdge();
        this.height = innerHeight();
        this.drop = Math.max(90, ring.lower().stream().mapToDouble(s -> s.symbol().down()).max().orElse(0)
            + GAP + behind.stream().flatMap(Optional::stream).mapToDouble(WiringLayout::above).max()
            .orElse(0));
        draw();
    }

    /** Everything of a loop, from the left edge of its first ring outward. */
    static List<WiringItem> of(WiringRing ring) {
        return List.copyOf(new WiringLayout(ring, false).items);
    }

    private static List<Double> potentials(WiringRing ring) {
        final List<Double> all = new ArrayList<>();
        ring.circuit().elements().forEach(e -> all.add(e.plusVolts()));
        if (!all.isEmpty()) {
            all.add(ring.circuit().elements().get(all.size() - 1).minusVolts());
        }
        return all;
    }

    private double rightEdge() {
        double edge = Math.max(left + Math.max(potentialWidth, 60), hangs ? ISOLATOR + 2 * GAP : 0);
        for (int i = 0; i < upperX.length; i++) {
            edge = Math.max(edge, reach(upperX[i], ring.upper().get(i)));
        }
        for (int i = 0; i < lowerX.length; i++) {
            edge = Math.max(edge, reach(lowerX[i], ring.lower().get(i)));
        }
        return edge;
    }

    private double reach(double x, Station station) {
        return x + Math.max(station.symbol().halfWidth() + potentialWidth,
            station.text().width() / 2 + 2 * GAP);
    }

    private double innerHeight() {
        final double potentials = ring.upper().stream().mapToDouble(s -> s.symbol().down()).max().orElse(0);
        final double texts = ring.lower().stream().mapToDouble(WiringLayout::textHeight).max()
            .orElse(SIGN_DOWN + 4);
        final double edges = Math.max(rightText().height(), ring.source().map(s -> s.text().height())
            .orElse(0.0));
        return Math.max(Math.max(potentials, SIGN_DOWN + 4) + GAP + texts, Math.max(100, edges + GAP));
    }

    /** From the wire to the top of the text above a symbol. */
    private static double textHeight(Station station) {
        return Math.max(station.symbol().up(), SIGN_DOWN + 1) + 5 + station.text().height();
    }

    /** What stands above the upper wire. */
    private double above() {
        return ring.upper().stream().mapToDouble(WiringLayout::textHeight).max().orElse(SIGN_DOWN + 4);
    }

    double leftExtent() {
        return items.stream().mapToDouble(i -> i.box().left()).min().orElse(0);
    }

    double rightExtent() {
        return items.stream().mapToDouble(i -> i.box().right()).max().orElse(0);
    }

    private WiringText rightText() {
        final WiringText current = WiringText.current(ring.circuit());
        return ring.right().map(s -> s.text().above(current)).orElse(current);
    }

    private void draw() {
        drawUpper();
        drawRight();
        drawLower();
        drawLeft();
        drawPotentials();
        for (int i = 0; i < behind.size(); i++) {
            final double x = lowerX[i];
            behind.get(i).ifPresent(b -> b.items.forEach(item -> items.add(item.moved(x, height + drop))));
        }
    }

    private void drawUpper() {
        double x = left;
        if (hangs) {
            items.add(new Wire(x, 0, -ISOLATOR, 0));
            x = ISOLATOR;
            signs(0, ISOLATOR, 0, ring.ownInput(), true);
        }
        for (int i = 0; i < upperX.length; i++) {
            final Station station = ring.upper().get(i);
            x = station(station, x, upperX[i], 0);
            signs(upperX[i], station.symbol().halfWidth(), 0, true, true);
        }
        items.add(new Wire(x, 0, right, 0));
    }

    private void drawLower() {
        double x = left;
        for (int i = 0; i < lowerX.length; i++) {
            final Station station = ring.lower().get(i);
            x = station(station, x, lowerX[i], height);
            signs(lowerX[i], station.symbol().halfWidth(), height, false, false);
        }
        items.add(new Wire(x, height, right, height));
    }

    /** A symbol in a wire, with the wire before it and its text above it; returns where the wire goes on. */
    private double station(Station station, double from, double x, double y) {
        final WiringSymbol symbol = station.symbol();
        items.add(new Wire(from, y, x - symbol.halfWidth(), y));
        final double below = symbol.isIsolator() ? drop : 0;
        items.add(new Part(symbol, false, new Box(x - symbol.halfWidth(), y - symbol.up(),
            x + symbol.halfWidth(), y + below + symbol.down()), y, y + below));
        final double top = y - textHeight(station);
        text(station.text(), top, t -> x - t / 2);
        return x + symbol.halfWidth();
    }

    private void text(WiringText text, double top, java.util.function.DoubleUnaryOperator leftOfWidth) {
        double baseline = top + 11;
        for (WiringText.Line line : text.lines()) {
            items.add(new Label(line.text(), leftOfWidth.applyAsDouble(line.style().width(line.text())),
                baseline, line.style()));
            baseline += WiringText.LINE;
        }
    }

    /** The names of the terminals to the left and right of a symbol, above or below the wire. */
    private void signs(double x, double halfWidth, double y, boolean plusLeft, boolean above) {
        final double baseline = above ? y - 4 : y + 14;
        items.add(new Label(plusLeft ? "+" : "\u2212", x - halfWidth - 11, baseline, Style.TERMINAL));
        items.add(new Label(plusLeft ? "\u2212" : "+", x + halfWidth + 3, baseline, Style.TERMINAL));
    }

    private void drawRight() {
        final double middle = height / 2;
        final Optional<Station> station = ring.right();
        final double half = station.map(s -> s.symbol().halfWidth()).orElse(0.0);
        items.add(new Wire(right, 0, right, middle - half));
        items.add(new Wire(right, middle + half, right, height));
        station.ifPresent(s -> upright(s.symbol(), right, middle, right + 4));
        final double at = right + station.map(s -> s.symbol().up() + 8).orElse(8.0);
        text(rightText(), middle - rightText().height() / 2, w -> at);
    }

    private void drawLeft() {
        final double middle = height / 2;
        final Optional<WiringRing.Source> source = ring.source();
        final double half = source.map(s -> s.symbol().halfWidth()).orElse(0.0);
        items.add(new Wire(left, 0, left, middle - half));
        items.add(new Wire(left, middle + half, left, height));
        source.ifPresent(s -> {
            upright(s.symbol(), left, middle, left - 12);
            text(s.text(), middle - s.text().height() / 2, w -> left - s.symbol().up() - 8 - w);
        });
    }

    /** A symbol in a vertical wire, + above. */
    private void upright(WiringSymbol symbol, double x, double y, double signLeft) {
        items.add(new Part(symbol, true, new Box(x - symbol.up(), y - symbol.halfWidth(), x + symbol.down(),
            y + symbol.halfWidth()), y, y));
        items.add(new Label("+", signLeft, y - symbol.halfWidth() - 4, Style.TERMINAL));
        items.add(new Label("\u2212", signLeft, y + symbol.halfWidth() + 13, Style.TERMINAL));
    }

    /** The potential of each wire, once, on the side of it where no text stands. */
    private void drawPotentials() {
        final List<ElementState> elements = ring.circuit().elements();
        if (elements.isEmpty()) {
            return;
        }
        double from = left;
        if (ring.ownInput()) {
            potential(elements.get(0).plusVolts(), left, -ISOLATOR, 0, true);
        }
        if (hangs) {
            from = ISOLATOR;
        }
        for (int i = 0; i < upperX.length; i++) {
            final Station s = ring.upper().get(i);
            potential(s.state().plusVolts(), from, upperX[i] - s.symbol().halfWidth(), 0, true);
            from = upperX[i] + s.symbol().halfWidth();
        }
        if (ring.right().isPresent()) {
            potential(ring.right().get().state().plusVolts(), from, right, 0, true);
        }
        double to = right;
        for (int i = lowerX.length - 1; i >= 0; i--) {
            final Station s = ring.lower().get(i);
            potential(s.state().plusVolts(), lowerX[i] + s.symbol().halfWidth(), to, height, false);
            to = lowerX[i] - s.symbol().halfWidth();
        }
        potential(elements.get(elements.size() - 1).minusVolts(), left, to, height, false);
    }

    private void potential(double volts, double from, double to, double y, boolean below) {
        final String text = WiringText.volts(volts);
        items.add(new Label(text, (from + to - Style.POTENTIAL.width(text)) / 2, below ? y + 14 : y - 4,
            Style.POTENTIAL));
    }
}
