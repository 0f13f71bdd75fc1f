package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import spanwright.fit.MinimaxAdjustment;
import spanwright.quantity.Kelvin;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.readings.Direction;

/**
 * Expected figures: worked independently before the code was written (offset 0.1 % and bow 0.1 %: 0.0963
 * best, 0.2327 when nulled at 12 mA, 0.1399 when nulled at 20 mA, 0.1045 by least squares; a pure offset b
 * leaves 2b/3), or by hand.
 */
class TrimTest {
    /** Offset 0.1 % and a bow of 0.1 % of span: 0.1 + 0.4 p (1 - p), p the fraction of the range. */
    private static final double[] OFFSET_AND_BOW = {0.1, 0.175, 0.2, 0.175, 0.1};
    private static final double[] NONE = {};

    private static ChannelAnalysis found(double... errors) {
        return Runs.withErrors(errors, NONE).analysis();
    }

    private static ChannelAnalysis found(double tolerance, double[] errors) {
        return Runs.withErrors(errors, NONE).within(Tolerance.plusMinus(new PercentOfSpan(tolerance)))
            .analysis();
    }

    @Test
    void offsetAndBowAreBestSharedByOneTarget() {
        final TrimAdvice advice = Trim.gainAbout(0).advise(found(OFFSET_AND_BOW));
        assertThat(advice.action()).isEqualTo(TrimAdvice.Action.ADJUST);
        assertThat(advice.before().value()).isCloseTo(0.2, within(1e-12));
        assertAsPrinted("0.0963", advice.after().value());
        assertThat(advice.targets()).hasSize(1);
        assertThat(advice.targets().get(0).apply()).isEqualTo(20);
        assertAsPrinted("19.9846", advice.targets().get(0).setTo());
        assertThat(advice.targets().get(0).readsNow()).isCloseTo(20.016, within(1e-12));
        assertThat(advice.fixedBy()).containsExactly(1, 4);
        assertThat(advice.points().get(1).after()).isCloseTo(advice.after().value(), within(1e-12));
        assertThat(advice.points().get(4).after()).isCloseTo(-advice.after().value(), within(1e-12));
        assertThat(advice.sentence()).startsWith(
            "Adjust the gain trim (pivot 0 mA): apply 20.000 mA, set 19.9846 mA (reads 20.0160) "
                + "(largest error 0.2000");
    }

    @Test
    void nullingAtOnePointOrLeastSquaresDoesWorse() {
        assertAsPrinted("0.2327", largestAfter(75 / 75.2));
        assertAsPrinted("0.1399", largestAfter(125 / 125.1));
        double top = 0;
        double bottom = 0;
        for (int i = 0; i < 5; i++) {
            final double y = 25 + 25 * i + OFFSET_AND_BOW[i];
            top += y * (25 + 25 * i);
            bottom += y * y;
        }
        assertAsPrinted("0.1045", largestAfter(top / bottom));
    }

    private static double largestAfter(double gain) {
        double largest = 0;
        for (int i = 0; i < 5; i++) {
            largest = Math.max(largest, Math.abs(gain * (25 + 25 * i + OFFSET_AND_BOW[i]) - (25 + 25 * i)));
        }
        return largest;
    }

    @Test
    void aPureOffsetIsReducedToTwoThirdsWithNoneLeftAt12Milliamps() {
        final double b = 0.001;
        final TrimAdvice advice = Trim.gainAbout(0).advise(found(b, b, b, b, b));
        assertThat(advice.after().value() / b).isCloseTo(2.0 / 3, within(1e-5));
        assertThat(advice.points().get(2).after() / b).isCloseTo(0, within(1e-5));
        assertThat(advice.points().get(0).after() / b).isCloseTo(2.0 / 3, within(1e-5));
        assertThat(advice.points().get(4).after() / b).isCloseTo(-2.0 / 3, within(1e-5));
        // Trimmed at 20 mA alone 0.8 b stays at 4 mA; trimmed at 4 mA alone 20 mA is thrown off by -4 b.
        final double at20 = 125 / (125 + b);
        assertThat((at20 * (25 + b) - 25) / b).isCloseTo(0.8, within(1e-4));
        final double at4 = 25 / (25 + b);
        assertThat((at4 * (125 + b) - 125) / b).isCloseTo(-4, within(1e-3));
    }

