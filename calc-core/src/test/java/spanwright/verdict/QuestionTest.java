package spanwright.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.quantity.PercentOfReading.percentOfReading;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance.Basis;
import spanwright.uncertainty.Estimate;

class QuestionTest {
    private static final LocalDate AGREED = LocalDate.of(2026, 1, 12);
    private static final LocalDate MEASURED = LocalDate.of(2026, 3, 2);

    private static Question question(DecisionRule rule) {
        return Question.about("output error of LT-101A", Span.milliamps4to20())
            .within(Limit.plusMinus(percentOfSpan(0.1)), LimitUse.ACCEPTANCE)
            .under(new AgreedRule(rule, AGREED, "procedure QP-7"))
            .dated(MEASURED);
    }

    private static MeasurementResult finding(double error) {
        return MeasurementResult.of("50 % up", 50, Estimate.of(error, 0.01), 2);
    }

    // U = 0.02, T = 0.1: T - U = 0.08, T + U = 0.12. The bands of ILAC-G8:09/2019 (secondary copy).
    @ParameterizedTest(name = "{0} with error {1}: {2}")
    @CsvSource({
        "simple, 0.08, Meets", "simple, -0.081, Meets with stated risk",
            "simple, 0.1, Meets with stated risk",
        "simple, -0.101, Does not meet",
        "guard, 0.08, Meets", "guard, -0.081, Not shown", "guard, 0.1, Not shown",
            "guard, 0.101, Does not meet",
        "half, 0.08, Meets", "half, 0.09, Meets with stated risk", "half, -0.091, Not shown",
        "four, -0.08, Meets", "four, 0.081, Meets with stated risk", "four, -0.1, Meets with stated risk",
        "four, 0.101, Not shown", "four, -0.12, Not shown", "four, 0.121, Does not meet"})
    void theWordFollowsTheBands(String rule, double error, String word) {
        final DecisionRule r = switch (rule) {
            case "simple" -> SimpleAcceptance.withRatioAtLeast(4);
            case "guard" -> GuardBand.wholeUncertainty();
            case "half" -> new GuardBand(0.5);
            default -> NonBinary.wholeUncertainty();
        };
        assertEquals(word, question(r).decide(finding(error)).word().toString());
    }

    @Test
    void aReadingOnTheLimitIsNotRejectedByTheRoundingOfADouble() {
        final double error = 100 * (12.016 - 12) / 16;
        assertTrue(error > 0.1, "the case is only a case if the double lies above");
        assertEquals(Word.MEETS_WITH_STATED_RISK,
            question(SimpleAcceptance.withRatioAtLeast(4)).decide(finding(error)).word());
    }

    @Test
    void simpleAcceptanceDoesNotApplyBelowItsRatio() {
        final Question q = question(SimpleAcceptance.withRatioAtLeast(5.1));
        final Verdict v = q.decide(finding(0.01));
        assertEquals(List.of("a test uncertainty ratio of at least 5.1 (it is 5)"), v.missing());
        assertEquals(Word.DOES_NOT_MEET, q.decide(finding(0.13)).word(),
            "beyond by more than U under any rule");
        assertEquals(Word.NOT_DETERMINED, q.decide(finding(0.11)).word());
    }

    @Test
    void ratioRulesNeedTwoSides() {
        final Verdict v = question(SimpleAcceptance.withRatioAtLeast(4))
            .within(Limit.of(PermissibleError.atMost(0.1, Basis.PERCENT_OF_SPAN)),
                LimitUse.ACCEPTANCE).decide(finding(0));
        assertEquals(Word.NOT_DETERMINED, v.word());
    }

    @Test
    void refusesARuleChosenAfterTheRecord() {
        final Verdict v = question(GuardBand.wholeUncertainty()).dated(AGREED.minusDays(1))
            .decide(finding(0));
        assertEquals(Word.NOT_DETERMINED, v.word());
        assertEquals(List.of("a decision rule agreed before measuring (this one was agreed 2026-01-12,"
            + " the record"
            + " is dated 2026-01-11)"), v.missing());
        assertEquals(Word.MEETS,
            question(GuardBand.wholeUncertainty()).dated(AGREED).decide(finding(0)).word());
    }

    @Test
    void refusesWithoutLimitRuleDateUncertaintyOrFinding() {
        final Question q = question(GuardBand.wholeUncertainty());
        assertMissing("a limit with its basis", q.within(Optional.empty(),
            LimitUse.ACCEPTANCE).decide(finding(0)));
        assertMissing("the date of the record", Question.about("x", Span.milliamps4to20())
            .within(Limit.plusMinus(percentOfSpan(1)), LimitUse.CLAIM)
            .under(new AgreedRule(GuardBand.wholeUncertainty(), AGREED, "QP-7")).decide(finding(0)));
        assertMissing("a decision rule agreed", Question.about("x", Span.milliamps4to20())
            .within(Limit.plusMinus(percentOfSpan(1)), LimitUse.CLAIM).dated(MEASURED).decide(finding(0)));
        assertMissing("the measurement uncertainty at 50 % up",
            q.decide(MeasurementResult.withoutUncertainty("50 % up", 50, 7)));
        assertMissing("the measurement uncertainty at 50 % up",
            q.decide(MeasurementResult.of("50 % up", 50, Estimate.exactly(0.01), 2)));
        assertMissing("a finding", q.decide(List.of()));
        assertMissing("a limit at 0 % of the range", Question.about("x", Span.of(0, 10, "V"))
            .within(Limit.plusMinus(percentOfReading(1)), LimitUse.ACCEPTANCE)
            .under(new AgreedRule(GuardBand.wholeUncertainty(), AGREED, "QP-7")).dated(MEASURED)
            .decide(MeasurementResult.of("0 % up", 0, Estimate.of(0, 0.1), 2)));
    }

    @Test
    void theWorstPointDecidesAndAnErrorOutsideSettlesWhatElseIsMissing() {
        final Question q = question(GuardBand.wholeUncertainty())
            .on(Grounds.NONE.lacking(List.of("the down leg")));
        final MeasurementResult unknown = MeasurementResult.withoutUncertainty("75 % up", 75, 0.01);
        assertEquals(List.of("the down leg"), q.decide(finding(0.01)).missing());
        final Verdict v = q.decide(finding(0.01), unknown, finding(0.2));
        assertEquals(Word.DOES_NOT_MEET, v.word());
        assertEquals(0.2, v.deciding().orElseThrow().finding().error());
        assertEquals(Word.NOT_DETERMINED, q.decide(finding(0.01), unknown).word());
    }

    @Test
    void aReservationTurnsMeetsIntoMeetsWithStatedRisk() {
        final Verdict v = question(GuardBand.wholeUncertainty())
            .on(Grounds.NONE.reserving(List.of("typical coefficient"))).decide(finding(0.01));
        assertEquals(Word.MEETS_WITH_STATED_RISK, v.word());
    }

    private static void assertMissing(String start, Verdict v) {
        assertEquals(Word.NOT_DETERMINED, v.word());
        assertTrue(v.missing().stream().anyMatch(m -> m.startsWith(start)), v.missing().toString());
    }
}
