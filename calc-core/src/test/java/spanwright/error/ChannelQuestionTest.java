package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Tolerance;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Direction;
import spanwright.readings.Phase;
import spanwright.readings.Readings;
import spanwright.reference.PublishedData;
import spanwright.verdict.AgreedRule;
import spanwright.verdict.CalibrationLimits;
import spanwright.verdict.GuardBand;
import spanwright.verdict.JudgedPoint;
import spanwright.verdict.Limit;
import spanwright.verdict.LimitUse;
import spanwright.verdict.NormalPrior;
import spanwright.verdict.PointCorrelation;
import spanwright.verdict.SimpleAcceptance;
import spanwright.verdict.Verdict;
import spanwright.verdict.Word;

/** Worked by hand from JCGM 100:2008 (GUM), 4.3 and 5.1, as in {@link MeasurementProcessTest}. */
class ChannelQuestionTest {
    private static final LocalDate BEFORE = LocalDate.of(2026, 1, 12);
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final AgreedRule WHOLE =
        new AgreedRule(GuardBand.wholeUncertainty(), BEFORE, "procedure QP-7");
    private static final CalibrationStandard SOURCE =
        CalibrationStandard.of("S-01", 0.02, 2, Tolerance.Basis.PERCENT_OF_SPAN).withDrift(0.01, 0.5);
    private static final CalibrationStandard READER =
        CalibrationStandard.of("S-02", 0.004, 2, Tolerance.Basis.OUTPUT_UNIT).withDrift(0.003, 0.5);
    private static final MeasurementProcess PROCESS = MeasurementProcess.of(SOURCE, READER);

    private static Runs threeCycles() {
        return Runs.milliamps().within(Tolerance.plusMinus(0.1, Tolerance.Basis.PERCENT_OF_SPAN))
            .cycle(1, new double[] {0.01, 0.02, 0.04}, new double[0])
            .cycle(2, new double[] {0.02, 0.03, 0.05}, new double[0])
            .cycle(3, new double[] {0.03, 0.04, 0.06}, new double[0]);
    }

    /** Variance that all points share, and all of it: standard deviation 0.01, three readings. */
    private static double sharedVariance() {
        return 0.01 * 0.01 + 0.005 * 0.005 / 3 + Math.pow(0.2 / 16, 2) + Math.pow(0.15 / 16, 2) / 3;
    }

    private static double variance() {
        return sharedVariance() + 2 * Math.pow(0.1 / 16, 2) / 12 + 1e-4 / 3;
    }

    private static ChannelQuestion asked(ChannelAnalysis analysis) {
        return ChannelQuestion.about(analysis).measuredBy(PROCESS).under(WHOLE).dated(DAY);
    }

    @Test
    void theVerdictHasOnePointForEachSideOfEachPointAndSaysWhatDominates() {
        final Verdict v = asked(threeCycles().analysis()).decide();
        assertThat(v.word()).isEqualTo(Word.MEETS);
        assertThat(v.points()).hasSize(3);
        final JudgedPoint worst = v.deciding().orElseThrow();
        assertThat(worst.finding().point()).isEqualTo("100 % up");
        assertThat(worst.finding().uncertainty().orElseThrow().u())
            .isCloseTo(Math.sqrt(variance()), within(1e-10));
        assertThat(worst.finding().sources()).hasSize(3);
        final double k = worst.finding().uncertainty().orElseThrow().coverageFactor();
        assertThat(v.margin().orElseThrow().value())
            .isCloseTo(0.1 - 0.05 - k * Math.sqrt(variance()), within(1e-9));
        // The output standard: (0.2 / 16)^2 of the variance is the largest share.
        assertThat(v.grounds().dominating().get(0)).isEqualTo("output standard S-02 is "
            + Math.round(100 * Math.pow(0.2 / 16, 2) / variance()) + " % of the variance");
        assertThat(v.grounds().assumptions()).contains("each standard has the same error at every point of"
            + " the run", "judged is the mean of 3 readings at each point from each side");
        assertThat(v.grounds().warnings()).containsExactly("read from one side only: 0 %, 50 %, 100 %");
        assertThat(v.sentence()).startsWith("Meets \u00b10.1 % of span (acceptance limit, as found): error of"
            + " LT-101A, as found; deciding is 100 % up: +0.050");
    }

    @Test
    void refusesWithoutToleranceProcessRuleOrDateAndWithAYoungerRule() {
        final ChannelAnalysis stated = threeCycles().analysis();
        final ChannelAnalysis unstated = Runs.withErrors(new double[] {0, 0}, new double[] {0, 0}).analysis();
        assertMissing("a limit with its basis", asked(unstated).decide());
        assertMissing("the measurement uncertainty at 0 % up, cycle 1",
            ChannelQuestion.about(stated).under(WHOLE).dated(DAY).decide());
        assertMissing("a decision rule agreed before measuring",
            ChannelQuestion.about(stated).measuredBy(PROCESS).dated(DAY).decide());
        assertMissing("the date of the record",
            ChannelQuestion.about(stated).measuredBy(PROCESS).under(WHOLE).decide());
        assertMissing("a decision rule agreed before measuring (this one was agreed 2026-01-12, the record"
            + " is dated 2025-12-31)", asked(stated).dated(LocalDate.of(2025, 12, 31)).decide());
    }

    private static void assertMissing(String start, Verdict v) {
        assertThat(v.word()).isEqualTo(Word.NOT_DETERMINED);
        assertThat(v.missing()).anyMatch(m -> m.startsWith(start));
    }

    @Test
    void aRuleThatDoesNotApplyIsNotDeterminedForTheChannel() {
        final AgreedRule simple = new AgreedRule(SimpleAcceptance.withRatioAtLeast(4), BEFORE, "QP-7");
        assertMissing("a test uncertainty ratio of at least 4",
            asked(threeCycles().analysis()).under(simple).decide());
    }

