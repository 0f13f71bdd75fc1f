package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.error.Hysteresis;
import spanwright.error.NonRepeatability;
import spanwright.error.PointErrors;
import spanwright.error.ReadingError;
import spanwright.fit.AnalysisOfVariance;
import spanwright.fit.OutlierTest;
import spanwright.quantity.NumberText;
import spanwright.readings.Direction;

/** Pictures of scatter: where it comes from, what stands out, what a point does from cycle to cycle. */
public final class StatisticsCharts {
    private static final String POSITION = "applied input (% of range)";
    private static final String UP = "\u25b2 upscale";
    private static final String DOWN = "\u25bc downscale";

    /** By how much marks of the two directions are moved apart, percent of range: they would hide another. */
    private static final double APART = 0.8;

    private StatisticsCharts() { }

    /**
     * Where the scatter comes from: the standard deviation that each source adds by itself. Where the cells
     * are not of one size no such figure is given, and the mean squares stand in its place.
     */
    public static Picture sources(AnalysisOfVariance analysis) {
        Objects.requireNonNull(analysis, "analysis");
        final List<AnalysisOfVariance.Source> sources = analysis.sources();
        final boolean parted = sources.stream().allMatch(s -> analysis.standardDeviation(s.name())
            .isPresent());
        final String unit = analysis.unit().isEmpty() ? "" : " " + analysis.unit();
        final List<BarPlot.Bar> bars = new ArrayList<>();
        final double all = sources.stream().mapToDouble(s -> variance(analysis, s.name())).sum();
        for (AnalysisOfVariance.Source s : sources) {
            final double length = parted ? Math.sqrt(variance(analysis, s.name())) : s.meanSquare();
            bars.add(new BarPlot.Bar(s.name(), 0, length, NumberText.significant(length, 2)
                + (parted ? unit + ", " + NumberText.plain(all == 0 ? 0
                    : 100 * variance(analysis, s.name()) / all, 2) + " % of variance" : ""),
                "within".equals(s.name()) ? Ink.BLUE : Ink.VERMILION));
        }
        final AnalysisOfVariance.Source most = sources.stream().reduce((a, b) ->
            variance(analysis, b.name()) > variance(analysis, a.name()) ? b : a).orElseThrow();
        final String axis = analysis.unit().isEmpty() ? "" : " (" + analysis.unit() + ")";
        return Picture.of(
            parted
                ? "Most of the variance, "
                    + NumberText.plain(all == 0 ? 0 : 100 * variance(analysis, most.name()) / all, 2)
                    + " %, comes from \"" + most.name() + "\", with a standard deviation of "
                    + NumberText.significant(Math.sqrt(variance(analysis, most.name())), 2) + unit + "."
                : "Mean square of each source; the cells are not of one size, so no source has a standard"
                    + " deviation of its own.",
            "What each of " + sources.size() + " sources adds to the scatter.",
            new BarPlot(parted ? "standard deviation added by the source" + axis
                : "mean square" + (analysis.unit().isEmpty() ? "" : " (square of " + analysis.unit() + ")"),
                bars));
    }

    private static double variance(AnalysisOfVariance analysis, String source) {
        final OptionalDouble sd = analysis.standardDeviation(source);
        return sd.isPresent() ? sd.getAsDouble() * sd.getAsDouble() : 0;
    }

    /**
     * The readings, or the variances of the groups, in their order, with what would be suspected, and the
     * suspect marked. It is shown with the others: nothing is left out.
     *
     * @param test    the test
     * @param yName   name and unit of the readings
     * @param suspect what the suspect is: "reading 6", or its cell
     */
    public static Picture outlier(OutlierTest test, String yName, String suspect) {
        Objects.requireNonNull(test, "test");
        return new OutlierPlot(test, yName, suspect).picture();
    }

    /** Readings of each point and side about their own mean, with the worst spread and the pooled scatter. */
    public static Picture repeatability(NonRepeatability figure) {
        Objects.requireNonNull(figure, "figure");
        final ByDirection about = new ByDirection(POSITION, "deviation from the mean (% of span)");
        for (PointErrors p : figure.points()) {
            for (Direction d : Direction.values()) {
                final OptionalDouble mean = p.mean(d);
                if (p.in(d).size() > 1) {
                    p.in(d)
                        .forEach(e -> about.add(d, p.position() + (d == Direction.UPSCALE ? -APART : APART),
                            e.ofSpan().value() - mean.getAsDouble()));
                }
            }
        }
        final double sd = figure.pooledSd();
        final Plot plot = about.plot(sd, true);
        final PointErrors worst = figure.points().stream().filter(p -> p.position() == figure.position())
            .findFirst().orElseThrow();
        final double mean = worst.mean(figure.direction()).orElseThrow();
        plot.note(PlotNote.horizontalLimit(sd, "", Ink.BLACK.colour(), true))
            .note(PlotNote.horizontalLimit(-sd, "", Ink.BLACK.colour(), true))
            .note(PointNote.key("dashed: pooled standard deviation " + NumberText.uncertainty(sd)
                + " % of span, " + figure.dof() + " degrees of freedom", Ink.BLACK.colour(), false, 0))
            .note(PointNote.bracket(figure.position(), least(worst.in(figure.direction())) - mean,
                most(worst.in(figure.direction())) - mean, "spread "
                    + NumberText.fixed(figure.largestSpread().value(), 3) + ", " + figure.direction()
                    + "scale", Ink.BLACK.colour()));
        return Picture.of("Non-repeatability " + NumberText.fixed(figure.largestSpread().value(), 3)
                + " % of span, at " + NumberText.plain(figure.position(), 4) + " % " + figure.direction()
                + "scale; pooled standard deviation " + NumberText.uncertainty(sd) + " % of span.",
            "Readings of each point and side about their own mean, over the cycles; the marks of the two"
                + " directions are moved apart.", plot.chart());
    }

