package spanwright.quantity;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.BaseUnit;
import tech.units.indriya.unit.ProductUnit;
import tech.units.indriya.unit.Units;

/**
 * The unit symbols of instrument records, by exact spelling, with prefixes, powers and quotients: mA, kPa,
 * l/s, m3/h, ohm/km. Case matters: mA is not MA. A symbol that cannot be read is refused, never guessed.
 *
 * <p>The table is kept short on purpose. A bare "C" (coulomb or Celsius) and a bare "F" are not in it, since
 * records use them for both.
 */
public final class UnitSymbols {
    private static final Map<String, Unit<?>> BY_SYMBOL = new LinkedHashMap<>();
    private static final Map<String, Unit<?>> PREFIXED = new LinkedHashMap<>();
    private static final Map<String, MetricPrefix> PREFIXES = Map.ofEntries(
        Map.entry("n", MetricPrefix.NANO), Map.entry("u", MetricPrefix.MICRO),
        Map.entry("\u00b5", MetricPrefix.MICRO), Map.entry("\u03bc", MetricPrefix.MICRO),
        Map.entry("m", MetricPrefix.MILLI), Map.entry("c", MetricPrefix.CENTI),
        Map.entry("d", MetricPrefix.DECI), Map.entry("h", MetricPrefix.HECTO),
        Map.entry("k", MetricPrefix.KILO), Map.entry("M", MetricPrefix.MEGA),
        Map.entry("G", MetricPrefix.GIGA));

    static {
        usual();
        pressures();
        ratios();
        prefixed();
    }

    private UnitSymbols() { }

    /**
     * The unit of a symbol.
     *
     * @throws IllegalArgumentException if the symbol is not known; the message lists the known ones
     */
    public static Unit<?> parse(String symbol) {
        return find(symbol).orElseThrow(() -> new IllegalArgumentException("unit \"" + symbol
            + "\" is not known; known are " + String.join(", ", BY_SYMBOL.keySet()) + ", "
            + String.join(", ", PREFIXED.keySet()) + ", with the prefixes n u m c d h k M G, and quotients"
            + " like l/s or m3/h"));
    }

    /** The unit of a symbol, or nothing if it cannot be read as one. */
    public static Optional<Unit<?>> find(String symbol) {
        final String text = Objects.requireNonNull(symbol, "symbol").strip();
        if (text.isEmpty() || text.length() > 40) {
            return Optional.empty();
        }
        final Optional<Unit<?>> single = factor(text);
        return single.isPresent() ? single : product(text);
    }

    /** The symbol of a unit: the first of the table that stands for it, else what the unit says of itself. */
    public static String symbol(Unit<?> unit) {
        Objects.requireNonNull(unit, "unit");
        return BY_SYMBOL.entrySet().stream().filter(e -> e.getValue().equals(unit))
            .map(Map.Entry::getKey).findFirst().orElseGet(unit::toString);
    }

    /** Factors joined by a dot or a slash; what follows a slash divides. */
    private static Optional<Unit<?>> product(String text) {
        Unit<?> unit = AbstractUnit.ONE;
        boolean divides = false;
        int from = 0;
        for (int i = 0; i <= text.length(); i++) {
            if (i < text.length() && "/*\u00b7\u22c5".indexOf(text.charAt(i)) < 0) {
                continue;
            }
            final Optional<Unit<?>> next = factor(text.substring(from, i).strip());
            if (next.isEmpty()) {
                return Optional.empty();
            }
            unit = divides ? unit.divide(next.get()) : unit.multiply(next.get());
            divides = i < text.length() && (divides || text.charAt(i) == '/');
            from = i + 1;
        }
        return Optional.of(unit);
    }

