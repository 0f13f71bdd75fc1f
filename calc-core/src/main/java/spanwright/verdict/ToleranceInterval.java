package spanwright.verdict;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The permissible values of a quantity; one side may be open. Values on a limit are permissible. The unit is
 * that of the quantity.
 *
 * @param lower lowest permissible value, absent for an upper limit alone
 * @param upper highest permissible value, absent for a lower limit alone; above {@code lower}
 */
public record ToleranceInterval(OptionalDouble lower, OptionalDouble upper) {
    /** Checks the components. */
    public ToleranceInterval {
        Objects.requireNonNull(lower, "lower");
        Objects.requireNonNull(upper, "upper");
        lower.ifPresent(v -> Checks.finite("lower limit", v));
        upper.ifPresent(v -> Checks.finite("upper limit", v));
        if (lower.isEmpty() && upper.isEmpty()) {
            throw new IllegalArgumentException("a tolerance interval needs a lower or an upper limit");
        }
        if (lower.isPresent() && upper.isPresent() && !(lower.getAsDouble() < upper.getAsDouble())) {
            throw new IllegalArgumentException("lower limit " + lower.getAsDouble()
                + " must be below upper limit " + upper.getAsDouble());
        }
    }

    /**
     * Both limits.
     *
     * @throws IllegalArgumentException if lower is not below upper or one is not finite
     */
    public static ToleranceInterval between(double lower, double upper) {
        return new ToleranceInterval(OptionalDouble.of(lower), OptionalDouble.of(upper));
    }

    /**
     * The same distance both ways from zero.
     *
     * @throws IllegalArgumentException if the half width is not above 0
     */
    public static ToleranceInterval plusMinus(double halfWidth) {
        Checks.positive("half width", halfWidth);
        return between(-halfWidth, halfWidth);
    }

    /** An upper limit alone. */
    public static ToleranceInterval atMost(double upper) {
        return new ToleranceInterval(OptionalDouble.empty(), OptionalDouble.of(upper));
    }

    /** A lower limit alone. */
    public static ToleranceInterval atLeast(double lower) {
        return new ToleranceInterval(OptionalDouble.of(lower), OptionalDouble.empty());
    }

    /** Whether both limits are there. */
    public boolean isTwoSided() {
        return lower.isPresent() && upper.isPresent();
    }

    /** Half the distance between the limits; absent for a one-sided interval. */
    public OptionalDouble halfWidth() {
        return isTwoSided() ? OptionalDouble.of((upper.getAsDouble() - lower.getAsDouble()) / 2)
            : OptionalDouble.empty();
    }

    /** Whether the value is permissible; the limits themselves are. */
    public boolean contains(double value) {
        return room(Checks.finite("value", value)) >= 0;
    }

    /** Distance of a value to the nearest limit, positive inside, negative outside. */
    public double room(double value) {
        Checks.finite("value", value);
        final double below = lower.isPresent() ? value - lower.getAsDouble() : Double.MAX_VALUE;
        final double above = upper.isPresent() ? upper.getAsDouble() - value : Double.MAX_VALUE;
        return Math.min(below, above);
    }

    /** The permissible values that both intervals allow, absent if there is no stretch of them. */
    Optional<ToleranceInterval> and(ToleranceInterval other) {
        final OptionalDouble lo = tighter(lower, other.lower, 1);
        final OptionalDouble up = tighter(upper, other.upper, -1);
        if (lo.isPresent() && up.isPresent() && lo.getAsDouble() >= up.getAsDouble()) {
            return Optional.empty();
        }
        return Optional.of(new ToleranceInterval(lo, up));
    }

    private static OptionalDouble tighter(OptionalDouble a, OptionalDouble b, int sign) {
        if (a.isEmpty() || b.isEmpty()) {
            return a.isPresent() ? a : b;
        }
        return sign * a.getAsDouble() >= sign * b.getAsDouble() ? a : b;
    }

    @Override
    public String toString() {
        if (!isTwoSided()) {
            return upper.isPresent() ? "at most " + NumberText.plain(upper.getAsDouble(), 6)
                : "at least " + NumberText.plain(lower.orElseThrow(), 6);
        }
        return lower.getAsDouble() == -upper.getAsDouble()
            ? "\u00b1" + NumberText.plain(upper.getAsDouble(), 6)
            : NumberText.plain(lower.getAsDouble(), 6) + " to " + NumberText.plain(upper.getAsDouble(), 6);
    }
}
