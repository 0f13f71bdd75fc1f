package spanwright.readings;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a cell says, read strictly: a number with an optional unit behind it, a word for missing, a bound or
 * an overload sign, a date, or other text. Digits are never grouped: one sign, one decimal sign.
 *
 * @param kind   which of these
 * @param number the number or the bound, with the decimals that were written
 * @param unit   the text behind the number, empty if there is none
 * @param sign   {@code <} or {@code >} for a bound, else empty
 */
record CellContent(Kind kind, Optional<BigDecimal> number, String unit, String sign) {
    /** Kinds of content; missing, censored and overload are three different things. */
    enum Kind {
        /** A number. */
        NUMBER,
        /** Nothing, or a word for nothing. */
        MISSING,
        /** A bound, as in {@code >21}. */
        CENSORED,
        /** The instrument showed that it was beyond its range. */
        OVERLOAD,
        /** A date. */
        DATE,
        /** Digits with the other decimal sign, or with both. */
        OTHER_DECIMAL_SIGN,
        /** Too large or too long. */
        TOO_LARGE,
        /** Anything else. */
        TEXT
    }

    static final int MOST_DIGITS = 40;

    private static final Set<String> MISSING_WORDS = Set.of("", "-", "--", "---", "n/a", "na", "n.a.", "none",
        "nil", "*", "nm", "not measured", "not recorded", "nan", "null", "missing", "?", ".", "blank", "n/m");
    private static final Set<String> OVERLOAD_WORDS = Set.of("ol", "o.l", "o.l.", "o/l", "0l", "overload",
        "over", "over range", "overrange", "over-range", "sat", "sat.", "saturated", "ovfl", "overflow",
        "inf", "+inf", "-inf", "infinity", "under range", "underrange", "under-range", "-ol");
    private static final Pattern NUMBER = Pattern.compile(
        "([+-]?)(\\d{1,60})?(?:([.,])(\\d{1,60}|$))?(?:[eE]([+-]?\\d{1,4}))?\\s*([^\\d\\s.,+-].{0,40})?");
    private static final Pattern BOUND = Pattern.compile("([<>\u2264\u2265])=?\\s*(.*)");
    private static final Pattern TWO_SIGNS = Pattern.compile("[+-]?\\d{1,3}([.,])\\d.*([.,])\\d.*");
    private static final Pattern DATE =
        Pattern.compile("\\d{1,4}[-/. ](\\d{1,2}|[A-Za-z]{3,9})([-/. ]\\d{1,4})?"
        + "|[A-Za-z]{3,9}[-/. ]\\d{1,4}");
    private static final Pattern MONTH = Pattern.compile(
        "(?i).*(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec).*|\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{1,4}");

    CellContent {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(number, "number");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(sign, "sign");
    }

    /** Reads a cell with the decimal sign of its file. */
    static CellContent of(GridCell cell, DecimalSign decimal) {
        if (cell.kind() == GridCell.Kind.DATE) {
            return only(Kind.DATE);
        }
        final DecimalSign sign = cell.kind() == GridCell.Kind.NUMBER ? DecimalSign.POINT : decimal;
        return of(Characters.plain(cell.text()), sign);
    }

    /** Reads a text that has plain spaces and signs. */
    static CellContent of(String text, DecimalSign decimal) {
        final String lower = text.toLowerCase(Locale.ROOT);
        if (MISSING_WORDS.contains(lower)) {
            return only(Kind.MISSING);
        }
        if (OVERLOAD_WORDS.contains(lower)) {
            return only(Kind.OVERLOAD);
        }
        final Matcher bound = BOUND.matcher(text);
        if (bound.matches()) {
            final CellContent value = of(bound.group(2), decimal);
            final String sign = "<\u2264".contains(bound.group(1)) ? "<" : ">";
            return value.kind == Kind.NUMBER
                ? new CellContent(Kind.CENSORED, value.number, value.unit, sign) : only(Kind.TEXT);
        }
        return number(text, decimal);
    }

    private static CellContent number(String text, DecimalSign decimal) {
        final Matcher m = NUMBER.matcher(text);
        if (!m.matches() || isEmpty(m.group(2)) && isEmpty(m.group(4))) {
            if (DATE.matcher(text).matches() && MONTH.matcher(text).matches()) {
                return only(Kind.DATE);
            }
            return only(TWO_SIGNS.matcher(text).matches() ? Kind.OTHER_DECIMAL_SIGN : Kind.TEXT);
        }
        if (m.group(3) != null && m.group(3).charAt(0) != decimal.sign()) {
            return only(Kind.OTHER_DECIMAL_SIGN);
        }
        return value(m);
    }

    private static CellContent value(Matcher m) {
        final String whole = m.group(2) == null ? "" : m.group(2);
        final String decimals = m.group(4) == null ? "" : m.group(4);
        final int exponent = m.group(5) == null ? 0 : Integer.parseInt(m.group(5));
        if (whole.length() + decimals.length() > MOST_DIGITS || Math.abs(exponent) > 300) {
            return only(Kind.TOO_LARGE);
        }
        BigDecimal number = new BigDecimal(m.group(1) + (whole.isEmpty() ? "0" : whole)
            + (decimals.isEmpty() ? "" : "." + decimals)).scaleByPowerOfTen(exponent);
        final String unit = m.group(6) == null ? "" : m.group(6).strip();
        return new CellContent(Kind.NUMBER, Optional.of(number), unit, "");
    }

    /** The step of the last digit written. */
    static double resolution(BigDecimal number) {
        return BigDecimal.ONE.scaleByPowerOfTen(-number.scale()).doubleValue();
    }

    private static boolean isEmpty(String group) {
        return group == null || group.isEmpty();
    }

    private static CellContent only(Kind kind) {
        return new CellContent(kind, Optional.empty(), "", "");
    }
}
