package spanwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * What a fit keeps of its readings, and that names change nothing else. Readings: a TU Dublin exercise
 * (test-data/published/tu_dublin_temperature_current.csv). Residuals and shares follow from their definition.
 */
class FittedDataTest {
    private static final double[] T = {0, 20, 40, 60, 80, 100};
    private static final double[] I = {5.2, 6.4, 7.3, 8.9, 10.3, 11.5};
    private static final String ON_X = "temperature (degC)";
    private static final String ON_Y = "current (mA)";

    private static double[] each(double value) {
        return new double[] {value, value, value, value, value, value};
    }

    private static void keeps(FittedData data) {
        assertEquals(ON_X, data.xName());
        assertEquals(ON_Y, data.yName());
        assertEquals(6, data.size());
        assertEquals(0, data.lowestX());
        assertEquals(100, data.highestX());
        assertEquals(7.3, data.y(2));
        assertEquals("6 readings of current (mA) against temperature (degC)", data.toString());
    }

    @Test
    void namesChangeNothingElse() {
        final CalibrationLine line = CalibrationLine.fit(T, I);
        keeps(line.named(ON_X, ON_Y).data());
        assertEquals(line.slope(), line.named(ON_X, ON_Y).slope());
        final LineThroughPoint through = LineThroughPoint.fit(T, I, 0, 5.2);
        keeps(through.named(ON_X, ON_Y).data());
        assertEquals(through.slope(), through.named(ON_X, ON_Y).slope());
        assertEquals("5", through.dof().toString());
        final LineWithBothUncertain both = LineWithBothUncertain.deming(T, I, 0.1, 0.01);
        keeps(both.named(ON_X, ON_Y).data());
        assertEquals(both.toString(), both.named(ON_X, ON_Y).toString());
        assertTrue(both.toString().startsWith("level ") && both.toString().contains("chi squared"));
        keeps(PolynomialCurve.fit(T, I, 2).named(ON_X, ON_Y).data());
        keeps(ReferenceLine.terminalBased(T, I).named(ON_X, ON_Y).data());
        keeps(MinimaxAdjustment.of(T, I, each(1)).named(ON_X, ON_Y).data());
    }

    @Test
    void aResidualIsTheReadingLessTheFit() {
        final CalibrationLine line = CalibrationLine.fit(T, I);
        final LineThroughPoint through = LineThroughPoint.fit(T, I, 0, 5.2);
        final LineWithBothUncertain both = LineWithBothUncertain.deming(T, I, 0.1, 0.01);
        final PolynomialCurve curve = PolynomialCurve.fit(T, I, 2);
        for (int i = 0; i < T.length; i++) {
            assertEquals(I[i] - line.at(T[i]).value(), line.residual(i), 1e-12);
            assertEquals(I[i] - through.at(T[i]).value(), through.residual(i), 1e-12);
            assertEquals(I[i] - both.at(T[i]).value(), both.residual(i), 1e-12);
            assertEquals(I[i] - curve.at(T[i]).value(), curve.residual(i), 1e-12);
        }
        // Least squares of the exercise, worked independently: 5.066667 + 0.064 T leaves +0.1333 and -0.3267.
        assertEquals(0.1333, line.residual(0), 5e-5);
        assertEquals(-0.3267, line.residual(2), 5e-5);
    }

    @Test
    void weightsAndUncertaintiesAreThoseThatWereStated() {
        final FittedData plain = CalibrationLine.fit(T, I).data();
        assertFalse(plain.isWeighted());
        assertFalse(plain.isUncertain());
        assertEquals(1, plain.weight(3));
        assertEquals(0, plain.xUncertainty(3));
        assertEquals(0, plain.yUncertainty(3));
        final FittedData weighted = CalibrationLine.fitWeighted(T, I, each(4)).data();
        assertTrue(weighted.isWeighted());
        assertEquals(4, weighted.weight(3));
        final FittedData uncertain = LineWithBothUncertain.fit(T, I, each(0.1), each(0.01)).data();
        assertTrue(uncertain.isUncertain());
        assertEquals(0.1, uncertain.xUncertainty(3));
        assertEquals(0.01, uncertain.yUncertainty(3));
    }

