package spanwright.verdict;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What a rule makes of a limit and an uncertainty: the values it accepts. Unit: that of the limit.
 *
 * @param lower     lowest accepted value, absent where the limit has no lower side
 * @param upper     highest accepted value, absent where the limit has no upper side; at or below {@code
 *                  lower}
 *                  where the guard bands meet, and then nothing is accepted
 * @param guardBand the larger guard band, at least 0
 * @param answers   which answers the rule knows
 * @param unmet     the condition of the rule that is not met, in the words of something missing; the rule
 *                  does not apply then
 */
public record Acceptance(OptionalDouble lower, OptionalDouble upper, double guardBand, Answers answers,
                         Optional<String> unmet) {
    /** Checks the components. */
    public Acceptance {
        lower.ifPresent(v -> Checks.finite("lower acceptance limit", v));
        upper.ifPresent(v -> Checks.finite("upper acceptance limit", v));
        Checks.notNegative("guard band", guardBand);
        Objects.requireNonNull(answers, "answers");
        Objects.requireNonNull(unmet, "unmet");
    }

    /** The limit drawn in by a guard band on each side it has. */
    static Acceptance guarded(ToleranceInterval limit, double below, double above) {
        final OptionalDouble lo = limit.lower().isPresent()
            ? OptionalDouble.of(limit.lower().getAsDouble() + below) : OptionalDouble.empty();
        final OptionalDouble up = limit.upper().isPresent()
            ? OptionalDouble.of(limit.upper().getAsDouble() - above) : OptionalDouble.empty();
        return new Acceptance(lo, up, Math.max(below, above), Answers.TWO, Optional.empty());
    }

    /** A rule that does not apply, and why. */
    static Acceptance notApplicable(ToleranceInterval limit, String unmet) {
        return new Acceptance(limit.lower(), limit.upper(), 0, Answers.TWO, Optional.of(unmet));
    }

    Acceptance with(Answers known) {
        return new Acceptance(lower, upper, guardBand, known, unmet);
    }

    /** The accepted values; absent if the rule does not apply or nothing is accepted. */
    public Optional<ToleranceInterval> zone() {
        final boolean empty = unmet.isPresent() || lower.isPresent() && upper.isPresent()
            && lower.getAsDouble() >= upper.getAsDouble();
        return empty ? Optional.empty() : Optional.of(new ToleranceInterval(lower, upper));
    }

    /** Distance of a value to the nearest acceptance limit, positive if accepted. */
    public double room(double value) {
        final double below = lower.isPresent() ? value - lower.getAsDouble() : Double.MAX_VALUE;
        final double above = upper.isPresent() ? upper.getAsDouble() - value : Double.MAX_VALUE;
        return Math.min(below, above);
    }

    @Override
    public String toString() {
        return unmet.map(u -> "the rule does not apply, missing: " + u).orElseGet(() -> zone()
            .map(z -> "accepts " + z + ", guard band " + NumberText.plain(guardBand, 3))
            .orElse("accepts nothing: the guard bands of " + NumberText.plain(guardBand, 3) + " meet"));
    }
}
