package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.chart.MeterCharts;
import spanwright.chart.UncertaintyCharts;
import spanwright.error.CurrentMeter;
import spanwright.error.DiodeTerminal;
import spanwright.error.MeterComparison;
import spanwright.error.MeterReading;
import spanwright.error.SenseResistor;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.Celsius;
import spanwright.quantity.NumberText;
import spanwright.quantity.Span;
import spanwright.uncertainty.BudgetLine;

/** Shows ways to read a loop current, side by side and one by one. */
public final class MeterRenderer implements Renderer {
    private static final Celsius ROOM = new Celsius(23);

    /** For the service loader. */
    public MeterRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof MeterComparison c) {
            return Optional.of(comparison(c).bundle());
        }
        if (value instanceof MeterReading r) {
            return Optional.of(reading(r).bundle());
        }
        if (value instanceof CurrentMeter m) {
            return Optional.of(meter(m).bundle());
        }
        if (value instanceof SenseResistor r) {
            return Optional.of(Sheet.saying(r + ".").with(MeterCharts.resistor(r, Span.milliamps4to20()))
                .bundle());
        }
        return value instanceof DiodeTerminal d ? Optional.of(diode(d).bundle()) : Optional.empty();
    }

    private static Sheet comparison(MeterComparison c) {
        Sheet sheet = Sheet.saying(c.sentence() + ", at " + c.ambient() + ".");
        if (!c.rows().isEmpty()) {
            sheet = sheet.with(ratios(c)).with(MeterCharts.comparison(c));
        }
        return sheet.notes("Cannot read the range", c.unfit().stream()
                .map(u -> u.meter().name() + ": " + u.reason()).toList())
            .notes("What to know of them", c.rows().stream().flatMap(r -> r.meter().notes().stream()
                .map(n -> r.meter().name() + ": " + n)).toList());
    }

    private static Grid ratios(MeterComparison c) {
        final List<String> heads = new ArrayList<>(List.of("set-up"));
        c.rows().get(0).readings().forEach(r -> heads.add("#" + NumberText.plain(r.milliamps(), 4)
            + " mA"));
        heads.addAll(List.of("#worst ratio", "will it do"));
        final Grid.Builder grid = Grid.of("Expanded uncertainty (95 %) in % of span, and the ratio of the "
            + "tolerance to it",
            heads.toArray(String[]::new));
        for (MeterComparison.Row r : c.rows()) {
            final List<String> cells = new ArrayList<>(List.of(r.meter().name()));
            r.readings().forEach(m -> cells.add(NumberText.uncertainty(m.expandedOfSpan().value()) + ", "
                + "ratio " + NumberText.fixed(m.ratioTo(c.tolerance()), 1)));
            cells.add(NumberText.fixed(r.ratio(), 1));
            cells.add(r.willDo() ? "\u2713 yes" : "\u2717 no");
            grid.row(cells, r.equals(c.rows().get(0)), "ratio " + r.ratio());
        }
        return grid.build();
    }

    private static Sheet reading(MeterReading r) {
        final Grid.Builder grid = Grid.of("Terms of the reading", "term", "#limit (% of span)",
            "#% of variance");
        for (BudgetLine line : r.budget().byShare()) {
            grid.row(line.name(), NumberText.uncertainty(r.limitOf(line.name()).value()),
                NumberText.fixed(line.percentOfVariance(), 1));
        }
        return Sheet.saying(r + ".").with(grid.build()).with(UncertaintyCharts.contributions(r.budget()));
    }

    private static Sheet meter(CurrentMeter m) {
        final Span loop = Span.milliamps4to20();
        final Grid.Builder grid = Grid.of("Readings of a 4-20 mA loop at " + ROOM, "#current (mA)", "#U (mA)",
            "#U (% of span)", "#at worst (% of span)", "#takes from the loop (V)");
        for (int p = 0; p <= 100; p += 25) {
            final MeterReading r = m.at(loop.valueAt(p), ROOM, loop);
            grid.row(NumberText.plain(r.milliamps(), 4), NumberText.uncertainty(r.expanded().expanded()),
                NumberText.uncertainty(r.expandedOfSpan().value()),
                NumberText.uncertainty(r.worstCase().value()), NumberText.significant(r.burdenVolts(), 2));
        }
        return Sheet.saying(m.at(20, ROOM, loop) + ".").with(grid.build())
            .with(MeterCharts.terms(m, ROOM, loop)).notes("What to know", m.notes());
    }

    private static Sheet diode(DiodeTerminal d) {
        final Span loop = Span.milliamps4to20();
        final List<Celsius> warm = d.usualTemperatures();
        final List<String> heads = new ArrayList<>(List.of("#meter leaves (V)"));
        warm.forEach(t -> heads.add("#" + t));
        final Grid.Builder grid = Grid.of("Error of the reading, % of span, by the diode's temperature",
            heads.toArray(String[]::new));
        for (double volts : new double[] {0.05, 0.1, 0.2, 0.3, 0.4}) {
            final List<String> cells = new ArrayList<>(List.of(NumberText.fixed(volts, 2)));
            warm.forEach(t -> cells.add(NumberText.fixed(d.errorPercentOfSpan(volts, t, loop.width()), 3)));
            grid.row(cells, false, "");
        }
        return Sheet.saying("A " + d + ": a meter reads low by what stays in the diode.").with(grid.build())
            .with(MeterCharts.diode(d, loop));
    }
}
