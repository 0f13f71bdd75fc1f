package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import spanwright.fit.ReferenceKind;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.readings.Direction;

/**
 * Expected values are worked by hand from the definitions: 43 CFR 3175.135 (public law; largest input-output
 * difference in percent of span, hysteresis as ascending against descending at one input, repeatability as
 * the largest difference among the ascending, or the descending, readings at one input), ISA-51.1 measured
 * accuracy as a signed pair; what these do not define is in the manner of IEC 61298-2 (from memory).
 */
class ChannelAnalysisTest {
    private static final Offset<Double> ROUNDING = within(1e-10);

    /** Three cycles, five points; the errors in percent of span stand as written. */
    private static Runs threeCycles() {
        return Runs.milliamps()
            .cycle(1, new double[] {0.02, 0.05, 0.08, 0.06, 0.10}, new double[] {0.03, 0.09, 0.13, 0.08})
            .cycle(2, new double[] {0.01, 0.06, 0.07, 0.05, 0.11}, new double[] {0.02, 0.08, 0.15, 0.07})
            .cycle(3, new double[] {0.03, 0.04, 0.09, 0.07, 0.12}, new double[] {0.04, 0.10, 0.14, -0.03});
    }

    @Test
    void inaccuracyIsTheSignedPairOfAllSingleReadings() {
        final SignedPair pair = threeCycles().analysis().inaccuracy().orElseThrow();
        assertThat(pair.highest().deviation().value()).isCloseTo(0.15, ROUNDING);
        assertThat(pair.highest().position()).isEqualTo(50);
        assertThat(pair.highest().direction()).isEqualTo(Direction.DOWNSCALE);
        assertThat(pair.highest().cells().toString()).isEqualTo("[run.csv:17:3]");
        assertThat(pair.lowest().deviation().value()).isCloseTo(-0.03, ROUNDING);
        assertThat(pair.lowest().position()).isEqualTo(75);
        assertThat(pair.largest().value()).isCloseTo(0.15, ROUNDING);
        assertThat(pair.toString()).isEqualTo("+0.150 / \u22120.030 % of span");
    }

    @Test
    void measuredErrorIsTheSignedPairOfTheMeans() {
        final SignedPair pair = threeCycles().analysis().measuredError().orElseThrow();
        assertThat(pair.highest().deviation().value()).isCloseTo(0.14, ROUNDING);
        assertThat(pair.highest().cells()).hasSize(3);
        // Mean of 0.02, 0.01, 0.03: all means are positive, so the other figure is the least of them.
        assertThat(pair.lowest().deviation().value()).isCloseTo(0.02, ROUNDING);
        assertThat(pair.lowest().direction()).isEqualTo(Direction.UPSCALE);
    }

    @Test
    void hysteresisComparesTheMeansAndLeavesTheTurningPointOut() {
        final ChannelAnalysis analysis = threeCycles().analysis();
        final Hysteresis h = analysis.hysteresis().orElseThrow();
        // At 50 %: up 0.08, down 0.14.
        assertThat(h.largest().value()).isCloseTo(0.06, ROUNDING);
        assertThat(h.position()).isEqualTo(50);
        assertThat(analysis.points().get(0).hysteresis().orElseThrow().value()).isCloseTo(0.01, ROUNDING);
        assertThat(analysis.points().get(4).hysteresis().reason())
            .isEqualTo("the point 100 % was read upscale only");
        assertThat(h.toString()).isEqualTo("0.060 % of span, at 50 %");
    }

    @Test
    void nonRepeatabilityIsTheLargestSpreadFromOneSideWithAPooledDeviation() {
        final NonRepeatability r = threeCycles().analysis().nonRepeatability().orElseThrow();
        // 75 % downscale: 0.08, 0.07, -0.03.
        assertThat(r.largestSpread().value()).isCloseTo(0.11, ROUNDING);
        assertThat(r.position()).isEqualTo(75);
        assertThat(r.direction()).isEqualTo(Direction.DOWNSCALE);
        assertThat(r.cells()).hasSize(3);
        assertThat(r.dof().count()).isEqualTo(18);
        // Squares about the means: eight of the nine triples are m-0.01, m, m+0.01 in some order: 2e-4 each;
        // 0.08, 0.07, -0.03 about 0.04: 0.0016 + 0.0009 + 0.0049.
        assertThat(r.pooledSd()).isCloseTo(Math.sqrt((8 * 2e-4 + 0.0074) / 18), ROUNDING);
    }

