package spanwright.temperature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.quantity.Celsius.degC;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import spanwright.quantity.Span;
import spanwright.reference.PublishedData;
import spanwright.uncertainty.Estimate;

class TemperatureCoefficientTest {
    private static final double[] SEQUENCE = {20, 40, 55, 20, 0, -10, -25, 20};
    private static final double[] DRIFT = {0.010, 0.093, 0.148, 0.016, -0.081, -0.118, -0.187, 0.004};
    private static final double[] BEND = {0.000, 0.061, 0.170, 0.004, 0.055, 0.130, 0.281, 0.002};

    static TemperatureSeries series(double[] temperatures, double[] errors) {
        final List<ChamberPoint> points = new ArrayList<>();
        for (int i = 0; i < temperatures.length; i++) {
            points.add(ChamberPoint.of(temperatures[i], errors[i]));
        }
        return new TemperatureSeries("LT-101A", TemperatureEffect.ZERO, degC(20), points);
    }

    @ParameterizedTest(name = "{0} [R, test-data/published/temperature-coefficients.R]")
    @ValueSource(strings = {"drift", "bend"})
    void everyMethodAgreesWithR(String set) {
        final TemperatureSeries s = series(SEQUENCE, set.equals("drift") ? DRIFT : BEND);
        final PublishedData r = PublishedData.load("temperature-coefficients");
        final int row = r.texts("set").indexOf(set);
        assertNear(r.numbers("box")[row], s.coefficient(CoefficientMethod.BOX).perKelvin().value());
        assertNear(r.numbers("end_point")[row],
            s.coefficient(CoefficientMethod.END_POINT).perKelvin().value());
        assertNear(r.numbers("slope")[row], s.coefficient(CoefficientMethod.SLOPE).perKelvin().value());
        assertNear(r.numbers("bow_tie")[row], s.coefficient(CoefficientMethod.BOW_TIE).perKelvin().value());
        final Estimate line = s.coefficient(CoefficientMethod.LEAST_SQUARES).perKelvin();
        assertNear(r.numbers("least_squares")[row], line.value());
        assertNear(r.numbers("u_least_squares")[row], line.u());
        assertEquals(4, line.dof().count());
        assertNear(r.numbers("non_return")[row], s.nonReturn().orElseThrow().value());
    }

    private static void assertNear(double expected, double actual) {
        assertEquals(expected, actual, 1e-12 * Math.abs(expected));
    }

    @Test
    @DisplayName("7 ppm/degC by box over 125 degC promises 875 ppm anywhere, not 70 ppm for 10 degC"
        + " [voltage reference application notes]")
    void aBoxFigureIsNotMultipliedByAPartialExcursion() {
        final TemperatureCoefficient box = new TemperatureCoefficient(TemperatureEffect.OUTPUT,
            CoefficientMethod.BOX, Estimate.exactly(7e-4), degC(25), degC(-40), degC(85), 0, "reference");
        final TemperatureContribution c = box.over(Excursion.of(degC(25), degC(20), degC(30)));
        assertAsPrinted("875", c.limit() * 1e4);
        assertEquals(1, c.warnings().size());
        assertTrue(c.warnings().get(0).contains("the box figure holds for the full range"), c::toString);
        assertTrue(box.over(Excursion.of(degC(25), degC(-40), degC(85))).warnings().isEmpty());
    }

    @Test
    void anEndPointFigureOnAPartialExcursionWarns() {
        final TemperatureCoefficient c = series(SEQUENCE, BEND).coefficient(CoefficientMethod.END_POINT);
        assertEquals(1, c.over(Excursion.of(degC(20), degC(10), degC(30))).warnings().size());
    }

