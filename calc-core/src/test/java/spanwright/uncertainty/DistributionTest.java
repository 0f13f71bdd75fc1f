package spanwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class DistributionTest {

    static Stream<Distribution> continuous() {
        return MonteCarloTest.everyDistribution().stream();
    }

    @ParameterizedTest
    @MethodSource("continuous")
    @DisplayName("Mean and standard uncertainty agree with the integral of the quantile function")
    void moments(Distribution d) {
        final int n = 200_000;
        double mean = 0;
        double square = 0;
        for (int i = 0; i < n; i++) {
            final double x = d.quantile((i + 0.5) / n);
            mean += x / n;
            square += x * x / n;
        }
        assertEquals(d.mean(), mean, 1e-3 * d.standardUncertainty());
        final double expected = d instanceof ScaledT t ? t.scale() * Math.sqrt(t.count() / (t.count() - 2))
            : d.standardUncertainty();
        assertEquals(expected, Math.sqrt(square - mean * mean), 2e-3 * expected);
    }

    @ParameterizedTest
    @MethodSource("continuous")
    void quantileAndCumulativeAreInverse(Distribution d) {
        double before = Double.NEGATIVE_INFINITY;
        for (double p = 0.001; p < 1; p += 0.001) {
            final double x = d.quantile(p);
            assertTrue(x > before, d + " at " + p);
            assertEquals(p, d.cumulative(x), 1e-9, d + " at " + p);
            before = x;
        }
        assertThatThrownBy(() -> d.quantile(0)).hasMessageContaining("p is 0.0: out of range (0.0, 1.0)");
        assertThatThrownBy(() -> d.quantile(1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> d.quantile(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    @DisplayName("Trapezoid and triangle, JCGM 100:2008 4.3.9: u^2 = a^2 (1 + beta^2) / 6 and a^2 / 6")
    void trapezoid() {
        assertEquals(Math.sqrt(4 * 1.25 / 6), new Trapezoidal(-2, 2, 0.5).standardUncertainty(), 1e-15);
        assertEquals(2 / Math.sqrt(6), new Triangular(-2, 2).standardUncertainty(), 1e-15);
        assertEquals(Rectangular.plusMinus(2).standardUncertainty(),
            new Trapezoidal(-2, 2, 1).standardUncertainty(), 1e-15);
        assertEquals(new Trapezoidal(2, 8, 1 / 3.0), Trapezoidal.ofSum(5, 1, 2));
        assertEquals(5, Trapezoidal.ofSum(5, 0, 0).quantile(0.3));
    }

    @Test
    @DisplayName("Curvilinear trapezoid: u of JCGM 101:2008 6.4.3, 50 degrees of freedom at 10 % (GUM H.1)")
    void curvilinear() {
        final CurvilinearTrapezoid d = new CurvilinearTrapezoid(-1, 1, 0.1);
        assertEquals(Math.sqrt(4.0 / 12 + 0.01 / 9), d.standardUncertainty(), 1e-15);
        assertEquals(50, d.dof().count(), 1e-9);
        assertEquals(2, new CurvilinearTrapezoid(-0.050, 0.050, 0.025).dof().count(), 1e-9);
        assertEquals(0, d.cumulative(-1.1));
        assertEquals(1, d.cumulative(1.1));
        assertEquals(0.5, d.cumulative(0), 1e-15);
    }

    @Test
    @DisplayName("Relative uncertainty of s, JCGM 100:2008 4.3.2: 24 % of 10 readings, 10 % of 50")
    void readings() {
        assertAsPrinted("0.24", 1
            / Math.sqrt(2 * ScaledT.ofReadings(new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}).dof().count()));
        assertAsPrinted("0.10", 1 / Math.sqrt(2 * ScaledT.ofReadings(new double[50]).dof().count()));
        assertEquals(0, ScaledT.ofReadings(new double[50]).standardUncertainty());
        assertEquals(1e9 + 2, ScaledT.ofReadings(1e9 + 1, 1e9 + 2, 1e9 + 3).mean());
        assertThatThrownBy(() -> ScaledT.ofReadings(1)).hasMessageContaining("number of readings is 1");
    }

    @Test
    void logNormalKeepsItsMeanAndUncertainty() {
        final LogNormal d = LogNormal.ofMean(5, 2);
        assertEquals(5, d.mean(), 1e-12);
        assertEquals(2, d.standardUncertainty(), 1e-12);
        assertEquals(0, d.cumulative(0));
        assertEquals(0, d.cumulative(-1));
        assertThatThrownBy(() -> new LogNormal(800, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aWidthOfZeroIsAStep() {
        for (final Distribution d : List.of(new Normal(2, 0), new Rectangular(2, 2), new Triangular(2, 2),
            new UShaped(2, 2), new Constant(2), new ScaledT(2, 0, 3))) {
            assertEquals(2, d.mean(), d::toString);
            assertEquals(0, d.standardUncertainty(), d::toString);
            assertEquals(2, d.quantile(0.2), d::toString);
            assertEquals(0, d.cumulative(1.999), d::toString);
            assertEquals(1, d.cumulative(2), d::toString);
        }
    }

    @Test
    void aRecordIsItsOwnDistribution() {
        final Empirical d = Empirical.of(3, 1, 2, 2);
        assertEquals(4, d.size());
        assertEquals(2, d.mean());
        assertEquals(Math.sqrt(0.5), d.standardUncertainty(), 1e-15);
        assertEquals(0, d.cumulative(0.9));
        assertEquals(0.25, d.cumulative(1));
        assertEquals(0.75, d.cumulative(2));
        assertEquals(1, d.cumulative(3));
        assertEquals(1, d.quantile(0.25));
        assertEquals(2, d.quantile(0.26));
        assertEquals(3, d.quantile(0.99));
        assertEquals(1, d.ranked(0));
        assertEquals(Empirical.of(1, 2, 2, 3), d);
        assertEquals(Empirical.of(1, 2, 2, 3).hashCode(), d.hashCode());
        assertNotEquals(Empirical.of(1, 2, 3, 3), d);
        assertEquals("Empirical[4 values, mean 2.000, standard deviation 0.71]", d.toString());
        assertThatThrownBy(() -> d.quantile(1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    @DisplayName("Resolution of a display: u = step / sqrt(12), JCGM 100:2008 F.2.2.1")
    void resolution() {
        assertEquals(0.01 / Math.sqrt(12), Rectangular.ofResolution(12, 0.01).standardUncertainty(), 1e-15);
        assertEquals(12, Rectangular.ofResolution(12, 0.01).mean(), 1e-15);
        assertThatThrownBy(() -> Rectangular.ofResolution(12, -1)).hasMessageContaining("step is -1.0");
    }

    @Test
    @DisplayName("Numerical tolerance, JCGM 101:2008 7.9.2: half a unit of the last digit that counts")
    void tolerance() {
        assertEquals(0.5, NumericalTolerance.of(32, 2), 1e-15);
        assertEquals(0.05, NumericalTolerance.of(2.0, 2), 1e-15);
        assertEquals(5, NumericalTolerance.of(32, 1), 1e-15);
        assertEquals(5e-7, NumericalTolerance.of(1.5e-5, 2), 1e-20);
        assertThatThrownBy(() -> NumericalTolerance.of(0, 2)).isInstanceOf(IllegalArgumentException.class);
    }
}
