package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.loop.Burden;
import spanwright.loop.Cable;
import spanwright.loop.CircuitState;
import spanwright.loop.ElementState;
import spanwright.loop.Isolator;
import spanwright.loop.LoopElement;
import spanwright.loop.Supply;
import spanwright.loop.Transmitter;
import spanwright.quantity.NumberText;

/**
 * What is written at a symbol: its name, what it is, the voltage across it. Long words keep their line whole;
 * nothing is cut.
 *
 * @param lines from the top
 */
record WiringText(List<Line> lines) {
    static final double LINE = 15;
    private static final double WIDEST = 122;

    /**
     * One line.
     *
     * @param text  what it says
     * @param style how it looks
     */
    record Line(String text, WiringItem.Style style) { }

    WiringText {
        lines = List.copyOf(lines);
    }

    double width() {
        return lines.stream().mapToDouble(l -> l.style().width(l.text())).max().orElse(0);
    }

    double height() {
        return LINE * lines.size();
    }

    static String volts(double volts) {
        return NumberText.fixed(volts, 2) + " V";
    }

    /** At an element; an isolator has its output written there too. */
    static WiringText of(LoopElement element, ElementState state, Optional<CircuitState> output) {
        final List<Line> lines = new ArrayList<>();
        name(lines, state.part() == ElementState.Part.INPUT ? element.name() : state.label());
        plain(lines, kind(element, state));
        if (output.isPresent()) {
            plain(lines, "input " + volts(state.volts()));
            plain(lines, "output " + volts(outputVolts((Isolator) element, output.get())));
        } else {
            plain(lines, volts(state.volts()));
        }
        return new WiringText(lines);
    }

    /** What the output gives, or, of one that its own output loop powers, what it takes there. */
    private static double outputVolts(Isolator isolator, CircuitState output) {
        return isolator.kind() == Isolator.Kind.OUTPUT_LOOP_POWERED ? output.elements().get(0).volts()
            : output.sourceVolts();
    }

    private static String kind(LoopElement element, ElementState state) {
        if (element instanceof Cable cable) {
            return state.part() == ElementState.Part.CORE_BACK ? ""
                : NumberText.plain(cable.metres(), 6) + " m of " + cable.conductor();
        }
        if (element instanceof Transmitter transmitter) {
            return transmitter.kind().toString();
        }
        if (element instanceof Isolator isolator) {
            return isolator.kind().toString();
        }
        final Burden burden = (Burden) element;
        return burden.kind() + ", " + ohms(burden.ohms().nominal())
            + (burden.traits().tappedOhms().isPresent() ? ", a second receiver of "
                + ohms(burden.traits().tappedOhms().getAsDouble()) + " across it" : "");
    }

    private static String ohms(double ohms) {
        return ohms >= 1e6 ? NumberText.plain(ohms / 1e6, 5) + " M\u03a9"
            : ohms >= 1e4 ? NumberText.plain(ohms / 1e3, 5) + " k\u03a9" : NumberText.plain(ohms, 5)
            + " \u03a9";
    }

    /** At a supply. */
    static WiringText of(Supply supply, Optional<String> within, CircuitState circuit) {
        final List<Line> lines = new ArrayList<>();
        name(lines, supply.name());
        within.ifPresent(w -> plain(lines, "in " + w));
        if (supply.arrangement() != Supply.Arrangement.SINGLE) {
            plain(lines, supply.units().size() + (supply.arrangement() == Supply.Arrangement.PARALLEL
                ? " units in parallel" : " units in series"));
        }
        sourceVolts(lines, circuit);
        return new WiringText(lines);
    }

    /** At a transmitter that gives the voltage itself. */
    static WiringText of(Transmitter active, CircuitState circuit) {
        final List<Line> lines = new ArrayList<>();
        name(lines, active.name());
        if (!active.kind().toString().equals(active.name())) {
            plain(lines, active.kind().toString());
        }
        sourceVolts(lines, circuit);
        return new WiringText(lines);
    }

    private static void sourceVolts(List<Line> lines, CircuitState circuit) {
        if (!circuit.elements().isEmpty()) {
            plain(lines, volts(circuit.sourceVolts()));
        }
    }

    /** The current of a circuit, and what was asked for if it is less. */
    static WiringText current(CircuitState circuit) {
        final List<Line> lines = new ArrayList<>();
        final WiringItem.Style style = circuit.isShort() ? WiringItem.Style.SHORT : WiringItem.Style.NAME;
        lines.add(new Line(NumberText.fixed(circuit.milliamps(), 2) + " mA", style));
        if (circuit.isShort()) {
            lines.add(new Line("of " + NumberText.fixed(circuit.demandedMilliamps(), 2) + " mA", style));
        }
        return new WiringText(lines);
    }

    /** Both, one under the other. */
    WiringText above(WiringText other) {
        final List<Line> both = new ArrayList<>(lines);
        both.addAll(other.lines);
        return new WiringText(both);
    }

    private static void name(List<Line> lines, String text) {
        wrapped(text, WiringItem.Style.NAME).forEach(l -> lines.add(new Line(l, WiringItem.Style.NAME)));
    }

    private static void plain(List<Line> lines, String text) {
        wrapped(text, WiringItem.Style.PLAIN).forEach(l -> lines.add(new Line(l, WiringItem.Style.PLAIN)));
    }

    private static List<String> wrapped(String text, WiringItem.Style style) {
        final List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split("\\s+")) {
            final String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && style.width(longer) > WIDEST) {
                lines.add(line);
                line = word;
            } else {
                line = longer;
            }
        }
        if (!line.isEmpty()) {
            lines.add(line);
        }
        return lines;
    }
}
