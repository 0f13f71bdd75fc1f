package spanwright.chart;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.error.Diagnosis;
import spanwright.error.Diagnosis.ShapePoint;
import spanwright.error.Hypothesis;
import spanwright.quantity.NumberText;

/** Pictures of what the errors of a channel speak for. */
public final class DiagnosisCharts {
    private static final int SHOWN = 3;
    private static final double WORTH_SHOWING = 0.01;
    private static final Ink[] INKS = {Ink.BLUE, Ink.VERMILION, Ink.GREEN};
    private static final BasicStroke[] STROKES = {new BasicStroke(2.2f),
        new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {9, 5}, 0),
        new BasicStroke(1.8f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, new float[] {2, 5}, 0)};

    private DiagnosisCharts() { }

    /** Causes of one shape, drawn once. */
    private record Drawn(List<Hypothesis> causes) {
        Hypothesis first() {
            return causes.get(0);
        }

        boolean hasShapeOf(Hypothesis other) {
            return first().shape().equals(other.shape());
        }

        /** With the weights, unless none fits: then the nearest has no weight worth naming. */
        String label(boolean noneFits) {
            return (noneFits ? "the nearest: " : "") + String.join(" or ", causes.stream().map(h -> h.fault()
                    + (noneFits ? "" : " (" + NumberText.fixed(100 * h.weight(), 0) + " %)")).toList())
                + " leaves " + NumberText.fixed(first().largestResidual(), 3) + " % of span";
        }
    }

    /**
     * The average error at each point with the fitted shapes of the likeliest hypotheses, at most three;
     * causes that cannot be told apart by their shape share a line.
     */
    public static Picture shapes(Diagnosis diagnosis) {
        Objects.requireNonNull(diagnosis, "diagnosis");
        final List<Drawn> drawn = likeliest(diagnosis);
        final Plot plot = new Plot("expected output (% of span)", "average error (% of span)");
        final double[] all = Stream.concat(diagnosis.points().stream(),
            drawn.stream().flatMap(d -> d.first().shape().stream())).mapToDouble(ShapePoint::error).toArray();
        double low = 0;
        double high = 0;
        for (double v : all) {
            low = Math.min(low, v);
            high = Math.max(high, v);
        }
        final double height = high > low ? high - low : 0.01;
        final double first = diagnosis.points().get(0).expected();
        final double last = diagnosis.points().get(diagnosis.points().size() - 1).expected();
        plot.xRange(first - 0.05 * (last - first), last + 0.05 * (last - first));
        // Room for the labels above everything that is drawn.
        plot.yRange(low - 0.12 * height, high + (0.12 + 0.1 * drawn.size()) * height);
        for (int k = drawn.size() - 1; k >= 0; k--) {
            final List<ShapePoint> shape = drawn.get(k).first().shape();
            plot.line(drawn.get(k).label(diagnosis.noneFits()), shape.stream()
                .mapToDouble(ShapePoint::expected).toArray(),
                shape.stream().mapToDouble(ShapePoint::error).toArray(), INKS[k], STROKES[k]);
        }
        plot.marks("errors", diagnosis.points().stream().mapToDouble(ShapePoint::expected).toArray(),
            diagnosis.points().stream().mapToDouble(ShapePoint::error).toArray(), Ink.BLACK,
            SeriesMarkers.CIRCLE);
        final String[] lines = {"\u2014 ", "-- ", "\u00b7\u00b7 "};
        for (int k = 0; k < drawn.size(); k++) {
            plot.note(PlotNote.text(lines[k] + drawn.get(k).label(diagnosis.noneFits()), first,
                high + (0.1 + 0.1 * drawn.size()) * height, PlotNote.Anchor.LEFT, INKS[k].colour(),
                14 + 17 * k));
        }
        return Picture.of(diagnosis.channel() + ": " + said(diagnosis), "Average error at "
            + diagnosis.points().size() + " points over the expected output, with the fitted shapes of "
            + drawn.size() + " hypotheses.", plot.chart());
    }

    private static String said(Diagnosis diagnosis) {
        final Hypothesis first = diagnosis.first();
        return diagnosis.noneFits() ? "none of the known shapes fits; the nearest, " + first.fault()
            + ", leaves " + NumberText.fixed(first.largestResidual(), 3) + " % of span."
            : "the errors speak for " + first.fault() + ", " + String.join(", ", first.evidence()) + ".";
    }

    private static List<Drawn> likeliest(Diagnosis diagnosis) {
        final List<Drawn> drawn = new ArrayList<>();
        for (Hypothesis h : diagnosis.hypotheses()) {
            if (!drawn.isEmpty() && h.weight() < WORTH_SHOWING) {
                break;
            }
            final int same = sameShape(drawn, h);
            if (same >= 0) {
                final List<Hypothesis> causes = new ArrayList<>(drawn.get(same).causes());
                causes.add(h);
                drawn.set(same, new Drawn(causes));
            } else if (drawn.size() < SHOWN) {
                drawn.add(new Drawn(List.of(h)));
            }
        }
        return drawn;
    }

    private static int sameShape(List<Drawn> drawn, Hypothesis h) {
        for (int k = 0; k < drawn.size(); k++) {
            if (drawn.get(k).hasShapeOf(h)) {
                return k;
            }
        }
        return -1;
    }
}
