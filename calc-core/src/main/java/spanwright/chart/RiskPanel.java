package spanwright.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.knowm.xchart.XYChart;
import spanwright.quantity.NumberText;
import spanwright.verdict.GlobalRisk;
import spanwright.verdict.RiskSurface;

/** One risk over ratio and in-tolerance proportion: tints that darken with the risk, and labelled lines. */
final class RiskPanel {
    /** Levels of the lines, percent of all measured. */
    private static final double[] LEVELS = {0.01, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50};
    private static final double MARKED = 2;
    private static final double SMALLEST = 1e-9;
    private static final int HEIGHT = 400;
    private static final int TICK_DATA = 40;
    /** Where the name of the panel stands, as shares of width and height. */
    private static final double[] CORNER = {0.93, 0.05};

    private final RiskSurface surface;
    private final double[] ratios;
    private final double[] percents;
    private final double[][] logs;

    RiskPanel(RiskSurface surface, ToDoubleFunction<GlobalRisk> risk) {
        this.surface = surface;
        ratios = surface.ratios().stream().mapToDouble(Double::doubleValue).toArray();
        percents = surface.reliabilities().stream().mapToDouble(r -> 100 * r).toArray();
        logs = new double[ratios.length][percents.length];
        for (int i = 0; i < ratios.length; i++) {
            for (int j = 0; j < percents.length; j++) {
                logs[i][j] = surface.cell(i, j).risk()
                    .map(r -> Math.log(Math.max(SMALLEST, 100 * risk.applyAsDouble(r)))).orElse(Double.NaN);
            }
        }
    }

    XYChart chart(String what, Ink ink) {
        final double x1 = ratios[0];
        final double x2 = ratios[ratios.length - 1];
        final double y1 = percents[0];
        final double y2 = percents[percents.length - 1];
        final Plot plot = new Plot("test uncertainty ratio", surface.kind() + " in-tolerance proportion (%)",
            HEIGHT).xRange(x1, x2).yRange(y1, y2);
        // Under the tiles: XChart needs data, and enough of it to choose round ticks.
        plot.unseen(between(x1, x2), between(y1, y2));
        for (int i = 0; i < ratios.length; i++) {
            for (int j = 0; j < percents.length; j++) {
                if (Double.isFinite(logs[i][j])) {
                    plot.note(PlotNote.tile(edge(ratios, i), edge(ratios, i + 1), edge(percents, j),
                        edge(percents, j + 1), ink.tint(strength(Math.exp(logs[i][j])))));
                }
            }
        }
        final Contours contours = new Contours(ratios, percents, logs);
        final List<PlotNote> labels = new ArrayList<>();
        final List<double[]> taken = new ArrayList<>();
        taken.add(CORNER);
        for (double level : LEVELS) {
            final List<Contours.Segment> line = contours.at(Math.log(level));
            if (!line.isEmpty()) {
                plot.note(PlotNote.segments(line, Color.BLACK, level == MARKED ? 3f : 1.2f));
                label(line, taken).ifPresent(s -> labels.add(PlotNote.text(NumberText.plain(level, 3) + " %",
                    s.middleX(), s.middleY(), PlotNote.Anchor.CENTRE, Color.BLACK, 4)));
            }
        }
        labels.forEach(plot::note);
        plot.note(PlotNote.corner(what, Color.BLACK));
        return plot.chart();
    }

    private static double[] between(double from, double to) {
        // Uneven: XChart takes even data for the ticks themselves.
        return IntStream.rangeClosed(0, TICK_DATA).mapToDouble(i -> from + (to - from)
            * Math.pow((double) i / TICK_DATA, 1.5)).toArray();
    }

    /** Half way to the next node; the outermost nodes end the picture. */
    private static double edge(double[] nodes, int i) {
        return i == 0 ? nodes[0] : i == nodes.length ? nodes[i - 1] : (nodes[i - 1] + nodes[i]) / 2;
    }

    /** How dark a risk in percent is: even steps on a logarithmic scale from 0.01 % to 50 %. */
    private static double strength(double percent) {
        final double share = Math.log(percent / LEVELS[0])
            / Math.log(LEVELS[LEVELS.length - 1] / LEVELS[0]);
        return 0.04 + 0.76 * Math.max(0, Math.min(1, share));
    }

    /** The piece with most room for its label: away from the edges and from the labels already there. */
    private Optional<Contours.Segment> label(List<Contours.Segment> line, List<double[]> taken) {
        final double width = ratios[ratios.length - 1] - ratios[0];
        final double height = percents[percents.length - 1] - percents[0];
        double most = 0.03;
        Contours.Segment best = null;
        for (Contours.Segment s : line) {
            final double u = (s.middleX() - ratios[0]) / width;
            final double v = (s.middleY() - percents[0]) / height;
            final double room = Math.min(Math.min(1.5 * Math.min(u, 1 - u), 1.5 * Math.min(v, 1 - v)),
                taken.stream().mapToDouble(t -> Math.hypot(t[0] - u, t[1] - v)).min().orElse(1));
            if (room > most) {
                most = room;
                best = s;
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        taken.add(new double[] {(best.middleX() - ratios[0]) / width,
            (best.middleY() - percents[0]) / height});
        return Optional.of(best);
    }

    /** How many cells have no risk. */
    static long unknown(RiskSurface surface) {
        return surface.cells().stream().filter(c -> c.risk().isEmpty()).count();
    }
}