    @Test
    void oneCycleLeavesNonRepeatabilityNotDetermined() {
        final ChannelAnalysis one = Runs.withErrors(new double[] {0, 0.1, 0}, new double[] {0, 0.2})
            .analysis();
        assertThat(one.nonRepeatability()).isInstanceOf(NotDetermined.class);
        assertThat(one.nonRepeatability().reason()).startsWith("the record has one cycle only");
        assertThat(one.hysteresis().orElseThrow().largest().value()).isCloseTo(0.1, ROUNDING);
    }

    @Test
    void twoCyclesOfDifferentPointsLeaveItNotDeterminedToo() {
        final ChannelAnalysis a = Runs.milliamps().at(0, 0, Direction.UPSCALE, 1)
            .at(50, 0, Direction.UPSCALE, 2)
            .analysis();
        assertThat(a.nonRepeatability().reason()).isEqualTo("no point was read twice from the same side");
        assertThat(a.points().get(0).spread(Direction.UPSCALE).reason())
            .isEqualTo("the point 0 % has 1 reading upscale");
    }

    @Test
    void aMissingDownscaleLegLeavesHysteresisNotDetermined() {
        final ChannelAnalysis up = Runs.withErrors(new double[] {0, 0.1, 0}, new double[0]).analysis();
        assertThat(up.hysteresis().isDetermined()).isFalse();
        assertThat(up.hysteresis().reason()).isEqualTo("no point was read both upscale and downscale");
        assertThatThrownBy(() -> up.hysteresis().orElseThrow()).isInstanceOf(IllegalStateException.class)
            .hasMessage("not determined: no point was read both upscale and downscale");
        assertThat(up.nonLinearity().isDetermined()).isTrue();
        assertThat(up.notes()).containsExactly("read from one side only: 0 %, 50 %, 100 %");
    }

    @Test
    void zeroAndSpanShiftByBothMethods() {
        // Errors 0.02 + 0.001 p, straight: both methods agree. Span shift 0.1 % of span.
        final ChannelAnalysis a = Runs.withErrors(new double[] {0.02, 0.045, 0.07, 0.095, 0.12},
            new double[] {0.02, 0.045, 0.07, 0.095, 0.12}).analysis();
        assertThat(a.zeroShift().endPoint().orElseThrow().value()).isCloseTo(0.02, ROUNDING);
        assertThat(a.spanShift().endPoint().orElseThrow().value()).isCloseTo(0.10, ROUNDING);
        assertThat(a.zeroShift().leastSquares().orElseThrow().value()).isCloseTo(0.02, ROUNDING);
        assertThat(a.spanShift().leastSquares().orElseThrow().value()).isCloseTo(0.10, ROUNDING);
    }

    @Test
    void theMethodsDifferForABow() {
        // A bow alone: the ends are right, the least-squares line is not. Mean of the errors: 0.4/5 = 0.08.
        final ChannelAnalysis a = Runs.withErrors(new double[] {0, 0.1, 0.2, 0.1, 0}, new double[0])
            .analysis();
        assertThat(a.zeroShift().endPoint().orElseThrow().value()).isCloseTo(0, ROUNDING);
        assertThat(a.zeroShift().leastSquares().orElseThrow().value()).isCloseTo(0.08, ROUNDING);
        assertThat(a.spanShift().leastSquares().orElseThrow().value()).isCloseTo(0, ROUNDING);
        assertThat(a.zeroShift().leastSquares().orElseThrow().dof().count()).isEqualTo(3);
    }

    @Test
    void withoutAnEndPointTheEndPointShiftIsNotDetermined() {
        final ChannelAnalysis a = Runs.milliamps().at(10, 0.1, Direction.UPSCALE, 1)
            .at(50, 0.1, Direction.UPSCALE, 1).at(90, 0.1, Direction.UPSCALE, 1).analysis();
        assertThat(a.zeroShift().endPoint().reason()).isEqualTo("there is no reading at 0 % of the range");
        assertThat(a.spanShift().endPoint().reason()).isEqualTo("there is no reading at 0 % of the range");
        assertThat(a.zeroShift().leastSquares().orElseThrow().value()).isCloseTo(0.1, ROUNDING);
        assertThat(a.notes()).contains("the points run from 10 % to 90 % of the range");
    }

