package spanwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Adaptive runs, the validation of a GUM interval, and Latin hypercube sampling. */
class AdaptiveTest {
    private static MeasurementModel sum(Distribution... parts) {
        final List<InputQuantity> inputs = IntStream.range(0, parts.length)
            .mapToObj(i -> InputQuantity.of("X" + i, parts[i])).toList();
        return MeasurementModel.of("Y", "", inputs, x -> java.util.Arrays.stream(x).sum());
    }

    private static MeasurementModel fourNormal() {
        final Distribution one = Normal.ofUncertainty(1);
        return sum(one, one, one, one);
    }

    @Test
    @DisplayName("JCGM 101:2008 7.9: ends when two digits hold, the same on any number of threads")
    void endsWhenStable() {
        final MonteCarlo settings = MonteCarlo.seeded(5).trials(50_000_000).untilStable(2, 0.95);
        final MonteCarloResult one = fourNormal().monteCarlo(settings.threads(1));
        final MonteCarloResult two = fourNormal().monteCarlo(settings.threads(2));
        assertEquals(one.trials(), two.trials());
        assertEquals(one.mean(), two.mean());
        assertEquals(one.interval(0.95), two.interval(0.95));
        assertThat(one.warnings()).isEmpty();
        assertEquals(0, one.trials() % 80_000);
        assertTrue(one.trials() < 1_000_000, () -> one.trials() + " trials");
        assertEquals(3.92, one.interval(0.95).upper(), 0.05);
        final MonteCarloResult finer = fourNormal().monteCarlo(MonteCarlo.seeded(5).trials(50_000_000)
            .untilStable(3, 0.95));
        assertTrue(finer.trials() > 5 * one.trials(), () -> finer.trials() + " trials");
        assertEquals(3.92, finer.interval(0.95).upper(), 0.005 + 0.0004);
    }

    @Test
    void saysWhenItCouldNotBecomeStable() {
        final MonteCarloResult result = fourNormal().monteCarlo(MonteCarlo.seeded(5).trials(100_000)
            .untilStable(4, 0.95));
        assertEquals(100_000, result.trials());
        assertThat(result.warnings()).singleElement().asString()
            .isEqualTo("The results were not yet stable to 4 significant digits after 100000 trials, the "
                + "most that were allowed.");
    }

    @Test
    void aConstantIsStableAtOnce() {
        final MonteCarloResult result = sum(new Constant(3))
            .monteCarlo(MonteCarlo.seeded(5).untilStable(2, 0.95));
        assertEquals(80_000, result.trials());
        assertEquals(3, result.mean());
    }

    @Test
    @DisplayName("Length of a sequence, JCGM 101:2008 7.9.4 b): at least 10 000 and 100 / (1 - p)")
    void sequenceLength() {
        assertEquals(10_000, new Stability(2, 0.95).sequenceLength());
        assertEquals(100_000, new Stability(2, 0.999).sequenceLength(), 1);
        assertThatThrownBy(() -> new Stability(0, 0.95)).hasMessageContaining("significant digits is 0");
    }

    @Test
    @DisplayName("Summary of a sequence: mean, s, and the order statistics of JCGM 101:2008 7.7.2")
    void summary() {
        final double[] hundred = IntStream.rangeClosed(1, 100).mapToDouble(i -> 101 - i).toArray();
        final double[] found = Sequences.summary(hundred, 0.9);
        assertEquals(50.5, found[0], 1e-12);
        assertEquals(29.01149, found[1], 1e-5);
        assertEquals(5, found[2]);
        assertEquals(95, found[3]);
    }

    @Test
    @DisplayName("JCGM 101:2008 clause 8 on 9.2.2 and 9.2.4: validated, and not validated")
    void validation() {
        final MonteCarlo settings = MonteCarlo.seeded(5).trials(4_000_000);
        final GumValidation normal = GumValidation.of(fourNormal().budget(), fourNormal()
            .monteCarlo(settings), 0.95, 2);
        assertTrue(normal.isValidated(), normal::toString);
        assertTrue(normal.isSharp(), normal::toString);
        assertEquals(0.05, normal.tolerance(), 1e-12);
        final Distribution one = Rectangular.plusMinus(Math.sqrt(3));
        final MeasurementModel dominated = sum(one, one, one, Rectangular.plusMinus(10 * Math.sqrt(3)));
        final GumValidation not = GumValidation.of(dominated.budget(), dominated.monteCarlo(settings), 0.95,
            2);
        assertFalse(not.isValidated());
        assertEquals(19.9 - 17.0, not.upperDifference(), 0.1);
        assertEquals(19.9 - 17.0, not.lowerDifference(), 0.1);
        assertThat(not.toString()).startsWith("The GUM interval is not validated by Monte Carlo");
        final GumValidation blunt = GumValidation.of(fourNormal().budget(),
            fourNormal().monteCarlo(settings.trials(10_000)), 0.95, 3);
        assertFalse(blunt.isSharp());
    }

    @Test
    void intervalsOfDifferentProbabilityAreNotCompared() {
        final ExpandedUncertainty gum = fourNormal().budget().expanded(0.95);
        final CoverageInterval other = fourNormal().monteCarlo(MonteCarlo.seeded(1)).interval(0.99);
        assertThatThrownBy(() -> new GumValidation(gum, other, 0.1)).hasMessageContaining("0.95 and 0.99");
    }

    @Test
    @DisplayName("Latin hypercube: the mean of a sum settles far faster, the distribution is the same")
    void latinHypercube() {
        final MonteCarlo random = MonteCarlo.seeded(6).trials(102_400);
        final MonteCarlo strata = random.sampling(Sampling.LATIN_HYPERCUBE);
        final MeasurementModel model = sum(new Normal(1, 1), new Rectangular(0, 3), new ScaledT(0, 0.5, 6),
            UShaped.around(0, 1));
        final MonteCarloResult drawn = model.monteCarlo(strata);
        assertEquals(2.5, drawn.mean(), 0.05 * drawn.meanError());
        final MonteCarloResult plain = model.monteCarlo(random);
        for (final double p : new double[] {0.025, 0.3, 0.975}) {
            assertEquals(plain.quantile(p), drawn.quantile(p), 6 * plain.quantileError(p));
        }
        assertThat(drawn.generator()).contains("Latin hypercube");
        assertEquals(drawn.mean(), model.monteCarlo(strata.threads(1)).mean());
    }

    @Test
    void everyStratumIsVisitedOnce() {
        final double[] out = new double[RandomStream.BLOCK];
        Strata.fill(new RandomStream(1, 1), out, out.length);
        final double[] sorted = out.clone();
        java.util.Arrays.sort(sorted);
        int moved = 0;
        for (int t = 0; t < out.length; t++) {
            assertEquals(t, (int) (sorted[t] * out.length));
            moved += (int) (out[t] * out.length) == t ? 0 : 1;
        }
        assertTrue(moved > 500);
    }
}
