package spanwright.chain;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Direction;
import spanwright.readings.Reading;
import spanwright.uncertainty.Estimate;

/**
 * The error terms that a calibration record determines, percent of span. What it cannot tell becomes a note,
 * never a zero.
 */
record MeasuredTerms(List<ErrorTerm> terms, List<String> notes) {
    /** Readings whose expected outputs lie closer than this are of one point, percent of the range. */
    private static final double SAME_POINT = 1;

    static MeasuredTerms of(CalibrationRun run) {
        final Map<Double, List<Reading>> points = points(run);
        final List<ErrorTerm> terms = new ArrayList<>();
        final List<String> notes = new ArrayList<>();
        final ErrorTerm.Basis basis = ErrorTerm.Basis.of(Standing.MEASURED, false, source(run));
        terms.add(ErrorTerm.known("known error", new ErrorProfile(points.entrySet().stream()
            .map(p -> new ErrorProfile.Knot(p.getKey() / 100, mean(run, p.getValue()))).toList()), basis));
        final OptionalDouble hysteresis = points.values().stream().map(p -> hysteresis(run, p))
            .filter(OptionalDouble::isPresent).mapToDouble(OptionalDouble::getAsDouble).max();
        if (hysteresis.isPresent()) {
            terms.add(ErrorTerm.limit("hysteresis", Influence.HYSTERESIS, hysteresis.getAsDouble() / 2,
                basis));
        } else {
            notes.add(run.channel() + ": hysteresis is not determined,"
                + " no point was approached from both sides");
        }
        final Pooled pooled = pooled(run, points.values());
        if (pooled.dof() > 0) {
            terms.add(ErrorTerm.estimate("non-repeatability", Influence.REPEATABILITY,
                Estimate.of(0, Math.sqrt(pooled.squares() / pooled.dof()), pooled.dof()), basis));
        } else {
            notes.add(run.channel() + ": non-repeatability is not determined, no reading was repeated");
        }
        final double step = run.readings().stream().mapToDouble(
            r -> run.output().ofSpan(r.indicated().resolution()).value()).max().orElseThrow();
        terms.add(ErrorTerm.limit("resolution of the record", Influence.RESOLUTION, step / 2,
            ErrorTerm.Basis.of(Standing.MEASURED, true, source(run))));
        return new MeasuredTerms(List.copyOf(terms), List.copyOf(notes));
    }

    private record Pooled(double squares, int dof) { }

    private static String source(CalibrationRun run) {
        return "record of " + run.channel() + ", " + run.phase() + ", from "
            + run.readings().get(0).indicated().cell();
    }

    /** Readings by point, keyed by the mean position in the output range, percent. */
    private static Map<Double, List<Reading>> points(CalibrationRun run) {
        final List<Reading> sorted = run.readings().stream()
            .sorted((a, b) -> Double.compare(position(run, a), position(run, b))).toList();
        final Map<Double, List<Reading>> points = new TreeMap<>();
        int from = 0;
        for (int i = 1; i <= sorted.size(); i++) {
            if (i == sorted.size()
                    || position(run, sorted.get(i)) - position(run, sorted.get(from)) > SAME_POINT) {
                final List<Reading> one = sorted.subList(from, i);
                points.put(one.stream().mapToDouble(r -> position(run, r)).average().orElseThrow(), one);
                from = i;
            }
        }
        return points;
    }

    private static double position(CalibrationRun run, Reading r) {
        return run.output().percentAt(run.expected(r));
    }

    private static double error(CalibrationRun run, Reading r) {
        return run.output().ofSpan(r.indicated().value() - run.expected(r)).value();
    }

    private static double mean(CalibrationRun run, List<Reading> readings) {
        return byDirection(readings).values().stream()
            .mapToDouble(side -> side.stream().mapToDouble(r -> error(run, r)).average().orElseThrow())
            .average().orElseThrow();
    }

    private static OptionalDouble hysteresis(CalibrationRun run, List<Reading> readings) {
        final Map<Direction, List<Reading>> sides = byDirection(readings);
        if (sides.size() < 2) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.abs(mean(run, sides.get(Direction.UPSCALE))
            - mean(run, sides.get(Direction.DOWNSCALE))));
    }

    private static Pooled pooled(CalibrationRun run, Iterable<List<Reading>> points) {
        double squares = 0;
        int dof = 0;
        for (List<Reading> point : points) {
            for (List<Reading> side : byDirection(point).values()) {
                final double mean = mean(run, side);
                squares += side.stream().mapToDouble(r -> Math.pow(error(run, r) - mean, 2)).sum();
                dof += side.size() - 1;
            }
        }
        return new Pooled(squares, dof);
    }

    private static Map<Direction, List<Reading>> byDirection(List<Reading> readings) {
        return readings.stream().collect(Collectors.groupingBy(Reading::direction));
    }
}
