package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import spanwright.quantity.Kelvin;
import spanwright.quantity.PercentOfSpan;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Direction;
import spanwright.verdict.ToleranceInterval;

/**
 * What an adjustment must serve: the mean error at each point within the service range, from each side, at
 * each end of the service temperatures. All in percent of the output span.
 */
final class TrimCases {
    /** One of them: expected output, error, and the middle and half width of what is permitted. */
    record Case(double position, Direction direction, Kelvin temperature, double expected, double error,
                double middle, double half) {
        double output() {
            return expected + error;
        }
    }

    private final CalibrationRun run;
    private final List<Case> cases = new ArrayList<>();
    private String withoutTolerance = "";

    TrimCases(ChannelAnalysis analysis, ServiceConditions service) {
        run = analysis.run();
        for (PointErrors p : analysis.points()) {
            for (Direction d : Direction.values()) {
                if (!p.in(d).isEmpty() && isServed(p, service)) {
                    add(p, d, service);
                }
            }
        }
        if (cases.isEmpty()) {
            throw new IllegalArgumentException("channel " + run.channel() + " has no reading within "
                + service.fromPercent() + " % to " + service.toPercent() + " % of the range");
        }
        if (!withoutTolerance.isEmpty()) {
            cases.replaceAll(c -> new Case(c.position(), c.direction(), c.temperature(), c.expected(),
                c.error(), 0, 1));
        }
    }

    private static boolean isServed(PointErrors p, ServiceConditions service) {
        // A nominal point on the edge may have been applied a little beyond it.
        return p.position() >= service.fromPercent() - 1 && p.position() <= service.toPercent() + 1;
    }

    private void add(PointErrors p, Direction d, ServiceConditions service) {
        final double expected = p.in(d).stream().mapToDouble(ReadingError::expectedPercent).average()
            .orElseThrow();
        final double error = p.mean(d).orElseThrow();
        final Finding<ToleranceInterval> limits = PermissibleErrors.at(run, expected);
        if (!limits.isDetermined()) {
            withoutTolerance = limits.reason();
        }
        final double lower = limits.map(l -> l.lower().orElseThrow()).value().orElse(-1.0);
        final double upper = limits.map(l -> l.upper().orElseThrow()).value().orElse(1.0);
        for (Kelvin t : service.temperatures()) {
            cases.add(new Case(p.position(), d, t, expected, error + service.shift(t, expected),
                (lower + upper) / 2, (upper - lower) / 2));
        }
    }

    List<Case> all() {
        return cases;
    }

    CalibrationRun run() {
        return run;
    }

    boolean hasTolerance() {
        return withoutTolerance.isEmpty();
    }

    String withoutTolerance() {
        return withoutTolerance;
    }

    double[] figures(ToDoubleFunction<Case> figure) {
        return cases.stream().mapToDouble(figure).toArray();
    }

    /** Largest error without sign, in percent of span. */
    PercentOfSpan largest(double[] errors) {
        double largest = 0;
        for (double e : errors) {
            largest = Math.max(largest, Math.abs(e));
        }
        return new PercentOfSpan(largest);
    }

    /** Largest error in tolerances, empty without a tolerance. */
    OptionalDouble toleranceUse(double[] errors) {
        double largest = 0;
        for (int i = 0; i < errors.length; i++) {
            largest = Math.max(largest, Math.abs(errors[i] - cases.get(i).middle()) / cases.get(i).half());
        }
        return hasTolerance() ? OptionalDouble.of(largest) : OptionalDouble.empty();
    }

    List<TrimmedPoint> trimmed(double[] after) {
        final List<TrimmedPoint> points = new ArrayList<>();
        for (int i = 0; i < after.length; i++) {
            final Case c = cases.get(i);
            points.add(new TrimmedPoint(c.position(), c.direction(), c.temperature(), c.expected(), c.error(),
                after[i], hasTolerance() ? Optional.of(ToleranceInterval.between(c.middle() - c.half(),
                c.middle() + c.half())) : Optional.empty()));
        }
        return points;
    }
}
