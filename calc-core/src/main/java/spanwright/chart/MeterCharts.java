package spanwright.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import spanwright.error.CurrentMeter;
import spanwright.error.DiodeTerminal;
import spanwright.error.MeterComparison;
import spanwright.error.MeterReading;
import spanwright.error.SenseResistor;
import spanwright.quantity.Celsius;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.uncertainty.BudgetLine;

/** Pictures of ways to read a loop current. Percentages are of the span of the current's range. */
public final class MeterCharts {
    private static final int STEPS = 32;
    private static final Ink[] INKS = {Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.ORANGE, Ink.PURPLE, Ink.BLACK};
    /** Share of the width of a plot that labels at its right end need. */
    private static final double LABEL_ROOM = 0.55;
    /** Least distance of two labels as a share of the height of the plot. */
    private static final double LABEL_GAP = 0.052;
    private static final double TOO_THIN = 0.03;

    private MeterCharts() { }

    /**
     * The limits of a set-up's terms on top of each other against the current, the largest at the bottom, and
     * the expanded uncertainty as a line. Terms too thin to be seen are named without an area.
     *
     * @param output range of the current, mA
     * @throws IllegalArgumentException if the range goes beyond that of the meter
     */
    public static Picture terms(CurrentMeter meter, Celsius ambient, Span output) {
        Objects.requireNonNull(meter, "meter");
        final double[] x = currents(output);
        final List<MeterReading> readings = Arrays.stream(x).mapToObj(c -> meter.at(c, ambient, output))
            .toList();
        final Map<String, double[]> limits = limits(readings);
        final List<String> names = new ArrayList<>(limits.keySet());
        names.sort(Comparator.comparingDouble(n -> -limits.get(n)[STEPS]));
        final double top = readings.stream().mapToDouble(r -> r.worstCase().value()).max().orElseThrow();
        final Plot plot = new Plot("current (mA)", "limit of each term, added up (% of span)")
            .yRange(0, 1.1 * top).xRange(x[0], x[STEPS] + LABEL_ROOM * (x[STEPS] - x[0]));
        final List<String> thin = new ArrayList<>();
        final List<double[]> tops = new ArrayList<>();
        double[] sum = new double[x.length];
        for (String name : names) {
            sum = plus(sum, limits.get(name));
            tops.add(sum);
        }
        // From the highest down: each area reaches to 0 and the next lies over it.
        for (int k = names.size() - 1; k >= 0; k--) {
            if (limits.get(names.get(k))[STEPS] < TOO_THIN * top) {
                thin.add(names.get(k) + " " + NumberText.uncertainty(limits.get(names.get(k))[STEPS]));
            } else {
                plot.filled(names.get(k), x, tops.get(k), INKS[k % INKS.length]);
            }
        }
        final double[] u = readings.stream().mapToDouble(r -> r.expandedOfSpan().value()).toArray();
        plot.line("expanded uncertainty", x, u, Ink.BLACK);
        labelTerms(plot, beside(x), names, limits, tops, u[STEPS], top);
        if (!thin.isEmpty()) {
            plot.note(PlotNote.text("too small to draw: " + String.join(", ", thin), x[0], top * 1.04,
                PlotNote.Anchor.LEFT, Ink.SOFT_TEXT, 0));
        }
        final MeterReading last = readings.get(STEPS);
        return Picture.of(
            meter.name() + " at " + ambient + ": U is " + NumberText.uncertainty(u[0]) + " % of span at "
                + NumberText.plain(x[0], 4) + " mA and " + NumberText.uncertainty(u[STEPS]) + " % at "
                + NumberText.plain(x[STEPS], 4) + " mA (95 %), at worst "
                + NumberText.uncertainty(last.worstCase().value()) + " %; " + names.get(0)
                + " is the largest term at the top.",
            "Limits of " + names.size() + (names.size() == 1 ? " term" : " terms")
                + " in percent of span, stacked, against the current.",
            plot.chart());
    }

    private static void labelTerms(Plot plot, double x, List<String> names, Map<String, double[]> limits,
                                   List<double[]> tops, double u, double top) {
        final List<String> texts = new ArrayList<>();
        final List<Ink> inks = new ArrayList<>();
        final List<Double> places = new ArrayList<>();
        for (int k = 0; k < names.size(); k++) {
            final double limit = limits.get(names.get(k))[STEPS];
            if (limit >= TOO_THIN * top) {
                texts.add(names.get(k) + " " + NumberText.uncertainty(limit));
                inks.add(INKS[k % INKS.length]);
                places.add(tops.get(k)[STEPS] - limit / 2);
            }
        }
        texts.add("U (95 %) " + NumberText.uncertainty(u));
        inks.add(Ink.BLACK);
        places.add(u);
        final double[] apart = Labels.spread(places.stream().mapToDouble(v -> v).toArray(),
            LABEL_GAP * 1.1 * top);
        for (int k = 0; k < texts.size(); k++) {
            plot.note(PlotNote.text(texts.get(k), x, apart[k], PlotNote.Anchor.LEFT, dark(inks.get(k)), 4));
        }
    }

