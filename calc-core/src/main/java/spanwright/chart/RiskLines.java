package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Risks against the test uncertainty ratio on a logarithmic scale, each line with its name beside it. */
final class RiskLines {
    private static final double MARKED = 2;
    private static final double FIRST = 1;
    private static final double LAST = 10;
    /** How far the middle of a name may stand above or below its line, as shares of the height. */
    private static final double[] BESIDE = {0.06, -0.06, 0.09, -0.09, 0.13, -0.13, 0.18, -0.18};
    /** Half the size of a name with its air, as shares of width and height. */
    private static final double HALF_WIDTH = 0.1;
    private static final double HALF_HEIGHT = 0.035;
    /** The plot is so many times as wide as high. */
    private static final double WIDER = 2.5;
    private static final Marker[] MARKS = {SeriesMarkers.CIRCLE, SeriesMarkers.SQUARE, SeriesMarkers.DIAMOND,
        SeriesMarkers.TRIANGLE_UP};

    private final String axis;
    private final double lowest;
    private final double highest;
    private final List<Line> lines = new ArrayList<>();

    /** A risk in percent at a ratio. */
    record At(double ratio, double percent) { }

    private record Line(String name, List<At> points, Ink ink) { }

    /** A place in shares of width and height. */
    private record Place(double across, double up) {
        /** From a name in the middle of this place to another place; 0 where the name covers it. */
        double clearOf(Place other) {
            return Math.hypot(WIDER * Math.max(0, Math.abs(across - other.across) - HALF_WIDTH),
                Math.max(0, Math.abs(up - other.up) - HALF_HEIGHT));
        }

        double to(Place other) {
            return Math.hypot(WIDER * (across - other.across), up - other.up);
        }
    }

    RiskLines(String axis, double lowest, double highest) {
        this.axis = axis;
        this.lowest = lowest;
        this.highest = highest;
    }

    /** Adds a line; what lies below the scale is left out of the picture. */
    void add(String name, List<At> points, Ink ink) {
        lines.add(new Line(name, points.stream().filter(p -> p.percent() >= lowest).toList(), ink));
    }

    XYChart chart(int height, boolean withMarkedLevel) {
        final Plot plot = new Plot("test uncertainty ratio", axis, height).xRange(FIRST, LAST)
            .yRange(lowest, highest).yLogarithmic();
        for (int i = 0; i < lines.size(); i++) {
            final Line line = lines.get(i);
            if (!line.points().isEmpty()) {
                plot.lineWithMarks(line.name(), line.points().stream().mapToDouble(At::ratio).toArray(),
                    line.points().stream().mapToDouble(At::percent).toArray(), line.ink(), MARKS[i]);
            }
        }
        final List<Place> taken = new ArrayList<>();
        if (withMarkedLevel) {
            plot.note(PlotNote.horizontalLimit(MARKED, "2 %", Ink.BLACK.colour(), true));
            for (double x = 0; x <= 1; x += 0.02) {
                taken.add(new Place(x, up(MARKED)));
            }
        }
        lines.stream().filter(l -> !l.points().isEmpty()).forEach(l -> plot.note(label(l, taken)));
        return plot.chart();
    }

    private Place place(At point) {
        return new Place((point.ratio() - FIRST) / (LAST - FIRST), up(point.percent()));
    }

    private double up(double percent) {
        return Math.log(percent / lowest) / Math.log(highest / lowest);
    }

    /** The name above or below its line, where the other lines and names leave it most room. */
    private PlotNote label(Line line, List<Place> taken) {
        double most = Double.NEGATIVE_INFINITY;
        Place best = place(line.points().get(0));
        for (At point : line.points()) {
            for (double side : BESIDE) {
                final Place here = new Place(Math.max(HALF_WIDTH, Math.min(1 - HALF_WIDTH,
                    place(point).across())), place(point).up() + side);
                final double room = room(line, place(point), here, taken) - Math.abs(side) / 2;
                if (room > most && here.up() > HALF_HEIGHT && here.up() < 1 - HALF_HEIGHT) {
                    most = room;
                    best = here;
                }
            }
        }
        // Its corners and ends too, or the next name could touch it.
        taken.add(best);
        taken.add(new Place(best.across() - HALF_WIDTH, best.up()));
        taken.add(new Place(best.across() + HALF_WIDTH, best.up()));
        return PlotNote.text(line.name(), FIRST + best.across() * (LAST - FIRST),
            lowest * Math.pow(highest / lowest, best.up()), PlotNote.Anchor.CENTRE, line.ink().colour(), 4);
    }

    /** Room for a name at a place; negative where it would cover anything. */
    private double room(Line line, Place point, Place here, List<Place> taken) {
        final double clear = Math.min(nearest(lines, here), taken.stream().mapToDouble(here::clearOf).min()
            .orElse(1));
        if (clear == 0) {
            return -1;
        }
        final List<Line> others = lines.stream().filter(l -> l != line).toList();
        // Where its line is hidden by another, a name would be read as that of the other.
        final double alone = 2 * others.stream().flatMap(l -> l.points().stream())
            .mapToDouble(p -> point.to(place(p))).min().orElse(1);
        return Math.min(alone, Math.min(0.2, nearest(others, here)));
    }

    private double nearest(List<Line> some, Place here) {
        return some.stream().flatMap(l -> l.points().stream()).mapToDouble(p -> here.clearOf(place(p))).min()
            .orElse(1);
    }
}
