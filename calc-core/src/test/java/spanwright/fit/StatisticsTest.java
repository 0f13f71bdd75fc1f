package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.fit.OutlierTest.Kind;

class StatisticsTest {
    /** Critical values at 5 %, computed independently in R 4.2 from qt. */
    @Test
    void grubbsCriticalValues() {
        final String[] two = {"1.1543", "1.4813", "1.7150", "1.8871", "2.0200", "2.1266", "2.2150", "2.2900",
            "2.3547", "2.4116", "2.4620", "2.5073", "2.5483"};
        final String[] one = {"1.1531", "1.4625", "1.6714", "1.8221", "1.9381", "2.0317", "2.1096", "2.1761",
            "2.2339", "2.2850", "2.3305", "2.3717", "2.4090"};
        for (int n = 3; n <= 15; n++) {
            assertAsPrinted(two[n - 3], OutlierTest.grubbsCritical(Kind.GRUBBS_TWO_SIDED, n, 0.05), "n = "
                + n);
            assertAsPrinted(one[n - 3], OutlierTest.grubbsCritical(Kind.GRUBBS_HIGHEST, n, 0.05), "n = " + n);
            assertAsPrinted(one[n - 3], OutlierTest.grubbsCritical(Kind.GRUBBS_LOWEST, n, 0.05), "n = " + n);
        }
    }

    @ParameterizedTest(name = "{0} groups of {1}: {2}  [{3}]")
    @CsvSource({
        "3, 2, 0.967, from memory of ISO 5725-2", "4, 2, 0.906, from memory of ISO 5725-2",
        "5, 2, 0.841, from memory of ISO 5725-2", "6, 2, 0.781, from memory of ISO 5725-2",
        "10, 2, 0.602, from memory of ISO 5725-2", "3, 3, 0.871, R 4.2 from qf", "4, 3, 0.768, R 4.2 from qf",
        "5, 3, 0.684, R 4.2 from qf", "6, 3, 0.616, R 4.2 from qf", "10, 3, 0.445, R 4.2 from qf"})
    void cochranCriticalValues(int groups, int readings, String printed) {
        assertAsPrinted(printed, OutlierTest.cochranCritical(groups, readings, 0.05));
    }

    @Test
    void grubbsShowsTheSuspectOfEachSide() {
        final double[] v = {10.1, 10.0, 10.2, 9.9, 10.1, 12.0, 9.0};
        final OutlierTest both = OutlierTest.grubbs(Kind.GRUBBS_TWO_SIDED, v, 0.05);
        final Sample sample = Sample.of(v);
        assertThat(both.suspect()).isEqualTo(5);
        assertThat(both.statistic()).isCloseTo((12 - sample.mean()) / sample.sd(), within(1e-12));
        assertThat(both.isSuspected()).isTrue();
        final OutlierTest low = OutlierTest.grubbs(Kind.GRUBBS_LOWEST, v, 0.05);
        assertThat(low.suspect()).isEqualTo(6);
        assertThat(low.statistic()).isCloseTo((sample.mean() - 9) / sample.sd(), within(1e-12));
        assertThat(low.isSuspected()).isFalse();
        assertThat(OutlierTest.grubbs(Kind.GRUBBS_HIGHEST, v, 0.05).suspect()).isEqualTo(5);
        assertThat(both.toString()).startsWith("Grubbs, two-sided: 2.022 exceeds 2.020 ")
            .endsWith("number 6 stands out most");
        assertThat(low.toString()).contains("does not exceed 1.938");
    }

    @Test
    void cochranShowsTheGroupOfLargestScatter() {
        final List<Sample> groups = List.of(new Sample(3, 0, 0.1), new Sample(3, 5, 0.9),
            new Sample(3, 1, 0.2));
        final OutlierTest t = OutlierTest.cochran(groups, 0.05);
        assertThat(t.suspect()).isEqualTo(1);
        assertThat(t.statistic()).isCloseTo(0.81 / 0.86, within(1e-12));
        assertThat(t.isSuspected()).isTrue();
        assertThat(t.critical()).isCloseTo(0.871, within(5e-4));
    }