    @Test
    void theBowAloneIsReducedToPoint062() {
        final TrimAdvice advice = Trim.gainAbout(0).advise(found(0, 0.075, 0.1, 0.075, 0));
        assertThat(advice.before().value()).isCloseTo(0.1, within(1e-12));
        assertAsPrinted("0.062", advice.after().value());
    }

    @Test
    void aTrimAbout4MilliampsLeaves4MilliampsAsItIs() {
        final TrimAdvice advice = Trim.gainAbout(4).advise(found(0.1, 0.15, 0.2, 0.25, 0.3));
        assertThat(advice.points().get(0).after()).isCloseTo(0.1, within(1e-3));
        assertThat(advice.after().value()).isCloseTo(0.1, within(1e-3));
    }

    /** An error at the pivot cannot be trimmed: a turn that gains nothing is not advised. */
    @Test
    void aTurnThatGainsLessThanCanBeSetIsNotAdvised() {
        final ChannelAnalysis a = found(0.25, new double[] {0.075, 0.06, 0.06, 0.05, 0.05});
        final TrimAdvice advice = Trim.gainAbout(4).settableTo(0.004).advise(a);
        assertThat(advice.action()).isEqualTo(TrimAdvice.Action.DO_NOT_TOUCH);
        assertThat(advice.reasons()).hasSize(1);
        assertThat(advice.reasons().get(0)).contains("lessens the largest error by")
            .contains("less than what can be set (0.0040 mA)");
    }

    /** Out of tolerance something must be done; what speaks against the turn is a warning then. */
    @Test
    void anErrorOutsideThatIsLessThanTheUncertaintyIsAdjustedWithAWarning() {
        final double[] errors = {0, 0.05, 0.1, 0.15, 0.2};
        final TrimAdvice unsure = Trim.gainAbout(4).measuredWithin(0.5).advise(found(0.1, errors));
        assertThat(unsure.action()).isEqualTo(TrimAdvice.Action.ADJUST);
        assertThat(unsure.warnings().get(0)).contains("below the uncertainty of the measurement");
        final TrimAdvice sure = Trim.gainAbout(4).measuredWithin(0.01).advise(found(0.1, errors));
        assertThat(sure.warnings()).noneMatch(w -> w.contains("below"));
    }

    @Test
    void withinToleranceASmallWishIsNotWorthATurn() {
        final double[] errors = {0, 0.005, 0.01, 0.015, 0.02};
        final ChannelAnalysis a = found(0.1, errors);
        final TrimAdvice fine = Trim.gainAbout(4).settableTo(0.001).advise(a);
        assertThat(fine.action()).isEqualTo(TrimAdvice.Action.ADJUST);
        assertThat(fine.targets().get(0).setTo()).isCloseTo(20, within(2e-5));
        // 0.02 % of span is 0.0032 mA at 20 mA.
        final TrimAdvice coarse = Trim.gainAbout(4).settableTo(0.0011).advise(a);
        assertThat(coarse.action()).isEqualTo(TrimAdvice.Action.DO_NOT_TOUCH);
        assertThat(coarse.reasons()).hasSize(1);
        assertThat(coarse.reasons().get(0)).isEqualTo(
            "the wanted change of 0.0032 mA is below three times what can be set (0.0011)");
        final TrimAdvice unsure = Trim.gainAbout(4).measuredWithin(0.021).advise(a);
        assertThat(unsure.action()).isEqualTo(TrimAdvice.Action.DO_NOT_TOUCH);
        assertThat(unsure.reasons().get(0)).contains("below the uncertainty of the measurement (0.0034)");
        assertThat(unsure.sentence()).startsWith("Do not touch: the wanted change");
        assertThat(Trim.gainAbout(4).measuredWithin(0.019).advise(a).action())
            .isEqualTo(TrimAdvice.Action.ADJUST);
    }

