package spanwright.verdict;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;

/**
 * How far an indication may lie below and above the specified characteristic, with the basis of the figures.
 * One side may be open, unlike in {@link Tolerance}. The figures are in the {@code basis}. Data sheets also
 * add figures of two bases, such as 0.05 % of reading plus 0.02 % of span: see {@link
 * #plus(PermissibleError)}.
 *
 * @param lower   lowest permissible error, usually negative; absent if only an upper one is stated
 * @param upper   highest permissible error; absent if only a lower one is stated; above {@code lower}
 * @param basis   what the figures are a fraction of, or their unit
 * @param further figures of another basis that widen these; absent where there is one basis alone
 */
public record PermissibleError(OptionalDouble lower, OptionalDouble upper, Tolerance.Basis basis,
        Optional<PermissibleError> further) {
    /** Checks the components. */
    public PermissibleError {
        Objects.requireNonNull(basis, "basis");
        Objects.requireNonNull(further, "further");
        new ToleranceInterval(lower, upper);
        if (further.isPresent()) {
            checkWidens(new ToleranceInterval(lower, upper), basis);
            checkWidens(new ToleranceInterval(further.get().lower, further.get().upper), further.get().basis);
        }
    }

    /** Figures of one basis. */
    public PermissibleError(OptionalDouble lower, OptionalDouble upper, Tolerance.Basis basis) {
        this(lower, upper, basis, Optional.empty());
    }

    /**
     * The tolerance of a record.
     *
     * @throws IllegalArgumentException if the tolerance has no width
     */
    public static PermissibleError of(Tolerance tolerance) {
        return new PermissibleError(OptionalDouble.of(tolerance.lower()),
            OptionalDouble.of(tolerance.upper()),
            tolerance.basis());
    }

    /** The same size both ways; above 0. */
    public static PermissibleError plusMinus(double halfWidth, Tolerance.Basis basis) {
        return of(Tolerance.plusMinus(halfWidth, basis));
    }

    /** Different sizes: for example {@code between(-0.1, 0.2, PERCENT_OF_SPAN)}. */
    public static PermissibleError between(double lower, double upper, Tolerance.Basis basis) {
        return new PermissibleError(OptionalDouble.of(lower), OptionalDouble.of(upper), basis);
    }

    /** An upper limit alone. */
    public static PermissibleError atMost(double upper, Tolerance.Basis basis) {
        return new PermissibleError(OptionalDouble.empty(), OptionalDouble.of(upper), basis);
    }

    /** A lower limit alone. */
    public static PermissibleError atLeast(double lower, Tolerance.Basis basis) {
        return new PermissibleError(OptionalDouble.of(lower), OptionalDouble.empty(), basis);
    }

    /**
     * These figures widened by those of another basis, point by point.
     *
     * @throws IllegalArgumentException unless both lie on both sides of zero: else widening has no meaning
     */
    public PermissibleError plus(PermissibleError other) {
        return new PermissibleError(lower, upper, basis,
            Optional.of(further.isPresent() ? further.get().plus(other) : other));
    }

    /**
     * The permissible error in percent of span at a point of the range.
     *
     * @param output         range of the output
     * @param percent        where the point lies in the output range, in percent
     * @param outputPerInput slope of the specified characteristic there, output unit per input unit; needed
     *                       for the basis {@code INPUT_UNIT} alone
     * @throws IllegalArgumentException if the basis needs a slope that is absent, or allows no error at all
     *                                  at this point (percent of reading where the reading is 0)
     */
    public ToleranceInterval at(Span output, double percent, OptionalDouble outputPerInput) {
        obstacle(output, percent, outputPerInput).ifPresent(words -> {
            throw new IllegalArgumentException(words);
        });
        final OptionalDouble a = side(false, output, percent, outputPerInput);
        return new ToleranceInterval(a, side(true, output, percent, outputPerInput));
    }

    /** One side in percent of span; a falling characteristic makes the upper side of the lower figure. */
    private OptionalDouble side(boolean upperSide, Span output, double percent,
            OptionalDouble outputPerInput) {
        final double factor = factor(output, percent, outputPerInput);
        final OptionalDouble figure = factor > 0 == upperSide ? upper : lower;
        if (figure.isEmpty() || further.isEmpty()) {
            return figure.isEmpty() ? figure : OptionalDouble.of(factor * figure.getAsDouble());
        }
        final OptionalDouble rest = further.get().side(upperSide, output, percent, outputPerInput);
        return OptionalDouble.of(factor * figure.getAsDouble() + rest.orElseThrow());
    }

    /** Only figures that enclose zero on both sides can be widened by others, or widen them. */
    private static void checkWidens(ToleranceInterval figures, Tolerance.Basis basis) {
        if (!figures.isTwoSided() || !figures.contains(0)) {
            throw new IllegalArgumentException("permissible errors that add up must lie on both sides of"
                + " zero, not " + figures + " " + basis);
        }
    }

    /** Why the figures cannot be carried to percent of span at a point; absent if they can. */
    Optional<String> obstacle(Span output, double percent, OptionalDouble outputPerInput) {
        Checks.finite("percent of the range", percent);
        if (needsSlope() && outputPerInput.isEmpty()) {
            return Optional.of("the slope of the characteristic at " + NumberText.plain(percent, 6)
                + " % of the range (the limit is in the unit of the input)");
        }
        if (allowsNothing(output, percent, outputPerInput)) {
            return Optional.of("a limit at " + NumberText.plain(percent, 6) + " % of the range, where " + this
                + " allows no error at all");
        }
        return Optional.empty();
    }

    private boolean needsSlope() {
        return basis == Tolerance.Basis.INPUT_UNIT || further.isPresent() && further.get().needsSlope();
    }

    private boolean allowsNothing(Span output, double percent, OptionalDouble outputPerInput) {
        return factor(output, percent, outputPerInput) == 0
            && (further.isEmpty() || further.get().allowsNothing(output, percent, outputPerInput));
    }

    /** Percent of span per unit of the basis. */
    private double factor(Span output, double percent, OptionalDouble outputPerInput) {
        final double width = output.width();
        switch (basis) {
            case PERCENT_OF_SPAN:
                return 1;
            case PERCENT_OF_READING:
                return Math.abs(output.valueAt(percent)) / width;
            case PERCENT_OF_UPPER_RANGE_VALUE:
                return Math.abs(output.upper()) / width;
            case OUTPUT_UNIT:
                return 100 / width;
            default:
                return 100 * Checks.finite("slope of the characteristic",
                    outputPerInput.orElseThrow()) / width;
        }
    }

    @Override
    public String toString() {
        final String own = new ToleranceInterval(lower, upper) + " " + basis;
        return further.isPresent() ? own + " plus " + further.get() : own;
    }
}
