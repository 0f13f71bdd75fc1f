package spanwright.quantity;

import java.util.Locale;
import java.util.Objects;

/**
 * Argument checks that carry the value and the bound. Each is written so that NaN fails it: the good case
 * returns, everything else throws.
 */
public final class Checks {
    private Checks() { }

    /**
     * Returns the value if it is finite.
     *
     * @throws IllegalArgumentException if it is NaN or infinite
     */
    public static double finite(String name, double value) {
        if (Math.abs(value) <= Double.MAX_VALUE) {
            return value;
        }
        throw new IllegalArgumentException(text("%s is %s: a finite number is needed", name, value));
    }

    /**
     * Returns the value if it is finite and not below zero.
     *
     * @throws IllegalArgumentException if it is negative, NaN or infinite
     */
    public static double notNegative(String name, double value) {
        if (value >= 0 && value <= Double.MAX_VALUE) {
            return value;
        }
        throw new IllegalArgumentException(text("%s is %s: it must be finite and at least 0", name, value));
    }

    /**
     * Returns the value if it is finite and above zero.
     *
     * @throws IllegalArgumentException if it is zero, negative, NaN or infinite
     */
    public static double positive(String name, double value) {
        if (value > 0 && value <= Double.MAX_VALUE) {
            return value;
        }
        throw new IllegalArgumentException(text("%s is %s: it must be finite and above 0", name, value));
    }

    /**
     * Returns the value if it lies in the closed interval.
     *
     * @throws IllegalArgumentException if it is outside [lower, upper] or NaN
     */
    public static double within(String name, double value, double lower, double upper) {
        if (value >= lower && value <= upper) {
            return value;
        }
        throw new IllegalArgumentException(
            text("%s is %s: out of range [%s, %s]", name, value, lower, upper));
    }

    /**
     * Returns the value if it lies in the open interval.
     *
     * @throws IllegalArgumentException if it is outside (lower, upper) or NaN
     */
    public static double inside(String name, double value, double lower, double upper) {
        if (value > lower && value < upper) {
            return value;
        }
        throw new IllegalArgumentException(
            text("%s is %s: out of range (%s, %s)", name, value, lower, upper));
    }

    /**
     * Returns the count if it is at least the least allowed.
     *
     * @throws IllegalArgumentException if it is below
     */
    public static int atLeast(String name, int value, int least) {
        if (value >= least) {
            return value;
        }
        throw new IllegalArgumentException(text("%s is %d: at least %d needed", name, value, least));
    }

    /**
     * Returns a copy of the values if all are finite and there are enough.
     *
     * @throws IllegalArgumentException if there are fewer than {@code least}, or one is not finite
     */
    public static double[] finiteAll(String name, double[] values, int least) {
        final double[] copy = Objects.requireNonNull(values, name).clone();
        atLeast("number of " + name, copy.length, least);
        for (int i = 0; i < copy.length; i++) {
            finite(name + "[" + i + "]", copy[i]);
        }
        return copy;
    }

    /**
     * Checks pairs for a fit.
     *
     * @throws IllegalArgumentException if the lengths differ, there are fewer than {@code least} pairs, or
     *     any value is not finite
     */
    public static void finitePairs(double[] x, double[] y, int least) {
        finiteAll("x", x, least);
        finiteAll("y", y, least);
        if (x.length != y.length) {
            throw new IllegalArgumentException(text("%d x but %d y: pairs needed", x.length, y.length));
        }
    }

    /**
     * Returns the text if it is not blank.
     *
     * @throws IllegalArgumentException if it is blank
     */
    public static String notBlank(String name, String text) {
        if (!Objects.requireNonNull(text, name).isBlank()) {
            return text;
        }
        throw new IllegalArgumentException(name + " is blank");
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
