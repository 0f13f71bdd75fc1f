package spanwright.error;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;

/**
 * Whether to adjust, and to what.
 *
 * @param action       what to do
 * @param means        what is adjusted, in words
 * @param targets      what to apply and set: one for a gain trim, two for zero and span
 * @param before       largest error before, without sign
 * @param after        largest error after the best adjustment: the lower bound, no other setting does better
 * @param toleranceUse largest error after, in tolerances: above 1 even the best adjustment is not enough;
 *                     empty if the record states no tolerance
 * @param points       predicted residuals at each point and service temperature
 * @param fixedBy      indices in {@code points} of the residuals that fix the setting; empty where not sought
 * @param reasons      why this action
 * @param warnings     what to keep in mind when doing it
 */
public record TrimAdvice(Action action, String means, List<TrimTarget> targets, PercentOfSpan before,
                         PercentOfSpan after, OptionalDouble toleranceUse, List<TrimmedPoint> points,
                         List<Integer> fixedBy, List<String> reasons, List<String> warnings) {
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
        Objects.requireNonNull(action, "action");
        Checks.notBlank("means", means);
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        toleranceUse.ifPresent(v -> Checks.notNegative("tolerance use", v));
        targets = List.copyOf(targets);
        points = List.copyOf(points);
        fixedBy = List.copyOf(fixedBy);
        reasons = List.copyOf(reasons);
        warnings = List.copyOf(warnings);
    }

    /** The advice in one sentence. */
    public String sentence() {
        final String figures = "largest error " + NumberText.fixed(before.value(), 4) + " now, "
            + NumberText.fixed(after.value(), 4) + " % of span at best";
        final String todo = targets.stream().map(TrimTarget::toString).collect(Collectors.joining("; then "));
        final String why = reasons.isEmpty() ? "" : ": " + String.join("; ", reasons);
        return (action == Action.ADJUST ? "Adjust " + means + ": " + todo
            : (action == Action.DO_NOT_TOUCH ? "Do not touch" : "Adjustment cannot help") + why) + " ("
            + figures + ").";
    }

    @Override
    public String toString() {
        return sentence() + points.stream().map(p -> "\n" + p).collect(Collectors.joining())
            + warnings.stream().map(w -> "\nnote: " + w).collect(Collectors.joining());
    }
}
