package spanwright.chart;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.error.Finding;
import spanwright.error.TrimAdvice;
import spanwright.error.TrimPivot;
import spanwright.error.TrimTarget;
import spanwright.error.TrimmedPoint;
import spanwright.quantity.NumberText;
import spanwright.readings.Direction;

/** Pictures of an adjustment: what it leaves, what it costs to miss the target, where it pivots. */
public final class TrimCharts {
    private static final int STEPS = 120;

    private TrimCharts() { }

    /**
     * The errors as found and those predicted after the best setting, point by point, against the record's
     * tolerance; two marks for a point whose service temperatures differ.
     */
    public static Picture beforeAndAfter(TrimAdvice advice) {
        Objects.requireNonNull(advice, "advice");
        final List<TrimmedPoint> points = advice.points();
        final Plot plot = new Plot("applied input (% of range)", "error (% of span)").xRange(-6, 106);
        double largest = Math.max(advice.before().value(), advice.after().value());
        largest = Math.max(largest, points.stream().flatMap(p -> p.permitted().stream())
            .flatMapToDouble(t -> DoubleStream.of(Math.abs(t.lower().orElseThrow()),
                Math.abs(t.upper().orElseThrow()))).max().orElse(0));
        final double range = Steps.symmetricRange(largest == 0 ? 0.01 : 1.2 * largest);
        plot.yRange(-range, range);
        addLimits(plot, points);
        final List<Contours.Segment> moves = points.stream().map(p -> new Contours.Segment(p.position(),
            p.before(), p.position(), p.after())).toList();
        plot.note(PlotNote.segments(moves, Ink.SOFT_TEXT, 1));
        for (Direction d : Direction.values()) {
            final List<TrimmedPoint> these = points.stream().filter(p -> p.direction() == d).toList();
            if (!these.isEmpty()) {
                final Marker marker = d == Direction.UPSCALE ? SeriesMarkers.TRIANGLE_UP
                    : SeriesMarkers.TRIANGLE_DOWN;
                marks(plot, "before, " + d, these, TrimmedPoint::before, Ink.VERMILION, marker);
                marks(plot, "after, " + d, these, TrimmedPoint::after, Ink.BLUE, marker);
            }
        }
        plot.note(PlotNote.text("as found: largest " + NumberText.fixed(advice.before().value(), 3), -5,
            range * 0.93, PlotNote.Anchor.LEFT, Ink.VERMILION.colour(), 2));
        plot.note(PlotNote.text("after the best setting: largest "
            + NumberText.fixed(advice.after().value(), 3), -5, range * 0.93, PlotNote.Anchor.LEFT,
            Ink.BLUE.colour(), 19));
        plot.note(PlotNote.text("\u25b2 upscale  \u25bc downscale", 105, range * 0.93,
            PlotNote.Anchor.RIGHT, Ink.SOFT_TEXT, 2));
        final List<String> temperatures = points.stream().map(TrimmedPoint::temperature).distinct()
            .map(t -> NumberText.signed(t.value(), 1) + " K").toList();
        if (temperatures.size() > 1 || points.get(0).temperature().value() != 0) {
            plot.note(PlotNote.text("in service, " + String.join(" and ", temperatures)
                + " from the calibration", 105, -range * 0.93, PlotNote.Anchor.RIGHT, Ink.SOFT_TEXT, 2));
        }
        return Picture.of(title(advice),
            "Error in percent of span at " + points.size()
                + " points, as found and as predicted after the setting, against the applied input.",
            plot.chart());
    }

    private static String title(TrimAdvice advice) {
        final String figures = NumberText.fixed(advice.before().value(), 3) + " to "
            + NumberText.fixed(advice.after().value(), 3) + " % of span";
        final String start = advice.run().channel() + ", " + advice.means() + ": ";
        return start + switch (advice.action()) {
            case ADJUST -> advice.targets().stream().map(TrimCharts::todo)
                .collect(Collectors.joining("; then ")) + "; the largest error goes from " + figures + ".";
            case DO_NOT_TOUCH -> "do not touch; the best setting would bring the largest error from "
                + figures + ".";
            case CANNOT_HELP -> "adjustment cannot help; even the best setting leaves "
                + NumberText.fixed(advice.toleranceUse().orElseThrow(), 2) + " times the tolerance.";
        };
    }

    private static String todo(TrimTarget target) {
        return "apply " + NumberText.fixed(target.apply(), 3) + " " + target.inputUnit() + ", set "
            + NumberText.fixed(target.setTo(), 4) + " " + target.outputUnit();
    }

