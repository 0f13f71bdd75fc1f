package spanwright.readings;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spanwright.quantity.Span;

/**
 * Settles the direction and the cycle of each reading of a run. What the record states stands; what it leaves
 * open is inferred from the order of the applied inputs, and that is flagged.
 */
final class Traverse {
    /** Applied inputs closer than this, in percent of the input span, are the same point. */
    static final double SAME_POINT = 1.0;

    private final Span input;
    private final List<RecordFinding> findings;

    Traverse(Span input, List<RecordFinding> findings) {
        this.input = input;
        this.findings = findings;
    }

    /** The readings of a run, in the order of the record. */
    List<Reading> settle(List<Point> points) {
        final List<Direction> directions = directions(points);
        final List<Integer> cycles = cycles(points, directions);
        final List<Reading> out = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            out.add(points.get(i).settled(directions.get(i), cycles.get(i)));
        }
        return out;
    }

    private List<Direction> directions(List<Point> points) {
        final List<Direction> inferred = inferred(points);
        final List<Direction> out = new ArrayList<>();
        boolean flagged = false;
        for (int i = 0; i < points.size(); i++) {
            final Point p = points.get(i);
            if (p.direction().isEmpty() && !flagged) {
                flagged = true;
                findings.add(RecordFinding
                    .of(Fault.DIRECTION_INFERRED, p.applied().cell(), p.applied().written(),
                        "direction is not stated: taken from the order of the applied inputs")
                    .inChannel(p.key().channel()));
            }
            out.add(p.direction().orElse(inferred.get(i)));
        }
        contradicted(points);
        return out;
    }

    /** Upscale while the applied input rises; the first point of a pair at the top is still upscale. */
    private List<Direction> inferred(List<Point> points) {
        final List<Direction> out = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            final int change = i == 0 ? 0 : change(points, i - 1, i);
            final int next = i + 1 < points.size() ? change(points, i, i + 1) : 0;
            if (change != 0) {
                out.add(change > 0 ? Direction.UPSCALE : Direction.DOWNSCALE);
            } else if (i == 0) {
                out.add(next < 0 ? Direction.DOWNSCALE : Direction.UPSCALE);
            } else {
                out.add(next < 0 ? Direction.DOWNSCALE : next > 0 ? Direction.UPSCALE : out.get(i - 1));
            }
        }
        return out;
    }

    private int change(List<Point> points, int from, int to) {
        final double d = points.get(to).percent(input) - points.get(from).percent(input);
        return Math.abs(d) <= SAME_POINT ? 0 : d > 0 ? 1 : -1;
    }

    /** Flags a traverse of at least three rows, all labelled one way, whose inputs all run the other way. */
    private void contradicted(List<Point> points) {
        final Map<String, List<Point>> legs = new LinkedHashMap<>();
        points.stream().filter(p -> p.direction().isPresent() && !p.directionFromHead()).forEach(p ->
            legs.computeIfAbsent(p.direction().get() + " " + p.cycle(), k -> new ArrayList<>()).add(p));
        for (List<Point> leg : legs.values()) {
            int along = 0;
            int against = 0;
            for (int i = 1; i < leg.size(); i++) {
                final int c = change(leg, i - 1, i) * (leg.get(i).direction().get() == Direction.UPSCALE ? 1
                    : -1);
                along += c > 0 ? 1 : 0;
                against += c < 0 ? 1 : 0;
            }
            if (against >= 2 && along == 0) {
                final Point p = leg.get(0);
                findings.add(RecordFinding
                    .of(Fault.DIRECTION_CONTRADICTED, p.applied().cell(), p.applied().written(),
                        "readings labelled \"" + p.direction().get() + "\" were applied in the other order")
                    .inChannel(p.key().channel()));
            }
        }
    }

    /**
     * Stated cycles stand; otherwise a point that comes again in the same direction begins the next cycle.
     */
    private List<Integer> cycles(List<Point> points, List<Direction> directions) {
        final Map<String, Integer> seen = new HashMap<>();
        final List<Integer> out = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            final Point p = points.get(i);
            if (p.cycle().isPresent()) {
                out.add(p.cycle().getAsInt());
            } else {
                final String point = Math.round(p.percent(input) / (2 * SAME_POINT)) + " "
                    + directions.get(i);
                out.add(seen.merge(point, 1, Integer::sum));
            }
        }
        return repeatsEvenly(points, directions) ? out : withoutRepeats(points, out);
    }

    /**
     * Whether every point of a direction comes equally often, so that repeats are cycles and no duplicates.
     */
    private boolean repeatsEvenly(List<Point> points, List<Direction> directions) {
        final Map<Direction, Map<Long, Integer>> counts = new HashMap<>();
        for (int i = 0; i < points.size(); i++) {
            counts.computeIfAbsent(directions.get(i), d -> new HashMap<>())
                .merge(Math.round(points.get(i).percent(input) / (2 * SAME_POINT)), 1, Integer::sum);
        }
        return counts.values().stream().allMatch(m -> m.values().stream().distinct().count() == 1);
    }

    private static List<Integer> withoutRepeats(List<Point> points, List<Integer> cycles) {
        final List<Integer> out = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            out.add(points.get(i).cycle().isPresent() ? cycles.get(i) : Integer.valueOf(1));
        }
        return out;
    }
}
