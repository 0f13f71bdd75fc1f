package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.loop.Cable;
import spanwright.loop.Corner;
import spanwright.loop.CurrentLoop;
import spanwright.loop.Isolator;
import spanwright.loop.LoopElement;
import spanwright.loop.LoopInverse;
import spanwright.quantity.Celsius;
import spanwright.quantity.NumberText;

/** Voltage to spare at the upscale failure current as one thing of the loop changes. */
public final class LoopSweeps {
    private static final int POINTS = 61;
    private static final double COLDEST = -20;
    private static final double HOTTEST = 80;

    private LoopSweeps() { }

    /**
     * Voltage to spare over the length of a cable, with the length it has and the longest it may have.
     *
     * @throws IllegalArgumentException if the loop has no cable of this name
     */
    public static Picture marginAgainstLength(CurrentLoop loop, String cable) {
        final Cable built = cables(loop.elements()).stream().filter(c -> c.name().equals(cable)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no cable of " + loop.name() + " is named "
                + cable + "; there are " + cables(loop.elements()).stream().map(Cable::name).toList()));
        final Optional<Double> longest = loop.inverse().longestCables().stream()
            .filter(a -> a.element().equals(cable)).findFirst().flatMap(LoopInverse.Answer::value);
        final double wanted = Math.max(100, 1.3 * Math.max(built.metres(), longest.orElse(0.0)));
        final double last = Steps.round(wanted / 8) * Math.ceil(wanted / Steps.round(wanted / 8));
        final double[] x = range(0, last);
        final Plot plot = plot("length of " + cable + " one way (m)", loop, x,
            v -> loop.exchanging(cable, e -> ((Cable) e).metres(v)))
            .note(PlotNote.verticalLimit(built.metres(), "as it is, " + NumberText.plain(built.metres(), 6)
                + " m", Ink.BLACK.colour(), built.metres() < last / 2, 0));
        longest.ifPresent(m -> plot.note(PlotNote.verticalLimit(m, "longest, "
            + NumberText.plain(Math.floor(m), 6) + " m", Ink.GREEN.colour(), m < last / 2, 1)));
        final double margin = loop.marginVolts(current(loop), Corner.LEAST_VOLTAGE);
        return Picture.of(loop.name() + " at " + NumberText.plain(current(loop), 4) + " mA: " + longest
            .map(m -> "with every limit against it " + cable + " may be "
                + NumberText.plain(Math.floor(m), 6) + " m long")
            .orElse("with every limit against it no length of " + cable + " would do") + "; its "
            + NumberText.plain(built.metres(), 6) + " m leave " + NumberText.signed(margin, 2) + " V.",
            "Voltage to spare over the length of the cable, nominal and worst case.", plot.chart());
    }

    /**
     * Voltage to spare over the temperature of all cables, the rest nominal or with every limit against it.
     *
     * @throws IllegalArgumentException if the loop has no cable
     */
    public static Picture marginAgainstTemperature(CurrentLoop loop) {
        final List<Cable> cables = cables(loop.elements());
        if (cables.isEmpty()) {
            throw new IllegalArgumentException(loop.name() + " has no cable: nothing in it depends on the "
                + "temperature of its conductors");
        }
        final double[] x = range(COLDEST, HOTTEST);
        final double hottest = cables.stream().mapToDouble(c -> c.copper().degrees().most()).max()
            .orElseThrow();
        final Plot plot = plot("temperature of the conductors (\u00b0C)", loop, x, v -> at(loop, cables, v))
            .note(PlotNote.verticalLimit(hottest, "hottest stated, " + NumberText.plain(hottest, 4)
                + " \u00b0C", Ink.BLACK.colour(), hottest < 20, 0));
        final double hot = at(loop, cables, hottest).marginVolts(current(loop), Corner.LEAST_VOLTAGE);
        final double room = at(loop, cables, 20).marginVolts(current(loop), Corner.LEAST_VOLTAGE);
        return Picture.of(
            loop.name() + " at " + NumberText.plain(current(loop), 4) + " mA: with copper at "
                + NumberText.plain(hottest, 4) + " \u00b0C and every limit against it "
                + NumberText.signed(hot, 2) + " V to spare; the table value at 20 \u00b0C would say "
                + NumberText.signed(room, 2) + " V.",
            "Voltage to spare over the temperature of the conductors, nominal and worst case.", plot.chart());
    }

    private static CurrentLoop at(CurrentLoop loop, List<Cable> cables, double degrees) {
        CurrentLoop changed = loop;
        for (Cable cable : cables) {
            changed = changed.exchanging(cable.name(), e -> ((Cable) e).at(Celsius.degC(degrees)));
        }
        return changed;
    }

    private static Plot plot(String axis, CurrentLoop loop, double[] x,
                             java.util.function.DoubleFunction<CurrentLoop> changed) {
        final double current = current(loop);
        final double[] nominal = LoopCharts.over(x, v -> changed.apply(v).marginVolts(current,
            Corner.NOMINAL));
        final double[] worst = LoopCharts.over(x, v -> changed.apply(v).marginVolts(current,
            Corner.LEAST_VOLTAGE));
        final double high = Math.max(0.5, LoopCharts.largest(nominal));
        final double low = Math.min(0, -LoopCharts.largest(LoopCharts.over(worst, v -> -v)));
        final double air = (high - low) * 0.15;
        final int place = x.length / 4;
        return new Plot(axis, "voltage to spare at " + NumberText.plain(current, 4) + " mA (V)")
            .xRange(x[0], x[x.length - 1]).yRange(low - air, high + 2 * air)
            .line("nominal", x, nominal, Ink.BLUE).line("worst case", x, worst, Ink.VERMILION)
            .note(PlotNote.text("nominal", x[place], nominal[place], PlotNote.Anchor.LEFT, Ink.BLUE.colour(),
                -10))
            .note(PlotNote.text("every limit against it", x[place], worst[place], PlotNote.Anchor.LEFT,
                Ink.VERMILION.colour(), 18))
            .dashed("limit", new double[] {x[0], x[x.length - 1]}, new double[] {0, 0}, Ink.BLACK)
            .note(PlotNote.text("limit 0 V", x[x.length - 1], 0, PlotNote.Anchor.RIGHT, Ink.BLACK.colour(),
                -5));
    }

    private static double current(CurrentLoop loop) {
        return loop.transmitter().limits().failHighMilliamps();
    }

    private static double[] range(double from, double to) {
        final double[] x = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            x[i] = from + (to - from) * i / (POINTS - 1);
        }
        return x;
    }

    private static List<Cable> cables(List<LoopElement> elements) {
        final List<Cable> cables = new ArrayList<>();
        for (LoopElement element : elements) {
            if (element instanceof Cable cable) {
                cables.add(cable);
            } else if (element instanceof Isolator isolator) {
                cables.addAll(cables(isolator.output().fed()));
            }
        }
        return cables;
    }
}
