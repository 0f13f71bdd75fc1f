package spanwright.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.knowm.xchart.internal.chartpart.IChart;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.fit.CalibrationLine;
import spanwright.fit.FittedData;
import spanwright.fit.Interval;
import spanwright.fit.InverseInterval;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/**
 * A calibration line read backwards: where an indication meets the band about the line. A narrow interval is
 * drawn once more by itself, where it can be seen.
 */
final class InversePanels {
    private static final int STEPS = 81;
    /** Share of the width below which an interval needs a panel of its own. */
    private static final double NARROW = 0.1;

    private final InverseInterval answer;
    private final CalibrationLine line;
    private final FittedData data;

    InversePanels(InverseInterval answer) {
        this.answer = answer;
        line = answer.line();
        data = line.data();
    }

    Picture picture() {
        final double low = ends().min().orElseThrow();
        final double high = ends().max().orElseThrow();
        final boolean isNarrow = answer.interval().filter(i -> 2 * i.halfWidth() < NARROW * (high - low))
            .isPresent();
        final List<IChart> panels = new ArrayList<>();
        panels.add(panel(low, high, true, !isNarrow).chart());
        if (isNarrow) {
            final Interval interval = answer.interval().orElseThrow();
            final double about = interval.halfWidth() == 0 ? 0.01 * (high - low) : 3 * interval.halfWidth();
            final double middle = (interval.lower() + interval.upper()) / 2;
            panels.add(panel(middle - about, middle + about, false, true).chart());
        }
        return new Picture(sentence(), "Calibration line of " + data + " with the "
            + FitCharts.percent(answer.coverage()) + " band within which an indication is taken to lie"
            + (isNarrow ? ", and once more about the stimulus found." : "."), panels);
    }

    private DoubleStream ends() {
        return DoubleStream.concat(DoubleStream.of(data.lowestX(), data.highestX()), DoubleStream.concat(
            answer.interval().stream().flatMapToDouble(i -> DoubleStream.of(i.lower(), i.upper())),
            answer.interval().isPresent() ? answer.stimulus().stream().mapToDouble(v -> v)
                : DoubleStream.empty()));
    }

    private String sentence() {
        final String about = (isCrossing() ? "The value " : "The indication ")
            + NumberText.plain(answer.indication().value(), 6) + AxisName.unitAfter(data.yName());
        return about + answer.interval().map(i -> (isCrossing() ? " of the line is reached at "
            : " belongs to ") + NumberText.fixed(
                answer.stimulus().orElseThrow(), NumberText.decimalsFor(i.halfWidth()))
                + AxisName.unitAfter(data.xName()) + ", " + FitCharts.percent(answer.coverage())
                + " interval " + i + (answer.isWithinTheReadings() ? "." : ", beyond the readings."))
            .orElse(" has no bounded interval: " + answer.reason() + ".");
    }

    /** Whether the place was asked for where the line itself takes a value. */
    private boolean isCrossing() {
        return answer.indication().u() == 0 && line.residualSd() > 0;
    }

    /** Half width of the band: the line's uncertainty and that of the indication. */
    private double half(double x) {
        final Estimate e = line.at(x);
        return Interval.about(new Estimate(0, Math.hypot(e.u(), answer.indication().u()), e.dof()),
            answer.coverage()).halfWidth();
    }

    private Plot panel(double low, double high, boolean withReadings, boolean withBand) {
        final double air = 0.03 * (high - low);
        // One place more: XChart puts its figures at the places of a series if these are equally spaced.
        final double[] x = DoubleStream.concat(DoubleStream.of(low),
            Arrays.stream(FitCharts.places(low - air, high + air, STEPS))).sorted().toArray();
        final double[] lower = over(x, v -> line.at(v).value() - half(v));
        final double[] upper = over(x, v -> line.at(v).value() + half(v));
        final double y = answer.indication().value();
        final DoubleStream seen = withReadings ? IntStream.range(0, data.size()).mapToDouble(data::y)
            : DoubleStream.empty();
        final double[] all = DoubleStream.concat(DoubleStream.concat(Arrays.stream(lower),
            Arrays.stream(upper)), DoubleStream.concat(seen, DoubleStream.of(y))).toArray();
        final double least = Arrays.stream(all).min().orElseThrow();
        final double most = Arrays.stream(all).max().orElseThrow();
        final double room = most > least ? 0.07 * (most - least) : 1;
        final Plot plot = new Plot(data.xName(), data.yName(), withReadings && withBand ? Plot.HEIGHT : 300)
            .xRange(low - air, high + air).yRange(least - room, most + 2.5 * room)
            .line("line", x, over(x, v -> line.at(v).value()), Ink.BLUE)
            .note(PlotNote.horizontalLimit(y, "", Ink.VERMILION.colour(), true)).note(
                PointNote.key("dashed: " + (isCrossing() ? "value " : "indication ") + NumberText.plain(y, 6)
                    + AxisName.unitAfter(data.yName()), Ink.VERMILION.colour(), false, 0));
        if (withBand) {
            plot.dotted("lower", x, lower, Ink.BLUE).dotted("upper", x, upper, Ink.BLUE)
                .note(PointNote.key("dotted: " + FitCharts.percent(answer.coverage())
                    + " band about the line", Ink.BLUE.colour(), true, 0));
        }
        if (withReadings) {
            plot.marks("readings", IntStream.range(0, data.size()).mapToDouble(data::x).toArray(),
                IntStream.range(0, data.size()).mapToDouble(data::y).toArray(), Ink.BLACK,
                SeriesMarkers.CIRCLE);
        }
        answer.interval().ifPresent(i -> plot.note(PointNote.drops(i.lower(), i.upper(), y,
            Ink.VERMILION.colour())));
        return plot;
    }

    private static double[] over(double[] x, DoubleUnaryOperator f) {
        return Arrays.stream(x).map(f).toArray();
    }
}