    private static void addLimits(Plot plot, List<TrimmedPoint> points) {
        final List<TrimmedPoint> limited = new ArrayList<>();
        points.stream().filter(p -> p.permitted().isPresent())
            .sorted(Comparator.comparingDouble(TrimmedPoint::position))
            .filter(p -> limited.isEmpty() || limited.get(limited.size() - 1).position() < p.position())
            .forEach(limited::add);
        if (limited.isEmpty()) {
            return;
        }
        final double[] x = limited.stream().mapToDouble(TrimmedPoint::position).toArray();
        final double[] low = limited.stream()
            .mapToDouble(p -> p.permitted().orElseThrow().lower().orElseThrow()).toArray();
        final double[] high = limited.stream()
            .mapToDouble(p -> p.permitted().orElseThrow().upper().orElseThrow()).toArray();
        plot.dashed("upper tolerance", x, high, Ink.BLACK).dashed("lower tolerance", x, low, Ink.BLACK);
        // Between the last two points, where no mark stands.
        final int last = x.length - 1;
        final double between = last == 0 ? x[0] : (x[last] + x[last - 1]) / 2;
        plot.note(PlotNote.text("tolerance " + NumberText.signed(high[last], 2), between, high[last],
            PlotNote.Anchor.CENTRE, Ink.BLACK.colour(), 15));
        plot.note(PlotNote.text("tolerance " + NumberText.signed(low[last], 2), between, low[last],
            PlotNote.Anchor.CENTRE, Ink.BLACK.colour(), -6));
    }

    private static void marks(Plot plot, String name, List<TrimmedPoint> points,
                              ToDoubleFunction<TrimmedPoint> error, Ink ink, Marker marker) {
        plot.marks(name, points.stream().mapToDouble(TrimmedPoint::position).toArray(),
            points.stream().mapToDouble(error).toArray(), ink, marker);
    }

    /**
     * The largest error against the reading that is set: its lowest place is the target, its steepness what
     * a miss costs. Where the tolerance is not the same at all points the errors count in tolerances.
     *
     * @return not determined for zero and span, which have two targets, and where no reading is worth seeing
     *     because the output already reads the target
     */
    public static Finding<Picture> setting(TrimAdvice advice) {
        Objects.requireNonNull(advice, "advice");
        final TrimTarget target = advice.targets().get(0);
        final double change = Math.abs(target.setTo() - target.readsNow());
        final double reach = Math.max(1.4 * change, 6 * advice.trim().settability());
        if (reach < 1e-9 * Math.abs(target.setTo())) {
            return Finding.notDetermined("the output already reads the target");
        }
        return advice.ifSetTo(target.setTo()).map(best -> setting(advice, reach));
    }

    private static Picture setting(TrimAdvice advice, double reach) {
        final TrimTarget target = advice.targets().get(0);
        final Measure measure = Measure.of(advice);
        final String unit = target.outputUnit();
        final Plot plot = new Plot("reading set at " + NumberText.fixed(target.apply(), 3) + " "
            + target.inputUnit() + " applied (" + unit + ")", measure.axis());
        final double[] x = new double[STEPS + 2];
        for (int i = 0; i <= STEPS; i++) {
            x[i] = target.setTo() + reach * (2.0 * i / STEPS - 1);
        }
        // The corner itself must be among the places, or its tip is cut off.
        x[STEPS + 1] = target.setTo();
        Arrays.sort(x);
        final double[] y = Arrays.stream(x).map(r -> measure.at(advice, r)).toArray();
        final double low = measure.at(advice, target.setTo());
        final double now = measure.at(advice, target.readsNow());
        final double top = 1.25 * Math.max(measure.limit().orElse(0), Arrays.stream(y).max()
            .orElseThrow());
        plot.xRange(x[0], x[STEPS + 1]).yRange(0, top);
        final double step = advice.trim().settability();
        measure.limit().ifPresent(v -> plot.note(PlotNote.horizontalLimit(v, measure.limitName(),
            Ink.BLACK.colour(), true)));
        plot.line("largest error", x, y, Ink.BLUE);
        plot.marks("now", new double[] {target.readsNow()}, new double[] {now}, Ink.VERMILION,
            SeriesMarkers.CIRCLE);
        plot.marks("target", new double[] {target.setTo()}, new double[] {low}, Ink.BLUE,
            SeriesMarkers.DIAMOND);
        plot.note(PlotNote.text("reads now: " + measure.text(now), target.readsNow(), now,
            PlotNote.Anchor.CENTRE, Ink.VERMILION.colour(), -12));
        plot.note(PlotNote.text("target " + NumberText.fixed(target.setTo(), 4) + " " + unit + ": "
            + measure.text(low), target.setTo(), low, PlotNote.Anchor.CENTRE, Ink.BLUE.colour(), 22));
        if (step > 0) {
            plot.note(PlotNote.interval(target.setTo() - step, target.setTo() + step, 0.06 * top,
                "can be set to \u00b1" + NumberText.significant(step, 2) + " " + unit, Ink.SOFT_TEXT));
        }
        return Picture.of(
            advice.run().channel() + ": no other reading at " + NumberText.fixed(target.apply(), 3) + " "
                + target.inputUnit() + " leaves less than " + measure.text(low) + missed(advice, measure)
                + ".",
            "Largest error over all points against the reading that is set at the upper range value.",
            plot.chart());
    }

