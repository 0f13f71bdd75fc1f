package spanwright.chart;

import java.util.List;
import java.util.Objects;
import spanwright.loop.CircuitState;
import spanwright.loop.Corner;
import spanwright.loop.CurrentLoop;
import spanwright.loop.FaultTable;
import spanwright.loop.KneeCurve;
import spanwright.loop.LoopState;
import spanwright.loop.MarginDistribution;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/** Pictures of a current loop; its wiring is drawn by {@link WiringDiagram}. */
public final class LoopCharts {
    private static final double LAST = 25;
    private static final int POINTS = 51;
    private static final int BINS = 60;
    private static final Ink[] INKS = {Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.PURPLE};

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
                + " of its source to the minus.",
            new BarPlot("potential above the minus of the source (V)", bars));
    }

    /** Voltage the transmitter's circuit needs over the current, with the band that the supply gives. */
    public static Picture requiredAndAvailable(CurrentLoop loop) {
        final double[] x = currents();
        final double[] nominal = over(x, i -> loop.requiredVolts(i, Corner.NOMINAL));
        final double[] worst = over(x, i -> loop.requiredVolts(i, Corner.LEAST_VOLTAGE));
        final double top = Math.max(largest(worst), largest(over(x,
            i -> loop.availableVolts(i, Corner.MOST_VOLTAGE))));
        final Plot plot = supplyBand(loop, x, top).line("needed", x, nominal, Ink.BLUE)
            .dashed("needed, worst case", x, worst, Ink.VERMILION)
            .note(end("needed, worst case", worst, Ink.VERMILION, 20))
            .note(end("needed, nominal", nominal, Ink.BLUE, 38));
        return Picture.of(loop.answer().sentence(),
            "Voltage needed over the loop current, nominal and worst case, least and most available.",
            plot.chart());
    }

    /**
     * Voltage that several loops on the same supply need over the current with every limit against them:
     * without an isolator, with one, with two.
     *
     * @param loops one to four, each of another name
     */
    public static Picture requiredAndAvailable(List<CurrentLoop> loops) {
        Checks.within("number of loops", loops.size(), 1, INKS.length);
        final CurrentLoop first = loops.get(0);
        final double[] x = currents();
        double top = largest(over(x, i -> first.availableVolts(i, Corner.MOST_VOLTAGE)));
        for (CurrentLoop loop : loops) {
            if (!loop.supply().equals(first.supply())) {
                throw new IllegalArgumentException(loop.name() + " has another supply than " + first.name()
                    + ": only loops on the same supply have one band");
            }
            top = Math.max(top, largest(over(x, i -> loop.requiredVolts(i, Corner.LEAST_VOLTAGE))));
        }
        final Plot plot = supplyBand(first, x, top);
        final StringBuilder title = new StringBuilder();
        for (int k = 0; k < loops.size(); k++) {
            final CurrentLoop loop = loops.get(k);
            final double[] y = over(x, i -> loop.requiredVolts(i, Corner.LEAST_VOLTAGE));
            plot.line(loop.name(), x, y, INKS[k]).note(end(loop.name(), y, INKS[k], 20));
            title.append(k == 0 ? "" : "; ").append(loop.name()).append(' ')
                .append(NumberText.signed(loop.answer().worstMarginVolts(), 2)).append(" V (")
                .append(loop.answer().word()).append(')');
        }
        return Picture.of("To spare at the upscale failure current with every limit against it: " + title
            + ".", "Voltage needed over the loop current with every limit against "
            + "each loop, with the band from the least to the most that the supply gives.", plot.chart());
    }

    private static Plot supplyBand(CurrentLoop loop, double[] x, double top) {
        final double[] least = over(x, i -> loop.availableVolts(i, Corner.LEAST_VOLTAGE));
        final double[] most = over(x, i -> loop.availableVolts(i, Corner.MOST_VOLTAGE));
        final double needed = loop.transmitter().limits().failHighMilliamps();
        return new Plot("loop current (mA)", "voltage (V)").xRange(0, LAST).yRange(0, top * 1.2)
            .note(PlotNote.band(x, least, most, Ink.ORANGE)).dashed("least available", x, least, Ink.BLACK)
            .dashed("most available", x, most, Ink.BLACK)
            .note(PlotNote.text("most available", 1, most[2], PlotNote.Anchor.LEFT, Ink.BLACK.colour(), -8))
            .note(PlotNote.text("least available", 1, least[2], PlotNote.Anchor.LEFT, Ink.BLACK.colour(),
                least[2] == most[2] ? 18 : -8))
            .note(PlotNote.verticalLimit(needed, "must carry " + NumberText.plain(needed, 4) + " mA",
                Ink.BLACK.colour(), false, 0));
    }

    private static PlotNote end(String label, double[] y, Ink ink, int down) {
        return PlotNote.text(label, 16, y[32], PlotNote.Anchor.RIGHT, ink.colour(), down);
    }

    private static double[] currents() {
        final double[] x = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            x[i] = i * LAST / (POINTS - 1);
        }
        return x;
    }

    static double[] over(double[] x, java.util.function.DoubleUnaryOperator f) {
        final double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            y[i] = f.applyAsDouble(x[i]);
        }
        return y;
    }

    static double largest(double[] values) {
        double most = values[0];
        for (double v : values) {
            most = Math.max(most, v);
        }
        return most;
    }

    /** What a receiver reads over the current asked for, with the knee where the voltage runs out. */
    public static Picture knee(KneeCurve curve) {
        Checks.atLeast("number of points of the curve", curve.points().size(), 2);
        final double[] asked = curve.points().stream().mapToDouble(KneeCurve.Point::askedMilliamps)
            .toArray();
        final double last = asked[asked.length - 1];
        final double level = curve.knee().map(k -> k.milliamps()).orElse(last);
        final double[] turns = level < last && level > asked[0] ? new double[] {asked[0], level, last}
            : new double[] {asked[0], last};
        final double[] reads = turns.clone();
        reads[0] = curve.points().get(0).readMilliamps();
        reads[reads.length - 1] = curve.points().get(asked.length - 1).readMilliamps();
        final Plot plot = new Plot("current the transmitter asks for (mA)",
            "current " + curve.receiver() + " reads (mA)").xRange(3, 23.5).yRange(3, 23.5)
            .line("read", turns, reads, Ink.BLUE)
            .note(PlotNote.text(curve.receiver(), last, reads[reads.length - 1], PlotNote.Anchor.RIGHT,
                Ink.BLUE.colour(), 20));
        curve.knee().ifPresent(k -> plot.dashed("right", new double[] {4, last}, new double[] {4, last},
            Ink.BLACK).note(PlotNote.text("right reading", last - 0.4, last - 0.4, PlotNote.Anchor.RIGHT,
            Ink.BLACK.colour(), -4)).note(PlotNote.verticalLimit(k.milliamps(), "knee at "
            + NumberText.fixed(k.milliamps(), 2) + " mA, " + NumberText.fixed(k.percentOfSpan(), 1)
            + " % of span", Ink.VERMILION.colour(), false, 3)));
        return Picture.of(curve.toString(), "Current read over the current asked for: right up to the knee, "
            + "level from there.", plot.chart());
    }

    /** Voltage to spare as a distribution, with the share of the trials that are short of it. */
    public static Picture marginDistribution(MarginDistribution margin) {
        Objects.requireNonNull(margin, "margin");
        final double least = margin.result().least();
        final double width = Math.max(margin.result().greatest() - least, 1e-9) / BINS;
        final double[] x = new double[2 * BINS];
        final double[] y = new double[2 * BINS];
        for (int i = 0; i < BINS; i++) {
            final double from = least + i * width;
            x[2 * i] = from;
            x[2 * i + 1] = least + (i + 1) * width;
            y[2 * i] = Math.max(0, margin.result().cumulative(x[2 * i + 1])
                - (i == 0 ? 0 : margin.result().cumulative(from))) / width;
            y[2 * i + 1] = y[2 * i];
        }
        final double peak = largest(y);
        final double low = Math.min(least, 0);
        final double high = Math.max(margin.result().greatest(), 0);
        final double air = (high - low) * 0.06;
        final double from = margin.result().interval(0.95).lower();
        final double to = margin.result().interval(0.95).upper();
        final Plot plot = new Plot("voltage to spare at " + NumberText.plain(margin.milliamps(), 5)
            + " mA (V)", "probability density (1/V)").xRange(low - air, high + air).yRange(0, peak * 1.4)
            .area("Monte Carlo", x, y, Ink.BLUE)
            .note(PlotNote.interval(from, to, peak * 1.15, "95 % of the trials", Ink.GREEN.colour()))
            .note(PlotNote.verticalLimit(0, "short below 0 V: " + NumberText.plain(
                100 * margin.probabilityShort(), 3) + " % of the trials", Ink.VERMILION.colour(),
                low + high > 0, 0));
        return Picture.of(margin.toString() + ".", "Histogram of the voltage to spare, all limits drawn at "
            + "random.", plot.chart());
    }

    /** What each receiver reads with each fault, on the scale of limits in the manner of NE 43. */
    public static Picture faults(FaultTable table) {
        final FaultPlot plot = new FaultPlot(table);
        return Picture.of(plot.getTitle(), "Reading of each receiver with each fault, with the ranges that "
            + "count as failure and as measurement.", plot);
    }
}
