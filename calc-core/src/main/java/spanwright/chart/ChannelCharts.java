package spanwright.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.error.ChannelAnalysis;
import spanwright.error.Extreme;
import spanwright.error.NonLinearity;
import spanwright.error.ReadingError;
import spanwright.error.SignedPair;
import spanwright.fit.ReferenceKind;
import spanwright.fit.ReferenceLine;
import spanwright.quantity.NumberText;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Direction;

/** Pictures of one calibrated channel. Errors are in percent of the output span. */
public final class ChannelCharts {
    private static final String ERROR_AXIS = "error (% of span)";

    private ChannelCharts() { }

    /**
     * Error against input: every reading, upscale and downscale by mark and colour, with the record's
     * tolerance where it states one.
     */
    public static Picture errors(ChannelAnalysis channel) {
        Objects.requireNonNull(channel, "channel");
        final List<ReadingError> errors = channel.errors();
        final Plot plot = new Plot("applied input (% of range)", ERROR_AXIS);
        double largest = errors.stream().mapToDouble(e -> Math.abs(e.ofSpan().value())).max().orElse(0);
        final Optional<Tolerance> tolerance = channel.run().tolerance();
        if (tolerance.isPresent()) {
            largest = Math.max(largest, addTolerance(plot, channel.run(), tolerance.get()));
        }
        final double range = Steps.symmetricRange(largest == 0 ? 0.01 : largest);
        plot.yRange(-range, range);
        for (Direction direction : Direction.values()) {
            addDirection(plot, errors, direction, range);
        }
        return Picture.of(
            channel.run().channel() + ", " + channel.run().phase() + ": "
                + channel.inaccuracy().value().map(p -> errorSentence(p, tolerance))
                    .orElse("the inaccuracy is not determined, " + channel.inaccuracy().reason())
                + ".",
            "Error in percent of span of " + errors.size() + " readings against the applied input"
                + tolerance.map(t -> ", with the tolerance of " + t).orElse(", without a tolerance") + ".",
            plot.chart());
    }

    private static String errorSentence(SignedPair pair, Optional<Tolerance> tolerance) {
        return "errors from " + at(pair.lowest()) + " to " + at(pair.highest())
            + tolerance.map(t -> ", tolerance " + t).orElse(", no tolerance stated");
    }

    private static String at(Extreme extreme) {
        return NumberText.signed(extreme.deviation().value(), 3) + " % of span at "
            + NumberText.plain(extreme.position(), 3) + " %";
    }

    /** Draws the limits and returns the larger of their sizes in percent of span. */
    private static double addTolerance(Plot plot, CalibrationRun run, Tolerance tolerance) {
        final int n = 41;
        final double[] x = new double[n];
        final double[] low = new double[n];
        final double[] high = new double[n];
        double largest = 0;
        for (int i = 0; i < n; i++) {
            x[i] = 100.0 * i / (n - 1);
            low[i] = ofSpan(run, tolerance.lower(), tolerance.basis(), x[i]);
            high[i] = ofSpan(run, tolerance.upper(), tolerance.basis(), x[i]);
            largest = Math.max(largest, Math.max(Math.abs(low[i]), Math.abs(high[i])));
        }
        plot.dashed("upper tolerance", x, high, Ink.BLACK).dashed("lower tolerance", x, low, Ink.BLACK);
        plot.note(PlotNote.text("tolerance " + NumberText.signed(high[n - 1], 2), 100, high[n - 1],
            PlotNote.Anchor.RIGHT, Ink.BLACK.colour(), 15));
        plot.note(PlotNote.text("tolerance " + NumberText.signed(low[n - 1], 2), 100, low[n - 1],
            PlotNote.Anchor.RIGHT, Ink.BLACK.colour(), -6));
        return largest;
    }

    private static double ofSpan(CalibrationRun run, double figure, Tolerance.Basis basis,
        double inputPercent) {
        final Span out = run.output();
        final double applied = run.input().valueAt(inputPercent);
        return switch (basis) {
            case PERCENT_OF_SPAN -> figure;
            case PERCENT_OF_READING -> figure * run.transfer().ideal(run.input(), out, applied) / out.width();
            case PERCENT_OF_UPPER_RANGE_VALUE -> figure * out.upper() / out.width();
            case OUTPUT_UNIT -> 100 * figure / out.width();
            case INPUT_UNIT -> 100 * figure / run.input().width();
        };
    }

    private static void addDirection(Plot plot, List<ReadingError> errors, Direction direction,
        double range) {
        final List<ReadingError> these = errors.stream().filter(e -> e.direction() == direction)
            .sorted(Comparator.comparingDouble(ReadingError::position)).toList();
        if (these.isEmpty()) {
            return;
        }
        final boolean up = direction == Direction.UPSCALE;
        final Ink ink = up ? Ink.BLUE : Ink.VERMILION;
        final Marker marker = up ? SeriesMarkers.TRIANGLE_UP : SeriesMarkers.TRIANGLE_DOWN;
        plot.marks(direction + "scale", these.stream().mapToDouble(ReadingError::position).toArray(),
            these.stream().mapToDouble(e -> e.ofSpan().value()).toArray(), ink, marker);
        plot.note(
            PlotNote.text((up ? "\u25b2 upscale" : "\u25bc downscale") + ", " + these.size() + " readings", 0,
                range * 0.93, PlotNote.Anchor.LEFT, ink.colour(), up ? 0 : 17));
    }

    /** Deviations of the averages from the four reference lines and from least squares, on one scale. */
    public static Picture linearity(String channel, NonLinearity linearity) {
        Objects.requireNonNull(linearity, "linearity");
        final double[] x = linearity.expected().stream().mapToDouble(Double::doubleValue).toArray();
        final List<ReferenceLine> lines = linearity.lines();
        final Plot plot = new Plot("expected output (% of span)", "deviation from the line (% of span)")
            .withLegend();
        final Ink[] inks = {Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.BLACK, Ink.ORANGE};
        final Marker[] markers = {SeriesMarkers.CIRCLE, SeriesMarkers.SQUARE, SeriesMarkers.DIAMOND,
            SeriesMarkers.TRIANGLE_UP, SeriesMarkers.CROSS};
        double largest = 0;
        for (int k = 0; k < lines.size(); k++) {
            final ReferenceLine line = lines.get(k);
            final double[] deviations = line.deviations().stream().mapToDouble(Double::doubleValue).toArray();
            largest = Math.max(largest, line.largestDeviation());
            plot.lineWithMarks(line.kind().toString(), x, deviations, inks[k % inks.length],
                markers[k % markers.length]);
        }
        final double range = Steps.symmetricRange(largest == 0 ? 0.01 : largest);
        plot.yRange(-range, range);
        final List<String> figures = new ArrayList<>();
        for (ReferenceKind kind : ReferenceKind.values()) {
            figures.add(kind + " " + NumberText.fixed(linearity.against(kind).value(), 3));
        }
        return Picture.of(channel + ": non-linearity in % of span: " + String.join(", ", figures) + ".",
            "Deviations in percent of span from five lines; largest: " + String.join(", ", figures) + ".",
            plot.chart());
    }
}
