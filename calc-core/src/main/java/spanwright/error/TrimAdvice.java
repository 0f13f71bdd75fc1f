package spanwright.error;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.readings.CalibrationRun;

/**
 * Whether to adjust, and to what.
 *
 * @param run          the run as found
 * @param trim         what can be adjusted, how finely, and what it must serve
 * @param action       what to do
 * @param targets      what to apply and set: one for a gain trim, two for zero and span
 * @param before       largest error before, without sign
 * @param after        largest error after the best adjustment: the lower bound where the tolerance is the
 *                     same at all points (or none is stated), no other setting does better
 * @param toleranceUse largest error after, in tolerances: the lower bound, above 1 even the best adjustment
 *                     is not enough; empty if the record states no tolerance
 * @param points       predicted residuals at each point and service temperature
 * @param fixedBy      indices in {@code points} of the residuals that fix the setting; empty where not sought
 * @param reasons      why this action
 * @param warnings     what to keep in mind when doing it
 */
public record TrimAdvice(CalibrationRun run, Trim trim, Action action, List<TrimTarget> targets,
                         PercentOfSpan before, PercentOfSpan after, OptionalDouble toleranceUse,
                         List<TrimmedPoint> points, List<Integer> fixedBy, List<String> reasons,
                         List<String> warnings) {
    /** What to do. */
    public enum Action {
        /** Set the target. */
        ADJUST("adjust"),
        /** Leave it as it is. */
        DO_NOT_TOUCH("do not touch"),
        /** Even the best setting leaves an error beyond the tolerance. */
        CANNOT_HELP("adjustment cannot help");

        private final String words;

        Action(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Checks the components and copies the lists. */
    public TrimAdvice {
        Objects.requireNonNull(run, "run");
        Objects.requireNonNull(trim, "trim");
        Objects.requireNonNull(action, "action");
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        toleranceUse.ifPresent(v -> Checks.notNegative("tolerance use", v));
        targets = List.copyOf(targets);
        Checks.atLeast("number of targets", targets.size(), 1);
        points = List.copyOf(points);
        Checks.atLeast("number of points", points.size(), 1);
        fixedBy = List.copyOf(fixedBy);
        reasons = List.copyOf(reasons);
        warnings = List.copyOf(warnings);
    }

    /** What is adjusted, in words. */
    public String means() {
        return trim.means(run.output());
    }

    /**
     * What would be left at each point if the one target were missed: the errors for another reading set at
     * the same applied input. Only for a gain trim; zero and span have two targets, which act together.
     *
     * @param setTo reading set, in the output's unit
     * @return not determined for zero and span
     */
    public Finding<List<TrimmedPoint>> ifSetTo(double setTo) {
        Checks.finite("reading to set", setTo);
        if (trim.pivot().isEmpty()) {
            return Finding.notDetermined("zero and span have two targets, not one");
        }
        final double pivot = run.output().percentAt(trim.pivot().getAsDouble());
        final double now = run.output().percentAt(targets.get(0).readsNow());
        final double turn = (run.output().percentAt(setTo) - now) / (now - pivot);
        return Finding.of(points.stream().map(p -> new TrimmedPoint(p.position(), p.direction(),
            p.temperature(), p.expected(), p.before(),
            p.before() + turn * (p.expected() + p.before() - pivot), p.permitted())).toList());
    }

    /** The advice in one sentence. */
    public String sentence() {
        final String figures = "largest error " + NumberText.fixed(before.value(), 4) + " now, "
            + NumberText.fixed(after.value(), 4) + " % of span at best";
        final String todo = targets.stream().map(TrimTarget::toString).collect(Collectors.joining("; then "));
        final String why = reasons.isEmpty() ? "" : ": " + String.join("; ", reasons);
        return (action == Action.ADJUST ? "Adjust " + means() + ": " + todo
            : (action == Action.DO_NOT_TOUCH ? "Do not touch" : "Adjustment cannot help") + why) + " ("
            + figures + ").";
    }

    @Override
    public String toString() {
        return sentence() + points.stream().map(p -> "\n" + p).collect(Collectors.joining())
            + warnings.stream().map(w -> "\nnote: " + w).collect(Collectors.joining());
    }
}