    @Test
    void theErrorIsComputedFromTheInputActuallyApplied() {
        // 12.016 mA applied at the 50 % point and 12.016 mA read: no error, though 12.000 was aimed at.
        final ChannelAnalysis a = Runs.milliamps()
            .read(OptionalDouble.of(50), 12.016, 12.016, Direction.UPSCALE, 1)
            .read(OptionalDouble.of(50), 11.984, 12.016, Direction.DOWNSCALE, 1).analysis();
        assertThat(a.errors().get(0).ofSpan().value()).isCloseTo(0, ROUNDING);
        assertThat(a.errors().get(0).error()).isCloseTo(0, ROUNDING);
        assertThat(a.errors().get(1).error()).isCloseTo(0.032, ROUNDING);
        assertThat(a.errors().get(1).ofSpan().value()).isCloseTo(0.2, ROUNDING);
        // 0.032 mA of the expected 11.984 mA.
        assertThat(a.errors().get(1).ofReading().orElseThrow().value())
            .isCloseTo(100 * 0.032 / 11.984, ROUNDING);
    }

    @Test
    void percentOfReadingAtZeroOutputIsNotDetermined() {
        final ChannelAnalysis a = Runs.milliamps().to(Span.of(0, 20, "mA"))
            .at(0, 0.1, Direction.UPSCALE, 1).analysis();
        assertThat(a.errors().get(0).ofReading().reason())
            .isEqualTo("percent of reading has no meaning at 0 mA");
    }

    @Test
    void readingsWithoutNominalPointsAreGroupedByTheAppliedInput() {
        final ChannelAnalysis a = Runs.milliamps()
            .read(OptionalDouble.empty(), 4.01, 4.01, Direction.UPSCALE, 1)
            .read(OptionalDouble.empty(), 12.10, 12.10, Direction.UPSCALE, 1)
            .read(OptionalDouble.empty(), 19.99, 19.99, Direction.UPSCALE, 1)
            .read(OptionalDouble.empty(), 12.00, 12.00, Direction.DOWNSCALE, 1)
            .read(OptionalDouble.empty(), 3.99, 3.99, Direction.DOWNSCALE, 1).analysis();
        assertThat(a.points()).hasSize(3);
        assertThat(a.points().get(1).upscale()).hasSize(1);
        assertThat(a.points().get(1).downscale()).hasSize(1);
        assertThat(a.points().get(1).position()).isCloseTo(50.3125, ROUNDING);
    }

    @Test
    void readingsOutsideTheRangeAreListedAndLeftOut() {
        final ChannelAnalysis a = Runs.withErrors(new double[] {0, 0, 0}, new double[] {0, 0})
            .at(103.125, -2, Direction.UPSCALE, 1).at(-2.5, 3, Direction.DOWNSCALE, 1).analysis();
        assertThat(a.inaccuracy().orElseThrow().largest().value()).isCloseTo(0, ROUNDING);
        assertThat(a.outsideRange()).hasSize(2);
        assertThat(a.errors()).hasSize(7);
        assertThat(a.errorsWithinRange()).hasSize(5);
        assertThat(a.notes()).anySatisfy(n -> assertThat(n)
            .isEqualTo("outside the range and left out: 1 readings at 103.1 % (run.csv:7:3)"));
    }

    @Test
    void aRecordWhollyOutsideTheRangeDeterminesNothing() {
        final ChannelAnalysis a = Runs.milliamps().at(110, 0, Direction.UPSCALE, 1).analysis();
        assertThat(a.inaccuracy().reason()).isEqualTo("no reading lies within the range");
        assertThat(a.measuredError().isDetermined()).isFalse();
        assertThat(a.nonLinearity().reason()).startsWith("the record has 0 points within the range");
        assertThat(a.errorLine().reason()).contains("0 readings at 0 points");
        assertThat(a.zeroShift().endPoint().isDetermined()).isFalse();
        assertThat(a.toString()).contains("inaccuracy: not determined");
    }

