package spanwright.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Examples of JCGM 101:2008, clause 9. The published Monte Carlo results are from memory. */
class MonteCarloPublishedTest {
    private static final MonteCarlo SETTINGS = MonteCarlo.seeded(101);

    private static MeasurementModel sum(Distribution... parts) {
        final List<InputQuantity> inputs = IntStream.range(0, parts.length)
            .mapToObj(i -> InputQuantity.of("X" + (i + 1), parts[i])).toList();
        return MeasurementModel.of("Y", "", inputs, x -> x[0] + x[1] + x[2] + x[3]);
    }

    @Test
    @DisplayName("Four normal inputs, JCGM 101:2008 9.2.2")
    void fourNormal() {
        final Distribution one = Normal.ofUncertainty(1);
        final MonteCarloResult y = sum(one, one, one, one).monteCarlo(SETTINGS);
        assertEquals(0, y.mean(), 4 * y.meanError());
        assertEquals(2.00, y.u(), 0.005);
        assertEquals(-3.92, y.interval(0.95).lower(), 0.015);
        assertEquals(3.92, y.interval(0.95).upper(), 0.015);
        assertEquals(2 * 3.92, y.shortest(0.95).width(), 0.03);
    }

    @Test
    @DisplayName("Four rectangular inputs, JCGM 101:2008 9.2.3, the GUM interval is too wide")
    void fourRectangular() {
        final Distribution one = Rectangular.plusMinus(Math.sqrt(3));
        final MeasurementModel model = sum(one, one, one, one);
        final MonteCarloResult y = model.monteCarlo(SETTINGS);
        assertEquals(2.00, y.u(), 0.005);
        assertEquals(-3.88, y.interval(0.95).lower(), 0.015);
        assertEquals(3.88, y.interval(0.95).upper(), 0.015);
        assertEquals(3.92, model.budget().expanded(0.95).expanded(), 0.005);
    }

    @Test
    @DisplayName("One rectangular input of ten times the width, JCGM 101:2008 9.2.4")
    void oneDominates() {
        final Distribution one = Rectangular.plusMinus(Math.sqrt(3));
        final MeasurementModel model = sum(one, one, one, Rectangular.plusMinus(10 * Math.sqrt(3)));
        final MonteCarloResult y = model.monteCarlo(SETTINGS);
        assertEquals(10.1, y.u(), 0.06);
        assertEquals(-17.0, y.interval(0.95).lower(), 0.05);
        assertEquals(17.0, y.interval(0.95).upper(), 0.05);
        assertEquals(10.1, model.budget().u(), 0.05);
        assertEquals(19.9, model.budget().expanded(0.95, CoverageRule.STUDENT).expanded(), 0.05);
        assertEquals(16.7, model.budget().expanded(0.95).expanded(), 0.05);
    }

    @ParameterizedTest(name = "mass comparison x1 = {0}")
    @CsvSource(textBlock = """
        # x1,    y,    u, lower, upper, first-order u; y to upper in 1e-6
        0,      50,   50,     0,   150,    0
        0.010, 150,  112,     0,   367,  100
        0.050, 2551, 502,  1590,  3543,  500
        """)
    @DisplayName("Comparison loss of a power meter, JCGM 101:2008 9.4.2.2, r = 0")
    void comparisonLoss(double x1, double y, double u, double lower, double upper, double firstOrder) {
        final MeasurementModel model = MeasurementModel.of("dY", "", List.of(
            InputQuantity.of("X1", new Normal(x1, 0.005)),
            InputQuantity.of("X2", new Normal(0, 0.005))), x -> x[0] * x[0] + x[1] * x[1]);
        final MonteCarloResult result = model.monteCarlo(SETTINGS.trials(8_000_000));
        assertEquals(y, result.mean() * 1e6, 2);
        assertEquals(u, result.u() * 1e6, 1);
        final CoverageInterval shortest = result.shortest(0.95);
        assertEquals(lower, shortest.lower() * 1e6, 10);
        assertEquals(upper, shortest.upper() * 1e6, 10);
        assertEquals(firstOrder, model.budget(Order.FIRST).u() * 1e6, 0.5);
        assertEquals(u, model.budget(Order.SECOND).u() * 1e6, 1.5);
        assertEquals(50, model.budget().meanShift() * 1e6, 0.5);
    }

    @Test
    @DisplayName("JCGM 101:2008 9.4 at x1 = 0: the budget answers not 0, and says why")
    void zeroSensitivities() {
        final Budget budget = MeasurementModel.of("dY", "", List.of(
            InputQuantity.of("X1", new Normal(0, 0.005)),
            InputQuantity.of("X2", new Normal(0, 0.005))), x -> x[0] * x[0] + x[1] * x[1]).budget();
        assertEquals(Order.SECOND, budget.order());
        assertEquals(50e-6, budget.u(), 0.5e-6);
        final String why = budget.warnings().get(0);
        assertTrue(why.contains("First order would give u = 0"), why);
        assertTrue(why.contains("every sensitivity is zero"), why);
    }

    @Test
    @DisplayName("Gauge block, JCGM 101:2008 9.5: 838 nm, u 36 nm, [745, 932] nm at 99 %")
    void gaugeBlock() {
        final MeasurementModel model = MeasurementModel.of("dL", "nm", List.of(
            InputQuantity.of("LS", new ScaledT(50_000_623, 25, 18)),
            InputQuantity.of("D", new ScaledT(215, 6, 24)),
            InputQuantity.of("d1", new ScaledT(0, 4, 5)),
            InputQuantity.of("d2", new ScaledT(0, 7, 8)),
            InputQuantity.of("alphaS", new Rectangular(9.5e-6, 13.5e-6)),
            InputQuantity.of("theta0", new Normal(-0.1, 0.2)),
            InputQuantity.of("Delta", new UShaped(-0.5, 0.5)),
            InputQuantity.of("dalpha", new CurvilinearTrapezoid(-1e-6, 1e-6, 0.1e-6)),
            InputQuantity.of("dtheta", new CurvilinearTrapezoid(-0.050, 0.050, 0.025))),
            x -> {
                final double reference = x[0] + x[1] + x[2] + x[3];
                final double expansion = x[0] * (x[7] * (x[5] + x[6]) + x[4] * x[8]);
                return reference - expansion - 50_000_000;
            });
        final MonteCarloResult result = model.monteCarlo(SETTINGS);
        assertEquals(838, result.mean(), 1);
        assertEquals(36, result.u(), 0.5);
        assertEquals(745, result.interval(0.99).lower(), 1);
        assertEquals(932, result.interval(0.99).upper(), 1);
        assertEquals(932 - 745, result.shortest(0.99).width(), 2);
        final Budget first = model.budget(Order.FIRST);
        assertEquals(838, first.value(), 0.5);
        assertEquals(32, first.u(), 0.5);
        assertEquals(745, first.expanded(0.99).lower(), 1);
        assertEquals(931, first.expanded(0.99).upper(), 1);
    }
}
