package spanwright.notebook.show;

import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.chart.LoopCharts;
import spanwright.chart.WiringDiagram;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.kernel.document.Headline;
import spanwright.loop.CircuitState;
import spanwright.loop.Corner;
import spanwright.loop.CurrentLoop;
import spanwright.loop.ElementState;
import spanwright.loop.LoopAnswer;
import spanwright.loop.LoopCautions;
import spanwright.loop.LoopMargins;
import spanwright.loop.LoopReach;
import spanwright.loop.LoopState;
import spanwright.loop.ReceiverReading;
import spanwright.quantity.NumberText;

/** Shows a loop as it is wired, its state at a current, and whether it reaches the current it must carry. */
public final class LoopRenderer implements Renderer {
    private static final double FULL_SCALE = 20;

    /** For the service loader. */
    public LoopRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof LoopAnswer answer) {
            return Optional.of(new Headline(answer.word().toString(), answer.sentence()).on(sheet(answer)
                .bundle()));
        }
        if (value instanceof CurrentLoop loop) {
            return Optional.of(sheet(loop).bundle());
        }
        if (value instanceof LoopState state) {
            return Optional.of(sheet(state).bundle());
        }
        if (value instanceof LoopReach reach) {
            return Optional.of(cautioned(reach.toString()).bundle());
        }
        return Optional.empty();
    }

    /** A sentence about a loop, with what to heed before it leads to work on it. */
    static Sheet cautioned(String sentence) {
        return Sheet.saying(sentence).with(new Cautions(LoopCautions.all()));
    }

    private static Sheet sheet(LoopAnswer answer) {
        final LoopState worst = answer.loop().at(answer.neededMilliamps(), Corner.LEAST_VOLTAGE);
        Sheet sheet = cautioned(answer.word().mark() + " " + answer.sentence())
            .with(margins(answer.margins())).with(LoopCharts.requiredAndAvailable(answer.loop()));
        if (worst.isSolved()) {
            sheet = sheet.with(WiringDiagram.of(answer.loop(), worst));
        }
        return sheet.notes("Checks", answer.checks().items().stream().map(Object::toString).toList())
            .notes("Assumptions", answer.assumptions());
    }

    /** The wiring at full scale; without a solution there, the reason and the elements. */
    private static Sheet sheet(CurrentLoop loop) {
        final LoopState state = loop.at(FULL_SCALE);
        final Sheet sheet = cautioned(state.sentence());
        return state.isSolved() ? sheet.with(WiringDiagram.of(loop, state))
            : sheet.notes("Elements", loop.answer().assumptions());
    }

    private static Sheet sheet(LoopState state) {
        Sheet sheet = cautioned(state.sentence());
        if (!state.isSolved()) {
            return sheet;
        }
        for (CircuitState circuit : state.circuits()) {
            sheet = sheet.with(terminals(circuit));
        }
        if (!state.primary().elements().isEmpty()) {
            sheet = sheet.with(LoopCharts.staircase(state));
        }
        return sheet.with(powers(state)).notes("Readings", state.readings().stream()
            .map(ReceiverReading::toString).toList());
    }

    private static Grid terminals(CircuitState circuit) {
        final Grid.Builder grid = Grid.of("Voltages of " + circuit.name() + ", fed by " + circuit.source(),
            "element", "#+ terminal (V)", "#\u2212 terminal (V)", "#across it (V)", "#current (mA)");
        for (ElementState e : circuit.elements()) {
            grid.row(e.label(), NumberText.fixed(e.plusVolts(), 2), NumberText.fixed(e.minusVolts(), 2),
                NumberText.fixed(e.volts(), 2), NumberText.fixed(e.milliamps(), 2));
        }
        return grid.build();
    }

    private static Grid powers(LoopState state) {
        final Grid.Builder grid = Grid.of("Heat of each device", "device", "counted to", "#heat (mW)");
        state.powers().forEach(p -> grid.row(p.device(), p.inCabinet() ? "cabinet" : "field",
            milliwatts(p.heatMilliwatts())));
        return grid.deciding("all in the cabinet, supplies included", "cabinet",
            milliwatts(state.power().cabinetHeatMilliwatts())).build();
    }

    static String milliwatts(OptionalDouble heat) {
        return heat.isPresent() ? NumberText.fixed(heat.getAsDouble(), 1) : "not determined";
    }

    static Grid margins(LoopMargins margins) {
        final Grid.Builder grid = Grid.of("Voltage needed and to spare", "#current (mA)", "#needed (V)",
            "#to spare, nominal (V)", "#to spare, worst case (V)");
        margins.rows().forEach(r -> grid.row(NumberText.plain(r.milliamps(), 4),
            NumberText.fixed(r.requiredVolts(), 2), NumberText.signed(r.nominalVolts(), 2),
            NumberText.signed(r.worstVolts(), 2)));
        return grid.build();
    }
}