    @Test
    void nonLinearityOfABowAgainstEachLine() {
        final ChannelAnalysis a = Runs.withErrors(new double[] {0.1, 0.175, 0.2, 0.175, 0.1},
            new double[] {0.1, 0.175, 0.2, 0.175}).analysis();
        final NonLinearity n = a.nonLinearity().orElseThrow();
        assertThat(n.against(ReferenceKind.INDEPENDENT).value()).isCloseTo(0.05, ROUNDING);
        assertThat(n.against(ReferenceKind.TERMINAL_BASED).value()).isCloseTo(0.1, ROUNDING);
        assertThat(n.against(ReferenceKind.ZERO_BASED).value()).isCloseTo(0.2 / 3, ROUNDING);
        assertThat(n.against(ReferenceKind.ABSOLUTE).value()).isCloseTo(0.2, ROUNDING);
        assertThat(n.line(ReferenceKind.INDEPENDENT).slope()).isCloseTo(1, ROUNDING);
        assertThat(n.line(ReferenceKind.INDEPENDENT).intercept()).isCloseTo(0.15, ROUNDING);
        assertThat(n.fixedAt(ReferenceKind.INDEPENDENT)).containsExactly(0.0, 50.0, 100.0);
        assertThat(n.fixedAt(ReferenceKind.TERMINAL_BASED)).containsExactly(0.0, 100.0);
        assertThat(n.toString())
            .contains("independent: 0.050 % of span (+0.050 / \u22120.050), fixed by 0 %, 50 %");
    }

    @Test
    void nonLinearityUsesTheAverageOfUpAndDown() {
        final ChannelAnalysis a = Runs.withErrors(new double[] {0, 0.1, 0}, new double[] {0, -0.1, 0})
            .analysis();
        assertThat(a.nonLinearity().orElseThrow().against(ReferenceKind.ABSOLUTE).value())
            .isCloseTo(0, ROUNDING);
        assertThat(a.hysteresis().orElseThrow().largest().value()).isCloseTo(0.2, ROUNDING);
    }

    @Test
    void deadBandNeedsAnotherTest() {
        assertThat(threeCycles().analysis().deadBand().reason()).contains("small reversals");
    }

    @Test
    void aSquareRootCharacteristicIsConformedToNotStraightened() {
        final Runs runs = Runs.milliamps().squareRoot();
        for (double p : new double[] {0, 6.25, 25, 56.25, 100}) {
            runs.at(p, 0.05, Direction.UPSCALE, 1);
        }
        final ChannelAnalysis a = runs.analysis();
        assertThat(a.errors().get(1).expected()).isCloseTo(8, ROUNDING);
        assertThat(a.inaccuracy().orElseThrow().highest().deviation().value()).isCloseTo(0.05, ROUNDING);
        assertThat(a.nonLinearity().orElseThrow().against(ReferenceKind.INDEPENDENT).value())
            .isCloseTo(0, ROUNDING);
        assertThat(a.zeroShift().leastSquares().orElseThrow().value()).isCloseTo(0.05, ROUNDING);
    }

    @Test
    void pointsThatTheCharacteristicDoesNotTellApartHaveNoLine() {
        // Below its lower end the square root gives 4 mA for every input.
        final ChannelAnalysis a = Runs.milliamps().squareRoot().at(-0.5, 0, Direction.UPSCALE, 1)
            .at(0, 0, Direction.UPSCALE, 1).at(100, 0, Direction.UPSCALE, 1).analysis();
        assertThat(a.nonLinearity().reason()).startsWith("two points have the same expected output");
        final ChannelAnalysis low = Runs.milliamps().squareRoot().at(-0.5, 0, Direction.UPSCALE, 1)
            .at(0, 0, Direction.UPSCALE, 1).at(0, 0.1, Direction.DOWNSCALE, 1).analysis();
        assertThat(low.errorLine().isDetermined()).isFalse();
    }

    @Test
    void thePercentagesOfAnErrorAreOfDifferentTypesAndFigures() {
        // 0.16 mA at 12 mA: 1 % of span, 0.8 % of upper range value, 1.333 % of reading: the live-zero factor
        // 1.25.
        final ReadingError e = Runs.milliamps().at(50, 1, Direction.UPSCALE, 1).analysis().errors().get(0);
        assertThat(e.ofSpan().value()).isCloseTo(1, ROUNDING);
        assertThat(e.ofUpperRangeValue().orElseThrow().value()).isCloseTo(0.8, ROUNDING);
        assertThat(e.ofReading().orElseThrow().value()).isCloseTo(4.0 / 3, ROUNDING);
        assertThat(e.toString()).isEqualTo("50 % up, cycle 1: +1.0000 % of span (run.csv:2:3)");
        assertThat(Runs.milliamps().to(Span.of(-10, 0, "V")).at(50, 1, Direction.UPSCALE, 1).analysis()
            .errors()
            .get(0).ofUpperRangeValue().reason()).contains("0 V");
    }

