package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import spanwright.fit.AnalysisOfVariance;
import spanwright.fit.LackOfFit;
import spanwright.readings.Direction;

/**
 * Worked by hand from the definitions; the tests themselves are checked against R and NIST in the fit
 * package.
 */
class RunStatisticsTest {
    private static Runs cycles(double[] shift, double[]... upThenDown) {
        final Runs runs = Runs.milliamps();
        for (int c = 0; c < shift.length; c++) {
            final double s = shift[c];
            runs.cycle(c + 1, Arrays.stream(upThenDown[0]).map(v -> v + s).toArray(),
                Arrays.stream(upThenDown[1]).map(v -> v + s).toArray());
        }
        return runs;
    }

    @Test
    void lackOfFitSeesABow() {
        final double[] bow = {0, 0.075, 0.1, 0.075, 0};
        final Runs runs = Runs.milliamps();
        final double[] scatter = {0.001, -0.001, 0.002};
        for (int c = 1; c <= 3; c++) {
            for (int i = 0; i < 5; i++) {
                runs.at(25 * i, bow[i] + scatter[(c + i) % 3], Direction.UPSCALE, c);
            }
        }
        final LackOfFit bent = RunStatistics.of(runs.analysis()).lackOfFit().orElseThrow();
        assertThat(bent.isShownAt(0.01)).isTrue();
        assertThat(bent.analysis().last().degreesOfFreedom()).isEqualTo(10);
        final Finding<LackOfFit> single = RunStatistics.of(
            Runs.withErrors(bow, new double[0]).analysis()).lackOfFit();
        assertThat(single.reason()).contains("no stimulus is repeated");
        assertThat(RunStatistics.of(Runs.withErrors(new double[] {0, 1}, new double[0]).analysis())
            .lackOfFit()
            .reason()).isEqualTo("there are 2 readings; three are needed");
    }

    @Test
    void sourcesSeparatePointDirectionAndScatter() {
        final double[] plus = {0.01, -0.01};
        final AnalysisOfVariance a = RunStatistics.of(cycles(plus, new double[] {0, 0.1, 0.2},
            new double[] {0.04, 0.14, 0.24}).analysis()).sources().orElseThrow();
        // Points 0.02, 0.12, 0.22 of 4 readings each; directions 0.02 off; readings 0.01 off.
        assertThat(a.source("point").sumOfSquares()).isCloseTo(4 * 2 * 0.01, within(1e-10));
        assertThat(a.source("direction").sumOfSquares()).isCloseTo(12 * 0.0004, within(1e-10));
        assertThat(a.last().sumOfSquares()).isCloseTo(12 * 0.0001, within(1e-10));
        assertThat(a.source("direction").degreesOfFreedom()).isEqualTo(3);
        assertThat(RunStatistics.of(Runs.withErrors(new double[] {0, 0, 0}, new double[0]).analysis())
            .sources()
            .reason()).startsWith("the record has too few readings");
    }

    @Test
    void daysThatDifferAreSeen() {
        final Map<String, ChannelAnalysis> days = new LinkedHashMap<>();
        final double[] plus = {0.01, -0.01};
        days.put("Monday", cycles(plus, new double[] {0, 0.1, 0.2}, new double[] {0.02, 0.12, 0.22})
            .analysis());
        days.put("Friday", cycles(plus, new double[] {0.3, 0.4, 0.5}, new double[] {0.32, 0.42, 0.52})
            .analysis());
        final AnalysisOfVariance a = RunStatistics.acrossDays(days).orElseThrow();
        // Three points; days 0.15 off the point, directions 0.01 off the day, readings 0.01 off: 24 readings.
        assertThat(a.source("day").sumOfSquares()).isCloseTo(24 * 0.0225, within(1e-10));
        assertThat(a.source("day").degreesOfFreedom()).isEqualTo(3);
        assertThat(a.source("direction").sumOfSquares()).isCloseTo(24 * 0.0001, within(1e-10));
        assertThat(a.source("direction").degreesOfFreedom()).isEqualTo(6);
        assertThat(a.last().sumOfSquares()).isCloseTo(24 * 0.0001, within(1e-10));
        assertThat(a.probability("day").orElseThrow()).isLessThan(1e-6);
        assertThat(RunStatistics.acrossDays(Map.of("Monday", days.get("Monday"))).isDetermined()).isFalse();
    }