    private static double least(List<ReadingError> errors) {
        return errors.stream().mapToDouble(e -> e.ofSpan().value()).min().orElseThrow();
    }

    private static double most(List<ReadingError> errors) {
        return errors.stream().mapToDouble(e -> e.ofSpan().value()).max().orElseThrow();
    }

    /** Mean error of each point upscale and downscale, with the largest difference of the two. */
    public static Picture hysteresis(Hysteresis figure) {
        Objects.requireNonNull(figure, "figure");
        final ByDirection means = new ByDirection(POSITION, "mean error (% of span)");
        for (PointErrors p : figure.points()) {
            for (Direction d : Direction.values()) {
                p.mean(d).ifPresent(mean -> means.add(d, p.position(), mean));
            }
        }
        final PointErrors worst = figure.points().stream().filter(p -> p.position() == figure.position())
            .findFirst().orElseThrow();
        final Plot plot = means.plot(0, false);
        plot.note(PointNote.bracket(figure.position(), worst.mean(Direction.UPSCALE).orElseThrow(),
            worst.mean(Direction.DOWNSCALE).orElseThrow(), "hysteresis "
                + NumberText.fixed(figure.largest().value(), 3), Ink.BLACK.colour()));
        return Picture.of("Hysteresis " + NumberText.fixed(figure.largest().value(), 3) + " % of span, at "
                + NumberText.plain(figure.position(), 4) + " %, dead band included.",
            "Mean error at each point with rising and with falling input.", plot.chart());
    }

    /** Marks by direction, gathered and then drawn. */
    private static final class ByDirection {
        private final String xName;
        private final String yName;
        private final List<List<double[]>> points = List.of(new ArrayList<>(), new ArrayList<>());

        ByDirection(String xName, String yName) {
            this.xName = xName;
            this.yName = yName;
        }

        void add(Direction d, double x, double y) {
            points.get(d.ordinal()).add(new double[] {x, y});
        }

        /** The plot, about zero if so wanted, in which a further figure has room too. */
        Plot plot(double further, boolean marksOnly) {
            final double high = Math.max(further, every(v -> v[1]).max().orElse(0));
            final double low = Math.min(marksOnly ? -further : high, every(v -> v[1]).min().orElse(0));
            final double air = high > low ? 0.12 * (high - low) : 0.01;
            final double range = Steps.symmetricRange(1.1 * Math.max(Math.abs(high), Math.abs(low)));
            final Plot plot = new Plot(xName, yName).xRange(every(v -> v[0]).min().orElse(0) - 5,
                every(v -> v[0]).max().orElse(100) + 5);
            if (marksOnly) {
                plot.yRange(-range, range);
            } else {
                plot.yRange(low - air, high + 2 * air);
            }
            for (Direction d : Direction.values()) {
                draw(plot, d, marksOnly);
            }
            return plot;
        }

        private DoubleStream every(ToDoubleFunction<double[]> figure) {
            return points.stream().flatMap(List::stream).mapToDouble(figure);
        }

        private void draw(Plot plot, Direction d, boolean marksOnly) {
            final boolean up = d == Direction.UPSCALE;
            final List<double[]> these = points.get(d.ordinal());
            if (these.isEmpty()) {
                return;
            }
            final double[] x = these.stream().mapToDouble(v -> v[0]).toArray();
            final double[] y = these.stream().mapToDouble(v -> v[1]).toArray();
            final Ink ink = up ? Ink.BLUE : Ink.VERMILION;
            final Marker marker = up ? SeriesMarkers.TRIANGLE_UP : SeriesMarkers.TRIANGLE_DOWN;
            if (marksOnly) {
                plot.marks(d.toString(), x, y, ink, marker);
            } else {
                plot.lineWithMarks(d.toString(), x, y, ink, marker);
            }
            plot.note(PointNote.key(up ? UP : DOWN, ink.colour(), true, up ? 0 : 1));
        }
    }
}
