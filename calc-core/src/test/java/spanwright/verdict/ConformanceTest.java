package spanwright.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.uncertainty.Estimate;

class ConformanceTest {

    @Test
    void upperLimitAlone() {
        // JCGM 106:2012, single upper tolerance limit, from memory: y -5.47, u 0.05, limit -5.40 V: 0.92
        assertAsPrinted("0.92", Conformance.probability(Estimate.of(-5.47, 0.05),
            ToleranceInterval.atMost(-5.40)));
    }

    @Test
    void lowerLimitAlone() {
        // JCGM 106:2012, single lower tolerance limit, from memory: y 509.7, u 8.6, limit 490 kPa: 0.99
        assertAsPrinted("0.99", Conformance.probability(Estimate.of(509.7, 8.6),
            ToleranceInterval.atLeast(490)));
    }

    @Test
    void bothLimits() {
        // Computed independently: y 13.6, u 1.8, 12.5 to 16.3: 0.6626
        assertAsPrinted("0.6626", Conformance.probability(Estimate.of(13.6, 1.8),
            ToleranceInterval.between(12.5, 16.3)));
    }

    // ILAC-G8:09/2019 and ISO 14253-1:2017, from secondary copies; U = 2 u, one limit: bounds, not equalities
    @ParameterizedTest(name = "w = {0} U: risk on the acceptance limit below {1}, and not below {2}")
    @CsvSource({"1, 0.025, 0.02", "0.83, 0.05, 0.04", "1.5, 0.0016, 0.001", "3, 1e-6, 0", "0, 0.5, 0.49"})
    void guardBandsHoldTheirBounds(double ratio, double bound, double notBelow) {
        final MeasurementUncertainty u = MeasurementUncertainty.of(0.05, 2);
        final ToleranceInterval limit = ToleranceInterval.atMost(1);
        final double edge = new GuardBand(ratio).acceptance(limit, u).upper().orElseThrow();
        final double risk = Conformance.risk(Estimate.of(edge, 0.05), limit);
        assertTrue(risk <= bound, risk + " above " + bound);
        assertTrue(risk >= notBelow, risk + " suspiciously far below its bound");
    }

    /*
     * /usr/bin/python3 -c " from scipy.stats import norm, t print(norm.sf(8)+norm.sf(12), norm.sf(30),
     * norm.sf(10)-norm.sf(12)) print(t.cdf(2,5)-t.cdf(-6,5), t.sf(2,5)+t.cdf(-6,5))"
     */
    @Test
    void keepsItsDigitsInTheTails() {
        close(6.22096057427174e-16,
            Conformance.risk(Estimate.of(0.2, 0.1), ToleranceInterval.between(-1, 1)));
        close(4.906713927147908e-198, Conformance.risk(Estimate.of(0, 1), ToleranceInterval.atMost(30)));
        close(7.619853022383988e-24, Conformance.probability(Estimate.of(-10, 1),
            ToleranceInterval.between(0, 2)));
    }

    @Test
    void finiteDegreesOfFreedomMeanAStudentDistribution() {
        final Estimate five = Estimate.of(2, 1, 5);
        final ToleranceInterval limit = ToleranceInterval.between(-4, 4);
        close(0.9481071914402739, Conformance.probability(five, limit));
        close(0.051892808559726146, Conformance.risk(five, limit));
    }

    @Test
    void refusesAResultWithoutUncertainty() {
        final var e = assertThrows(IllegalArgumentException.class,
            () -> Conformance.probability(Estimate.exactly(1), ToleranceInterval.plusMinus(2)));
        assertEquals("standard uncertainty is 0.0: a conformance probability needs one above 0",
            e.getMessage());
    }

    private static void close(double expected, double actual) {
        assertEquals(expected, actual, 1e-11 * expected);
    }
}
