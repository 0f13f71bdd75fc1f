package spanwright.chart;

import java.util.List;
import spanwright.loop.CircuitState;
import spanwright.loop.Corner;
import spanwright.loop.CurrentLoop;
import spanwright.loop.LoopState;
import spanwright.quantity.NumberText;

/** Pictures of a current loop. */
public final class LoopCharts {
    private LoopCharts() { }

    /**
     * How the voltage of the source is used up on the way round the transmitter's circuit.
     *
     * @throws IllegalStateException if the state has no solution
     */
    public static Picture staircase(LoopState state) {
        final CircuitState circuit = state.primary();
        final List<BarPlot.Bar> bars = circuit.elements().stream().map(e -> new BarPlot.Bar(e.label(),
            e.minusVolts(), e.plusVolts(), NumberText.fixed(e.volts(), 2) + " V", Ink.BLUE)).toList();
        return Picture.of(state.sentence(),
            "Voltage of each element on the way round the circuit, from the plus"
            + " of its source to the minus.", new BarPlot("potential above the minus of the source (V)",
                bars));
    }

    /** Voltage the transmitter's circuit needs over the current, with the band that the supply gives. */
    public static Picture requiredAndAvailable(CurrentLoop loop) {
        final int points = 47;
        final double[] x = new double[points];
        final double[][] y = new double[4][points];
        double top = 0;
        for (int i = 0; i < points; i++) {
            x[i] = i * 0.5 + 1;
            y[0][i] = loop.requiredVolts(x[i], Corner.NOMINAL);
            y[1][i] = loop.requiredVolts(x[i], Corner.LEAST_VOLTAGE);
            y[2][i] = loop.availableVolts(x[i], Corner.LEAST_VOLTAGE);
            y[3][i] = loop.availableVolts(x[i], Corner.MOST_VOLTAGE);
            top = Math.max(top, Math.max(y[1][i], y[3][i]));
        }
        final Plot plot = new Plot("loop current (mA)", "voltage (V)").xRange(0, 25).yRange(0, top * 1.2)
            .line("needed", x, y[0], Ink.BLUE).dashed("needed, worst case", x, y[1], Ink.VERMILION)
            .dashed("least available", x, y[2], Ink.BLACK).dashed("most available", x, y[3], Ink.BLACK)
            .note(PlotNote.text("most available", 2, y[3][2], PlotNote.Anchor.LEFT, Ink.BLACK.colour(), -8))
            .note(PlotNote.text("least available", 2, y[2][2], PlotNote.Anchor.LEFT, Ink.BLACK.colour(), 18))
            .note(PlotNote.text("needed, nominal", 12, y[0][22], PlotNote.Anchor.LEFT, Ink.BLUE.colour(),
                34));
        return Picture.of(loop.answer().sentence(),
            "Voltage needed over the loop current, nominal and worst case, least and most available.",
            plot.chart());
    }
}
