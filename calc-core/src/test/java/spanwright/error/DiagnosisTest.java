package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.quantity.Span;
import spanwright.readings.Direction;

/**
 * Each fault is made from its own definition (by hand) and must be found again; the figures of the evidence
 * too.
 */
class DiagnosisTest {
    private static final double[] PERCENT = {0, 10, 25, 50, 75, 90, 100};
    /** What a real record adds: a few thousandths of the span, of no shape. */
    private static final double[] SCATTER = {0.002, -0.003, 0.001, -0.001, 0.003, -0.002, 0.001};

    private static Runs made(DoubleUnaryOperator error) {
        final Runs runs = Runs.milliamps();
        for (int i = 0; i < PERCENT.length; i++) {
            runs.at(PERCENT[i], error.applyAsDouble(PERCENT[i]) + SCATTER[i], Direction.UPSCALE, 1);
        }
        return runs;
    }

    private static Diagnosis diagnosed(DoubleUnaryOperator error) {
        return Diagnosis.of(made(error).analysis()).orElseThrow();
    }

    private static void assertFound(ErrorPattern fault, String evidence, DoubleUnaryOperator error) {
        final Diagnosis d = diagnosed(error);
        assertThat(d.first().fault()).as(d.toString()).isEqualTo(fault);
        assertThat(d.noneFits()).isFalse();
        assertThat(d.first().evidence().get(0)).contains(evidence);
        assertThat(d.first().explained()).isGreaterThan(0.9);
        assertThat(d.sentence()).startsWith("The errors speak for: " + fault).contains(fault.check());
    }

    @Test
    void findsEachFaultFromItsShape() {
        assertFound(ErrorPattern.ZERO, "+0.300 % of span at every point", p -> 0.3);
        assertFound(ErrorPattern.SPAN, "0 at the lower, +0.40", p -> 0.4 * p / 100);
        assertFound(ErrorPattern.ZERO_AND_SPAN, "\u22120.3", p -> -0.3 + 0.8 * p / 100);
        assertFound(ErrorPattern.BOW, "+0.2", p -> 0.2 * p * (100 - p) / 2500);
        assertFound(ErrorPattern.PERCENT_OF_READING, "+0.70", p -> 0.007 * (25 + p));
        assertFound(ErrorPattern.RESISTOR_249, "reading 0.4 % low", p -> -0.004 * (25 + p));
        assertFound(ErrorPattern.LIVE_ZERO_LEFT_OUT, "a quarter of span", p -> 0.25 * (p - 100));
        assertFound(ErrorPattern.FACTOR_1_25, "1.25 times", p -> 0.25 * p);
        assertFound(ErrorPattern.STUCK, "output stays at 12.8", p -> 55 - p);
    }

    /**
     * Two loop-powered isolators on 24 V: right to 18.17 mA = 88.6 % of span, then flat (worked
     * independently).
     */
    @Test
    void findsTheComplianceKneeAndItsCurrent() {
        assertFound(ErrorPattern.COMPLIANCE_KNEE, "flat at 88.6 % of span (18.1",
            p -> Math.min(0, 88.56 - p));
        assertFound(ErrorPattern.LOW_CLAMP, "flat at 15.0 % of span (6.40", p -> Math.max(0, 15 - p));
    }

    @Test
    void aKneeSeenAtOnePointOnlySaysSo() {
        assertThat(diagnosed(p -> Math.min(0, 88.56 - p)).first().evidence()).contains("seen at 2 points");
        assertThat(diagnosed(p -> Math.min(0, 95 - p)).first().evidence())
            .contains("seen at one point only: a single bad reading looks the same");
    }

    /** What the shape says at a point and what it leaves there add up to the error: nothing is lost. */
    @Test
    void theFittedShapeIsKept() {
        final Diagnosis d = diagnosed(p -> Math.min(0, 88.56 - p));
        assertThat(d.points()).hasSize(PERCENT.length);
        for (Hypothesis h : d.hypotheses()) {
            assertThat(h.residuals()).hasSize(PERCENT.length);
            for (int i = 0; i < PERCENT.length; i++) {
                final double x = d.points().get(i).expected();
                final double shape = h.shape().stream().filter(s -> s.expected() == x).findFirst()
                    .orElseThrow().error();
                assertThat(shape + h.residuals().get(i)).as(h.fault() + " at " + x)
                    .isCloseTo(d.points().get(i).error(), within(1e-9));
            }
        }
        // The corner of the knee lies between two points and is kept too: straight before and after it.
        assertThat(d.first().shape().stream().filter(s -> s.error() == 0)
            .mapToDouble(Diagnosis.ShapePoint::expected).max().orElseThrow()).isCloseTo(88.56, within(0.01));
    }

    @Test
    void aBowWithZeroAndSpanIsStillABow() {
        assertFound(ErrorPattern.BOW, "+0.40", p -> 0.1 - 0.1 * p / 100 + 0.4 * p * (100 - p) / 2500);
    }

    @Test
    void errorsOfTheSizeOfTheScatterAreNoFault() {
        final Diagnosis d = diagnosed(p -> 0);
        assertThat(d.first().fault()).isEqualTo(ErrorPattern.NONE);
        assertThat(d.noneFits()).isFalse();
        // Steps of 1 uA on both sides of 16 mA: 100 sqrt(2) 0.001 / 16 / sqrt(12).
        assertThat(d.scatter()).isCloseTo(100 * Math.sqrt(2) * 0.001 / 16 / Math.sqrt(12), within(1e-12));
    }