    private static String missed(TrimAdvice advice, Measure measure) {
        final double step = advice.trim().settability();
        if (step == 0) {
            return "";
        }
        final double at = advice.targets().get(0).setTo();
        return "; a miss of " + NumberText.significant(step, 2) + " " + advice.targets().get(0).outputUnit()
            + " leaves up to " + measure.text(Math.max(measure.at(advice, at - step),
                measure.at(advice, at + step)));
    }

    /** The largest error in percent of span, or in tolerances where these differ from point to point. */
    private record Measure(boolean inTolerances, OptionalDouble limit) {
        static Measure of(TrimAdvice advice) {
            final List<double[]> limits = advice.points().stream().flatMap(p -> p.permitted().stream())
                .map(t -> new double[] {t.lower().orElseThrow(), t.upper().orElseThrow()}).toList();
            if (limits.isEmpty()) {
                return new Measure(false, OptionalDouble.empty());
            }
            final double half = limits.get(0)[1];
            final boolean same = limits.stream().allMatch(l -> Math.abs(l[0] + half) < 1e-9 * half
                && Math.abs(l[1] - half) < 1e-9 * half);
            return same ? new Measure(false, OptionalDouble.of(half))
                : new Measure(true, OptionalDouble.of(1));
        }

        double at(TrimAdvice advice, double setTo) {
            return advice.ifSetTo(setTo).orElseThrow().stream().mapToDouble(p -> inTolerances
                ? inTolerances(p) : Math.abs(p.after())).max().orElseThrow();
        }

        private static double inTolerances(TrimmedPoint p) {
            final double low = p.permitted().orElseThrow().lower().orElseThrow();
            final double high = p.permitted().orElseThrow().upper().orElseThrow();
            return Math.abs(p.after() - (low + high) / 2) / ((high - low) / 2);
        }

        String axis() {
            return inTolerances ? "largest error (in tolerances)" : "largest error (% of span)";
        }

        String limitName() {
            return inTolerances ? "tolerance" : "tolerance " + NumberText.plain(limit.orElseThrow(), 3)
                + " % of span";
        }

        String text(double figure) {
            return NumberText.fixed(figure, 3) + (inTolerances ? " tolerances" : " % of span");
        }
    }

    /** What a turn did to the output, the line through it, and where that line crosses zero. */
    public static Picture pivot(TrimPivot pivot) {
        Objects.requireNonNull(pivot, "pivot");
        final double[] x = pivot.changes().stream().mapToDouble(TrimPivot.Change::output).toArray();
        final double[] y = pivot.changes().stream().mapToDouble(TrimPivot.Change::change).toArray();
        final double low = Math.min(pivot.interval().lower(), Arrays.stream(x).min().orElse(0));
        final double high = Math.max(pivot.interval().upper(), Arrays.stream(x).max().orElse(0));
        final double air = 0.06 * (high - low);
        final double from = Math.min(low, 0) - air;
        final double to = high + air;
        final Plot plot = new Plot("output before the turn (" + pivot.unit() + ")",
            "change of the output (" + pivot.unit() + ")").xRange(from, to);
        final List<Double> all = new ArrayList<>(List.of(0.0, pivot.line().at(from).value(),
            pivot.line().at(to).value()));
        Arrays.stream(y).forEach(all::add);
        final double bottom = Collections.min(all);
        final double top = Collections.max(all);
        final double room = 0.14 * (top - bottom);
        plot.yRange(bottom - room, top + room);
        plot.line("no change", new double[] {from, to}, new double[] {0, 0}, Ink.BLACK,
            new BasicStroke(1f));
        plot.line("line", new double[] {from, to}, new double[] {pivot.line().at(from).value(),
            pivot.line().at(to).value()}, Ink.BLUE);
        plot.marks("change", x, y, Ink.VERMILION, SeriesMarkers.CIRCLE);
        final String where = NumberText.fixed(pivot.pivot(), 2) + " " + pivot.unit();
        plot.note(PlotNote.interval(pivot.interval().lower(), pivot.interval().upper(), 0, "",
            Ink.BLACK.colour()));
        plot.note(PlotNote.text("pivot " + where + ", 95 % " + pivot.interval() + " " + pivot.unit(),
            pivot.interval().upper(), 0,
            PlotNote.Anchor.LEFT, Ink.BLACK.colour(), pivot.gain() > 1 ? 18 : -10));
        return Picture.of(pivot.channel() + ": the turn multiplied by "
            + NumberText.significant(pivot.gain(), 6) + " about " + where + "; the trim "
            + candidates(pivot) + ".",
            "Change of the output at each point between two records, with the line that crosses zero at the "
                + "pivot.", plot.chart());
    }

    private static String candidates(TrimPivot pivot) {
        final List<String> agreed = new ArrayList<>();
        for (double p : new double[] {0, 4}) {
            if (pivot.agreesWith(p)) {
                agreed.add(NumberText.plain(p, 3) + " " + pivot.unit());
            }
        }
        return agreed.isEmpty() ? "pivots neither at 0 nor at 4 " + pivot.unit()
            : "may pivot at " + String.join(" or at ", agreed);
    }
}