    @Test
    void outOfToleranceACoarseScrewIsTurnedAllTheSame() {
        final TrimAdvice advice = Trim.gainAbout(4).settableTo(0.01)
            .advise(found(0.1, new double[] {0, 0.03, 0.06, 0.09, 0.12}));
        assertThat(advice.action()).isEqualTo(TrimAdvice.Action.ADJUST);
        assertThat(advice.toleranceUse().orElseThrow()).isLessThan(0.01);
        assertThat(Trim.gainAbout(4).settableTo(0.01)
            .advise(found(0.1, new double[] {0, -0.03, -0.06, -0.09, -0.12})).action())
            .isEqualTo(TrimAdvice.Action.ADJUST);
    }

    @Test
    void adjustmentCannotHelpWhereTheLowerBoundExceedsTheTolerance() {
        final TrimAdvice advice = Trim.gainAbout(0).advise(found(0.05, OFFSET_AND_BOW));
        assertThat(advice.action()).isEqualTo(TrimAdvice.Action.CANNOT_HELP);
        assertThat(advice.toleranceUse().orElseThrow()).isCloseTo(0.0963 / 0.05, within(1e-3));
        assertThat(advice.sentence()).startsWith(
            "Adjustment cannot help: the best setting still leaves 1.93 times the tolerance; replace "
                + "the device");
        assertThat(Trim.gainAbout(0).advise(found(0.0964, OFFSET_AND_BOW)).action())
            .isEqualTo(TrimAdvice.Action.ADJUST);
    }

    @Test
    void withoutAToleranceItSaysThatHelpIsNotDetermined() {
        final TrimAdvice advice = Trim.gainAbout(0).advise(found(OFFSET_AND_BOW));
        assertThat(advice.toleranceUse()).isEmpty();
        assertThat(advice.warnings().get(0))
            .isEqualTo("the record states no tolerance with its basis: whether adjustment can help is "
            + "not determined");
        assertThat(advice.warnings()).hasSize(4);
        assertThat(Trim.gainAbout(0).settableTo(0.001).measuredWithin(0.01)
            .advise(found(0.1, OFFSET_AND_BOW)).warnings()).hasSize(1);
    }

    @Test
    void aToleranceOfReadingWeighsTheLowerPointsMore() {
        final Runs runs = Runs.withErrors(OFFSET_AND_BOW, NONE)
            .within(Tolerance.plusMinus(0.3, Tolerance.Basis.PERCENT_OF_READING));
        final TrimAdvice advice = Trim.gainAbout(0).advise(runs.analysis());
        // 0.3 % of reading: 0.075 % of span at 4 mA, 0.375 at 20 mA. Relative errors g y / y* - 1 are equal
        // and opposite at the largest and the smallest y / y*: 25.1 / 25 and 125.1 / 125.
        final double g = 2 / (25.1 / 25 + 125.1 / 125);
        assertThat(advice.toleranceUse().orElseThrow()).isCloseTo((g * 25.1 / 25 - 1) / 0.003, within(1e-9));
        assertThat(advice.fixedBy()).containsExactly(0, 4);
    }

    @Test
    void anUnevenToleranceIsAimedAtItsMiddle() {
        final Runs runs = Runs.withErrors(new double[] {0, 0, 0}, NONE)
            .within(new Tolerance(0, 0.2, Tolerance.Basis.PERCENT_OF_SPAN));
        final TrimAdvice advice = Trim.zeroAndSpan().advise(runs.analysis());
        assertThat(advice.points().get(1).after()).isCloseTo(0.1, within(1e-9));
        assertThat(advice.toleranceUse().orElseThrow()).isCloseTo(0, within(1e-9));
    }

    @Test
    void theServiceRangeLeavesOtherPointsOut() {
        final TrimAdvice advice = Trim.gainAbout(0)
            .serving(ServiceConditions.AS_CALIBRATED.overRange(50, 100)).advise(found(OFFSET_AND_BOW));
        assertThat(advice.points()).hasSize(3);
        // 75.2 g - 75 = 125 - 125.1 g, and 100.175 g - 100 is smaller.
        final double g = 200 / 200.3;
        assertThat(advice.after().value()).isCloseTo(75.2 * g - 75, within(1e-10));
    }

