package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.readings.Direction;
import spanwright.verdict.AgreedRule;
import spanwright.verdict.GuardBand;
import spanwright.verdict.Limit;
import spanwright.verdict.LimitUse;
import spanwright.verdict.Question;
import spanwright.verdict.Word;

/** Worked by hand from JCGM 100:2008 (GUM), 4.3 and 5.1: U / k, half width / sqrt(3), s / sqrt(n). */
class MeasurementProcessTest {
    private static final Offset<Double> ROUNDING = within(1e-12);
    private static final CalibrationStandard SOURCE =
        CalibrationStandard.of("S-01", 0.02, 2, Tolerance.Basis.PERCENT_OF_SPAN);
    private static final CalibrationStandard READER =
        CalibrationStandard.of("S-02", 0.004, 2, Tolerance.Basis.OUTPUT_UNIT).withDrift(0.003, 0.5);

    private static Runs threeCycles() {
        return Runs.milliamps().cycle(1, new double[] {0.01, 0.02, 0.03}, new double[0])
            .cycle(2, new double[] {0.02, 0.03, 0.04}, new double[0])
            .cycle(3, new double[] {0.03, 0.04, 0.05}, new double[0]);
    }

    @Test
    void everyTermStandsInTheBudget() {
        final List<PointUncertainty> all = MeasurementProcess.of(SOURCE, READER).of(threeCycles().analysis());
        assertThat(all).hasSize(3);
        final PointUncertainty mid = all.get(1);
        assertThat(mid.position()).isEqualTo(50);
        assertThat(mid.direction()).isEqualTo(Direction.UPSCALE);
        assertThat(mid.budget().value()).isCloseTo(0.03, within(1e-10));
        assertThat(mid.budget().line("input standard S-01").u()).isCloseTo(0.01, ROUNDING);
        assertThat(mid.budget().line("output standard S-02").u()).isCloseTo(100 * 0.002 / 16, ROUNDING);
        // 0.003 mA per year over half a year, a rectangle.
        assertThat(mid.budget().line("output standard S-02, drift").u())
            .isCloseTo(100 * 0.0015 / 16 / Math.sqrt(3), ROUNDING);
        assertThat(mid.budget().line("resolution of the input").u())
            .isCloseTo(100 * 0.001 / 16 / Math.sqrt(12), ROUNDING);
        assertThat(mid.budget().line("resolution of the output").u())
            .isCloseTo(100 * 0.001 / 16 / Math.sqrt(12), ROUNDING);
        // Standard deviation 0.01 of three readings, 6 degrees of freedom over three points.
        assertThat(mid.budget().line("repeatability").u()).isCloseTo(0.01 / Math.sqrt(3), within(1e-10));
        assertThat(mid.budget().line("repeatability").dof().count()).isEqualTo(6);
        assertThat(mid.missing())
            .containsExactly("the drift of a standard since its certificate was not stated");
        assertThat(mid.cells()).hasSize(3);
        final double u = Math.sqrt(0.01 * 0.01 + Math.pow(0.2 / 16, 2) + Math.pow(0.15 / 16, 2) / 3
            + 2 * Math.pow(0.1 / 16, 2) / 12 + 1e-4 / 3);
        assertThat(mid.budget().u()).isCloseTo(u, within(1e-10));
        assertThat(mid.expanded().expanded()).isCloseTo(mid.expanded().k() * u, within(1e-9));
        assertThat(mid.toString()).startsWith("50 % up: +0.030 \u00b1 0.0").contains("; lacks the drift");
    }

    @Test
    void anInputStandardOfAnotherUnitIsCarriedOverByTheSlope() {
        // 0 to 8 m: 0.01 m of 8 m is 0.125 % of span at every point.
        final Runs runs = Runs.milliamps().from(Span.of(0, 8, "m"));
        for (double p : new double[] {0, 50, 100}) {
            runs.at(p, 0, Direction.UPSCALE, 1);
        }
        final CalibrationStandard tape = CalibrationStandard.of("S-03", 0.01, 2, Tolerance.Basis.INPUT_UNIT);
        final PointUncertainty top = MeasurementProcess.of(tape, READER).of(runs.analysis()).get(2);
        assertThat(top.budget().line("input standard S-03").u()).isCloseTo(0.0625, ROUNDING);
        assertThat(top.outputPerInput().orElseThrow()).isCloseTo(2, ROUNDING);
    }