    private static Optional<Unit<?>> factor(String text) {
        final Unit<?> exact = BY_SYMBOL.get(text);
        if (exact != null) {
            return Optional.of(exact);
        }
        final int power = power(text);
        if (power > 1) {
            final String symbol = text.substring(0, text.length() - 1).replaceAll("\\^$", "");
            return factor(symbol).map(u -> u.pow(power));
        }
        final Unit<?> plain = PREFIXED.get(text);
        if (plain != null) {
            return Optional.of(plain);
        }
        if (text.length() < 2) {
            return Optional.empty();
        }
        final MetricPrefix prefix = PREFIXES.get(text.substring(0, 1));
        final Unit<?> base = PREFIXED.get(text.substring(1));
        return prefix == null || base == null ? Optional.empty() : Optional.of(base.prefix(prefix));
    }

    /** The power that the last character states, 1 if it states none. */
    private static int power(String text) {
        if (text.length() < 2) {
            return 1;
        }
        return switch (text.charAt(text.length() - 1)) {
            case '2', '\u00b2' -> 2;
            case '3', '\u00b3' -> 3;
            default -> 1;
        };
    }

    private static void usual() {
        put(MetricPrefix.MILLI(Units.AMPERE), "mA");
        put(Units.AMPERE, "A");
        put(Units.VOLT, "V");
        put(MetricPrefix.MILLI(Units.VOLT), "mV");
        put(Units.METRE, "m");
        put(Units.CELSIUS, "\u00b0C", "degC", "deg C", "\u2103", "\u00baC", "deg. C", "Celsius", "degrees C");
        put(Units.PERCENT, "%", "percent", "per cent", "pct");
        put(AbstractUnit.ONE, "1");
        put(Units.KELVIN, "K");
        put(Units.KELVIN.multiply(5).divide(9).shift(459.67), "\u00b0F", "degF", "deg F");
        put(Units.OHM, "ohm", "\u03a9", "\u2126", "Ohm", "ohms", "Ohms");
        put(MetricPrefix.KILO(Units.OHM), "kohm", "k\u03a9", "kOhm");
        put(Units.SECOND, "s", "sec");
        put(Units.MINUTE, "min");
        put(Units.HOUR, "h", "hr");
        put(Units.DAY, "d", "day");
        put(Units.LITRE, "l", "L");
        put(MetricPrefix.KILO(Units.GRAM).multiply(1000), "t");
        put(Units.KILOGRAM, "kg");
    }

    private static void pressures() {
        put(Units.PASCAL.multiply(100_000), "bar");
        put(Units.PASCAL.multiply(100), "mbar");
        // Conventional water column, 1000 kg/m3 at 9.80665 m/s2; pound-force per square inch by definition.
        put(Units.PASCAL.multiply(9.80665), "mmH2O");
        put(Units.PASCAL.multiply(9806.65), "mH2O");
        put(Units.PASCAL.multiply(6894.757293168), "psi");
    }

    private static void ratios() {
        put(AbstractUnit.ONE.divide(1_000_000), "ppm");
        // pH is no plain number: it converts to nothing else.
        put(new BaseUnit<>("pH"), "pH");
        put(new ProductUnit<>(Units.CUBIC_METRE.divide(Units.HOUR)), "m\u00b3/h", "m3/h");
    }

    private static void prefixed() {
        PREFIXED.put("A", Units.AMPERE);
        PREFIXED.put("V", Units.VOLT);
        PREFIXED.put("W", Units.WATT);
        PREFIXED.put("m", Units.METRE);
        PREFIXED.put("g", Units.GRAM);
        PREFIXED.put("Pa", Units.PASCAL);
        PREFIXED.put("bar", BY_SYMBOL.get("bar"));
        PREFIXED.put("Hz", Units.HERTZ);
        PREFIXED.put("N", Units.NEWTON);
        PREFIXED.put("S", Units.SIEMENS);
        PREFIXED.put("l", Units.LITRE);
        PREFIXED.put("L", Units.LITRE);
        PREFIXED.put("s", Units.SECOND);
        PREFIXED.put("K", Units.KELVIN);
        PREFIXED.put("ohm", Units.OHM);
        PREFIXED.put("\u03a9", Units.OHM);
        PREFIXED.put("\u2126", Units.OHM);
    }

    private static void put(Unit<?> unit, String... spellings) {
        for (String spelling : spellings) {
            BY_SYMBOL.put(spelling, unit);
        }
    }
}