    /** Orange and purple are too light for text on white. */
    private static Color dark(Ink ink) {
        return ink == Ink.ORANGE || ink == Ink.PURPLE ? ink.colour().darker() : ink.colour();
    }

    /** A little to the right of the last place, where labels begin. */
    private static double beside(double[] x) {
        return x[x.length - 1] + 0.02 * (x[x.length - 1] - x[0]);
    }

    private static Map<String, double[]> limits(List<MeterReading> readings) {
        final Map<String, double[]> limits = new LinkedHashMap<>();
        for (int i = 0; i < readings.size(); i++) {
            for (BudgetLine line : readings.get(i).budget().lines()) {
                limits.computeIfAbsent(line.name(), n -> new double[readings.size()])[i] =
                    readings.get(i).limitOf(line.name()).value();
            }
        }
        return limits;
    }

    private static double[] plus(double[] a, double[] b) {
        return IntStream.range(0, a.length).mapToDouble(i -> a[i] + b[i]).toArray();
    }

    private static double[] currents(Span output) {
        return IntStream.rangeClosed(0, STEPS).mapToDouble(i -> output.valueAt(100.0 * i / STEPS)).toArray();
    }

    /**
     * The expanded uncertainty of each set-up against the current, on a logarithmic scale, with the tolerance
     * and what the ratio asked for leaves of it; of more than six set-ups the best six.
     *
     * @throws IllegalArgumentException if none can read all the points
     */
    public static Picture comparison(MeterComparison comparison) {
        Objects.requireNonNull(comparison, "comparison");
        if (comparison.rows().isEmpty()) {
            throw new IllegalArgumentException("no set-up can read all the points");
        }
        final double[] x = currents(comparison.output());
        final List<MeterComparison.Row> rows = comparison.rows()
            .subList(0, Math.min(INKS.length, comparison.rows().size()));
        final double tolerance = comparison.tolerance().value();
        final double allowed = tolerance / comparison.leastRatio();
        final List<double[]> lines = rows.stream().map(r -> Arrays.stream(x).map(c -> r.meter()
            .at(c, comparison.ambient(), comparison.output()).expandedOfSpan().value()).toArray()).toList();
        final double low = Math.min(allowed, lines.stream().flatMapToDouble(DoubleStream::of).min()
            .orElseThrow()) / 1.6;
        final double high = Math.max(tolerance, lines.stream().flatMapToDouble(DoubleStream::of).max()
            .orElseThrow()) * 1.6;
        final Plot plot = new Plot("current (mA)", "expanded uncertainty of a reading (% of span)")
            .yLogarithmic().yRange(low, high).xRange(x[0], x[STEPS] + LABEL_ROOM * (x[STEPS] - x[0]));
        final double[] ends = {x[0], x[STEPS]};
        plot.dashed("tolerance", ends, new double[] {tolerance, tolerance}, Ink.BLACK);
        plot.dashed("allowed", ends, new double[] {allowed, allowed}, Ink.BLACK);
        final List<String> texts = new ArrayList<>(List.of("tolerance " + NumberText.plain(tolerance, 3),
            "tolerance / " + NumberText.plain(comparison.leastRatio(), 3) + " = "
                + NumberText.plain(allowed, 3)));
        final List<Color> inks = new ArrayList<>(List.of(Ink.BLACK.colour(), Ink.BLACK.colour()));
        final List<Double> places = new ArrayList<>(List.of(tolerance, allowed));
        for (int k = rows.size() - 1; k >= 0; k--) {
            plot.line(k + " " + rows.get(k).meter().name(), x, lines.get(k), INKS[k]);
            final boolean will = rows.get(k).willDo();
            texts.add((will ? "\u2713 " : "\u2717 ") + shortened(rows.get(k).meter().name()) + ": "
                + NumberText.uncertainty(lines.get(k)[STEPS]));
            inks.add(dark(INKS[k]));
            places.add(lines.get(k)[STEPS]);
        }
        final double[] apart = Labels.spread(places.stream().mapToDouble(Math::log).toArray(),
            LABEL_GAP * Math.log(high / low));
        for (int k = 0; k < texts.size(); k++) {
            plot.note(PlotNote.text(texts.get(k), beside(x), Math.exp(apart[k]), PlotNote.Anchor.LEFT,
                inks.get(k), 4));
        }
        final int left = comparison.rows().size() - rows.size();
        return Picture.of(comparison.sentence() + (left > 0 ? " (the best " + rows.size() + " drawn)" : "")
            + ".", "Expanded uncertainty of " + rows.size() + " set-ups against the current, with the "
            + "tolerance and its share that the ratio allows.", plot.chart());
    }

