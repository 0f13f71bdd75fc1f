package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.error.InfluenceStudy;
import spanwright.error.MeasuredInfluence;
import spanwright.error.PointUncertainty;
import spanwright.quantity.NumberText;
import spanwright.readings.Direction;
import spanwright.uncertainty.ExpandedUncertainty;

/** Pictures of what was found at single settings: what influences do, and how sure each point's error is. */
public final class InfluenceCharts {
    /** Half the distance of the two directions at a point, percent of span. */
    private static final double APART = 0.7;

    private InfluenceCharts() { }

    /**
     * A bar for each influence: the change of the output over the range of settings that was tried. One that
     * is not told from none is orange and says so in words.
     */
    public static Picture effects(InfluenceStudy study) {
        Objects.requireNonNull(study, "study");
        final List<BarPlot.Bar> bars = new ArrayList<>();
        for (MeasuredInfluence i : study.influences()) {
            bars.add(new BarPlot.Bar(i.name() + ", over " + NumberText.plain(i.range(), 4) + " " + i.unit(),
                0, i.overRange().value(), figure(i), i.isShown() ? Ink.BLUE : Ink.ORANGE));
        }
        final List<MeasuredInfluence> shown = study.shown();
        return Picture.of(study.subject() + ": " + (shown.isEmpty() ? "no influence is told from none"
                : "moved by " + shown.stream().map(i -> i.name() + " (" + signed(i.overRange().value())
                    + " % of span)").collect(Collectors.joining(", "))) + ".",
            "Change of the output over the range that was tried, by influence, the largest first: "
                + study.influences().size() + " in all, percent of span.",
            new BarPlot("change of the output over the range that was tried (% of span)", bars));
    }

    private static String figure(MeasuredInfluence i) {
        return i.isShown() ? signed(i.overRange().value()) : "not shown, at most "
            + NumberText.uncertainty(i.atMost().value());
    }

    private static String signed(double value) {
        // Four decimals, as in the words of the influence itself.
        return NumberText.signed(value, 4);
    }

    /**
     * The mean error at each point from each side with its expanded uncertainty at 95 %, percent of span.
     *
     * @throws IllegalArgumentException if there is no point
     */
    public static Picture errors(List<PointUncertainty> points) {
        if (points.isEmpty()) {
            throw new IllegalArgumentException("there is no point to draw");
        }
        final Plot plot = new Plot("input (% of span)", "mean error with U at 95 % (% of span)")
            .xRange(-5, 105);
        double reach = 0;
        for (Direction d : Direction.values()) {
            final List<PointUncertainty> side = points.stream().filter(p -> p.direction() == d).toList();
            if (side.isEmpty()) {
                continue;
            }
            final boolean up = d == Direction.UPSCALE;
            final Ink ink = up ? Ink.BLUE : Ink.VERMILION;
            final double[] x = side.stream().mapToDouble(p -> p.position() + (up ? -APART : APART)).toArray();
            for (int i = 0; i < x.length; i++) {
                final ExpandedUncertainty u = side.get(i).expanded();
                plot.line(d + " " + i, new double[] {x[i], x[i]}, new double[] {u.lower(), u.upper()}, ink);
                reach = Math.max(reach, Math.max(Math.abs(u.lower()), Math.abs(u.upper())));
            }
            plot.marks(up ? "upscale" : "downscale", x,
                side.stream().mapToDouble(p -> p.budget().value()).toArray(), ink,
                up ? SeriesMarkers.TRIANGLE_UP : SeriesMarkers.TRIANGLE_DOWN);
            plot.note(PointNote.key(up ? "\u25b2 upscale" : "\u25bc downscale", ink.colour(), up, 0));
        }
        plot.yRange(-Steps.symmetricRange(reach), Steps.symmetricRange(reach));
        final String low = NumberText.uncertainty(points.stream().mapToDouble(p -> p.expanded().expanded())
            .min()
            .orElseThrow());
        final String high = NumberText.uncertainty(points.stream().mapToDouble(p -> p.expanded().expanded())
            .max()
            .orElseThrow());
        final boolean lacks = points.stream().anyMatch(p -> !p.missing().isEmpty());
        return Picture.of(
            (lacks ? "Not complete, so too small: " : "") + "U of the mean errors is "
                + (low.equals(high) ? low : low + " to " + high) + " % of span (95 %).",
            "Mean error of " + points.size() + " points with their expanded uncertainty, percent of span.",
            plot.chart());
    }
}
