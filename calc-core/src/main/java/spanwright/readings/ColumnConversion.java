package spanwright.readings;

import java.util.Optional;
import javax.measure.Unit;
import spanwright.quantity.Span;
import spanwright.quantity.UnitConversion;
import spanwright.quantity.UnitSymbols;

/** From the unit of a column or a cell to the unit of the range. */
final class ColumnConversion {
    private static final Span PERCENT = Span.of(0, 100, "%");

    private ColumnConversion() { }

    /**
     * The conversion of a unit text to a range.
     *
     * @param unit  text of the unit
     * @param ohms  resistor of a voltage, empty if there is none
     * @param range range whose unit is wanted
     * @param scale engineering scale that stands for the range, empty if there is none
     * @throws IllegalArgumentException if the unit is not known or of another kind; the message says so
     */
    static UnitConversion of(String unit, String ohms, Span range, Optional<Span> scale) {
        if (isPercentOfSpan(unit) && !range.symbol().equals("%")) {
            return UnitConversion.scaling(PERCENT, range);
        }
        final Unit<?> from = UnitSymbols.parse(unit);
        if (!ohms.isEmpty()) {
            return UnitConversion.voltageAcross(from, Double.parseDouble(ohms), range.unit());
        }
        return UnitConversion.between(from, range.unit())
            .or(() -> scale.flatMap(s -> UnitConversion.between(from, s.unit())
                .map(c -> c.andThen(UnitConversion.scaling(s, range)))))
            .orElseThrow(() -> new OtherKind("unit \"" + unit + "\" is of another kind than the range "
                + range + hint(from, unit)));
    }

    private static String hint(Unit<?> from, String unit) {
        return UnitConversion.between(from, UnitSymbols.parse("V")).isPresent()
            ? ": for a voltage read across a resistor write it like \"" + unit + " across 250 ohm\"" : "";
    }

    /** A unit that is known, but measures something else than the range. */
    static final class OtherKind extends IllegalArgumentException {
        private static final long serialVersionUID = 1L;

        OtherKind(String message) {
            super(message);
        }
    }

    private static boolean isPercentOfSpan(String unit) {
        return unit.replaceAll("\\s+", " ").matches("%( ?(of )?(span|input|output|range))?|percent|per cent");
    }
}
