package spanwright.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import spanwright.loop.CircuitState;
import spanwright.loop.Corner;
import spanwright.loop.ElementPower;
import spanwright.loop.Isolator;
import spanwright.loop.LoopElement;
import spanwright.loop.PanelHeat;
import spanwright.loop.PanelLoad;
import spanwright.loop.PanelState;
import spanwright.quantity.NumberText;

/** Pictures of a panel: voltage to spare of every channel, load of every supply, heat in the cabinet. */
public final class PanelCharts {
    private static final int SHOWN = 12;

    private PanelCharts() { }

    /**
     * Voltage to spare of every channel, in the circuit of it that has least, with all others on the same
     * supplies.
     *
     * @throws IllegalStateException if the panel has no steady state, with the reason
     */
    public static Picture margins(PanelState state) {
        requireSolved(state);
        return Picture.of(state.sentence(), "Voltage to spare of each channel of the panel, in its tightest "
            + "circuit.", new BarPlot("voltage to spare in the circuit that has least (V)", state.channels()
            .stream().map(PanelCharts::margin).toList()));
    }

    private static BarPlot.Bar margin(PanelState.Channel channel) {
        if (!channel.state().isSolved()) {
            return new BarPlot.Bar(channel.name(), 0, 0, "no solution", Ink.VERMILION);
        }
        final Set<String> unlimited = new HashSet<>();
        addUnlimited(channel.channel().loop().elements(), unlimited);
        final CircuitState least = channel.state().circuits().stream()
            .filter(c -> !unlimited.contains(c.source()))
            .min(Comparator.comparingDouble(c -> c.budget().marginVolts())).orElseThrow();
        final String where = least == channel.state().primary() ? "" : ", " + least.name();
        return new BarPlot.Bar(channel.name(), 0, least.budget().marginVolts(),
            NumberText.signed(least.budget().marginVolts(), 2) + " V" + where
            + (channel.isReached() ? "" : ", short"), channel.isReached() ? Ink.BLUE : Ink.VERMILION);
    }

    /** Outputs that give whatever their load takes: the voltage is missing at their input, not there. */
    private static void addUnlimited(List<LoopElement> elements, Set<String> names) {
        for (LoopElement element : elements) {
            if (element instanceof Isolator isolator) {
                if (isolator.nests() && isolator.output().clampVolts().isEmpty()) {
                    names.add(isolator.name());
                }
                addUnlimited(isolator.output().fed(), names);
            }
        }
    }

    /** Current drawn from every supply, at full scale, at the failure limit, and at most, by its rating. */
    public static Picture load(PanelLoad load) {
        final List<BarPlot.Bar> bars = new ArrayList<>();
        for (PanelLoad.Row row : load.rows()) {
            add(bars, row.supply() + ", all at 20 mA", row.currents().fullScaleMilliamps(), Ink.BLUE);
            add(bars, row.supply() + ", all at 21 mA", row.currents().failureHighMilliamps(), Ink.BLUE);
            final boolean exceeded = row.marginMilliamps().orElse(0) < 0;
            add(bars, row.supply() + ", at most", row.currents().worstMilliamps(),
                exceeded ? Ink.VERMILION : Ink.BLUE);
            row.ratedMilliamps().ifPresent(r -> add(bars, row.supply() + ", rated", r, Ink.GREEN));
        }
        return Picture.of(load.panel() + ": " + String.join("; ", load.rows().stream().map(r -> r.check()
            .sentence()).toList()) + ".", "Current drawn from each supply beside its rating.",
            new BarPlot("current (mA)", bars));
    }

    private static void add(List<BarPlot.Bar> bars, String name, double milliamps, Ink ink) {
        bars.add(new BarPlot.Bar(name, 0, milliamps, NumberText.fixed(milliamps, 0) + " mA", ink));
    }

