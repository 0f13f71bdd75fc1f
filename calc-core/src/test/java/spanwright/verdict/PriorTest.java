package spanwright.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class PriorTest {

    @Property(tries = 200)
    void theSpreadGivesBackTheReliability(@ForAll @Scale(6) @DoubleRange(min = 0.01,
        max = 0.9999) double reliability,
                                          @ForAll @Scale(6) @DoubleRange(min = -0.9, max = 1.8) double mean) {
        final ToleranceInterval limit = ToleranceInterval.between(-1, 2);
        final NormalPrior prior = NormalPrior.ofTrueReliability(reliability, limit, mean);
        assertEquals(reliability, prior.probabilityWithin(limit), 1e-12);
        assertEquals(mean, prior.mean());
    }

    /** /usr/bin/python3 -c "from scipy.stats import norm; print(1/norm.ppf(.975), 0.5/norm.ppf(.9))" */
    @Test
    void agreesWithTheNormalQuantile() {
        assertEquals(0.5102134569246539, NormalPrior.ofTrueReliability(0.95,
            ToleranceInterval.plusMinus(1)).sd(), 1e-13);
        assertEquals(0.39015207303618954, NormalPrior.ofTrueReliability(0.9,
            ToleranceInterval.atMost(0.5)).sd(), 1e-13);
    }

    @Test
    void observedReliabilityLosesTheMeasurement() {
        final ToleranceInterval limit = ToleranceInterval.plusMinus(1);
        final double observed = NormalPrior.ofTrueReliability(0.9, limit).sd();
        final NormalPrior prior = NormalPrior.ofObservedReliability(0.9, limit, 0, 0.3);
        assertEquals(observed * observed, prior.sd() * prior.sd() + 0.09, 1e-13);
        assertTrue(prior.sentence().contains("observed in-tolerance proportion 90 %"), prior.sentence());
        final var e = assertThrows(IllegalArgumentException.class,
            () -> NormalPrior.ofObservedReliability(0.99, limit, 0, 0.5));
        assertTrue(e.getMessage().endsWith("the spread of the true errors is not determined"),
            e.getMessage());
    }

    @Test
    void anEmpiricalPriorKeepsMeanAndVarianceOfTheTrueErrors() {
        final Random random = new Random(7);
        final double[] errors = random.doubles(60, -0.4, 0.9).toArray();
        final double s2 = Moments.variance(errors);
        final EmpiricalPrior prior = EmpiricalPrior.ofObserved(errors, 0.1);
        final double[] centres = prior.centres().stream().mapToDouble(Double::doubleValue).toArray();
        assertEquals(Moments.mean(errors), Moments.mean(centres), 1e-14);
        assertEquals(s2 - 0.01, Moments.variance(centres) + prior.bandwidth() * prior.bandwidth(), 1e-13);
        assertEquals(Reliability.OBSERVED, prior.kind());
    }

    @Test
    void historyGivesMeanAndVarianceLessTheMeasurement() {
        final double[] errors = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}; // mean 5.5, variance 55/6
        final NormalPrior prior = NormalPrior.ofHistory(errors, 2);
        assertEquals(5.5, prior.mean(), 1e-14);
        assertEquals(Math.sqrt(55.0 / 6 - 4), prior.sd(), 1e-13);
    }

    @Test
    void refusesWhatDeterminesNothing() {
        assertThrows(IllegalArgumentException.class, () -> NormalPrior.ofHistory(new double[9], 0));
        assertThrows(IllegalArgumentException.class, () -> EmpiricalPrior.ofTrue(new double[10]));
        assertEquals("mean 1.5 lies outside \u00b11: no spread is to be had from an in-tolerance proportion",
            assertThrows(IllegalArgumentException.class, () -> NormalPrior.ofTrueReliability(0.9,
                ToleranceInterval.plusMinus(1), 1.5)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> NormalPrior.ofTrueReliability(0.4,
            ToleranceInterval.atMost(1)));
        assertThrows(IllegalArgumentException.class, () -> NormalPrior.of(0, 1, "x")
            .truncatedTo(ToleranceInterval.atLeast(20)));
    }
}
