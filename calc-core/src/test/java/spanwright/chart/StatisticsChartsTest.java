package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spanwright.error.ChannelAnalysis;
import spanwright.error.DeadBand;
import spanwright.error.DeadBand.Reversal;
import spanwright.error.WarmUp;
import spanwright.fit.AnalysisOfVariance;
import spanwright.fit.OutlierTest;
import spanwright.fit.OutlierTest.Kind;
import spanwright.fit.Sample;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.reference.FromR;
import spanwright.reference.PublishedData;

/** The pictures of scatter, and what they say; figures from R (test-data/published/r_statistics.R). */
class StatisticsChartsTest {
    private static final double[] SEVEN = {10.1, 10.0, 10.2, 9.9, 10.1, 12.0, 9.0};

    @Test
    void theBarsAreTheStandardDeviationsThatTheSourcesAdd() throws IOException {
        final PublishedData d = PublishedData.load("nist-strd/SiRstv");
        final AnalysisOfVariance a = AnalysisOfVariance.nested(d.numbers("resistance"),
            Map.of("instrument", d.texts("instrument"))).in("\u03a9 cm");
        assertThat(a.standardDeviation("instrument").orElseThrow())
            .isCloseTo(FromR.value("sirstv", "between_sd"), within(1e-11));
        final Picture picture = StatisticsCharts.sources(a);
        FitChartsTest.keep("anova", picture);
        assertThat(picture.title()).isEqualTo("Most of the variance, "
            + NumberText.plain(FromR.value("sirstv", "within_percent"), 2)
            + " %, comes from \"within\", with a standard deviation of 0.10 \u03a9 cm.");
        assertThat(picture.svg()).contains(">0.020 \u03a9 cm, 3.5 % of variance<",
            ">standard deviation added by the source (\u03a9 cm)<");
    }

    @Test
    void nestedSourcesStandOneUnderTheOther() throws IOException {
        final Map<String, List<String>> factors = new LinkedHashMap<>();
        factors.put("day", List.of("a", "a", "a", "a", "b", "b", "b", "b"));
        factors.put("direction", List.of("u", "u", "d", "d", "u", "u", "d", "d"));
        // By hand (StatisticsTest): components 22.5, 3 and 2.
        final Picture picture = StatisticsCharts.sources(AnalysisOfVariance.nested(
            new double[] {1, 3, 5, 7, 10, 12, 10, 12}, factors));
        FitChartsTest.keep("nested", picture);
        assertThat(picture.title()).startsWith("Most of the variance, 82 %, comes from \"day\"");
        assertThat(picture.svg()).contains(">4.7, 82 % of variance<", ">1.7, 11 % of variance<",
            ">1.4, 7.3 % of variance<");
    }

    @Test
    void cellsOfUnlikeSizeShowMeanSquares() throws IOException {
        final Picture picture = StatisticsCharts.sources(AnalysisOfVariance.oneWay("day",
            new double[] {1, 2}, new double[] {3, 4, 5}).in("mV"));
        FitChartsTest.keep("unequal", picture);
        assertThat(picture.title()).startsWith("Mean square of each source; the cells are not of one size");
        // By hand: 7.5 / 1 and 2.5 / 3.
        assertThat(picture.svg()).contains(">7.5<", ">0.83<", ">mean square (square of mV)<");
    }

    @Test
    void theSuspectIsMarkedAndKept() throws IOException {
        final OutlierTest both = OutlierTest.grubbs(Kind.GRUBBS_TWO_SIDED, SEVEN, 0.05);
        assertThat(both.lowerLimit().orElseThrow()).isCloseTo(FromR.value("grubbs", "lower"), within(1e-9));
        assertThat(both.upperLimit().orElseThrow()).isCloseTo(FromR.value("grubbs", "upper"), within(1e-9));
        final Picture picture = StatisticsCharts.outlier(both, "current (mA)", "reading 6");
        FitChartsTest.keep("grubbs-0", picture);
        assertThat(picture.title()).isEqualTo("Grubbs, two-sided, 7 readings: reading 6 is suspected, 2.022"
            + " above 2.020 at a significance of 0.05; it is kept.");
        assertThat(picture.svg()).contains(">reading 6: suspected, kept<", ">dashed: suspected beyond<");
        assertThat(picture.alternative()).startsWith("7 readings").endsWith("None is left out.");
    }

    @Test
    void aOneSidedTestHasALimitOnItsOwnSideOnly() throws IOException {
        final OutlierTest high = OutlierTest.grubbs(Kind.GRUBBS_HIGHEST, SEVEN, 0.05);
        assertThat(high.upperLimit().orElseThrow()).isCloseTo(FromR.value("grubbs", "one_sided_upper"),
            within(1e-9));
        assertThat(high.lowerLimit()).isEmpty();
        final OutlierTest low = OutlierTest.grubbs(Kind.GRUBBS_LOWEST, SEVEN, 0.05);
        assertThat(low.upperLimit()).isEmpty();
        final Picture picture = StatisticsCharts.outlier(low, "current (mA)", "reading 7");
        FitChartsTest.keep("grubbs-low", picture);
        assertThat(picture.title()).contains("reading 7 stands out most, not more than chance explains,"
            + " 1.322 against 1.938").doesNotContain("kept");
        assertThat(picture.svg()).contains("reading 7: most apart, not suspected");
    }