    @Test
    void testsRefuseWhatHasNoScatter() {
        assertThatThrownBy(() -> OutlierTest.grubbs(Kind.GRUBBS_LOWEST, new double[] {3, 3, 3}, 0.05))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage("all 3 readings equal 3.0: none stands out");
        assertThatThrownBy(() -> OutlierTest.grubbs(Kind.COCHRAN, new double[] {1, 2, 3}, 0.05))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("takes groups");
        assertThatThrownBy(() -> OutlierTest.grubbs(Kind.GRUBBS_LOWEST, new double[] {1, 2}, 0.05))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("at least 3");
        final Sample still = new Sample(2, 1, 0);
        assertThatThrownBy(() -> OutlierTest.cochran(List.of(still, still), 0.05))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("no group has any scatter");
        assertThatThrownBy(() -> OutlierTest.cochran(List.of(still, new Sample(3, 1, 1)), 0.05))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("group 2 has 3 readings, group 1 has 2");
        assertThatThrownBy(() -> OutlierTest.cochranCritical(1, 2, 0.05))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("groups");
        assertThatThrownBy(() -> OutlierTest.grubbsCritical(Kind.GRUBBS_LOWEST, 3, 0))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("significance");
    }

    /**
     * JCGM 100:2008 (GUM), H.5, from memory: Zener standard, 10 days of 5 readings; last digits of the daily
     * means in uV above 10 V, and the daily standard deviations in uV. F 2.25, s of daily means 57 uV, u of
     * the mean 18 uV.
     */
    @Test
    void gumH5() {
        final int[] means = {172, 116, 13, 144, 106, 31, 60, 125, 163, 41};
        final int[] deviations = {60, 77, 111, 101, 67, 93, 80, 73, 88, 86};
        final List<Sample> days = new ArrayList<>();
        final double[] daily = new double[10];
        for (int j = 0; j < 10; j++) {
            days.add(new Sample(5, means[j], deviations[j]));
            daily[j] = means[j];
        }
        final AnalysisOfVariance a = AnalysisOfVariance.oneWay("day", days);
        assertThat(a.source("day").degreesOfFreedom()).isEqualTo(9);
        assertThat(a.last().degreesOfFreedom()).isEqualTo(40);
        // The GUM rounds before it divides, 5 * 57^2 / 85^2 = 2.25; the daily figures unrounded give 2.26.
        assertAsPrinted("85", a.standardDeviation("within").orElseThrow());
        assertThat(a.ratio("day").orElseThrow()).isCloseTo(2.25, within(0.02));
        assertAsPrinted("97", Sample.of(daily).mean());
        assertAsPrinted("57", Sample.of(daily).sd());
        assertAsPrinted("18", Sample.of(daily).meanEstimate().u());
        assertThat(a.source("day").meanSquare()).isCloseTo(5 * Math.pow(Sample.of(daily).sd(), 2),
            within(1e-8));
        // Days ignored, all 50 readings as one sample: u 13 uV.
        final double all = (a.source("day").sumOfSquares() + a.last().sumOfSquares()) / 49;
        assertAsPrinted("13", Math.sqrt(all / 50));
        // Between-day component: sqrt((s_a^2 - s_b^2)/K), s_b^2 the mean of the squared daily deviations.
        assertThat(a.standardDeviation("day").orElseThrow()).isCloseTo(
            Math.sqrt((a.source("day").meanSquare() - a.last().meanSquare()) / 5), within(1e-9));
        assertThat(a.toString()).contains("day: sum of squares ").contains("ratio 2.2");
    }

