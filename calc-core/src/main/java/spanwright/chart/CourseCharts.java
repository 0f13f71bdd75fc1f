package spanwright.chart;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.error.DeadBand;
import spanwright.error.WarmUp;
import spanwright.quantity.NumberText;

/**
 * Pictures of tests that are not traverses: small reversals of the input, and the time after switching on.
 */
public final class CourseCharts {
    private static final Ink[] INKS = {Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.ORANGE, Ink.PURPLE, Ink.BLACK};
    private static final Marker[] MARKERS = {SeriesMarkers.CIRCLE, SeriesMarkers.SQUARE,
        SeriesMarkers.DIAMOND, SeriesMarkers.TRIANGLE_UP, SeriesMarkers.TRIANGLE_DOWN, SeriesMarkers.CROSS};
    private static final String GLYPHS = "\u25cf\u25a0\u25c6\u25b2\u25bc\u2715";

    private CourseCharts() { }

    /** Change of the output against the reversal of the input that should have caused it, at each point. */
    public static Picture deadBand(DeadBand figure) {
        Objects.requireNonNull(figure, "figure");
        final List<DeadBand.Reversal> all = figure.reversals();
        final double widest = all.stream().mapToDouble(DeadBand.Reversal::inputPercent).max().orElseThrow();
        final double resolution = figure.resolution().value();
        final double most = Math.max(resolution, all.stream()
            .mapToDouble(r -> Math.abs(r.outputPercent())).max().orElseThrow());
        final Plot plot = new Plot("reversal of the input (% of span)", "change of the output (% of span)")
            .xRange(0, 1.1 * widest).yRange(0, 1.35 * (most == 0 ? 0.01 : most));
        final List<Double> points = all.stream().map(DeadBand.Reversal::position).distinct().sorted()
            .toList();
        for (int k = 0; k < points.size(); k++) {
            final double position = points.get(k);
            final List<DeadBand.Reversal> here = all.stream().filter(r -> r.position() == position).toList();
            plot.marks("at " + position, here.stream().mapToDouble(DeadBand.Reversal::inputPercent).toArray(),
                here.stream().mapToDouble(r -> Math.abs(r.outputPercent())).toArray(),
                INKS[k % INKS.length], MARKERS[k % MARKERS.length]);
            plot.note(PointNote.key(GLYPHS.charAt(k % GLYPHS.length()) + " at "
                + NumberText.plain(position, 4) + " % of range", INKS[k % INKS.length].colour(), true, k));
        }
        plot.note(PlotNote.horizontalLimit(resolution, "no change below " + NumberText.plain(resolution, 3),
            Ink.BLACK.colour(), true));
        if (figure.largest().value() > 0) {
            plot.note(PlotNote.verticalLimit(figure.largest().value(), "dead band "
                + NumberText.plain(figure.largest().value(), 3), Ink.BLACK.colour(), true, 0));
        }
        return Picture.of("Dead band " + NumberText.plain(figure.largest().value(), 3) + " % of span, at "
                + NumberText.plain(figure.position(), 4) + " %: the largest reversal without an answer.",
            "Change of the output after " + all.size() + " reversals of the input at " + points.size()
                + " points.", plot.chart());
    }

    /** The output after switching on, against its last reading, with the band and the time it settled. */
    public static Picture warmUp(WarmUp figure) {
        Objects.requireNonNull(figure, "figure");
        final double[] minutes = figure.course().stream().mapToDouble(WarmUp.Moment::minutes).toArray();
        final double[] off = figure.course().stream().mapToDouble(m -> m.off().value()).toArray();
        final double band = figure.band().value();
        final double low = Math.min(-band, Arrays.stream(off).min().orElseThrow());
        final double high = Math.max(band, Arrays.stream(off).max().orElseThrow());
        final double air = 0.04 * (minutes[minutes.length - 1] - minutes[0]);
        final Plot plot = new Plot("time since switching on (min)",
            "output less its last reading (% of span)")
            .xRange(minutes[0] - air, minutes[minutes.length - 1] + air).yRange(low - 0.1 * (high - low),
                high + 0.2 * (high - low))
            .lineWithMarks("output", minutes, off, Ink.BLUE, SeriesMarkers.CIRCLE)
            .note(PlotNote.horizontalLimit(band, "band \u00b1" + NumberText.plain(band, 3),
                Ink.BLACK.colour(), true))
            .note(PlotNote.horizontalLimit(-band, "", Ink.BLACK.colour(), true))
            .note(PlotNote.verticalLimit(figure.minutes(), "settled from "
                + NumberText.plain(figure.minutes(), 4) + " min", Ink.VERMILION.colour(), true, 0));
        return Picture.of("Settled within \u00b1" + figure.band() + " from "
                + NumberText.plain(figure.minutes(), 4) + " minutes on, having been "
                + NumberText.fixed(figure.excursion().value(), 3) + " % of span off.",
            "Output at a steady input at " + minutes.length + " times since switching on.", plot.chart());
    }
}
