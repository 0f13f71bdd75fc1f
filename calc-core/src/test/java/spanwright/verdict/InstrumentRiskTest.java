package spanwright.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

class InstrumentRiskTest {
    private static final ToleranceInterval LIMIT = ToleranceInterval.plusMinus(1);
    private static final int TRIALS = 400_000;

    private static InstrumentRisk simulate(int points, NormalPrior prior, DecisionRule rule, double rTrue,
                                           double rMeasured) {
        return InstrumentRisk.simulate(
            InstrumentRisk.alike(points, LIMIT, rule, MeasurementUncertainty.of(0.125, 2)),
            NormalInstruments.alike(points, prior, rTrue), PointCorrelation.equal(points, rMeasured), TRIALS,
            11);
    }

    @Test
    void agreesWithRectanglesOfTheMultivariateNormal() {
        // test-data/published/instrument_risk.py, SciPy 1.10.1, Genz's method
        for (List<String> row : PublishedData.load("instrument_risk").rows()) {
            final double[] c = row.stream().mapToDouble(Double::parseDouble).toArray();
            final int n = (int) c[0];
            final List<InstrumentPoint> points = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                points.add(new InstrumentPoint("p" + i, LIMIT,
                    Acceptance.guarded(LIMIT, 1 - c[4], 1 - c[4]), c[3]));
            }
            final InstrumentRisk risk = InstrumentRisk.simulate(points, NormalInstruments.alike(n,
                NormalPrior.of(c[1], c[2], "case"), c[5]), PointCorrelation.equal(n, c[6]), TRIALS, 5);
            within(c[7], risk.falseAccept(), row);
            within(c[8], risk.falseReject(), row);
        }
    }

    private static void within(double expected, Proportion actual, List<String> row) {
        final double sigma = Math.sqrt(expected * (1 - expected) / actual.trials());
        assertEquals(expected, actual.value(), 4 * sigma + 1e-5, row.toString());
    }

    @Test
    void pointsThatMoveTogetherCarryTheRiskOfOne() {
        final NormalPrior prior = NormalPrior.ofTrueReliability(0.95, LIMIT);
        final double one = GlobalRisk.of(prior, LIMIT, new GuardBand(0), MeasurementUncertainty.of(0.125, 2))
            .falseAccept();
        within(one, simulate(10, prior, new GuardBand(0), 1, 1).falseAccept(), List.of("all as one"));
        // What multiplying would claim is far off: independent points leave many more instruments out.
        final InstrumentRisk apart = simulate(10, prior, new GuardBand(0), 0, 0);
        within(Math.pow(0.95, 10), apart.inTolerance(), List.of("independent"));
        assertTrue(apart.falseAccept().value() > 2 * one, apart.toString());
    }

    @Test
    void theSameSeedGivesTheSameCounts() {
        final NormalPrior prior = NormalPrior.of(0.1, 0.5, "any");
        assertEquals(simulate(3, prior, new GuardBand(0), 0.5, 0.5),
            simulate(3, prior, new GuardBand(0), 0.5, 0.5));
    }

    @Test
    void aTruncatedPriorNeverLeavesItsBounds() {
        final NormalPrior prior = NormalPrior.of(0, 1, "any").truncatedTo(LIMIT);
        final InstrumentRisk risk = simulate(4, prior, new GuardBand(0), 0.3, 0);
        assertEquals(0, risk.falseAccept().count());
        assertEquals(TRIALS, risk.inTolerance().count());
        assertTrue(risk.falseAccept().upper95() > 0 && risk.falseAccept().upper95() < 1e-5);
        assertTrue(risk.falseAccept().toString().startsWith("below "), risk.falseAccept().toString());
    }

    @Test
    void recordedInstrumentsKeepTheirCorrelation() {
        final Random random = new Random(3);
        final List<List<Double>> errors = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            final double common = 0.5 * random.nextGaussian();
            errors.add(List.of(common + 0.1 * random.nextGaussian(), common + 0.1 * random.nextGaussian()));
        }
        final PointCorrelation r = PointCorrelation.ofHistory(errors);
        assertEquals(0.25 / 0.26, r.rows().get(0).get(1), 0.02);
        final List<InstrumentPoint> points = InstrumentRisk.alike(2, LIMIT, new GuardBand(0),
            MeasurementUncertainty.of(0.125, 2));
        final InstrumentRisk recorded = InstrumentRisk.simulate(points, new RecordedInstruments(errors, 0),
            PointCorrelation.equal(2, 0), TRIALS, 5);
        final InstrumentRisk normal = InstrumentRisk.simulate(points,
            NormalInstruments.alike(2, NormalPrior.of(0, Math.sqrt(0.26), "made so"), 0.25 / 0.26),
            PointCorrelation.equal(2, 0), TRIALS, 5);
        // 400 instruments know a proportion p of about 0.06 to sqrt(p / 400), three times that is allowed.
        assertEquals(normal.inTolerance().value(), recorded.inTolerance().value(), 3 * Math.sqrt(0.06 / 400));
        assertEquals(normal.falseAccept().value(), recorded.falseAccept().value(), 0.005);
    }

    /**
     * Clopper-Pearson, R 4.2: options(digits = 10); binom.test(3, 1000)$conf.int; binom.test(0,
     * 1000)$conf.int
     */
    @Test
    void theIntervalOfAProportionIsExact() {
        assertEquals(0.0006190999316, new Proportion(3, 1000).lower95(), 1e-13);
        assertEquals(0.0087420232385, new Proportion(3, 1000).upper95(), 1e-12);
        assertEquals(0.003682083897, new Proportion(0, 1000).upper95(), 1e-12);
        assertEquals(1, new Proportion(1000, 1000).upper95());
    }

    @Test
    void refusesCorrelationsThatContradictEachOther() {
        final var e = assertThrows(IllegalArgumentException.class, () -> new PointCorrelation(List.of(
            List.of(1.0, 0.9, -0.9), List.of(0.9, 1.0, 0.9), List.of(-0.9, 0.9, 1.0))));
        assertTrue(e.getMessage().startsWith("the correlations contradict each other"), e.getMessage());
        assertThrows(IllegalArgumentException.class, () -> PointCorrelation.equal(3, -0.6));
        assertEquals("correlation of points 2 and 1 is 0.2 one way, 0.1 the other",
            assertThrows(IllegalArgumentException.class, () -> new PointCorrelation(List.of(
                List.of(1.0, 0.1), List.of(0.2, 1.0)))).getMessage());
    }

    @Test
    void refusesNumbersOfPointsThatDiffer() {
        assertThrows(IllegalArgumentException.class,
            () -> InstrumentRisk.simulate(
                InstrumentRisk.alike(3, LIMIT, new GuardBand(0), MeasurementUncertainty.of(0.1, 2)),
                NormalInstruments.alike(2, NormalPrior.of(0, 1, "any"), 0), PointCorrelation.equal(3, 0),
                1000, 1));
    }
}
