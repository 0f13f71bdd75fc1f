package spanwright.chart;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.fit.FittedData;
import spanwright.fit.MinimaxAdjustment;
import spanwright.fit.ReferenceKind;
import spanwright.fit.ReferenceLine;
import spanwright.quantity.NumberText;

/** Pictures of exact lines: the reference lines of linearity, and the best zero and span correction. */
public final class ReferenceCharts {
    private static final int HEIGHT = 300;

    private ReferenceCharts() { }

    /**
     * Some points with their reference line, and below it their deviations, the points that fix the line
     * ringed.
     */
    public static Picture line(ReferenceLine line) {
        Objects.requireNonNull(line, "line");
        final FittedData data = line.data();
        final double low = data.lowestX();
        final double high = data.highestX();
        final double air = 0.04 * (high - low);
        final double[] x = IntStream.range(0, data.size()).mapToDouble(data::x).toArray();
        final double[] y = IntStream.range(0, data.size()).mapToDouble(data::y).toArray();
        final double[] off = line.deviations().stream().mapToDouble(v -> v).toArray();
        final double[] ends = {low, high};
        final Plot upper = new Plot(data.xName(), data.yName(), HEIGHT).xRange(low - air, high + air)
            .line("line", ends, new double[] {line.at(low), line.at(high)}, Ink.BLUE)
            .marks("points", x, y, Ink.BLACK, SeriesMarkers.CIRCLE);
        final double largest = line.largestDeviation();
        final double range = Steps.symmetricRange(largest == 0 ? 1 : 1.1 * largest);
        final Plot lower = new Plot(data.xName(), AxisName.sameUnit("deviation", data.yName()), HEIGHT)
            .xRange(low - air, high + air).yRange(-range, range)
            .line("line", ends, new double[2], Ink.BLUE)
            .note(PlotNote.horizontalLimit(largest, "", Ink.BLACK.colour(), true))
            .note(PlotNote.horizontalLimit(-largest, "", Ink.BLACK.colour(), true))
            .note(PointNote.key("dashed: largest deviation " + NumberText.significant(largest, 3)
                + AxisName.unitAfter(data.yName()), Ink.BLACK.colour(), false, 0))
            .marks("points", x, off, Ink.BLACK, SeriesMarkers.CIRCLE);
        for (int i : line.fixedBy()) {
            upper.note(PointNote.ring(x[i], y[i], Ink.VERMILION.colour()));
            lower.note(PointNote.ring(x[i], off[i], Ink.VERMILION.colour()));
        }
        if (!line.fixedBy().isEmpty()) {
            lower.note(PointNote.key("\u25ef fixes the line", Ink.VERMILION.colour(), true, 0));
        }
        return new Picture(sentence(line), "Deviations of " + data.size() + " points from the "
            + named(line.kind()) + ", with the points and the line above.",
            AlignedPanel.stack(upper, lower));
    }

    private static String sentence(ReferenceLine line) {
        final int worst = IntStream.range(0, line.deviations().size()).reduce((a, b) ->
            Math.abs(line.deviations().get(b)) > Math.abs(line.deviations().get(a)) ? b : a).orElseThrow();
        final String unit = AxisName.unitAfter(line.data().xName());
        final String start = named(line.kind());
        return Character.toUpperCase(start.charAt(0)) + start.substring(1) + ": largest deviation "
            + FitCharts.signed(line.deviations().get(worst)) + AxisName.unitAfter(line.data().yName())
            + " at " + NumberText.plain(line.data().x(worst), 4) + unit
            + (line.fixedBy().isEmpty() ? "; no single points fix it." : "; fixed by the points at "
                + line.fixedBy().stream().map(i -> NumberText.plain(line.data().x(i), 4))
                    .collect(Collectors.joining(", ")) + unit + ".");
    }

    private static String named(ReferenceKind kind) {
        return kind == ReferenceKind.ABSOLUTE ? "specified characteristic (absolute)" : kind + " line";
    }

    /**
     * The errors before and after the best correction of zero and span, with the limit of each point; the
     * points that fix the correction ringed.
     */
    public static Picture adjustment(MinimaxAdjustment adjustment) {
        Objects.requireNonNull(adjustment, "adjustment");
        final FittedData data = adjustment.data();
        final List<Integer> byX = IntStream.range(0, data.size()).boxed()
            .sorted((i, j) -> Double.compare(data.x(i), data.x(j))).toList();
        final double[] x = byX.stream().mapToDouble(data::x).toArray();
        final double[] before = byX.stream().mapToDouble(data::y).toArray();
        final double[] after = byX.stream().mapToDouble(adjustment::after).toArray();
        final double[] limit = byX.stream().mapToDouble(adjustment.limits()::get).toArray();
        double largest = 0;
        for (int i = 0; i < x.length; i++) {
            largest = Math.max(largest, Math.max(limit[i], Math.max(Math.abs(before[i]),
                Math.abs(after[i]))));
        }
        final double range = Steps.symmetricRange(1.1 * largest);
        final Plot plot = new Plot(data.xName(), data.yName()).yRange(-range, range)
            .dashed("upper limit", x, limit, Ink.BLACK)
            .dashed("lower limit", x, IntStream.range(0, x.length).mapToDouble(i -> -limit[i]).toArray(),
                Ink.BLACK)
            .lineWithMarks("before", x, before, Ink.VERMILION, SeriesMarkers.SQUARE)
            .lineWithMarks("after", x, after, Ink.BLUE, SeriesMarkers.CIRCLE)
            .note(PointNote.key("\u25a0 before", Ink.VERMILION.colour(), true, 0))
            .note(PointNote.key("\u25cf after; \u25ef fixes the correction", Ink.BLUE.colour(), true, 1))
            .note(PointNote.key("dashed: limit", Ink.BLACK.colour(), false, 0));
        adjustment.fixedBy().forEach(i ->
            plot.note(PointNote.ring(data.x(i), adjustment.after(i), Ink.BLUE.colour())));
            return Picture.of(
                "The best correction brings the largest error from "
                    + NumberText.fixed(adjustment.largestBefore(), 2) + " to "
                    + NumberText.fixed(adjustment.largest(), 2) + " of its limit"
                    + (adjustment.largest() > 1 ? ": no correction of zero and span is enough." : "."),
                "Errors of " + data.size() + " points before and after the correction, with their limits.",
                plot.chart());
    }
}
