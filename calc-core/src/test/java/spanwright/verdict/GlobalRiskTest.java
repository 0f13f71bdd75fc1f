package spanwright.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

class GlobalRiskTest {
    private static final ToleranceInterval LIMIT = ToleranceInterval.plusMinus(1);

    /** U = 1 / ratio and u = U / 2, as in every ratio row of the references. */
    private static MeasurementUncertainty atRatio(double ratio) {
        return MeasurementUncertainty.of(0.5 / ratio, 2);
    }

    private static GlobalRisk simple(double reliability, double ratio) {
        return GlobalRisk.of(NormalPrior.ofTrueReliability(reliability, LIMIT), LIMIT, new GuardBand(0),
            atRatio(ratio));
    }

    @Test
    void fourToOneWith95PercentInTolerance() {
        // Public statement, read in secondary copies: false accept under 1 %, false reject slightly over 1.5
        // %; computed independently in R 4.2: 0.858 % and 1.554 %
        final GlobalRisk risk = simple(0.95, 4);
        assertAsPrinted("0.858", 100 * risk.falseAccept());
        assertAsPrinted("1.554", 100 * risk.falseReject());
        assertEquals(0.95, risk.inTolerance(), 1e-13);
    }

    @Test
    void theGridOfRatiosAndReliabilities() {
        // test-data/published/pfa_pfr_calc.csv: own calculation in R 4.2, bivariate normal, no guard band
        for (List<String> row : PublishedData.load("pfa_pfr_calc").rows()) {
            final GlobalRisk risk = simple(Double.parseDouble(row.get(0)), Double.parseDouble(row.get(1)));
            assertAsPrinted(row.get(2), 100 * risk.falseAccept(), "false accept of " + row);
            assertAsPrinted(row.get(3), 100 * risk.falseReject(), "false reject of " + row);
        }
    }

    private record Case(NormalPrior prior, ToleranceInterval limit, Acceptance acceptance, double u,
                        double falseAccept, double falseReject) { }

    private static List<Case> sciPyCases() {
        final List<Case> cases = new ArrayList<>();
        for (List<String> row : PublishedData.load("false_accept_risk").rows()) {
            final OptionalDouble[] c = row.stream().map(t -> t.isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(Double.parseDouble(t))).toArray(OptionalDouble[]::new);
            final ToleranceInterval limit = new ToleranceInterval(c[3], c[4]);
            NormalPrior prior = NormalPrior.of(c[0].orElseThrow(), c[1].orElseThrow(), "random case");
            if (c[7].isPresent()) {
                prior = prior.truncatedTo(new ToleranceInterval(c[7], c[8]));
            }
            cases.add(new Case(prior, limit, new Acceptance(c[5], c[6], 0, Answers.TWO, Optional.empty()),
                c[2].orElseThrow(), c[9].orElseThrow(), c[10].orElseThrow()));
        }
        return cases;
    }

    @Test
    void twoHundredRandomCasesAgreeWithSciPy() {
        // test-data/published/false_accept_risk.py, SciPy 1.10.1 quad, confirmed there by owens_t
        final List<Case> cases = sciPyCases();
        assertEquals(200, cases.size());
        for (Case c : cases) {
            final GlobalRisk risk = GlobalRisk.of(c.prior, c.limit, c.acceptance, c.u);
            assertEquals(c.falseAccept, risk.falseAccept(), 1e-11 + 1e-9 * c.falseAccept, c.toString());
            assertEquals(c.falseReject, risk.falseReject(), 1e-11 + 1e-9 * c.falseReject, c.toString());
        }
    }

