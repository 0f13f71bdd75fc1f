package spanwright.quantity;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitSymbolsTest {
    @ParameterizedTest(name = "1 {0} = {2} {1}")
    @CsvSource({
        // SI Brochure, 9th edition: prefixes; litre and tonne by table 8; bar is 100 kPa.
        "A, mA, 1000", "uA, mA, 0.001", "\u00b5A, mA, 0.001", "mV, V, 0.001", "kohm, ohm, 1000",
        "k\u03a9, \u03a9, 1000", "bar, kPa, 100", "mbar, Pa, 100", "hPa, Pa, 100", "l/s, m3/h, 3.6",
        "t/h, kg/h, 1000", "m3, l, 1000", "cm, m, 0.01", "m\u00b3/h, l/min, 16.6666666666667", "%, 1, 0.01",
        "ppm, %, 0.0001", "\u00b0C, degC, 1", "ohm/km, mohm/m, 1",
        // psi: 1 lbf/in2 = 6894.757 Pa (NIST SP 811, appendix B.8); mmH2O: 9.80665 Pa (same table).
        "psi, Pa, 6894.757293168", "mmH2O, Pa, 9.80665"})
    void convertsByDefinition(String from, String to, BigDecimal factor) {
        final UnitConversion c = UnitConversion.between(UnitSymbols.parse(from), UnitSymbols.parse(to))
            .orElseThrow();
        assertEquals(factor.doubleValue(), c.apply(BigDecimal.ONE).doubleValue(),
            1e-13 * factor.doubleValue());
    }

    @ParameterizedTest(name = "{0} {1} = {2} {3}")
    @CsvSource({"0, K, -273.15, degC", "32, degF, 0, degC", "212, degF, 100, degC", "25, degC, 298.15, K"})
    void convertsTemperaturesWithTheirZero(BigDecimal value, String from, double expected, String to) {
        final UnitConversion c = UnitConversion.between(UnitSymbols.parse(from), UnitSymbols.parse(to))
            .orElseThrow();
        assertEquals(expected, c.apply(value).doubleValue(), 1e-11);
    }

    @Test
    void keepsDecimalsExact() {
        assertEquals("4.012", UnitConversion.between(UnitSymbols.parse("A"), UnitSymbols.parse("mA"))
            .orElseThrow()
            .apply(new BigDecimal("0.004012")).stripTrailingZeros().toPlainString());
    }

    @Test
    void readsACurrentFromTheVoltageAcrossAResistor() {
        // Ohm's law: 1 V across 250 ohm is 4 mA; 200 mV across 10 ohm is 20 mA.
        assertEquals(4.0, UnitConversion.voltageAcross(UnitSymbols.parse("V"), 250, UnitSymbols.parse("mA"))
            .apply(BigDecimal.ONE).doubleValue());
        assertEquals(20.0, UnitConversion.voltageAcross(UnitSymbols.parse("mV"), 10, UnitSymbols.parse("mA"))
            .apply(new BigDecimal("200")).doubleValue());
        assertThatThrownBy(() -> UnitConversion.voltageAcross(UnitSymbols.parse("V"), 0,
            UnitSymbols.parse("mA")))
            .hasMessageContaining("resistor in ohm is 0.0");
    }

    @ParameterizedTest
    @CsvSource({"mA, V", "pH, %", "pH, 1", "bar, m", "%, mA", "degC, m"})
    void doesNotConvertBetweenKinds(String a, String b) {
        assertTrue(UnitConversion.between(UnitSymbols.parse(a), UnitSymbols.parse(b)).isEmpty());
    }

    @ParameterizedTest
    @ValueSource(strings = {"C", "F", "mAmp", "ma", "MA4", "", "m//s", "V across", "kkPa", "x", "/s"})
    void refusesWhatIsNotAUnit(String symbol) {
        assertThatThrownBy(() -> UnitSymbols.parse(symbol)).hasMessageStartingWith("unit \"" + symbol
            + "\" is not known; known are mA, A, V");
    }

    @Test
    void scalesOneRangeOntoAnother() {
        final UnitConversion c = UnitConversion.scaling(Span.of(0, 8, "m"), Span.milliamps4to20());
        assertEquals(12, c.apply(new BigDecimal("4")).doubleValue());
        assertEquals(2, c.step());
    }
}
