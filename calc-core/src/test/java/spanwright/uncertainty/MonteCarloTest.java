package spanwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MonteCarloTest {
    private static final double[] PROBABILITIES = {0.001, 0.025, 0.1, 0.5, 0.9, 0.975, 0.999};

    private static MeasurementModel single(Distribution d) {
        return MeasurementModel.of("Y", "V", List.of(InputQuantity.of("X", d)), x -> x[0]);
    }

    static List<Distribution> everyDistribution() {
        return List.of(new Normal(3, 0.5), new ScaledT(1, 2, 5), new Rectangular(-2, 5), new Triangular(1, 4),
            new Trapezoidal(0, 10, 0.4), new CurvilinearTrapezoid(-1, 1, 0.3), new UShaped(-4, 4),
            LogNormal.ofMean(5, 2));
    }

    @ParameterizedTest
    @MethodSource("everyDistribution")
    @DisplayName("Draws of every distribution follow its own quantiles, within five standard errors")
    void drawsFollowTheDistribution(Distribution d) {
        final MonteCarloResult result = single(d).monteCarlo(MonteCarlo.seeded(7).trials(400_000));
        for (final double p : PROBABILITIES) {
            final double allowed = 5 * result.quantileError(p) + result.quantileBound(p);
            assertEquals(d.quantile(p), result.quantile(p), allowed, d + " at " + p);
            assertEquals(p, d.cumulative(d.quantile(p)), 1e-9, d + " at " + p);
            assertEquals(p, result.cumulative(result.quantile(p)), 1e-9, d + " at " + p);
        }
        assertEquals(d.mean(), result.mean(), 5 * result.meanError());
        if (!(d instanceof ScaledT)) {
            assertEquals(d.standardUncertainty(), result.u(), 0.01 * d.standardUncertainty());
        }
    }

    @Test
    void drawsOfARecordAreItsValues() {
        final Empirical d = Empirical.of(4, 1, 2, 2);
        final MonteCarloResult result = single(d).monteCarlo(MonteCarlo.seeded(7).trials(100_000));
        assertEquals(2.25, result.mean(), 5 * result.meanError());
        assertEquals(d.standardUncertainty(), result.u(), 0.01);
        assertEquals(2, result.quantile(0.5), result.quantileBound(0.5));
        assertEquals(0.75, result.cumulative(3), 0.01);
        assertEquals(1, result.least(), 1e-3);
        assertEquals(4, result.greatest(), 1e-3);
    }

    @Test
    void aConstantHasNoSpread() {
        final MonteCarloResult result = single(new Constant(1e9 / 3))
            .monteCarlo(MonteCarlo.seeded(7).trials(5000));
        assertEquals(1e9 / 3, result.mean());
        assertEquals(0, result.u());
        assertEquals(1e9 / 3, result.interval(0.95).lower());
        assertEquals(0, result.shortest(0.95).width());
        assertEquals(0, result.quantileError(0.5));
    }

    private static MeasurementModel mixed() {
        final List<InputQuantity> inputs = new ArrayList<>();
        int i = 0;
        for (final Distribution d : everyDistribution()) {
            inputs.add(InputQuantity.of("X" + i++, d));
        }
        return MeasurementModel.of("Y", "", inputs, x -> {
            double sum = 0;
            for (int k = 0; k < x.length; k++) {
                sum += x[k] * x[(k + 1) % x.length];
            }
            return sum;
        }).withCorrelations(new Correlation("X0", "X2", 0.5));
    }

    @Test
    @DisplayName("One seed gives the same bits on 1, 2 and 7 threads")
    void threadsDoNotChangeTheResult() {
        final MonteCarlo settings = MonteCarlo.seeded(11).trials(300_001);
        final MonteCarloResult one = mixed().monteCarlo(settings.threads(1));
        for (final int threads : new int[] {2, 7}) {
            final MonteCarloResult more = mixed().monteCarlo(settings.threads(threads));
            assertEquals(one.mean(), more.mean());
            assertEquals(one.u(), more.u());
            assertEquals(one.least(), more.least());
            assertEquals(one.greatest(), more.greatest());
            for (final double p : PROBABILITIES) {
                assertEquals(one.quantile(p), more.quantile(p));
            }
            assertEquals(one.shortest(0.95), more.shortest(0.95));
        }
        assertEquals(300_001, one.trials());
        assertTrue(one.mean() != mixed().monteCarlo(MonteCarlo.seeded(12).trials(300_001)).mean());
    }

    @Test
    void anOutcomeThatIsNotFiniteIsRefusedWithItsInputs() {
        final MeasurementModel root = MeasurementModel.of("root", "", List.of(
            InputQuantity.of("area", new Normal(4, 1))), x -> Math.sqrt(x[0]));
        assertThatThrownBy(() -> root.monteCarlo(MonteCarlo.seeded(1)))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("gave no finite root");
        final MeasurementModel rare = MeasurementModel.of("rare", "", List.of(
            InputQuantity.of("area", new Normal(4.6, 1))), x -> Math.sqrt(x[0]));
        assertThatThrownBy(() -> rare.monteCarlo(MonteCarlo.seeded(1).trials(3_000_000)))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("the trial at area = -");
    }

    @Test
    void aModelThatThrowsIsHeard() {
        final MeasurementModel broken = MeasurementModel.of("Y", "", List.of(
            InputQuantity.of("X", new Normal(0, 1))), x -> {
                if (x[0] > 4) {
                    throw new IllegalStateException("beyond the clamp");
                }
                return x[0];
            });
        final var e = assertThrows(IllegalStateException.class, () ->
            broken.monteCarlo(MonteCarlo.seeded(1)));
        assertEquals("beyond the clamp", e.getMessage());
    }

    @Test
    void aBlockFormulaMustAgreeWithTheFormula() {
        final MeasurementModel wrong = single(new Normal(5, 1)).withBlocks((x, out, n) -> {
            for (int t = 0; t < n; t++) {
                out[t] = x[0][t] + 1e-6;
            }
        });
        assertThatThrownBy(() -> wrong.monteCarlo(MonteCarlo.seeded(1)))
            .hasMessageContaining("they must agree");
    }

    @Test
    void interruptionEndsTheRunAndIsKept() {
        Thread.currentThread().interrupt();
        final var e = assertThrows(MonteCarloStoppedException.class,
            () -> single(new Normal(0, 1)).monteCarlo(MonteCarlo.seeded(1).trials(1_000_000_000L)));
        assertTrue(Thread.interrupted());
        assertThat(e).hasMessageContaining("of 1000000000 trials");
    }

    @Test
    void progressEndsAtTheLastTrial() {
        final List<Long> seen = new ArrayList<>();
        single(new Normal(0, 1)).monteCarlo(MonteCarlo.seeded(1).trials(20_000).onProgress((done, asked) -> {
            seen.add(done);
            assertEquals(20_000, asked);
        }));
        assertEquals(20_000, seen.get(seen.size() - 1));
    }

    @Test
    void theResultReadsAsASentenceAndSaysHowToRepeatIt() {
        final MonteCarloResult result = single(new Rectangular(9, 11))
            .monteCarlo(MonteCarlo.seeded(21).trials(100_000));
        assertThat(result.toString())
            .startsWith("Y = 10.00 V, u = 0.58, interval [9.05, 10.95] (95 % coverage, ")
            .endsWith("probabilistically symmetric), 100000 trials, seed 21");
        assertEquals("V", result.unit());
        assertEquals("Y", result.measurand());
        assertEquals(21, result.settings().seed());
        assertThat(result.generator()).startsWith("xoroshiro128++").endsWith("random");
        assertEquals(result.u() / Math.sqrt(100_000), result.meanError(), 1e-15);
        assertEquals(Estimate.of(result.mean(), result.u()), result.estimate());
        assertEquals(result.interval(0.95).upper() - 9.9, result.interval(0.95).halfWidthAbout(9.9), 1e-12);
    }

    @Test
    @DisplayName("Error of a quantile: sqrt(p (1 - p) / n) over the density, an asymptotic textbook result")
    void quantileErrorFollowsTheDensity() {
        final MonteCarloResult result = single(new Rectangular(0, 1))
            .monteCarlo(MonteCarlo.seeded(21).trials(100_000));
        for (final double p : new double[] {0.1, 0.5, 0.975}) {
            final double expected = Math.sqrt(p * (1 - p) / 100_000);
            assertEquals(expected, result.quantileError(p), 0.15 * expected);
        }
        final CoverageInterval shortest = single(LogNormal.ofMean(5, 3)).monteCarlo(MonteCarlo.seeded(21))
            .shortest(0.95);
        final CoverageInterval symmetric = single(LogNormal.ofMean(5, 3)).monteCarlo(MonteCarlo.seeded(21))
            .interval(0.95);
        assertTrue(shortest.width() < 0.95 * symmetric.width());
        assertTrue(shortest.lower() < symmetric.lower());
    }

    @Test
    @DisplayName("Outcomes far outside the range of the pilot run are counted too, on either side")
    void farOutcomes() {
        final MonteCarloResult cauchy = single(new ScaledT(0, 1, 1)).monteCarlo(MonteCarlo.seeded(21));
        // Quantiles of Student's t with 1 degree of freedom: tan(pi (p - 1/2)), a textbook result (from
        // memory).
        for (final double p : new double[] {0.0005, 0.01, 0.7, 0.99, 0.9995}) {
            assertEquals(Math.tan(Math.PI * (p - 0.5)), cauchy.quantile(p),
                5 * cauchy.quantileError(p) + cauchy.quantileBound(p));
        }
        assertTrue(cauchy.greatest() > 1e4 && cauchy.least() < -1e4);
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        assertThatThrownBy(() -> MonteCarlo.seeded(1).trials(999))
            .hasMessage("trials is 999: at least 1000 needed");
        assertThatThrownBy(() -> MonteCarlo.seeded(1).threads(0)).hasMessageContaining("threads is 0");
        final MonteCarloResult result = single(new Normal(0, 1))
            .monteCarlo(MonteCarlo.seeded(1).trials(1000));
        assertThatThrownBy(() -> result.quantile(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> result.interval(1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> result.shortest(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
