package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import spanwright.fit.AnalysisOfVariance;
import spanwright.fit.CalibrationLine;
import spanwright.fit.LackOfFit;
import spanwright.fit.OutlierTest;
import spanwright.readings.Direction;
import spanwright.reference.FromR;

/** The statistics of one run against R: test-data/published/r_statistics.R made the run and the numbers. */
class RunAgreesWithRTest {
    private final ChannelAnalysis analysis = ChannelAnalysis.of(FromR.run());
    private final RunStatistics statistics = analysis.statistics();

    private static void agrees(String what, double actual) {
        final double r = FromR.value("run", what);
        assertThat(actual).as(what).isCloseTo(r, within(1e-9 * Math.abs(r)));
    }

    @Test
    void pooledRepeatabilityWithItsDegreesOfFreedom() {
        final NonRepeatability n = analysis.nonRepeatability().orElseThrow();
        agrees("pooled_sd", n.pooledSd());
        agrees("pooled_df", n.dof().count());
        agrees("spread", n.largestSpread().value());
        agrees("spread_at", n.position());
        assertThat(n.direction()).isEqualTo(Direction.UPSCALE);
        assertThat(n.points()).isEqualTo(analysis.points());
    }

    @Test
    void hysteresis() {
        final Hysteresis h = analysis.hysteresis().orElseThrow();
        agrees("hysteresis", h.largest().value());
        agrees("hysteresis_at", h.position());
    }

    @Test
    void directionWithinPoint() {
        final AnalysisOfVariance a = statistics.sources().orElseThrow();
        for (int k = 0; k < 3; k++) {
            agrees("ss" + (k + 1), a.sources().get(k).sumOfSquares());
            agrees("df" + (k + 1), a.sources().get(k).degreesOfFreedom());
        }
        agrees("p_direction", a.probability("direction").orElseThrow());
        agrees("sd_direction", a.standardDeviation("direction").orElseThrow());
        agrees("sd_point", a.standardDeviation("point").orElseThrow());
        assertThat(a.unit()).isEqualTo("% of span");
    }

    @Test
    void cyclesBesidePointAndDirection() {
        final AnalysisOfVariance a = statistics.cycles().orElseThrow();
        // A difference of two sums of squares that agree to two digits.
        assertThat(a.source("cycle").sumOfSquares()).isCloseTo(FromR.value("run", "cycle_ss"), within(1e-13));
        agrees("cycle_p", a.probability("cycle").orElseThrow());
    }

    @Test
    void lackOfFitOfTheStraightLine() {
        final LackOfFit l = statistics.lackOfFit().orElseThrow();
        agrees("lack_ss", l.analysis().source(LackOfFit.LACK_OF_FIT).sumOfSquares());
        agrees("lack_pure_ss", l.analysis().last().sumOfSquares());
        agrees("lack_p", l.analysis().probability(LackOfFit.LACK_OF_FIT).orElseThrow());
        assertThat(l.points()).extracting(LackOfFit.Point::readings).containsOnly(6);
        assertThat(l.curve().data().xName()).isEqualTo("expected output (% of span)");
    }

    @Test
    void errorLine() {
        final CalibrationLine line = analysis.errorLine().orElseThrow();
        agrees("line_slope", line.slope().value());
        agrees("line_slope_u", line.slope().u());
        assertThat(line.data().yName()).isEqualTo("error (% of span)");
    }

    @Test
    void theReadingAndTheScatterThatStandOutMost() {
        final Suspect reading = statistics.suspectReading(0.05).orElseThrow();
        agrees("grubbs", reading.test().statistic());
        agrees("grubbs_critical", reading.test().critical());
        assertThat(reading.isSuspected()).isFalse();
        final Suspect scatter = statistics.suspectScatter(0.05).orElseThrow();
        agrees("cochran", scatter.test().statistic());
        agrees("cochran_critical", scatter.test().critical());
        agrees("cochran_at", scatter.position());
        assertThat(scatter.isSuspected()).isTrue();
        assertThat(scatter.test().kind()).isEqualTo(OutlierTest.Kind.COCHRAN);
        assertThat(scatter.errors()).hasSize(3);
    }
}
