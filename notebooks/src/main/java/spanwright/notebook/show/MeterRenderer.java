package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import spanwright.chart.MeterCharts;
import spanwright.chart.UncertaintyCharts;
import spanwright.error.CurrentMeter;
import spanwright.error.DiodeTerminal;
import spanwright.error.MeterComparison;
import spanwright.error.MeterReading;
import spanwright.error.SenseResistor;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.loop.LoopCautions;
import spanwright.quantity.Celsius;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.uncertainty.BudgetLine;

/**
 * Shows how well a set-up reads a loop current, and which of several will do. A set-up by itself is shown for
 * 4-20 mA at 23 degC, a comparison for what it was made for. Reading a loop means touching it, so cautions
 * come first.
 */
public final class MeterRenderer implements Renderer {
    private static final Span LOOP = Span.milliamps4to20();
    private static final Celsius ROOM = new Celsius(23);
    private static final double[] PERCENT = {0, 25, 50, 75, 100};
    private static final String METER_CAUTION = "A milliampere range is nearly a short circuit: put across a "
        + "voltage it blows its fuse, or worse. Check sockets, range and fuse before each reading.";
    private static final String STEPS = "U is at 95 % coverage; its coverage factor follows the shape of the "
        + "terms, so U can step where another term begins to rule. At worst: all limits added.";