    @Test
    void cochranShowsTheShareOfEachGroup() throws IOException {
        final OutlierTest test = OutlierTest.cochran(List.of(new Sample(3, 0, 0.1), new Sample(3, 5, 0.9),
            new Sample(3, 1, 0.2)), 0.05);
        assertThat(test.shareOfVariance(2)).isCloseTo(0.04 / 0.86, within(1e-14));
        assertThat(test.lowerLimit()).isEmpty();
        final Picture picture = StatisticsCharts.outlier(test, "", "group 2");
        FitChartsTest.keep("cochran", picture);
        // 0.871: R 4.2 from qf (StatisticsTest).
        assertThat(picture.title()).contains("3 groups: group 2 is suspected, 0.942 above 0.871");
        assertThat(picture.svg()).contains(">group 2: suspected, kept<");
    }

    @Test
    void repeatabilityShowsTheWorstSpreadAndThePooledScatter() throws IOException {
        final Picture picture = StatisticsCharts.repeatability(ChannelAnalysis.of(FromR.run())
            .nonRepeatability().orElseThrow());
        FitChartsTest.keep("repeatability", picture);
        assertThat(picture.title()).isEqualTo("Non-repeatability "
            + NumberText.fixed(FromR.value("run", "spread"), 3) + " % of span, at 75 % upscale; pooled"
            + " standard deviation " + NumberText.uncertainty(FromR.value("run", "pooled_sd"))
            + " % of span.");
        assertThat(picture.svg()).contains(">spread 0.032, upscale<",
            "0.0070 % of span, 20 degrees of freedom<",
            "upscale<", "downscale<");
    }

    @Test
    void hysteresisIsTheLargestDistanceOfTheMeans() throws IOException {
        final Picture picture = StatisticsCharts.hysteresis(ChannelAnalysis.of(FromR.run()).hysteresis()
            .orElseThrow());
        FitChartsTest.keep("hysteresis", picture);
        assertThat(picture.title()).isEqualTo("Hysteresis "
            + NumberText.fixed(FromR.value("run", "hysteresis"), 3)
            + " % of span, at 50 %, dead band included.");
        assertThat(picture.svg()).contains(">hysteresis 0.015<");
        FitChartsTest.keep("hysteresis-bow", StatisticsCharts.hysteresis(ChannelAnalysis.of(
            ChannelChartsTest.run(Optional.empty())).hysteresis().orElseThrow()));
    }

    @Test
    void theDeadBandIsTheLargestReversalWithoutAnAnswer() throws IOException {
        final List<Reversal> reversals = List.of(new Reversal(10, 0.01, 0), new Reversal(10, 0.02, 0.02),
            new Reversal(50, 0.01, 0), new Reversal(50, 0.03, -0.005), new Reversal(50, 0.05, -0.05),
            new Reversal(90, 0.02, 0.015));
        final Picture picture = CourseCharts.deadBand(DeadBand.of(reversals, 0.006).orElseThrow());
        FitChartsTest.keep("deadband", picture);
        assertThat(picture.title()).isEqualTo(
            "Dead band 0.03 % of span, at 50 %: the largest reversal without an answer.");
        assertThat(picture.svg()).contains(">dead band 0.03<", ">no change below 0.006<",
            "at 90 % of range<");
        final Picture none = CourseCharts.deadBand(DeadBand.of(List.of(new Reversal(10, 1, 1),
            new Reversal(50, 1, 1), new Reversal(90, 1, 1)), 0).orElseThrow());
        assertThat(none.svg()).doesNotContain(">dead band");
    }

    @Test
    void warmUpMarksTheTimeFromWhichItIsSettled() throws IOException {
        final double[] minutes = {0, 5, 10, 15, 20, 25, 30, 40, 50, 60};
        final double[] output = {12.08, 12.03, 12.012, 12.001, 12.005, 12.0012, 12.0008, 12, 12, 12};
        final Picture picture = CourseCharts.warmUp(WarmUp.of(minutes, output, Span.milliamps4to20(),
            new PercentOfSpan(0.01)).orElseThrow());
        FitChartsTest.keep("warmup", picture);
        assertThat(picture.title()).isEqualTo("Settled within \u00b10.01 % of span from 25 minutes on, having"
            + " been 0.500 % of span off.");
        assertThat(picture.svg()).contains(">settled from 25 min<", ">band \u00b10.01<");
    }
}