    @Test
    void readingsAreEqualIfAllThatIsKeptIs() {
        final FittedData data = CalibrationLine.fit(T, I).data();
        assertEquals(data, CalibrationLine.fit(T, I).data());
        assertEquals(data.hashCode(), CalibrationLine.fit(T, I).data().hashCode());
        assertNotEquals(data, data.named(ON_X, data.yName()));
        assertNotEquals(data, data.named(data.xName(), ON_Y));
        assertNotEquals(data.hashCode(), data.named(ON_X, ON_Y).hashCode());
        assertNotEquals(data, CalibrationLine.fit(I, I).data());
        assertNotEquals(data, CalibrationLine.fit(T, T).data());
        assertNotEquals(data, CalibrationLine.fitWeighted(T, I, each(1)).data());
        final FittedData both = LineWithBothUncertain.fit(T, I, each(0.1), each(0.01)).data();
        assertNotEquals(both, LineWithBothUncertain.fit(T, I, each(0.2), each(0.01)).data());
        assertNotEquals(both, LineWithBothUncertain.fit(T, I, each(0.1), each(0.02)).data());
        assertNotEquals(data, "readings");
    }

    @Test
    void regressorsHaveNames() {
        final double[][] rows = {{0, 1}, {1, 0}, {2, 2}, {3, 1}, {4, 5}};
        final double[] y = {1, 2, 4, 4, 7};
        final LinearRegression fit = LinearRegression.fit(rows, y).named("error", "temperature", "supply");
        assertEquals("error", fit.yName());
        assertEquals(List.of("temperature", "supply"), fit.regressorNames());
        assertTrue(fit.hasIntercept());
        assertFalse(LinearRegression.fitThroughOrigin(rows, y).hasIntercept());
        final var e = assertThrows(IllegalArgumentException.class, () -> fit.named("error", "temperature"));
        assertEquals("1 names given, 2 regressors fitted", e.getMessage());
        assertThrows(IllegalArgumentException.class, () -> fit.named("error", "temperature", " "));
    }

    @Test
    void anInverseAnswerSaysWhetherItLiesWithinTheReadings() {
        final CalibrationLine line = CalibrationLine.fit(T, I);
        assertTrue(line.stimulusFor(8, 1, 0.95).isWithinTheReadings());
        assertFalse(line.stimulusFor(13, 1, 0.95).isWithinTheReadings());
        assertFalse(line.stimulusFor(4, 1, 0.95).isWithinTheReadings());
        assertTrue(line.crossing(8, 0.95).isWithinTheReadings());
        final CalibrationLine flat = CalibrationLine.fit(T, new double[] {1, 2, 1, 2, 1, 2.1});
        final String words = flat.stimulusFor(1.5, 1, 0.95).toString();
        assertTrue(words.contains(", no bounded interval: "), words);
    }

    @Test
    void anAdjustmentTellsTheSharesOfTheLimit() {
        final double[] error = {0.1, 0.2, 0.3, 0.1, -0.4, 0.1};
        final MinimaxAdjustment adjusted = MinimaxAdjustment.of(T, error, each(0.5));
        for (int i = 0; i < error.length; i++) {
            assertEquals(error[i] / 0.5, adjusted.shareBefore(i), 1e-12);
            assertEquals(adjusted.after(i) / 0.5, adjusted.shareAfter(i), 1e-12);
            assertTrue(Math.abs(adjusted.shareAfter(i)) <= adjusted.largest() + 1e-12);
        }
        assertEquals(0.8, adjusted.largestBefore(), 1e-12);
        assertTrue(adjusted.toString().contains("the largest error goes from 0.800 to "));
    }

    @Test
    void outlierLimitsAreWhereTheStatisticWouldReachItsCriticalValue() {
        final double[] readings = {10.1, 10.2, 10.0, 10.15, 10.9};
        final Sample sample = Sample.of(readings);
        final OutlierTest two = OutlierTest.grubbs(OutlierTest.Kind.GRUBBS_TWO_SIDED, readings, 0.05);
        assertEquals(two.critical(), (two.upperLimit().orElseThrow() - sample.mean()) / sample.sd(), 1e-12);
        assertEquals(two.critical(), (sample.mean() - two.lowerLimit().orElseThrow()) / sample.sd(), 1e-12);
        final OutlierTest high = OutlierTest.grubbs(OutlierTest.Kind.GRUBBS_HIGHEST, readings, 0.05);
        assertEquals(Optional.empty(), high.lowerLimit());
        assertTrue(high.upperLimit().orElseThrow() < two.upperLimit().orElseThrow());
        final OutlierTest low = OutlierTest.grubbs(OutlierTest.Kind.GRUBBS_LOWEST, readings, 0.05);
        assertEquals(Optional.empty(), low.upperLimit());
        assertTrue(low.lowerLimit().isPresent());
        final OutlierTest groups = OutlierTest.cochran(List.of(Sample.of(1, 2), Sample.of(1, 4),
            Sample.of(1, 2)), 0.05);
        assertEquals(9.0 / 11, groups.shareOfVariance(1), 1e-12);
        assertEquals(1.0 / 11, groups.shareOfVariance(2), 1e-12);
        assertEquals(Optional.empty(), groups.upperLimit());
        assertEquals(Optional.empty(), groups.lowerLimit());
    }
}