    @Test
    void slopeAndBowTieMayBeMultipliedAndKeepBothSides() {
        final TemperatureSeries s = series(SEQUENCE, DRIFT);
        for (CoefficientMethod m : List.of(CoefficientMethod.SLOPE, CoefficientMethod.BOW_TIE)) {
            final TemperatureCoefficient c = s.coefficient(m);
            final TemperatureContribution part = c.over(Excursion.of(degC(20), degC(-10), degC(40)));
            assertTrue(part.warnings().isEmpty(), part::toString);
            assertEquals(-30 * c.perKelvin().value(), part.atCold(), 1e-15);
            assertEquals(20 * c.perKelvin().value(), part.atHot(), 1e-15);
        }
    }

    @Test
    void outsideTheTestedRangeIsAnExtrapolation() {
        final TemperatureCoefficient c = series(SEQUENCE, DRIFT).coefficient(CoefficientMethod.BOW_TIE);
        final List<String> warnings = c.over(Excursion.of(degC(20), degC(-40), degC(55))).warnings();
        assertEquals(1, warnings.size());
        assertTrue(warnings.get(0).contains("extrapolation"), warnings::toString);
    }

    @Test
    void calibratingOnAHotDayMovesTheError() {
        final TemperatureCoefficient c = series(SEQUENCE, DRIFT).coefficient(CoefficientMethod.BOW_TIE);
        final double cool = c.over(Excursion.of(degC(20), degC(-10), degC(45))).limit();
        final double hot = c.over(Excursion.of(degC(32), degC(-10), degC(45))).limit();
        assertEquals(42.0 / 30, hot / cool, 1e-12);
    }

    private static ChamberPoint point(double degC, double error, double u) {
        return new ChamberPoint(degC(degC), Estimate.of(error, u), List.of());
    }

    @Test
    @DisplayName("the uncertainty of the reading at calibration is common to all differences"
        + " [law of propagation, JCGM 100:2008, 5.1.2]")
    void theCommonReadingDoesNotAverageOut() {
        final TemperatureSeries line = new TemperatureSeries("LT-101A", TemperatureEffect.SPAN, degC(20),
            List.of(point(20, 0, 0.01), point(30, 0.1, 0), point(40, 0.2, 0)));
        // On the line without residual: u = u0 (10 + 20) / (100 + 400).
        assertEquals(0.01 * 30 / 500, line.coefficient(CoefficientMethod.LEAST_SQUARES).perKelvin().u(),
            1e-15);
        final TemperatureSeries two = new TemperatureSeries("LT-101A", TemperatureEffect.SPAN, degC(20),
            List.of(point(20, 0, 0.03), point(30, 0.1, 0.04)));
        for (CoefficientMethod m : CoefficientMethod.values()) {
            assertEquals(0.05 / 10, two.coefficient(m).perKelvin().u(), 1e-15, m::toString);
        }
    }

    @Test
    @DisplayName("visits to one temperature average [standard uncertainty of a mean, JCGM 100:2008, 4.2.3]")
    void visitsToOneTemperatureAverage() {
        final TemperatureSeries s = new TemperatureSeries("LT-101A", TemperatureEffect.SPAN, degC(20),
            List.of(point(20, 0.00, 0.03), point(30, 0.1, 0), point(21, 0.02, 0.04)));
        final Estimate a = s.coefficient(CoefficientMethod.BOW_TIE).perKelvin();
        assertEquals((0.1 - 0.01) / (30 - 20.5), a.value(), 1e-15);
        assertEquals(0.05 / 2 / (30 - 20.5), a.u(), 1e-15);
        final Estimate nonReturn = s.nonReturn().orElseThrow();
        assertEquals(0.02, nonReturn.value(), 1e-15);
        assertEquals(0.05, nonReturn.u(), 1e-15);
        assertEquals(0.01, s.errorAtReference(), 1e-15);
    }

