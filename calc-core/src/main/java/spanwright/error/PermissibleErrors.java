package spanwright.error;

import java.util.OptionalDouble;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Transfer;
import spanwright.verdict.Limit;
import spanwright.verdict.ToleranceInterval;

/** What the tolerance of a run permits at a point, in percent of the output span. */
final class PermissibleErrors {
    private PermissibleErrors() { }

    /**
     * The permissible errors where the output is expected.
     *
     * @param expectedPercent place in the output range, in percent
     */
    static Finding<ToleranceInterval> at(CalibrationRun run, double expectedPercent) {
        if (run.tolerance().isEmpty()) {
            return Finding.notDetermined("the record states no tolerance with its basis");
        }
        try {
            return at(Limit.of(run.tolerance().get()), run, expectedPercent);
        } catch (IllegalArgumentException e) {
            return Finding.notDetermined("the tolerance has no meaning here: " + e.getMessage());
        }
    }

    /** The permissible errors of a stated limit where the output is expected. */
    static Finding<ToleranceInterval> at(Limit limit, CalibrationRun run, double expectedPercent) {
        try {
            return Finding.of(limit.at(run.output(), expectedPercent, slope(run, expectedPercent)));
        } catch (IllegalArgumentException e) {
            return Finding.notDetermined("the tolerance has no meaning here: " + e.getMessage());
        }
    }

    /**
     * Output unit per input unit where the output is expected, empty where the characteristic has no slope.
     */
    static OptionalDouble slope(CalibrationRun run, double expectedPercent) {
        final double applied = run.transfer().inputFor(run.input(), run.output(),
            run.output().valueAt(expectedPercent));
        if (run.transfer() == Transfer.SQUARE_ROOT && applied <= run.input().lower()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(run.transfer().slopeAt(run.input(), run.output(), applied));
    }
}
