package spanwright.quantity;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/**
 * The unit symbols of instrument records, by exact spelling. Case matters: mA is not MA. A symbol that is
 * not in the
 * table is refused, never guessed.
 */
public final class UnitSymbols {
    private static final Map<String, Unit<?>> BY_SYMBOL = table();

    private UnitSymbols() { }

    /**
     * The unit of a symbol.
     *
     * @throws IllegalArgumentException if the symbol is not known; the message lists the known ones
     */
    public static Unit<?> parse(String symbol) {
        final Unit<?> unit = BY_SYMBOL.get(Objects.requireNonNull(symbol, "symbol").strip());
        if (unit == null) {
            throw new IllegalArgumentException("unit \"" + symbol + "\" is not known; known are "
                + String.join(", ", BY_SYMBOL.keySet()));
        }
        return unit;
    }

    /** The symbol of a unit: the first of the table that stands for it, else what the unit says of itself. */
    public static String symbol(Unit<?> unit) {
        return BY_SYMBOL.entrySet().stream().filter(e -> e.getValue().equals(unit))
            .map(Map.Entry::getKey).findFirst()
            .orElseGet(() -> Objects.requireNonNull(unit, "unit").toString());
    }

    private static Map<String, Unit<?>> table() {
        final Map<String, Unit<?>> t = new LinkedHashMap<>();
        t.put("mA", MetricPrefix.MILLI(Units.AMPERE));
        t.put("A", Units.AMPERE);
        t.put("V", Units.VOLT);
        t.put("mV", MetricPrefix.MILLI(Units.VOLT));
        t.put("m", Units.METRE);
        t.put("\u00b0C", Units.CELSIUS);
        t.put("degC", Units.CELSIUS);
        t.put("%", Units.PERCENT);
        t.put("1", AbstractUnit.ONE);
        return t;
    }
}
