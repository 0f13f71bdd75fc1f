package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.chart.PanelCharts;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.loop.CommonCause;
import spanwright.loop.CurrentLoop;
import spanwright.loop.IsolatorModule;
import spanwright.loop.Panel;
import spanwright.loop.PanelChannel;
import spanwright.loop.PanelHeat;
import spanwright.loop.PanelLoad;
import spanwright.loop.PanelState;
import spanwright.loop.Supply;
import spanwright.quantity.NumberText;

/** Shows a panel: what is in it, its state at a current, the load of its supplies, what falls together. */
public final class PanelRenderer implements Renderer {
    /** For the service loader. */
    public PanelRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof Panel panel) {
            return Optional.of(panel(panel).bundle());
        }
        if (value instanceof PanelState state) {
            return Optional.of(state(state).bundle());
        }
        if (value instanceof PanelLoad load) {
            return Optional.of(load(load).bundle());
        }
        if (value instanceof PanelHeat heat) {
            return Optional.of(heat(heat).bundle());
        }
        return value instanceof CommonCause cause ? Optional.of(cause(cause).bundle()) : Optional.empty();
    }

    private static Sheet panel(Panel panel) {
        final Grid.Builder grid = Grid.of("Channels", "loop", "module", "#place", "supply", "transmitter");
        for (IsolatorModule module : panel.modules()) {
            module.channels().forEach((place, c) -> row(grid, c, module.name(), place.toString()));
        }
        panel.direct().forEach(c -> row(grid, c, "none", ""));
        return LoopRenderer.cautioned(panel.name() + ": " + panel.channels().size() + " loops in "
            + panel.modules().size() + " modules, " + panel.modules().stream()
                .mapToInt(IsolatorModule::spare).sum() + " places spare, fed by "
            + String.join(" and ", panel.supplies().stream().map(Supply::name).toList()) + ".")
            .with(grid.build());
    }

    private static void row(Grid.Builder grid, PanelChannel channel, String module, String place) {
        final CurrentLoop loop = channel.loop();
        grid.row(loop.name(), module, place, loop.supply().map(Supply::name).orElse("none of its own"),
            loop.transmitter().kind().toString());
    }

    private static Sheet state(PanelState state) {
        Sheet sheet = LoopRenderer.cautioned(state.sentence());
        if (!state.isSolved()) {
            return sheet;
        }
        sheet = sheet.with(PanelCharts.margins(state)).with(PanelCharts.heat(state));
        final Grid.Builder supplies = Grid.of("Supplies", "supply", "#current (mA)", "#at its feed (V)",
            "#efficiency (%)", "#from the mains (W)", "#heat (W)");
        state.power().supplies().forEach(s -> supplies.row(s.supply(),
            NumberText.fixed(s.currents().totalMilliamps(), 1), NumberText.fixed(s.volts(), 2),
            s.efficiencyPercent().isPresent() ? NumberText.plain(s.efficiencyPercent().getAsDouble(), 4)
                : "not stated", watts(s.mainsMilliwatts()), watts(s.heatMilliwatts())));
        final Grid.Builder heat = Grid.of("Where the heat is", "where", "#heat (W)");
        state.modules().forEach(m -> heat.row(m.name(), watts(m.heatMilliwatts())));
        heat.row("in the field", watts(state.fieldHeatMilliwatts()));
        heat.deciding("in the cabinet, supplies included", watts(state.cabinetHeatMilliwatts()));
        return sheet.with(supplies.build()).with(heat.build())
            .notes("Not determined", state.power().notDetermined());
    }

    private static String watts(OptionalDouble milliwatts) {
        return milliwatts.isPresent() ? NumberText.fixed(milliwatts.getAsDouble() / 1000, 2)
            : "not determined";
    }

    private static Sheet load(PanelLoad load) {
        final Grid.Builder grid = Grid.of("Load of the supplies: every loop at 20 mA, at 21 mA, and "
            + "everything at its most", "supply", "#at 20 (mA)", "#at 21 (mA)", "#most (mA)",
            "#rated (mA)", "#share (%)", "#inrush (mA)");
        for (PanelLoad.Row row : load.rows()) {
            grid.row(List.of(row.supply() + ", " + row.circuits() + " circuits",
                NumberText.fixed(row.currents().fullScaleMilliamps(), 0),
                NumberText.fixed(row.currents().failureHighMilliamps(), 0),
                NumberText.fixed(row.currents().worstMilliamps(), 0), whole(row.ratedMilliamps(),
                    "not stated"), whole(row.percentOfRating(), "not determined"),
                whole(row.inrushMilliamps(), "not determined")), row.marginMilliamps().orElse(0) < 0, "");
        }
        return LoopRenderer.cautioned(PanelCharts.load(load).title()).with(PanelCharts.load(load))
            .with(grid.build());
    }

    private static String whole(OptionalDouble value, String without) {
        return value.isPresent() ? NumberText.fixed(value.getAsDouble(), 0) : without;
    }

    private static Sheet heat(PanelHeat heat) {
        final Grid.Builder grid = Grid.of("Heat over the current of every loop", "#current (mA)", "corner",
            "#in the cabinet (W)", "#in the field (W)", "#taken in all (W)");
        heat.rows().forEach(r -> grid.row(List.of(NumberText.plain(r.milliamps(), 4), r.corner().toString(),
            watts(r.cabinetMilliwatts()), watts(r.fieldMilliwatts()), watts(r.inMilliwatts())),
            heat.hottest().filter(r::equals).isPresent(), ""));
        return (heat.hottest().isPresent() ? LoopRenderer.cautioned(PanelCharts.heatOverCurrent(heat).title())
            .with(PanelCharts.heatOverCurrent(heat)) : LoopRenderer.cautioned("The largest heat in the "
                + "cabinet of " + heat.panel() + " is not determined.")).with(grid.build());
    }

    private static Sheet cause(CommonCause cause) {
        final Grid.Builder grid = Grid.of("What falls with it", "channel", "readings",
            "the transmitter's loop lives on", "flagged as a failure");
        cause.effects().forEach(e -> grid.row(e.channel(), String.join("; ", e.readings().stream()
            .map(Object::toString).toList()), e.primary().toString(), e.isFlagged() ? "yes" : "no"));
        final Sheet sheet = LoopRenderer.cautioned(cause.cause() + " (" + cause.kind() + "): "
            + (cause.effects().isEmpty() ? "no channel falls" : cause.effects().size() + " channels fall")
            + ". " + cause.note());
        return cause.effects().isEmpty() ? sheet : sheet.with(grid.build());
    }
}