    /** Worked by hand: two days of two directions of two readings. */
    @Test
    void nestedFactorsByHand() {
        final double[] y = {1, 3, 5, 7, 10, 12, 10, 12};
        final Map<String, List<String>> factors = new LinkedHashMap<>();
        factors.put("day", List.of("a", "a", "a", "a", "b", "b", "b", "b"));
        factors.put("direction", List.of("u", "u", "d", "d", "u", "u", "d", "d"));
        final AnalysisOfVariance a = AnalysisOfVariance.nested(y, factors);
        // Day means 4 and 11 about 7.5; direction means 2, 6, 11, 11; readings 1 from their mean.
        assertThat(a.source("day").sumOfSquares()).isCloseTo(8 * 3.5 * 3.5, within(1e-12));
        assertThat(a.source("direction").sumOfSquares()).isCloseTo(4 * 4.0, within(1e-12));
        assertThat(a.last().sumOfSquares()).isCloseTo(8, within(1e-12));
        assertThat(a.sources().stream().map(AnalysisOfVariance.Source::degreesOfFreedom).toList())
            .containsExactly(1, 2, 4);
        assertThat(a.ratio("day").orElseThrow()).isCloseTo(98.0 / 8, within(1e-12));
        assertThat(a.ratio("direction").orElseThrow()).isCloseTo(4, within(1e-12));
        assertThat(a.ratio("within")).isEmpty();
        assertThat(a.standardDeviation("direction").orElseThrow()).isCloseTo(Math.sqrt(3), within(1e-12));
        assertThat(a.standardDeviation("day").orElseThrow()).isCloseTo(Math.sqrt(22.5), within(1e-12));
        assertThat(a.standardDeviation("within").orElseThrow()).isCloseTo(Math.sqrt(2), within(1e-12));
    }

    @Test
    void unequalCellsHaveNoComponent() {
        final AnalysisOfVariance a = AnalysisOfVariance.oneWay("day", new double[] {1, 2},
            new double[] {3, 4, 5});
        assertThat(a.standardDeviation("day")).isEmpty();
        assertThat(a.ratio("day")).isPresent();
        final AnalysisOfVariance still = AnalysisOfVariance.oneWay("day", new double[] {1, 1},
            new double[] {2, 2});
        assertThat(still.ratio("day")).isEmpty();
        assertThat(still.probability("day")).isEmpty();
    }

    @Test
    void refusesAFactorWithoutFreedomAndAnUnknownName() {
        assertThatThrownBy(() -> AnalysisOfVariance.oneWay("day", new double[] {1, 2, 3}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("degrees of freedom of day");
        assertThatThrownBy(() -> AnalysisOfVariance.oneWay("day", new double[] {1}, new double[] {2}))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("degrees of freedom of within");
        assertThatThrownBy(() -> AnalysisOfVariance.nested(new double[] {1, 2}, Map.of("day", List.of("a"))))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage("factor day has 1 labels for 2 readings");
        final AnalysisOfVariance a = AnalysisOfVariance.oneWay("day", new double[] {1, 2},
            new double[] {3, 4});
        assertThatThrownBy(() -> a.source("hour")).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("there is no source \"hour\", only [day, within]");
    }

    @Test
    void lackOfFitSpeaksPlainly() {
        final double[] x = {0, 0, 1, 1, 2, 2};
        final LackOfFit bent = LackOfFit.of(x, new double[] {0, 0.01, 5, 5.01, 0, 0.01}, 1);
        assertThat(bent.isShownAt(0.05)).isTrue();
        assertThat(bent.toString()).startsWith("the curve does not describe the readings (probability ");
        final LackOfFit straight = LackOfFit.of(x, new double[] {0, 1, 1.1, 2, 2, 3}, 1);
        assertThat(straight.isShownAt(0.05)).isFalse();
        assertThat(straight.toString()).startsWith("no lack of fit is shown");
        assertThat(LackOfFit.of(x, new double[] {0, 0, 5, 5, 0, 0}, 1).isShownAt(0.05)).isTrue();
        assertThat(LackOfFit.of(new double[] {0, 0, 1, 1, 2, 2, 3, 3},
            new double[] {0, 0.1, 1, 1.1, 4, 4.1, 9, 9.1},
            2).isShownAt(0.05)).isFalse();
    }

    @Test
    void lackOfFitNeedsReplicatesAndSparePoints() {
        assertThatThrownBy(() -> LackOfFit.of(new double[] {0, 1, 2}, new double[] {0, 1, 2}, 1))
            .isInstanceOf(NoFitException.class).hasMessageContaining("no stimulus is repeated");
        assertThatThrownBy(() -> LackOfFit.of(new double[] {0, 0, 2, 2}, new double[] {0, 1, 2, 3}, 1))
            .isInstanceOf(NoFitException.class).hasMessageContaining("a lack of fit needs 3");
    }
}