    /**
     * Heat in the cabinet by device and supply, largest first.
     *
     * @throws IllegalStateException if the panel has no steady state, with the reason
     */
    public static Picture heat(PanelState state) {
        requireSolved(state);
        final List<Heat> all = Stream.concat(
            state.power().supplies().stream().map(s -> new Heat(s.supply(), s.heatMilliwatts())),
            state.power().devices().stream().filter(ElementPower::inCabinet)
                .map(d -> new Heat(d.device(), d.heatMilliwatts())))
            .sorted(Comparator.comparingDouble((Heat h) -> h.milliwatts().orElse(Double.MAX_VALUE))
                .reversed()).toList();
        final List<BarPlot.Bar> bars = new ArrayList<>();
        all.stream().limit(SHOWN).forEach(h -> bars.add(new BarPlot.Bar(h.name(), 0, h.milliwatts()
            .orElse(0) / 1000, h.milliwatts().isPresent() ? NumberText.fixed(h.milliwatts().getAsDouble()
            / 1000, 2) + " W" : "not determined", Ink.BLUE)));
        final List<Heat> rest = all.subList(Math.min(SHOWN, all.size()), all.size());
        if (!rest.isEmpty()) {
            final double sum = rest.stream().mapToDouble(h -> h.milliwatts().orElse(0)).sum() / 1000;
            bars.add(
                new BarPlot.Bar(rest.size() + " more", 0, sum, NumberText.fixed(sum, 2) + " W", Ink.BLUE));
        }
        final OptionalDouble cabinet = state.cabinetHeatMilliwatts();
        return Picture.of(state.panel() + " (" + state.corner() + "): heat in the cabinet "
            + (cabinet.isPresent() ? NumberText.fixed(cabinet.getAsDouble() / 1000, 2) + " W"
                : "is not determined, " + String.join("; ", state.power().notDetermined())) + ".",
            "Heat of each device and supply in the cabinet, largest first.",
            new BarPlot("heat in the cabinet (W)", bars));
    }

    /**
     * Heat in the cabinet over the current that every loop carries, at the three corners.
     *
     * @throws IllegalArgumentException if a heat is not determined
     */
    public static Picture heatOverCurrent(PanelHeat heat) {
        final PanelHeat.Row hottest = heat.hottest().orElseThrow(() -> new IllegalArgumentException(
            "a heat of " + heat.panel() + " is not determined: there is nothing whole to draw"));
        final double top = hottest.cabinetMilliwatts().orElseThrow() / 1000;
        final Plot plot = new Plot("current of every loop (mA)", "heat in the cabinet (W)").xRange(0, 30)
            .yRange(0, top * 1.25);
        final Ink[] inks = {Ink.BLUE, Ink.VERMILION, Ink.GREEN};
        for (Corner corner : Corner.values()) {
            final List<PanelHeat.Row> rows = heat.rows().stream().filter(r -> r.corner() == corner).toList();
            final double[] x = rows.stream().mapToDouble(PanelHeat.Row::milliamps).toArray();
            final double[] y = rows.stream().mapToDouble(r -> r.cabinetMilliwatts().orElseThrow() / 1000)
                .toArray();
            final Ink ink = inks[corner.ordinal() % inks.length];
            plot.line(corner.toString(), x, y, ink).note(PlotNote.text(corner.toString(),
                x[x.length - 1] + 0.3, y[y.length - 1], PlotNote.Anchor.LEFT, ink.colour(),
                corner == Corner.MOST_VOLTAGE ? -8 : corner == Corner.NOMINAL ? 4 : 16));
        }
        return Picture.of("The cabinet of " + heat.panel() + " is hottest at "
            + NumberText.plain(hottest.milliamps(), 4) + " mA, " + hottest.corner() + ": "
            + NumberText.fixed(top, 2) + " W.",
            "Heat in the cabinet over the current of every loop at the three corners.", plot.chart());
    }

    /**
     * Heat of one thing.
     *
     * @param name       of it
     * @param milliwatts its heat, if determined
     */
    private record Heat(String name, OptionalDouble milliwatts) { }

    private static void requireSolved(PanelState state) {
        if (!state.isSolved()) {
            throw new IllegalStateException(state.sentence());
        }
    }
}
