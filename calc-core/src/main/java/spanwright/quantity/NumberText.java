package spanwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers as a person reads them: a true minus sign, no negative zero, an uncertainty with two significant
 * digits and its value to the same place. Rounding is half to even on the decimal value of the double.
 */
public final class NumberText {
    /** The minus sign of typography, U+2212. */
    public static final char MINUS = '\u2212';

    private NumberText() { }

    /**
     * The value with a fixed number of decimals; never "-0.00".
     *
     * @param decimals places after the point, 0 to 15
     * @throws IllegalArgumentException if the value is not finite or the decimals are out of range
     */
    public static String fixed(double value, int decimals) {
        Checks.within("decimals", decimals, 0, 15);
        return typographic(exact(value).setScale(decimals, RoundingMode.HALF_EVEN));
    }

    /** As {@link #fixed}, with a plus sign before positive values, for errors that are read by their sign. */
    public static String signed(double value, int decimals) {
        final String text = fixed(value, decimals);
        return isPositive(text) ? "+" + text : text;
    }

    /**
     * The value with so many significant digits, without exponent where the magnitude is between 1e-6 and
     * 1e9.
     *
     * @param digits significant digits, 1 to 17
     * @throws IllegalArgumentException if the value is not finite or the digits are out of range
     */
    public static String significant(double value, int digits) {
        Checks.within("digits", digits, 1, 17);
        final BigDecimal rounded = exact(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
        if (rounded.signum() == 0) {
            return "0";
        }
        final int exponent = rounded.precision() - rounded.scale() - 1;
        if (exponent < -6 || exponent >= 9) {
            final BigDecimal mantissa = rounded.movePointLeft(exponent);
            return typographic(mantissa.setScale(digits - 1, RoundingMode.HALF_EVEN)) + "e"
                + Integer.toString(exponent).replace('-', MINUS);
        }
        return typographic(rounded.setScale(Math.max(0, digits - 1 - exponent), RoundingMode.HALF_EVEN));
    }

    /** At most so many significant digits, without zeros that only fill the end: 4, 0.5, 20.5. */
    public static String plain(double value, int digits) {
        final String text = significant(value, digits);
        if (text.indexOf('.') < 0 || text.indexOf('e') >= 0) {
            return text;
        }
        return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    /** An uncertainty: two significant digits. */
    public static String uncertainty(double u) {
        return significant(Checks.notNegative("u", u), 2);
    }

    /**
     * Decimals at which an uncertainty shows two significant digits; the value is rounded to the same place.
     * At least 0, at most 15; for u = 0 the answer is 6.
     */
    public static int decimalsFor(double u) {
        if (Checks.notNegative("u", u) == 0) {
            return 6;
        }
        final BigDecimal rounded = exact(u).round(new MathContext(2, RoundingMode.HALF_EVEN));
        final int exponent = rounded.precision() - rounded.scale() - 1;
        return Math.max(0, Math.min(15, 1 - exponent));
    }

    private static BigDecimal exact(double value) {
        return new BigDecimal(Double.toString(Checks.finite("value", value)));
    }

    private static boolean isPositive(String text) {
        return text.charAt(0) != MINUS && text.chars().anyMatch(c -> c >= '1' && c <= '9');
    }

    private static String typographic(BigDecimal value) {
        return value.toPlainString().replace('-', MINUS);
    }
}