    /** For the service loader. */
    public MeterRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof CurrentMeter meter) {
            return Optional.of(meter(meter).bundle());
        }
        if (value instanceof MeterReading reading) {
            return Optional.of(reading(reading).bundle());
        }
        if (value instanceof MeterComparison comparison) {
            return Optional.of(comparison(comparison).bundle());
        }
        if (value instanceof SenseResistor resistor) {
            return Optional.of(resistor(resistor).bundle());
        }
        return value instanceof DiodeTerminal diode ? Optional.of(diode(diode).bundle()) : Optional.empty();
    }

    private static Sheet cautioned(String sentence) {
        final List<String> all = new ArrayList<>(LoopCautions.all());
        all.add(METER_CAUTION);
        return Sheet.saying(sentence).with(new Cautions(all));
    }

    private static Sheet meter(CurrentMeter meter) {
        final MeterComparison able = MeterComparison.of(List.of(meter), LOOP, ROOM, new PercentOfSpan(1), 1);
        if (!able.unfit().isEmpty()) {
            return cautioned(meter.name() + " cannot read 4 to 20 mA: " + able.unfit().get(0).reason() + ".")
                .notes("Mind", meter.notes());
        }
        final List<MeterReading> readings = DoubleStream.of(PERCENT)
            .mapToObj(p -> meter.at(LOOP.valueAt(p), ROOM, LOOP)).toList();
        final MeterReading top = readings.get(readings.size() - 1);
        final Grid.Builder grid = Grid.of("The reading at each point, at " + ROOM, "#current (mA)", "#U (mA)",
            "#U (% of span)", "#at worst (% of span)", "#k", "largest term", "#taken from the loop (V)");
        for (MeterReading r : readings) {
            grid.row(List.of(NumberText.plain(r.milliamps(), 4),
                NumberText.uncertainty(r.expanded().expanded()),
                NumberText.uncertainty(r.expandedOfSpan().value()),
                NumberText.uncertainty(r.worstCase().value()), NumberText.fixed(r.expanded().k(), 2),
                r.budget().byShare().get(0).name(), NumberText.fixed(r.burdenVolts(), 3)), r == top,
                "U " + Figures.full(r.expanded().expanded()) + " mA");
        }
        return cautioned(meter.name() + " reads 20 mA to \u00b1"
                + NumberText.uncertainty(top.expanded().expanded()) + " mA = \u00b1"
                + NumberText.uncertainty(top.expandedOfSpan().value()) + " % of span at 95 % coverage and "
                + ROOM + ", at worst \u00b1" + NumberText.uncertainty(top.worstCase().value())
                + " % of span.")
            .with(grid.build()).with(MeterCharts.terms(meter, ROOM, LOOP)).notes("Mind", meter.notes())
            .notes("How to read it", List.of(STEPS, "Percent of span refers to the 16 mA of 4-20 mA, the "
                + "temperature is " + ROOM + "; other spans and temperatures: at(current, ambient, span)."));
    }

    private static Sheet reading(MeterReading reading) {
        final Grid.Builder grid = Grid.of("What may be wrong with the reading", "term", "#limit (mA)",
            "#limit (% of span)", "#u (mA)", "#% of variance");
        final List<BudgetLine> lines = reading.budget().byShare();
        for (BudgetLine line : lines) {
            final double ofSpan = reading.limitOf(line.name()).value();
            grid.row(List.of(line.name(),
                NumberText.uncertainty(reading.output().difference(new PercentOfSpan(ofSpan))),
                NumberText.uncertainty(ofSpan), NumberText.uncertainty(line.u()),
                NumberText.fixed(line.percentOfVariance(), 1)), line == lines.get(0),
                "u " + Figures.full(line.u()) + " mA");
        }
        return cautioned(reading + ".").with(grid.build())
            .with(UncertaintyCharts.contributions(reading.budget()))
            .notes("How to read it", List.of(STEPS, "k = " + NumberText.fixed(reading.expanded().k(), 2)
                + " (" + reading.expanded().basis() + "); the set-up takes "
                + NumberText.fixed(reading.burdenVolts(), 3) + " V from the loop there."))
            .notes("Warnings", reading.budget().warnings());
    }

    private static Sheet comparison(MeterComparison c) {
        Sheet sheet = cautioned(c.sentence() + ", at " + c.ambient() + ".");
        if (!c.rows().isEmpty()) {
            sheet = sheet.with(table(c, "Expanded uncertainty (95 %), in mA = in % of span", true))
                .with(table(c, "Ratio of the tolerance to it at each point; "
                    + NumberText.plain(c.leastRatio(), 3) + " is asked for", false))
                .with(MeterCharts.comparison(c));
        }
        return sheet.notes("Cannot read every point", c.unfit().stream()
                .map(u -> u.meter().name() + ": " + u.reason()).toList())
            .notes("Mind", c.rows().stream().flatMap(r -> r.meter().notes().stream()
                .map(n -> r.meter().name() + ": " + n)).toList())
            .notes("How to read it", List.of(STEPS, "The ratio counts the meter only: resolution and "
                + "repeatability of the device under test lower it further."));
    }

    private static Grid table(MeterComparison c, String caption, boolean uncertainties) {
        final List<String> heads = new ArrayList<>(List.of("set-up"));
        c.rows().get(0).readings().forEach(r -> heads.add("#" + NumberText.plain(r.milliamps(), 4) + " mA"));
        if (!uncertainties) {
            heads.addAll(List.of("#least", "will it do?"));
        }
        final Grid.Builder grid = Grid.of(caption, heads.toArray(String[]::new));
        for (MeterComparison.Row row : c.rows()) {
            final List<String> cells = new ArrayList<>(List.of(row.meter().name()));
            row.readings().forEach(r -> cells.add(uncertainties
                ? NumberText.uncertainty(r.expanded().expanded()) + " = "
                    + NumberText.uncertainty(r.expandedOfSpan().value())
                : NumberText.fixed(r.ratioTo(c.tolerance()), 1)));
            if (!uncertainties) {
                cells.addAll(List.of(NumberText.fixed(row.ratio(), 1), row.willDo() ? "\u2713 yes"
                    : "\u2717 no"));
            }
            grid.row(cells, row == c.rows().get(0), "ratio " + Figures.full(row.ratio()));
        }
        return grid.build();
    }

    private static Sheet resistor(SenseResistor resistor) {
        final double perShare = LOOP.ofSpan(LOOP.upper()).value();
        final Grid.Builder grid = Grid.of("What the resistor may add to a reading of 20 mA",
            "#temperature (\u00b0C)", "#value (% of span)", "#temperature coefficient (% of span)",
            "#both (% of span)");
        final double value = perShare * resistor.valueLimit();
        for (double t : DoubleStream.of(-10, resistor.reference().value(), 45, 70).distinct().sorted()
                .toArray()) {
            final double warm = perShare * resistor.temperatureLimit(new Celsius(t));
            grid.row(List.of(NumberText.plain(t, 4), NumberText.uncertainty(value),
                NumberText.uncertainty(warm), NumberText.uncertainty(value + warm)),
                t == resistor.reference().value(), "both " + Figures.full(value + warm));
        }
        return cautioned("Sense resistor of " + resistor + ": \u00b1" + NumberText.uncertainty(value)
                + " % of span at 20 mA and " + resistor.reference() + " by its "
                + (resistor.isCertified() ? "certificate (k = 2)." : "tolerance."))
            .with(grid.build()).with(MeterCharts.resistor(resistor, LOOP))
            .notes("How to read it", List.of("Percent of span refers to the 16 mA of 4-20 mA: the live zero "
                + "makes 0.1 % of the value 0.125 % of span at 20 mA.", "The marked row is at the "
                + "temperature at which the value holds."));
    }

    private static Sheet diode(DiodeTerminal diode) {
        final Grid.Builder grid = Grid.of("Largest voltage that a meter may leave across the terminal, and "
            + "its resistance at 20 mA", "#diode at (\u00b0C)", "#for 0.01 % of span (V)", "#(\u03a9)",
            "#for 0.1 % of span (V)", "#(\u03a9)");
        final List<Celsius> all = diode.usualTemperatures();
        for (Celsius t : all) {
            final double fine = diode.largestBurdenVolts(LOOP.difference(new PercentOfSpan(0.01)), t);
            final double coarse = diode.largestBurdenVolts(LOOP.difference(new PercentOfSpan(0.1)), t);
            grid.row(List.of(NumberText.plain(t.value(), 4), NumberText.fixed(fine, 2),
                NumberText.fixed(fine / 0.02, 1), NumberText.fixed(coarse, 2),
                NumberText.fixed(coarse / 0.02, 1)), t.equals(all.get(all.size() - 1)),
                Figures.full(fine) + " V; " + Figures.full(coarse) + " V");
        }
        return cautioned("A reading at this " + diode + ", is low by what stays in the diode: the warmer it "
                + "is, the less voltage the meter may need.")
            .with(grid.build()).with(errors(diode)).with(MeterCharts.diode(diode, LOOP))
            .notes("How to read it", List.of("Model: the diode equation with ideality "
                + NumberText.plain(diode.ideality(), 3) + ", forward voltage changing by "
                + NumberText.plain(1000 * diode.voltsPerKelvin(), 3) + " mV/K. Figures of a typical diode "
                + "are common practice; the data sheet of the terminal prevails.",
                "Add the leads and the fuse to the meter's resistance."));
    }

    private static Grid errors(DiodeTerminal diode) {
        final List<Celsius> all = diode.usualTemperatures();
        final List<String> heads = new ArrayList<>(List.of("#meter leaves (V)"));
        all.forEach(t -> heads.add("#diode at " + t));
        final Grid.Builder grid = Grid.of("Error of the reading, in % of span", heads.toArray(String[]::new));
        for (double volts : new double[] {0.05, 0.1, 0.2, 0.3, 0.4}) {
            final List<String> cells = new ArrayList<>(List.of(NumberText.fixed(volts, 2)));
            all.forEach(
                t -> cells.add(NumberText.fixed(diode.errorPercentOfSpan(volts, t, LOOP.width()), 3)));
            grid.row(cells, false, "");
        }
        return grid.build();
    }
}