    private static String shortened(String name) {
        return name.length() <= 26 ? name : name.substring(0, 25) + "\u2026";
    }

    /**
     * What a sense resistor adds to a reading of the upper range value against its temperature: its value
     * and, on top, its temperature coefficient.
     *
     * @param output range of the current, mA
     */
    public static Picture resistor(SenseResistor resistor, Span output) {
        Objects.requireNonNull(resistor, "resistor");
        final double[] t = IntStream.rangeClosed(0, 80).mapToDouble(i -> -10 + i).toArray();
        final double perShare = output.ofSpan(output.upper()).value();
        final double value = perShare * resistor.valueLimit();
        final double[] both = Arrays.stream(t).map(c -> value + perShare
            * resistor.temperatureLimit(new Celsius(c))).toArray();
        final double[] alone = new double[t.length];
        Arrays.fill(alone, value);
        final double top = Math.max(Arrays.stream(both).max().orElseThrow(), 1e-6);
        final Plot plot = new Plot("temperature of the resistor (\u00b0C)",
            "limit at " + NumberText.plain(output.upper(), 4) + " mA (% of span)").yRange(0, 1.15 * top);
        plot.filled("temperature", t, both, Ink.VERMILION).filled("value", t, alone, Ink.BLUE);
        plot.note(PlotNote.text((resistor.isCertified() ? "certificate (k = 2) " : "tolerance ")
            + NumberText.uncertainty(value), 30, value / 2, PlotNote.Anchor.CENTRE, Ink.BLUE.colour(), 4));
        plot.note(PlotNote.text("with " + NumberText.plain(resistor.ppmPerKelvin(), 4) + " ppm/K: "
            + NumberText.uncertainty(both[t.length - 1]), 70, both[t.length - 1], PlotNote.Anchor.RIGHT,
            Ink.VERMILION.colour(), -6));
        return Picture.of(resistor + ": its limits are " + NumberText.uncertainty(value) + " % of span at "
            + NumberText.plain(output.upper(), 4) + " mA and " + resistor.reference() + ", and "
            + NumberText.uncertainty(both[t.length - 1]) + " % at 70 \u00b0C.",
            "Limit that the resistor adds to a reading, against its temperature.", plot.chart());
    }

    /**
     * How much a reading at a test terminal lacks against the voltage that the meter leaves across it, at
     * several temperatures of the diode, on a logarithmic scale.
     *
     * @param output range of the current, mA
     */
    public static Picture diode(DiodeTerminal diode, Span output) {
        Objects.requireNonNull(diode, "diode");
        final List<Celsius> warm = diode.usualTemperatures();
        final double last = 0.6 * diode.forwardVolts();
        final double[] x = IntStream.rangeClosed(1, 60).mapToDouble(i -> last * i / 60).toArray();
        final double[] ends = new double[warm.size()];
        final Plot plot = new Plot("voltage that the meter leaves across the terminal (V)",
            "reading low by (% of span)").yLogarithmic().xRange(0, last * 1.4).yRange(1e-4, 10);
        for (int k = 0; k < warm.size(); k++) {
            final Celsius at = warm.get(k);
            // Below the lowest line of the scale and above its highest there is nothing to see.
            final double[] shown = Arrays.stream(x).filter(v -> isShown(low(diode, v, at, output))).toArray();
            final double[] y = Arrays.stream(shown).map(v -> low(diode, v, at, output)).toArray();
            plot.line(at.toString(), shown, y, INKS[k]);
            ends[k] = Math.log(y[y.length - 1]);
        }
        final double[] apart = Labels.spread(ends, LABEL_GAP * Math.log(1e5));
        for (int k = 0; k < warm.size(); k++) {
            plot.note(PlotNote.text("diode at " + warm.get(k), beside(x), Math.exp(apart[k]),
                PlotNote.Anchor.LEFT, dark(INKS[k]), 4));
        }
        final Celsius hottest = warm.get(warm.size() - 1);
        final double allowed = output.difference(new PercentOfSpan(0.01));
        return Picture.of("Test terminal: a meter that leaves up to "
            + NumberText.fixed(diode.largestBurdenVolts(allowed, diode.reference()), 2) + " V at "
            + diode.reference() + ", " + NumberText.fixed(diode.largestBurdenVolts(allowed, hottest), 2)
            + " V at " + hottest + ", reads less than 0.01 % of span low.",
            "Error of a reading at a diode's test terminal against the meter's burden voltage, at "
                + warm.size() + " temperatures.", plot.chart());
    }

    private static double low(DiodeTerminal diode, double volts, Celsius at, Span output) {
        return -diode.errorPercentOfSpan(volts, at, output.width());
    }

    private static boolean isShown(double percent) {
        return percent >= 1e-4 && percent <= 10;
    }
}