    @Test
    void cyclesThatDifferAsAWholeAreSeen() {
        final Runs runs = Runs.milliamps();
        final double[] shift = {0.1, 0.02, 0};
        final double[] scatter = {0.003, -0.002, -0.001, 0.002, -0.003, 0.001, 0};
        for (int c = 0; c < 3; c++) {
            for (int i = 0; i < 5; i++) {
                runs.at(25 * i, 0.05 * i + shift[c] + scatter[(2 * i + 3 * c) % 7], Direction.UPSCALE, c + 1);
            }
        }
        final AnalysisOfVariance a = RunStatistics.of(runs.analysis()).cycles().orElseThrow();
        assertThat(a.source("cycle").degreesOfFreedom()).isEqualTo(2);
        assertThat(a.last().degreesOfFreedom()).isEqualTo(15 - 5 - 2);
        assertThat(a.probability("cycle").orElseThrow()).isLessThan(1e-6);
        // Without the shifts the same scatter shows nothing.
        final AnalysisOfVariance none = RunStatistics.of(cycles(new double[] {0.001, -0.001, 0},
            new double[] {0, 0.1, 0.2}, new double[] {0, 0.1, 0.2}).analysis()).cycles().orElseThrow();
        assertThat(none.source("cycle").sumOfSquares()).isCloseTo(6 * 2e-6, within(1e-12));
    }

    @Test
    void oneCycleOrOnePointEachLeavesNothingToTest() {
        assertThat(RunStatistics.of(Runs.withErrors(new double[] {0, 1, 0}, new double[] {0, 0}).analysis())
            .cycles().reason()).isEqualTo("the record has one cycle only");
        final Runs one = Runs.milliamps().at(50, 0.1, Direction.UPSCALE, 1).at(50, 0.2, Direction.UPSCALE, 2);
        assertThat(RunStatistics.of(one.analysis()).cycles().reason())
            .contains("no scatter is left to test against");
        one.at(50, 0.11, Direction.UPSCALE, 1).at(50, 0.21, Direction.UPSCALE, 2);
        final AnalysisOfVariance a = RunStatistics.of(one.analysis()).cycles().orElseThrow();
        assertThat(a.source("cycle").sumOfSquares()).isCloseTo(0.01, within(1e-10));
        assertThat(a.last().sumOfSquares()).isCloseTo(1e-4, within(1e-10));
    }

    @Test
    void aCycleOfOtherPointsCannotBeToldApart() {
        final Runs runs = Runs.milliamps();
        for (int k = 0; k < 3; k++) {
            runs.at(25, 0.01 * k, Direction.UPSCALE, 1).at(75, 0.02 * k, Direction.UPSCALE, 2);
        }
        assertThat(RunStatistics.of(runs.analysis()).cycles().reason())
            .startsWith("cycles and points cannot be told apart");
    }

    @Test
    void theSuspectIsShownWithItsCellAndNotDropped() {
        final Runs runs = Runs.milliamps();
        final double[] readings = {0.01, 0.012, 0.011, 0.009, 0.2};
        for (int c = 0; c < 5; c++) {
            runs.at(50, readings[c], Direction.UPSCALE, c + 1);
            runs.at(100, 0.01 * (c % 2), Direction.UPSCALE, c + 1);
        }
        final ChannelAnalysis analysis = runs.analysis();
        final Suspect s = RunStatistics.of(analysis).suspectReading(0.05).orElseThrow();
        assertThat(s.isSuspected()).isTrue();
        assertThat(s.position()).isEqualTo(50);
        assertThat(s.errors().get(0).cell().toString()).isEqualTo("run.csv:10:3");
        assertThat(s.toString()).startsWith("suspected: 50 % up (run.csv:10:3), Grubbs, two-sided 1.7");
        assertThat(analysis.inaccuracy().orElseThrow().largest().value()).isCloseTo(0.2, within(1e-9));
        final Suspect scatter = RunStatistics.of(analysis).suspectScatter(0.05).orElseThrow();
        assertThat(scatter.position()).isEqualTo(50);
        assertThat(scatter.isSuspected()).isTrue();
        assertThat(scatter.errors()).hasSize(5);
        assertThat(scatter.excess()).isGreaterThan(1);
    }

    @Test
    void withoutRepeatedReadingsNothingIsSuspected() {
        final RunStatistics s = RunStatistics.of(
            Runs.withErrors(new double[] {0, 0.1, 0}, new double[] {0, 0.1}).analysis());
        assertThat(s.suspectReading(0.05).reason()).contains("three times");
        assertThat(s.suspectScatter(0.05).reason()).contains("fewer than two");
        assertThat(s.toString()).contains("cycles:\nnot determined: the record has one cycle only");
    }
}