    @Test
    void twoHundredRandomCasesAgreeWithMonteCarloWithinItsError() {
        final UniformRandomProvider rng = RandomSource.XO_SHI_RO_256_PP.create(20260301L);
        final int trials = 40_000;
        double sumOfSquares = 0;
        int counted = 0;
        for (Case c : sciPyCases()) {
            final GlobalRisk risk = GlobalRisk.of(c.prior, c.limit, c.acceptance, c.u);
            final int[] wrong = simulate(c, trials, rng);
            final double[] p = {risk.falseAccept(), risk.falseReject()};
            for (int i = 0; i < 2; i++) {
                final double sigma = Math.sqrt(trials * p[i] * (1 - p[i]));
                assertEquals(trials * p[i], wrong[i], 5 * sigma + 3, c.toString());
                if (sigma > 3) {
                    final double z = (wrong[i] - trials * p[i]) / sigma;
                    sumOfSquares += z * z;
                    counted++;
                }
            }
        }
        // Chi-squared over the cases: 5 sigma either way, so that a bias far below one case's error shows.
        assertTrue(counted > 250, "cases that occur: " + counted);
        assertEquals(1, sumOfSquares / counted, 5 * Math.sqrt(2.0 / counted));
    }

    private static int[] simulate(Case c, int trials, UniformRandomProvider rng) {
        final ZigguratSampler.NormalizedGaussian gauss = ZigguratSampler.NormalizedGaussian.of(rng);
        final int[] wrong = new int[2];
        for (int i = 0; i < trials; i++) {
            double t;
            do {
                t = c.prior.mean() + c.prior.sd() * gauss.sample();
            } while (c.prior.truncation().isPresent() && !c.prior.truncation().get().contains(t));
            final boolean inside = c.limit.contains(t);
            final boolean accepted = c.acceptance.room(t + c.u * gauss.sample()) >= 0;
            wrong[0] += !inside && accepted ? 1 : 0;
            wrong[1] += inside && !accepted ? 1 : 0;
        }
        return wrong;
    }

    @Test
    void anEmpiricalPriorIsTheMixtureOfItsBells() {
        final double[] errors = {-0.9, -0.4, -0.2, -0.1, 0, 0, 0.1, 0.3, 0.5, 1.3, 0.2, -0.3};
        final EmpiricalPrior prior = EmpiricalPrior.ofTrue(errors);
        final GlobalRisk whole = GlobalRisk.of(prior, LIMIT, new GuardBand(0.5), atRatio(3));
        double falseAccept = 0;
        for (double centre : prior.centres()) {
            falseAccept += GlobalRisk.of(NormalPrior.of(centre, prior.bandwidth(), "bell"), LIMIT,
                new GuardBand(0.5), atRatio(3)).falseAccept() / errors.length;
        }
        assertEquals(falseAccept, whole.falseAccept(), 1e-15);
        final double inside = prior.centres().stream().mapToDouble(c ->
            NormalDistribution.of(c, prior.bandwidth()).probability(-1, 1)).average().orElseThrow();
        assertEquals(inside, whole.inTolerance(), 1e-13);
        assertEquals(inside, prior.probabilityWithin(LIMIT), 1e-13);
    }

    @Test
    void biasedPopulationsAreWorse() {
        // Biased priors are worse: computed independently
        final double centred = simple(0.95, 4).falseAccept();
        final double biased = GlobalRisk.of(NormalPrior.ofTrueReliability(0.95, LIMIT, 0.5), LIMIT,
            new GuardBand(0), atRatio(4)).falseAccept();
        assertTrue(biased > centred, biased + " against " + centred);
    }

    @Test
    void refusesARuleThatDoesNotApply() {
        final var e = assertThrows(IllegalArgumentException.class, () -> GlobalRisk.of(
            NormalPrior.of(0, 1, "any"), LIMIT, SimpleAcceptance.withRatioAtLeast(4), atRatio(3)));
        assertEquals("the rule does not apply, missing: a test uncertainty ratio of at least 4 (it is 3)",
            e.getMessage());
    }

    @Test
    void aRuleThatAcceptsNothingHasNoFalseAccept() {
        final GlobalRisk risk = GlobalRisk.of(NormalPrior.of(0, 0.5, "any"), LIMIT, new GuardBand(1),
            atRatio(0.9));
        assertEquals(0, risk.falseAccept());
        assertEquals(risk.inTolerance(), risk.falseReject(), 1e-15);
    }
}