    @Test
    void whatTheLineLeavesOverIsKept() {
        final TemperatureSeries s = series(SEQUENCE, BEND);
        final TemperatureCoefficient c = s.coefficient(CoefficientMethod.LEAST_SQUARES);
        // Farthest from the line: 55 degC, 0.170 against 0.002 at calibration and the slope's 35 K.
        assertEquals(0.170 - 0.002 - c.perKelvin().value() * 35, c.residual(), 1e-12);
        assertEquals(0, s.coefficient(CoefficientMethod.SLOPE).residual());
        final TemperatureContribution over = c.over(Excursion.of(degC(20), degC(10), degC(30)));
        assertEquals(10 * Math.abs(c.perKelvin().value()) + c.residual(), over.limit(), 1e-12);
        assertEquals(over.limit() / 2, new TemperatureContribution(TemperatureEffect.SPAN, over.atCold(),
            over.atHot(), over.limit(), List.of(), "").limitAt(0.5), 1e-15);
        assertEquals(over.limit(), over.limitAt(0.5), 0);
        assertEquals(c.perKelvin().value() * 1e4, c.ppmOfSpanPerKelvin(), 1e-12);
        assertEquals(degC(25), c.withReference(degC(25)).reference());
    }

    @Test
    void nonReturnIsNotDeterminedByOneVisit() {
        assertTrue(series(new double[] {20, 40, 0}, new double[] {0, 0.1, -0.1}).nonReturn().isEmpty());
    }

    @Test
    void aTestAwayFromTheCalibrationTemperatureIsRefused() {
        final var e = assertThrows(IllegalArgumentException.class,
            () -> series(new double[] {40, 0}, new double[] {0.1, -0.1}));
        assertEquals("channel LT-101A was not tested within 2.0 K of its calibration temperature 20 \u00b0C,"
            + " but at [40 \u00b0C, 0 \u00b0C]", e.getMessage());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(textBlock = """
        # common practice, no source: statement, % of span at 4 mA and at 20 mA for one kelvin
        ppm-span,     0.01,    0.01
        per10-span,   0.02,    0.02
        per28-span,   0.01,    0.01
        ppm-reading,  0.0025,  0.0125
        """)
    void statementsAreReadAsWritten(String kind, double atZero, double atFull) {
        final TemperatureStatement s = switch (kind) {
            case "ppm-span" -> TemperatureRate.ppmPerDegC(100).maximumOfSpan();
            case "per10-span" -> TemperatureRate.percentPer10DegC(0.2).maximumOfSpan();
            case "per28-span" -> TemperatureRate.percentPer28DegC(0.28).maximumOfSpan();
            default -> TemperatureRate.ppmPerDegC(100).maximumOfReading();
        };
        final var current = Span.milliamps4to20();
        assertEquals(atZero, s.percentOfSpanPerKelvin(current, 0), 1e-15);
        assertEquals(atFull, s.percentOfSpanPerKelvin(current, 1), 1e-15);
        final Excursion excursion = Excursion.of(degC(20), degC(-5), degC(40));
        assertEquals(atFull * 25, s.over(excursion, current).limit(), 1e-13);
    }

    @Test
    void zeroAndSpanGivenApartAddAtTheTop() {
        final var current = Span.milliamps4to20();
        final TemperatureStatement zero = TemperatureRate.ppmPerDegC(50).maximumOfSpan().onZero();
        final TemperatureStatement span = TemperatureRate.ppmPerDegC(100).maximumOfSpan().onSpan();
        assertEquals(0.005, zero.percentOfSpanPerKelvin(current, 0.5), 1e-15);
        assertEquals(0.005, span.percentOfSpanPerKelvin(current, 0.5), 1e-15);
        assertEquals(0, span.percentOfSpanPerKelvin(current, 0), 0);
    }

    @Test
    void aTypicalFigureRefusesToCarryAGuarantee() {
        final TemperatureStatement typical = TemperatureRate.ppmPerDegC(20).typicalOfSpan();
        final var e = assertThrows(IllegalArgumentException.class, typical::admitted);
        assertEquals("20 ppm/\u00b0C is a typical figure and carries no guarantee: use the maximum, measure"
            + " it, or force it with takenAsOneSigma(reason)", e.getMessage());
        assertTrue(typical.takenAsOneSigma("nothing else to be had").admitted().isForced());
        assertThrows(IllegalArgumentException.class, () -> typical.takenAsOneSigma(" "));
    }
}