    @Test
    void aZigzagFitsNone() {
        final Diagnosis d = diagnosed(p -> p % 50 == 0 ? 0.4 : -0.4);
        assertThat(d.noneFits()).as(d.toString()).isTrue();
        assertThat(d.sentence()).startsWith("None of the known shapes fits: the nearest, ")
            .contains(" leaves 0.");
    }

    @Test
    void weightsAddUpToOneAndAreOrdered() {
        final Diagnosis d = diagnosed(p -> 0.1 + 0.1 * p / 100);
        assertThat(d.hypotheses().stream().mapToDouble(Hypothesis::weight).sum()).isCloseTo(1, within(1e-12));
        for (int i = 1; i < d.hypotheses().size(); i++) {
            assertThat(d.hypotheses().get(i).weight()).isLessThanOrEqualTo(d.hypotheses().get(i - 1)
                .weight());
        }
        assertThat(d.about(ErrorPattern.BOW).isDetermined()).isTrue();
        assertThat(d.about(ErrorPattern.OTHER_CHANNEL).reason())
            .contains("was not among the hypotheses tried");
    }

    @Test
    void aGroundLoopIsPutBeforeAZeroShiftWhereTheOffsetWanders() {
        final Runs steady = Runs.milliamps();
        final Runs wandering = Runs.milliamps();
        final double[] offsets = {0.30, 0.20, 0.37};
        for (int c = 1; c <= 3; c++) {
            for (int i = 0; i < PERCENT.length; i++) {
                final double s = SCATTER[(i + c) % PERCENT.length];
                steady.at(PERCENT[i], 0.3 + s, Direction.UPSCALE, c);
                wandering.at(PERCENT[i], offsets[c - 1] + s, Direction.UPSCALE, c);
            }
        }
        assertThat(Diagnosis.of(steady.analysis()).orElseThrow().first().fault())
            .isEqualTo(ErrorPattern.ZERO);
        final Diagnosis d = Diagnosis.of(wandering.analysis()).orElseThrow();
        assertThat(d.first().fault()).isEqualTo(ErrorPattern.GROUND_LOOP);
        assertThat(d.hypotheses().get(1).fault()).isEqualTo(ErrorPattern.ZERO);
    }

    @Test
    void swappedChannelsCarryTheErrorsOfTheOther() {
        final DoubleUnaryOperator odd = p -> p % 50 == 0 ? 0.4 : -0.3;
        final ChannelAnalysis other = made(odd).named("CH4").analysis();
        final ChannelAnalysis unlike = made(p -> 0.1).named("CH5").analysis();
        final Diagnosis d = Diagnosis.of(made(p -> odd.applyAsDouble(p) + 0.01).named("CH3").analysis(),
            List.of(unlike, other)).orElseThrow();
        assertThat(d.first().fault()).isEqualTo(ErrorPattern.OTHER_CHANNEL);
        assertThat(d.first().evidence().get(0)).isEqualTo("the errors of CH4 to within +0.010 % of span");
        assertThat(d.noneFits()).isFalse();
    }

    @Test
    void anotherChannelWithOtherPointsIsNotCompared() {
        final ChannelAnalysis other = Runs.withErrors(new double[] {0, 0, 0}, new double[0]).analysis();
        assertThat(Diagnosis.of(made(p -> 0.3).analysis(), List.of(other)).orElseThrow()
            .about(ErrorPattern.OTHER_CHANNEL).isDetermined()).isFalse();
    }

    @Test
    void twoPointsHaveNoShape() {
        assertThat(Diagnosis.of(Runs.withErrors(new double[] {0, 1}, new double[0]).analysis()).reason())
            .isEqualTo("the shape of the errors needs three points; there are 2");
    }

    @Test
    void withoutALiveZeroReadingAndSpanAreOneAndTheSame() {
        final Runs runs = Runs.milliamps().to(Span.of(0, 20, "mA"));
        for (int i = 0; i < PERCENT.length; i++) {
            runs.at(PERCENT[i], 0.005 * PERCENT[i] + SCATTER[i], Direction.UPSCALE, 1);
        }
        final Diagnosis d = Diagnosis.of(runs.analysis()).orElseThrow();
        assertThat(d.first().fault()).isEqualTo(ErrorPattern.SPAN);
        assertThat(d.about(ErrorPattern.PERCENT_OF_READING).isDetermined()).isFalse();
        assertThat(d.about(ErrorPattern.RESISTOR_249).isDetermined()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"0.05", "0.2", "1", "5"})
    void theAnswerDoesNotDependOnTheSizeOfTheFault(double size) {
        assertThat(diagnosed(p -> size).first().fault()).isEqualTo(ErrorPattern.ZERO);
        assertThat(diagnosed(p -> size * p / 100).first().fault()).isEqualTo(ErrorPattern.SPAN);
        assertThat(diagnosed(p -> size * p * (100 - p) / 2500).first().fault()).isEqualTo(ErrorPattern.BOW);
    }

    @Test
    void pointsOutsideTheRangeHelpToFindAKnee() {
        final Runs runs = made(p -> 0).at(103, -2.5, Direction.UPSCALE, 1)
            .at(106.25, -5.75, Direction.UPSCALE, 1);
        final Diagnosis d = Diagnosis.of(runs.analysis()).orElseThrow();
        assertThat(d.first().fault()).isEqualTo(ErrorPattern.COMPLIANCE_KNEE);
        assertThat(d.first().evidence().get(0)).contains("flat at 100.5 % of span");
    }
}
