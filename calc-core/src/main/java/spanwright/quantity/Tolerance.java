package spanwright.quantity;

import java.util.Objects;

/**
 * How far an indication may lie from the specified characteristic, with the basis that the record or data
 * sheet states. There is no default basis: a tolerance of unknown basis is no tolerance.
 *
 * @param lower lowest permissible error, in {@code basis}
 * @param upper highest permissible error, in {@code basis}; not below {@code lower}
 * @param basis what the figures are a fraction of, or their unit
 */
public record Tolerance(double lower, double upper, Basis basis) {
    /** What a tolerance refers to. */
    public enum Basis {
        /** Percent of the output span. */
        PERCENT_OF_SPAN("% of span"),
        /** Percent of the expected output at the point. */
        PERCENT_OF_READING("% of reading"),
        /** Percent of the upper range value of the output. */
        PERCENT_OF_UPPER_RANGE_VALUE("% of upper range value"),
        /** In the unit of the output. */
        OUTPUT_UNIT("in the unit of the output"),
        /** In the unit of the input, carried to the output through the ideal transfer. */
        INPUT_UNIT("in the unit of the input");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Checks the components. */
    public Tolerance {
        Checks.finite("lower tolerance", lower);
        Checks.finite("upper tolerance", upper);
        Objects.requireNonNull(basis, "basis");
        if (!(lower <= upper)) {
            throw new IllegalArgumentException(
                "lower tolerance " + lower + " is above upper tolerance " + upper);
        }
    }

    /**
     * A tolerance of the same size both ways.
     *
     * @throws IllegalArgumentException if the half width is negative or not finite
     */
    public static Tolerance plusMinus(double halfWidth, Basis basis) {
        Checks.notNegative("tolerance", halfWidth);
        return new Tolerance(-halfWidth, halfWidth, basis);
    }

    /** Plus and minus so many percent of span. */
    public static Tolerance plusMinus(PercentOfSpan percent) {
        return plusMinus(percent.value(), Basis.PERCENT_OF_SPAN);
    }

    /** Whether the two limits lie at the same distance from zero. */
    public boolean isSymmetric() {
        return lower == -upper;
    }

    @Override
    public String toString() {
        final String figures = isSymmetric() ? "\u00b1" + NumberText.plain(upper, 6)
            : NumberText.plain(lower, 6) + " to " + NumberText.plain(upper, 6);
        return figures + " " + basis;
    }
}