    @Test
    void theBasisOfTheCertificateCounts() {
        final Span loop = Span.milliamps4to20();
        final CalibrationStandard s = CalibrationStandard.of("S", 0.1, 2, Tolerance.Basis.PERCENT_OF_READING);
        assertThat(s.inUnit(0.1, loop, 20)).isCloseTo(0.02, ROUNDING);
        assertThat(s.inUnit(0.1, loop, -4)).isCloseTo(0.004, ROUNDING);
        assertThat(CalibrationStandard.of("S", 0.1, 2, Tolerance.Basis.PERCENT_OF_UPPER_RANGE_VALUE)
            .inUnit(0.1, loop, 4)).isCloseTo(0.02, ROUNDING);
        assertThat(CalibrationStandard.of("S", 0.1, 2, Tolerance.Basis.PERCENT_OF_SPAN).inUnit(0.1, loop, 4))
            .isCloseTo(0.016, ROUNDING);
        assertThat(CalibrationStandard.of("S", 0.1, 2, Tolerance.Basis.OUTPUT_UNIT).inUnit(0.1, loop, 4))
            .isEqualTo(0.1);
        assertThat(READER.driftLimit()).isCloseTo(0.0015, ROUNDING);
        assertThat(READER.toString()).contains("drift 0.003 per year over 0.5 years");
        assertThat(SOURCE.toString()).endsWith("drift not stated");
    }

    @Test
    void oneCycleLacksRepeatabilityUnlessItIsGiven() {
        final ChannelAnalysis one = Runs.withErrors(new double[] {0, 0, 0}, new double[0]).analysis();
        final PointUncertainty lacking = MeasurementProcess.of(SOURCE, READER).of(one).get(0);
        assertThat(lacking.missing().get(0)).startsWith("repeatability: the record has one cycle only");
        final PointUncertainty given = MeasurementProcess.of(SOURCE, READER).withRepeatability(0.02, 18)
            .of(one).get(0);
        assertThat(given.budget().line("repeatability").u()).isCloseTo(0.02, ROUNDING);
        assertThat(given.budget().line("repeatability").dof().count()).isEqualTo(18);
        assertThat(given.missing()).hasSize(1);
    }

    @Test
    void theSquareRootHasNoSlopeAtItsLowerEnd() {
        final Runs runs = Runs.milliamps().squareRoot();
        for (double p : new double[] {0, 25, 100}) {
            runs.at(p, 0, Direction.UPSCALE, 1);
        }
        final List<PointUncertainty> all = MeasurementProcess.of(SOURCE, READER).of(runs.analysis());
        assertThat(all.get(0).missing().get(0)).contains("has no slope here");
        assertThat(all.get(0).outputPerInput()).isEmpty();
        // At a quarter of the input the slope is 1, at the top half: dy/dx of the square root in spans.
        assertThat(all.get(1).budget().line("input standard S-01").u()).isCloseTo(0.01, ROUNDING);
        assertThat(all.get(2).budget().line("input standard S-01").u()).isCloseTo(0.005, ROUNDING);
    }

    @Test
    void aVerdictCanBeMadeOfThePoints() {
        final var findings = MeasurementProcess.of(SOURCE, READER).of(threeCycles().analysis()).stream()
            .map(PointUncertainty::finding).toList();
        final var question = Question.about("output error of LT-101A", Span.milliamps4to20())
            .under(new AgreedRule(GuardBand.wholeUncertainty(), LocalDate.of(2026, 1, 12), "procedure 7"))
            .dated(LocalDate.of(2026, 3, 2));
        assertThat(question.within(Limit.plusMinus(new PercentOfSpan(0.1)), LimitUse.ACCEPTANCE)
            .decide(findings)
            .word()).isEqualTo(Word.MEETS);
        assertThat(question.within(Limit.plusMinus(new PercentOfSpan(0.03)), LimitUse.ACCEPTANCE)
            .decide(findings)
            .word()).isNotEqualTo(Word.MEETS);
        assertThat(findings.get(0).sources()).containsExactly("run.csv:2:3", "run.csv:5:3", "run.csv:8:3");
        assertThat(findings.get(0).point()).isEqualTo("0 % up");
    }
}