    @Test
    void aSingleCycleAndAnUnstatedDriftAreReservations() {
        final ChannelAnalysis once = Runs.withErrors(new double[] {0, 0, 0}, new double[] {0, 0, 0})
            .within(Tolerance.plusMinus(0.2, Tolerance.Basis.PERCENT_OF_SPAN)).analysis();
        final MeasurementProcess drifting = MeasurementProcess.of(SOURCE,
            CalibrationStandard.of("S-02", 0.004, 2, Tolerance.Basis.OUTPUT_UNIT));
        final Verdict v = asked(once).measuredBy(drifting).decide();
        assertThat(v.word()).isEqualTo(Word.MEETS_WITH_STATED_RISK);
        assertThat(v.grounds().reservations()).hasSize(2)
            .anyMatch(r -> r.startsWith("repeatability: "))
            .contains("the drift of a standard since its certificate was not stated");
        assertThat(asked(once).measuredBy(PROCESS.withRepeatability(0.01, 20)).decide().word())
            .isEqualTo(Word.MEETS);
    }

    @Test
    void aSingleReadingBeyondTheLimitIsNotHiddenByTheMean() {
        final Runs runs = Runs.milliamps().within(Tolerance.plusMinus(0.1, Tolerance.Basis.PERCENT_OF_SPAN));
        for (int cycle = 1; cycle <= 9; cycle++) {
            runs.cycle(cycle, new double[] {0, cycle == 5 ? 0.11 : 0, 0}, new double[0]);
        }
        final Verdict v = asked(runs.analysis()).decide();
        assertThat(v.word()).isEqualTo(Word.MEETS_WITH_STATED_RISK);
        assertThat(v.grounds().reservations()).hasSize(1).first().asString()
            .startsWith("a single reading lies beyond the limit: 50 % up, cycle 5: +0.11");
    }

    @Test
    void asLeftIsJudgedByTheSettingTolerance() {
        final CalibrationRun found = threeCycles().run();
        final ChannelAnalysis left = ChannelAnalysis.of(new CalibrationRun(found.channel(), found.serial(),
            Phase.AS_LEFT, found.transfer(), found.input(), found.output(), found.tolerance(),
            found.conditions(), found.readings()));
        final CalibrationLimits limits = CalibrationLimits.of(Limit.plusMinus(new PercentOfSpan(0.1)),
            Limit.plusMinus(new PercentOfSpan(0.03)));
        final Verdict v = asked(left).within(limits).decide();
        assertThat(v.question().orElseThrow().use()).isEqualTo(LimitUse.SETTING);
        assertThat(v.word()).isEqualTo(Word.DOES_NOT_MEET);
        assertThat(asked(ChannelAnalysis.of(found)).within(limits).decide().word()).isEqualTo(Word.MEETS);
        assertThat(asked(left).decide().grounds().warnings())
            .anyMatch(w -> w.startsWith("the record's one tolerance is taken as the setting tolerance"));
    }

    @Test
    void theCorrelationOfTheMeasurementsFollowsFromTheBudgets() {
        final PointCorrelation r =
            ChannelPopulation.measurements(PROCESS.of(threeCycles().analysis()));
        assertThat(r.points()).isEqualTo(3);
        assertThat(r.rows().get(0).get(2)).isCloseTo(sharedVariance() / variance(), within(1e-9));
    }

    @Test
    void statesTheRiskAtThePointAndOfTheInstrument() {
        final NormalPrior prior = NormalPrior.of(0, 0.05, "five years of records");
        final Verdict point = asked(threeCycles().analysis()).among(prior).decide();
        assertThat(point.risks().point()).isPresent();
        assertThat(point.risks().instrument()).isEmpty();
        final Verdict whole = asked(threeCycles().analysis())
            .among(new ChannelPopulation(prior, 1, 200_000, 7)).decide();
        assertThat(whole.risks().point()).isEqualTo(point.risks().point());
        assertThat(whole.risks().instrument().orElseThrow().points()).isEqualTo(3);
        // Points that move together, all inside +-0.1: 2 Phi(2) - 1 = 0.9545 of them (normal tables).
        assertThat(whole.risks().instrument().orElseThrow().inTolerance().value())
            .isCloseTo(0.9545, within(0.002));
    }

    @Test
    void theRecordGivesDateAndTolerance() {
        final var record = Readings.read(PublishedData.folder().resolve(Path.of("demo", "LT-101A.csv")))
            .runRecords("LT-101A").get(0);
        final ChannelQuestion q = ChannelQuestion.about(record);
        assertThat(q.dated()).isEqualTo(Optional.of(LocalDate.of(2026, 9, 15)));
        assertThat(q.limit()).isEqualTo(Optional.of(Limit.plusMinus(new PercentOfSpan(0.1))));
        assertThat(q).hasToString("Does LT-101A, " + record.run().phase() + ", meet \u00b10.1 % of span?");
    }

    @Test
    void thePlantIsAsGoodAsItsWorstChannel() {
        final Verdict good = asked(threeCycles().analysis()).decide();
        final Verdict bad = asked(threeCycles().named("LT-102").at(50, 0.5, Direction.DOWNSCALE,
            1).analysis()).decide();
        final Verdict plant = Verdict.overall("level loops of Kestrel Fen", List.of(good, bad));
        assertThat(plant.word()).isEqualTo(Word.DOES_NOT_MEET);
        assertThat(plant.parts().get(0).measurand()).isEqualTo("error of LT-102, as found");
        assertThat(plant.deciding().orElseThrow().finding().point()).isEqualTo("50 % down");
    }
}
