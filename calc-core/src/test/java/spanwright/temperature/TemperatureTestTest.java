package spanwright.temperature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.quantity.Celsius.degC;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.readings.CalibrationRun;

class TemperatureTestTest {
    private static final double[] ENDS = {0, 50, 100};

    /** Zero moves 0.004 and span 0.002 % of span per kelvin about 20 degC; zero is 0.01 too high there. */
    private static CalibrationRun at(double t) {
        final double zero = 0.01 + 0.004 * (t - 20);
        final double span = 0.002 * (t - 20);
        return ChamberRuns.upscale(t, ENDS, new double[] {zero, zero + span / 2, zero + span});
    }

    private static List<CalibrationRun> sequence() {
        final List<CalibrationRun> runs = new ArrayList<>();
        for (double t : new double[] {20, 40, 55, 20, 0, -10, -25, 20}) {
            runs.add(at(t));
        }
        return runs;
    }

    @Test
    void tellsZeroFromSpanInTheRecords() {
        final TemperatureTest test = TemperatureTest.of(sequence());
        assertEquals(degC(20), test.zero().reference());
        for (CoefficientMethod m : CoefficientMethod.values()) {
            assertEquals(0.004, test.zero().coefficient(m).perKelvin().value(), 1e-12, m::toString);
            assertEquals(0.002, test.span().coefficient(m).perKelvin().value(), 1e-12, m::toString);
        }
        assertEquals(0.01, test.zero().errorAtReference(), 1e-12);
        assertEquals(0, test.zero().nonReturn().orElseThrow().value(), 1e-12);
        assertTrue(test.warnings().isEmpty());
        assertEquals(10, test.coefficients().size());
        assertEquals("chamber.csv:2:3", test.zero().points().get(0).cells().get(0).toString());
        assertEquals(2, test.zero().points().get(0).cells().size());
    }

    @Test
    void pointsAwayFromTheEndsAreExtendedByTheirLine() {
        final double[] inner = {10, 50, 90};
        final List<CalibrationRun> runs = new ArrayList<>();
        for (double t : new double[] {20, 45}) {
            final double zero = 0.004 * (t - 20);
            final double span = 0.002 * (t - 20);
            runs.add(ChamberRuns.upscale(t, inner,
                new double[] {zero + 0.1 * span, zero + 0.5 * span, zero + 0.9 * span}));
        }
        final TemperatureTest test = TemperatureTest.of(runs);
        assertEquals(0.004, test.zero().coefficient(CoefficientMethod.BOW_TIE).perKelvin().value(), 1e-12);
        assertEquals(0.002, test.span().coefficient(CoefficientMethod.BOW_TIE).perKelvin().value(), 1e-12);
    }

    @Test
    void theDisplayedResolutionLimitsWhatACoefficientTells() {
        final List<CalibrationRun> runs = List.of(at(20), at(30));
        final var a = TemperatureTest.of(runs).zero().coefficient(CoefficientMethod.END_POINT)
            .perKelvin();
        // 0.001 mA displayed on applied and on indicated, each 1/sqrt(12) of 0.00625 % of span (JCGM
        // 100:2008, F.2.2.1), two levels, over 10 K.
        assertEquals(0.00625 / Math.sqrt(12) * 2 / 10, a.u(), 1e-12);
    }

    @Test
    void theSpreadOfUpAndDownReadingsCounts() {
        final double[] up = {0.00, 0.00, 0.00};
        final double[] down = {0.02, 0.02, 0.02};
        final var points = TemperatureTest.of(List.of(ChamberRuns.run(20, ENDS, up, down, 1e-9),
            ChamberRuns.run(40, ENDS, up, down, 1e-9))).zero().points();
        assertEquals(0.01, points.get(0).error().value(), 1e-12);
        // Two readings 0.02 apart: s = 0.02 / sqrt(2), s of the mean 0.01 (JCGM 100:2008, 4.2.3).
        assertEquals(0.01, points.get(0).error().u(), 1e-9);
    }

    @Test
    void aTestThatDoesNotComeBackSaysSo() {
        final TemperatureTest test = TemperatureTest.of(List.of(at(20), at(40), at(0)));
        assertEquals(List.of("the test does not come back to 20 \u00b0C: non-return is not determined"),
            test.warnings());
        assertTrue(test.toString().contains("non-return of zero: not determined"), test::toString);
    }

    @Test
    void refusesWhatIsNoTemperatureTest() {
        assertMessage("no ambient temperature recorded, so it has no place in a temperature test",
            List.of(at(20), ChamberRuns.withoutAmbient(at(40))));
        assertMessage("number of records of the temperature test is 1: at least 2 needed", List.of(at(20)));
        assertMessage("number of temperatures of LT-101A is 1: at least 2 needed", List.of(at(20), at(21)));
        assertMessage("zero and span need more than 50.0 %", List.of(at(20),
            ChamberRuns.upscale(40, new double[] {40, 60}, new double[] {0, 0})));
    }

    private static void assertMessage(String part, List<CalibrationRun> runs) {
        final var e = assertThrows(IllegalArgumentException.class, () -> TemperatureTest.of(runs));
        assertTrue(e.getMessage().contains(part), e::getMessage);
    }

    @Test
    void recordsOfTwoChannelsAreRefused() {
        final CalibrationRun a = at(20);
        final CalibrationRun b = new CalibrationRun("LT-102A", "", a.phase(), a.transfer(), a.input(),
            a.output(), a.tolerance(), at(40).conditions(), a.readings());
        assertMessage("a temperature test is of one channel, not of [LT-101A, LT-102A]", List.of(a, b));
    }
}
