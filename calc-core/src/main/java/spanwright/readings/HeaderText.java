package spanwright.readings;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Unit;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.quantity.Tolerance.Basis;
import spanwright.quantity.UnitConversion;
import spanwright.quantity.UnitSymbols;

/** Reads the values of header lines: ranges, tolerances, numbers with a unit. One decimal sign for all. */
final class HeaderText {
    private static final String NUMBER = "[+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][+-]?\\d{1,3})?";
    private static final Pattern RANGE = Pattern.compile("(" + NUMBER
        + ")\\s*(\\D*?)\\s*(?:to|\\.\\.\\.?|\u2026"
        + "|-|;|/|\\s)\\s*(" + NUMBER + ")\\s*(\\D.*)?");
    private static final Pattern TOLERANCE = Pattern.compile("(?:\u00b1|\\+/-|\\+-)?\\s*(" + NUMBER
        + ")\\s*(?:(?:to|/)\\s*(" + NUMBER + ")\\s*)?(.*)");

    private final DecimalSign decimal;

    HeaderText(DecimalSign decimal) {
        this.decimal = decimal;
    }

    /**
     * A range such as "4 to 20 mA".
     *
     * @throws IllegalArgumentException if it is none; the message says what is allowed
     */
    Span span(String text) {
        final Matcher m = RANGE.matcher(text);
        if (!m.matches()) {
            throw new IllegalArgumentException("\"" + text + "\" is no range: two numbers and a unit are"
                + " needed, such as \"4 to 20 mA\"");
        }
        final String unit = m.group(4) == null ? "" : m.group(4).strip();
        final String unitBefore = m.group(2) == null ? "" : m.group(2).strip();
        if (unit.isEmpty() || !unitBefore.isEmpty() && !unitBefore.equals(unit)) {
            throw new IllegalArgumentException("range \"" + text + "\" has no unit: write it behind the upper"
                + " value, such as \"4 to 20 mA\"");
        }
        return new Span(number(m.group(1)), number(m.group(3)), UnitSymbols.parse(unit));
    }

    /**
     * A number in a unit, converted to the unit asked for.
     *
     * @throws IllegalArgumentException if it is none or its unit is missing or of another kind
     */
    double quantity(String text, Unit<?> unit) {
        final CellContent content = CellContent.of(text, decimal);
        final BigDecimal number = content.number().filter(n -> content.kind() == CellContent.Kind.NUMBER)
            .orElseThrow(() -> new IllegalArgumentException("\"" + text + "\" is no number with a unit, such"
                + " as \"24" + decimal.sign() + "0 " + UnitSymbols.symbol(unit) + "\""));
        if (content.unit().isEmpty()) {
            throw new IllegalArgumentException("\"" + text
                + "\" has no unit: write it behind the number, such"
                + " as \"" + text + " " + UnitSymbols.symbol(unit) + "\"");
        }
        return UnitConversion.between(UnitSymbols.parse(content.unit()), unit)
            .orElseThrow(() -> new IllegalArgumentException("unit \"" + content.unit() + "\" cannot become "
                + UnitSymbols.symbol(unit))).apply(number).doubleValue();
    }

    /** A number of a header line, or nothing if the text is empty or a word for missing. */
    OptionalDouble optionalQuantity(String text, Unit<?> unit) {
        return isMissing(text) ? OptionalDouble.empty() : OptionalDouble.of(quantity(text, unit));
    }

    boolean isMissing(String text) {
        return CellContent.of(text, decimal).kind() == CellContent.Kind.MISSING;
    }

    /**
     * A tolerance such as "0.1 % of span"; nothing if it states no basis.
     *
     * @throws IllegalArgumentException if it is no tolerance at all
     */
    Optional<Tolerance> tolerance(String text, String basisText, Span input, Span output) {
        final Matcher m = TOLERANCE.matcher(text);
        if (!m.matches()) {
            throw new IllegalArgumentException("\"" + text + "\" is no tolerance: write it like"
                + " \"0.1 % of span\" or \"0.016 mA\"");
        }
        final String words = m.group(3).strip();
        final String all = words.startsWith("%") && !basisText.isEmpty() && words.length() == 1
            ? "% " + basisText.replaceFirst("^%\\s*", "") : words.isEmpty() ? basisText : words;
        final Optional<Basis> basis = basis(all, input, output);
        final double upper = number(m.group(2) == null ? m.group(1) : m.group(2));
        final double lower = m.group(2) == null ? -upper : number(m.group(1));
        return basis.map(b -> inBasis(lower, upper, b, all, input, output));
    }

    private static Tolerance inBasis(double lower, double upper, Basis basis, String unit, Span input,
                                     Span output) {
        if (basis != Basis.OUTPUT_UNIT && basis != Basis.INPUT_UNIT) {
            return new Tolerance(lower, upper, basis);
        }
        final Unit<?> to = basis == Basis.OUTPUT_UNIT ? output.unit() : input.unit();
        final double step = UnitConversion.between(UnitSymbols.parse(unit), to).orElseThrow().step();
        return new Tolerance(lower * step, upper * step, basis);
    }

    private static Optional<Basis> basis(String words, Span input, Span output) {
        final String w = words.toLowerCase(Locale.ROOT).replaceAll("\\s+", " ").replaceFirst("^% ?(of )?",
            "%");
        switch (w) {
            case "%span", "%of span", "%fs span", "span":
                return Optional.of(Basis.PERCENT_OF_SPAN);
            case "%reading", "%rdg", "%of reading", "reading":
                return Optional.of(Basis.PERCENT_OF_READING);
            case "%upper range value", "%urv", "%of urv", "upper range value":
                return Optional.of(Basis.PERCENT_OF_UPPER_RANGE_VALUE);
            default:
                break;
        }
        final Optional<Unit<?>> unit = w.startsWith("%") ? Optional.empty() : UnitSymbols.find(words);
        if (unit.flatMap(u -> UnitConversion.between(u, output.unit())).isPresent()) {
            return Optional.of(Basis.OUTPUT_UNIT);
        }
        return unit.flatMap(u -> UnitConversion.between(u, input.unit())).map(c -> Basis.INPUT_UNIT);
    }

    private double number(String text) {
        final CellContent content = CellContent.of(text, decimal);
        return content.number().filter(n -> content.kind() == CellContent.Kind.NUMBER)
            .orElseThrow(() -> new IllegalArgumentException("\"" + text + "\" is no number in a file whose"
                + " decimal sign is \"" + decimal.sign() + "\"")).doubleValue();
    }
}