    @Test
    void theToleranceUseComparesEachReadingWithItsLimits() {
        final Runs runs = Runs.withErrors(new double[] {0.05, 0.1, -0.08}, new double[] {0, 0.12});
        assertThat(runs.analysis().toleranceUse().reason())
            .isEqualTo("the record states no tolerance with its basis");
        final ToleranceUse u = runs.within(Tolerance.plusMinus(0.1, Tolerance.Basis.PERCENT_OF_SPAN))
            .analysis()
            .toleranceUse().orElseThrow();
        assertThat(u.readings()).hasSize(5);
        assertThat(u.largest().share()).isCloseTo(1.2, ROUNDING);
        assertThat(u.largest().error().direction()).isEqualTo(Direction.DOWNSCALE);
        assertThat(u.beyond()).hasSize(1);
        assertThat(u.toString()).startsWith("120 % of the tolerance used, at 50 % down")
            .contains("1 of 5 readings");
        // 0.5 % of reading is 0.125 % of span at 4 mA, 0.375 at 12 mA and 0.625 at 20 mA.
        final ToleranceUse reading = runs.within(Tolerance.plusMinus(0.5, Tolerance.Basis.PERCENT_OF_READING))
            .analysis().toleranceUse().orElseThrow();
        assertThat(reading.largest().share()).isCloseTo(0.4, ROUNDING);
        assertThat(reading.largest().error().position()).isZero();
        assertThat(reading.toString()).contains("no reading beyond it");
        // 0.01 m of 0 to 8 m is 0.125 % of span.
        final ToleranceUse input = runs.from(Span.of(0, 8, "m"))
            .within(new Tolerance(-0.01, 0.01, Tolerance.Basis.INPUT_UNIT)).analysis().toleranceUse()
            .orElseThrow();
        assertThat(input.readings().get(0).limits().upper().orElseThrow()).isCloseTo(0.125, ROUNDING);
        assertThat(runs.within(new Tolerance(0, 0, Tolerance.Basis.PERCENT_OF_SPAN)).analysis().toleranceUse()
            .reason()).startsWith("the tolerance has no meaning here");
    }

    @Test
    void printsEveryMetricOnItsOwnLine() {
        assertThat(threeCycles().analysis().toString().lines().map(l -> l.split(":")[0]).toList())
            .containsAll(List.of("inaccuracy", "measured error", "zero shift", "span shift", "hysteresis",
                "non-repeatability", "non-linearity", "dead band", "tolerance"));
    }

    /** Orders that hold by definition, on random records; and the order of the readings does not matter. */
    @Property(tries = 200)
    void theMetricsKeepTheirOrder(@ForAll long seed) {
        final Random random = new Random(seed);
        final Runs runs = Runs.milliamps();
        final int cycles = 1 + random.nextInt(3);
        for (int c = 1; c <= cycles; c++) {
            runs.cycle(c, random.doubles(5, -0.3, 0.3).toArray(), random.doubles(5, -0.3, 0.3).toArray());
        }
        final ChannelAnalysis a = runs.analysis();
        assertThat(a.measuredError().orElseThrow().largest().value())
            .isLessThanOrEqualTo(a.inaccuracy().orElseThrow().largest().value() + 1e-12);
        final NonLinearity n = a.nonLinearity().orElseThrow();
        final double independent = n.against(ReferenceKind.INDEPENDENT).value();
        assertThat(independent)
            .isLessThanOrEqualTo(n.against(ReferenceKind.ZERO_BASED).value() + 1e-12)
            .isLessThanOrEqualTo(n.against(ReferenceKind.TERMINAL_BASED).value() + 1e-12)
            .isLessThanOrEqualTo(n.against(ReferenceKind.ABSOLUTE).value() + 1e-12);
        assertThat(a.hysteresis().orElseThrow().largest().value()).isLessThanOrEqualTo(0.6);
    }
}