    @Test
    void theTargetIsSetOffForTheServiceTemperature() {
        // Straight at calibration; in service 10 to 30 K warmer with +0.01 % per K of span at 20 mA, none at
        // 4 mA.
        final ServiceConditions warm = ServiceConditions.AS_CALIBRATED
            .overTemperature(new Kelvin(10), new Kelvin(30), 0, 0.01);
        final TrimAdvice advice = Trim.gainAbout(4).serving(warm).advise(found(0, 0, 0, 0, 0));
        // The mean shift at the top, 0.2 % of span, is taken off: 20 - 0.032 mA, to first order.
        assertThat(advice.targets().get(0).setTo()).isCloseTo(20 - 0.032, within(1e-4));
        assertThat(advice.targets().get(0).readsNow()).isCloseTo(20, within(1e-12));
        assertThat(advice.after().value()).isCloseTo(0.1, within(1e-3));
        assertThat(advice.before().value()).isCloseTo(0.3, within(1e-12));
        assertThat(advice.points()).hasSize(10);
        assertThat(advice.points().get(9).toString()).contains("100 % up at +30.0 K: +0.3000 becomes ");
    }

    @Test
    void zeroAndSpanTogetherHalveABow() {
        final TrimAdvice advice = Trim.zeroAndSpan().advise(found(0.1, OFFSET_AND_BOW));
        assertThat(advice.after().value()).isCloseTo(0.05, within(1e-3));
        assertThat(advice.targets()).hasSize(2);
        assertThat(advice.targets().get(0).apply()).isEqualTo(4);
        assertThat(advice.targets().get(0).readsNow()).isCloseTo(4.016, within(1e-12));
        // The bow is 0.1: 0.15 off everywhere leaves -0.05 at the ends.
        assertThat(advice.targets().get(0).setTo()).isCloseTo(3.992, within(1e-3));
        assertThat(advice.targets().get(1).setTo()).isCloseTo(19.992, within(1e-3));
        assertThat(advice.warnings())
            .contains("zero and span may act on each other: set in turn until both hold");
        assertThat(advice.sentence()).startsWith("Adjust zero and span: apply 4.000 mA, set 3.992");
    }

    @Test
    void aSquareRootChannelIsTrimmedAgainstItsOwnCharacteristic() {
        final Runs runs = Runs.milliamps().squareRoot().from(Span.of(0, 25, "mV"));
        for (double p : new double[] {0, 25, 100}) {
            runs.at(p, 0.002 * Math.sqrt(p / 100) * 100, Direction.UPSCALE, 1);
        }
        final TrimAdvice advice = Trim.gainAbout(4).advise(runs.analysis());
        assertThat(advice.after().value()).isCloseTo(0, within(1e-10));
        assertThat(advice.targets().get(0).apply()).isEqualTo(25);
        assertThat(advice.targets().get(0).inputUnit()).isEqualTo("mV");
    }

    @Test
    void refusesAServiceWithoutReadings() {
        assertThatThrownBy(() -> Trim.gainAbout(0)
            .serving(ServiceConditions.AS_CALIBRATED.overRange(30, 40)).advise(found(OFFSET_AND_BOW)))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("no reading within 30.0 % to 40.0 %");
        assertThatThrownBy(() -> ServiceConditions.AS_CALIBRATED.overRange(60, 40))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("from 60.0 % to 40.0 %");
        assertThatThrownBy(() -> ServiceConditions.AS_CALIBRATED
            .overTemperature(new Kelvin(5), new Kelvin(-5), 0, 0))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("the coldest");
    }

    @Test
    void thePivotIsFoundFromARecordBeforeAndOneAfterATurn() {
        for (double pivot : new double[] {0, 4}) {
            final double[] before = {0.02, 0.05, 0.04, 0.06, 0.05};
            final double[] after = new double[5];
            final double[] scatter = {0.001, -0.001, 0.0005, 0.001, -0.001};
            for (int i = 0; i < 5; i++) {
                final double y = 25 * i + before[i];
                after[i] = before[i] + 0.004 * (y - 100 * (pivot - 4) / 16) + scatter[i];
            }
            final TrimPivot found = TrimPivot.between(found(before), found(after)).orElseThrow();
            assertThat(found.pivot()).isCloseTo(pivot, within(0.1));
            assertThat(found.gain()).isCloseTo(1.004, within(1e-4));
            assertThat(found.agreesWith(pivot)).isTrue();
            assertThat(found.agreesWith(4 - pivot)).isFalse();
            assertThat(found.toString()).startsWith("pivot ");
        }
    }

