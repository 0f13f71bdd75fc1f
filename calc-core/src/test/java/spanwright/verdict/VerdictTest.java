package spanwright.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance.Basis;
import spanwright.uncertainty.Estimate;

class VerdictTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private static Question question(String measurand, DecisionRule rule) {
        return Question.about(measurand, Span.milliamps4to20())
            .within(Limit.plusMinus(percentOfSpan(0.5)), LimitUse.CLAIM)
            .under(new AgreedRule(rule, DAY.minusMonths(2), "design basis DB-3"))
            .dated(DAY);
    }

    private static Question whole(String measurand) {
        return question(measurand, GuardBand.wholeUncertainty());
    }

    private static MeasurementResult at(double error, double u) {
        return MeasurementResult.of("100 %", 100, Estimate.of(error, u), 2);
    }

    @Test
    void marginIsLimitLessBiasLessExpandedUncertainty() {
        // 0.5 - 0.08 - 2 x 0.15 = 0.12, which is 0.8 of 0.15
        final Verdict v = whole("LT-101").decide(at(-0.08, 0.15));
        assertEquals(Word.MEETS, v.word());
        assertEquals(0.12, v.margin().orElseThrow().value(), 1e-12);
        assertEquals(0.8, v.marginInSigmas().orElseThrow(), 1e-12);
    }

    @Test
    void oneSentenceCarriesNumberUnitConditionAndRule() {
        final Verdict v = whole("accuracy of the chain LT-101 to input card, \u221210 to 45 \u00b0C outdoor")
            .on(Grounds.NONE.dominatedBy(List.of("cabinet isolator, temperature: 62 % of the variance")))
            .decide(at(-0.08, 0.15));
        assertEquals(
            "Meets \u00b10.5 % of span (claimed limit): accuracy of the chain LT-101 to input card,"
                + " \u221210 to 45 \u00b0C outdoor; deciding is 100 %: \u22120.08 \u00b1 0.30 (k = 2, 95 %) %"
                + " of span,"
                + " 0.12 % of span (0.80 standard uncertainties) to spare; risk that this acceptance is wrong"
                + " 0.26 %;"
                + " cabinet isolator, temperature: 62 % of the variance. Guard band w = U: a result is"
                + " accepted if its"
                + " whole coverage interval lies inside the limit. Agreed 2026-01-02 in design basis DB-3.",
            v.toString());
    }

    @Test
    void aMissingLimitIsSaidInTheSentence() {
        final Verdict v = whole("LT-101").within(Optional.empty(), LimitUse.ACCEPTANCE).decide(at(0, 0.1));
        assertEquals("Not determined: LT-101; missing: a limit with its basis (percent of span, of"
            + " reading, of"
            + " upper range value, or a unit).", v.toString());
        assertTrue(v.changes().get(0).startsWith("Give a limit with its basis"), v.changes().toString());
        assertTrue(v.margin().isEmpty());
    }

    @Test
    void saysWhatWouldChangeIt() {
        assertEquals(List.of("An error nearer to the limit by more than 0.12 % of span would end the"
            + " acceptance.",
            "An expanded uncertainty above 0.42 % of span (now 0.30) would end the acceptance."),
            whole("x").decide(at(-0.08, 0.15)).changes());
        assertEquals(List.of("An expanded uncertainty of at most 0.10 % of span (now 0.30) would make the"
            + " result"
            + " accepted.", "An error further from the limit by 0.20 % of span would be accepted."),
            whole("x").decide(at(0.4, 0.15)).changes());
        assertEquals(List.of("The error lies 0.20 % of span beyond the limit: correct or adjust it, or"
            + " have a wider"
            + " limit agreed; a smaller uncertainty alone does not help."),
            whole("x").decide(at(0.7, 0.15)).changes());
        final List<String> risky = question("x", SimpleAcceptance.withRatioAtLeast(1.6)).decide(at(0.4, 0.15))
            .changes();
        assertEquals("An expanded uncertainty above 0.32 % of span (now 0.30) would end the acceptance.",
            risky.get(1));
        assertEquals("An expanded uncertainty of at most 0.10 % of span (now 0.30) would take the stated risk"
            + " away.", risky.get(2));
    }

    @Test
    void coverageFactorOf1Point65IsHonoured() {
        // EA-4/02 S9 (from memory): error 0.10 V, u 0.030 V, one rectangle dominates, k = 1.65, U = 0.05 V.
        // Against a limit of 0.15 V the interval just lies inside; with k = 2 it would not.
        final Question q = Question.about("multimeter at 100 V DC", Span.of(0, 100, "V"))
            .within(Limit.of(PermissibleError.plusMinus(0.15, Basis.OUTPUT_UNIT)), LimitUse.ACCEPTANCE)
            .under(new AgreedRule(GuardBand.wholeUncertainty(), DAY, "QP-7")).dated(DAY);
        final Estimate error = Estimate.of(0.10, 0.030);
        assertAsPrinted("0.05", MeasurementUncertainty.of(error, 1.65).expanded());
        assertEquals(1.65, MeasurementUncertainty.of(error, 1.65).coverageFactor(), 1e-12);
        assertEquals(Word.MEETS, q.decide(MeasurementResult.of("100 V", 100, error, 1.65)).word());
        assertEquals(Word.NOT_SHOWN, q.decide(MeasurementResult.of("100 V", 100, error, 2)).word());
    }

    @Test
    void weightOf10KilogramsByTwoSigma() {
        // EA-4/02 S2 (from memory): error +25 mg, u 29.3 mg, U 59 mg with k = 2. Limit 100 mg: T - U = 41.
        final ToleranceInterval limit = ToleranceInterval.plusMinus(100);
        final MeasurementUncertainty u = MeasurementUncertainty.of(29.3, 2);
        assertAsPrinted("59", u.expanded());
        assertEquals(Word.MEETS, decide(25, u, limit));
        assertEquals(Word.NOT_SHOWN, decide(45, u, limit));
    }

    private static Word decide(double value, MeasurementUncertainty u, ToleranceInterval limit) {
        return JudgedPoint.of(MeasurementResult.of("10 kg", 100, value, u), limit, new GuardBand(1)).word();
    }

    @Test
    void aClaimNeedsItsCoverageAndIsNotNotShownForEver() {
        final Question q = question("accuracy of the chain", new CoverageClaim(0.95));
        final Estimate error = Estimate.of(0.05, 0.2);
        final Verdict meets = q.decide(MeasurementResult.ofClaim("claim", error, 0.43, 0.95, 0.98));
        assertEquals(Word.MEETS, meets.word());
        assertEquals(0.07, meets.margin().orElseThrow().value(), 1e-12);
        assertEquals(0.98, meets.conformanceProbability().orElseThrow());
        assertEquals(Word.NOT_SHOWN, q.decide(MeasurementResult.ofClaim("claim", error, 0.6, 0.95, 0.9))
            .word());
        assertEquals(Word.DOES_NOT_MEET, q.decide(MeasurementResult.ofClaim("claim", error, 2, 0.95, 0.4))
            .word());
        assertEquals(List.of("a coverage interval of 95 % (it is one of 90 %)"),
            q.decide(MeasurementResult.ofClaim("claim", error, 0.4, 0.9, 0.98)).missing());
    }

    @Test
    void nonBinaryAnswersHaveTheirOwnWords() {
        final Question q = question("x", NonBinary.wholeUncertainty());
        final String[] answers = {"pass", "conditional pass", "conditional fail", "fail"};
        final double[] errors = {0.3, 0.31, 0.7, 0.71};
        for (int i = 0; i < 4; i++) {
            assertEquals(answers[i], q.decide(at(errors[i],
                0.1)).deciding().orElseThrow().answer().orElseThrow());
        }
        assertEquals("rejected", whole("x").decide(at(0.31,
            0.1)).deciding().orElseThrow().answer().orElseThrow());
    }

    @Test
    void thePlantIsAsGoodAsItsWorstChannel() {
        final Verdict good = whole("LT-101").decide(at(0, 0.1));
        final Verdict bad = whole("LT-102").decide(at(0.4, 0.1));
        final Verdict worse = whole("LT-103").decide(at(0.45, 0.1));
        final Verdict unknown = whole("LT-104").decide(MeasurementResult.withoutUncertainty("0 %", 0, 0));
        final Verdict plant = Verdict.overall("Kestrel Fen Water Works", List.of(good, bad, worse));
        assertEquals(Word.NOT_SHOWN, plant.word());
        assertEquals("LT-103", plant.parts().get(0).measurand());
        assertEquals(2, plant.count(Word.NOT_SHOWN));
        assertTrue(plant.sentence()
            .startsWith("Not shown: Kestrel Fen Water Works; of 3: 1 meets, 2 not shown."
            + " Worst: Not shown \u00b10.5 % of span (claimed limit): LT-103"), plant.sentence());
        final Verdict whole = Verdict.overall("Kestrel Fen Water Works", List.of(good, unknown));
        assertEquals(Word.NOT_DETERMINED, whole.word());
        assertEquals(List.of("LT-104: the measurement uncertainty at 0 %"), whole.missing());
    }

    @Test
    void statesTheRisksOverThePopulation() {
        final NormalPrior prior = NormalPrior.of(0.05, 0.2, "five years of records");
        final Verdict v = whole("LT-101").among(Population.ofPoints(prior)
            .ofInstruments(new Population.Dependence(0.8, 0.5, 20_000, 3)))
            .decide(at(0.1, 0.05), MeasurementResult.of("0 %", 0, Estimate.of(0.02, 0.05), 2));
        final GlobalRisk expected = GlobalRisk.of(prior, ToleranceInterval.plusMinus(0.5), new GuardBand(1),
            MeasurementUncertainty.of(0.05, 2));
        assertEquals(expected.falseAccept(), v.risks().point().orElseThrow().falseAccept(), 1e-15);
        assertEquals(2, v.risks().instrument().orElseThrow().points());
        assertTrue(v.sentence().contains("over the population"), v.sentence());
        assertTrue(whole("LT-101").decide(at(0, 0.1)).risks().point().isEmpty());
    }

    @Test
    void aConformanceProbabilityOfTheCallersOwnIsUsed() {
        final JudgedPoint p = whole("x").decide(at(0.1, 0.1).withConformance(0.97)).deciding().orElseThrow();
        assertEquals(0.97, p.conformanceProbability().orElseThrow());
        assertEquals(0.03, p.specificFalseAccept().orElseThrow(), 1e-15);
    }

    @Test
    void specificRisksGoWithTheDecision() {
        final JudgedPoint accepted = whole("x").decide(at(0.3, 0.1)).deciding().orElseThrow();
        assertTrue(accepted.specificFalseReject().isEmpty());
        assertEquals(1 - accepted.conformanceProbability().orElseThrow(),
            accepted.specificFalseAccept().orElseThrow(), 1e-14);
        final JudgedPoint rejected = whole("x").decide(at(0.4, 0.1)).deciding().orElseThrow();
        assertTrue(rejected.specificFalseAccept().isEmpty());
        assertEquals(rejected.conformanceProbability(), rejected.specificFalseReject());
    }

    @Test
    void anUndeterminedVerdictMustSayWhatIsMissing() {
        assertThrows(IllegalArgumentException.class, () -> new Verdict("x", Word.NOT_DETERMINED, List.of(),
            Optional.empty(), List.of(), List.of(), Risks.NONE));
    }
}