    @Test
    void aTurnLostInTheScatterDeterminesNoPivot() {
        final Finding<TrimPivot> none = TrimPivot.between(found(0, 0, 0, 0, 0),
            found(0.01, -0.01, 0.01, -0.01, 0.01));
        assertThat(none.reason()).startsWith("the turn is not told from the scatter");
        assertThat(TrimPivot.between(found(0, 0), found(0.1, 0.2)).reason())
            .isEqualTo("a pivot needs three points read before and after the turn; there are 2");
        final ChannelAnalysis other = Runs.withErrors(new double[] {0, 0, 0}, NONE).to(Span.of(0, 20, "mA"))
            .analysis();
        assertThatThrownBy(() -> TrimPivot.between(found(0, 0, 0), other))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("different output ranges");
    }

    /** Against brute force: the best of all adjustments that make three of the residuals equal in size. */
    @Property(tries = 150)
    void zeroAndSpanIsTheBestOfAllTriples(@ForAll long seed) {
        final Random random = new Random(seed);
        final int n = 3 + random.nextInt(5);
        final double[] x = random.doubles(n, 0, 100).toArray();
        final double[] e = random.doubles(n, -0.5, 0.5).toArray();
        final double[] limit = random.doubles(n, 0.05, 0.5).toArray();
        if (random.nextBoolean()) {
            x[1] = x[0];
            e[1] = e[0] + 1;
        }
        double best = Double.MAX_VALUE;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    for (int signs = 0; signs < 4; signs++) {
                        best = Math.min(best, vertex(x, e, limit, new int[] {i, j, k}, signs));
                    }
                }
            }
        }
        final MinimaxAdjustment found = MinimaxAdjustment.of(x, e, limit);
        assertThat(found.largest()).isCloseTo(best, within(1e-9 * (1 + best)));
    }

    /** offset + tilt x = s h limit - e at three places: solved by Cramer's rule, then the largest of all. */
    private static double vertex(double[] x, double[] e, double[] limit, int[] at, int signs) {
        final double[] s = {1, (signs & 1) == 0 ? 1 : -1, (signs & 2) == 0 ? 1 : -1};
        final double[][] m = new double[3][];
        final double[] r = new double[3];
        for (int q = 0; q < 3; q++) {
            m[q] = new double[] {1, x[at[q]], -s[q] * limit[at[q]]};
            r[q] = -e[at[q]];
        }
        final double d = det(m);
        if (Math.abs(d) < 1e-9) {
            return Double.MAX_VALUE;
        }
        final double offset = det(replaced(m, r, 0)) / d;
        final double tilt = det(replaced(m, r, 1)) / d;
        double largest = 0;
        for (int i = 0; i < x.length; i++) {
            largest = Math.max(largest, Math.abs(e[i] + offset + tilt * x[i]) / limit[i]);
        }
        return largest;
    }

    private static double[][] replaced(double[][] m, double[] r, int column) {
        final double[][] c = {m[0].clone(), m[1].clone(), m[2].clone()};
        for (int i = 0; i < 3; i++) {
            c[i][column] = r[i];
        }
        return c;
    }

    private static double det(double[][] m) {
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
            - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
            + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }

    @Test
    void zeroAndSpanNeedTwoPlaces() {
        assertThatThrownBy(() -> MinimaxAdjustment.of(new double[] {5, 5}, new double[] {1, 2},
            new double[] {1, 1}))
            .isInstanceOf(IllegalArgumentException.class).hasMessage("all 2 x equal 5.0: no tilt");
        assertThatThrownBy(() -> MinimaxAdjustment.of(new double[] {5, 6}, new double[] {1, 2},
            new double[] {1, 0}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("limit[1]");
        assertThat(MinimaxAdjustment.of(new double[] {5, 6}, new double[] {0, 0}, new double[] {1, 1})
            .largest())
            .isZero();
    }
}
