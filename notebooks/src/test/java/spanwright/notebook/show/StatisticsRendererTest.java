package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
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
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;

/** What a cell shows of scatter, suspects and the figures that have points behind them. */
class StatisticsRendererTest {
    private static final double[] SEVEN = {10.1, 10.0, 10.2, 9.9, 10.1, 12.0, 9.0};
    private static int call;

    private static String html(String name, Object value) {
        final String html = InventedChannel.html(name, value);
        assertThat(html).contains("<svg", "<table", "scope=\"col\"").doesNotContain("NaN", "Infinity");
        return html;
    }

    /** Four cycles of a bow with a made-up scatter; the sixth reading stands out. */
    private static ChannelAnalysis channel() {
        final double[] scatter = {0.002, -0.001, 0.001, 0, -0.002, 0.03};
        call = 0;
        return InventedChannel.with(p -> 0.03 + 0.0008 * p - 0.000008 * p * p + scatter[call++ % 6], 4,
            Optional.empty());
    }

    /**
     * JCGM 100:2008 (GUM), H.5, from memory: ten days of five readings, F 2.25, s of a reading 85 uV; the
     * digits of the sums follow from the printed daily figures.
     */
    @Test
    void anAnalysisShowsEachSourceAgainstTheNext() {
        final int[] means = {172, 116, 13, 144, 106, 31, 60, 125, 163, 41};
        final int[] deviations = {60, 77, 111, 101, 67, 93, 80, 73, 88, 86};
        final List<Sample> days = new ArrayList<>();
        for (int j = 0; j < 10; j++) {
            days.add(new Sample(5, means[j], deviations[j]));
        }
        final String html = html("anova", AnalysisOfVariance.oneWay("day", days).in("\u00b5V"));
        assertThat(html).contains("Shown to add to the scatter: day.", "sd added",
            "; sd in \u00b5V", ">85<", ">9<", ">40<");
        assertThat(html).containsPattern(">2\\.2\\d\\d<");
    }

    @Test
    void aSourceThatAddsNothingIsSaidToAddNothing() {
        final Map<String, List<String>> day = new LinkedHashMap<>();
        day.put("day <x>", List.of("a", "a", "b", "b"));
        assertThat(html("nothing", AnalysisOfVariance.nested(new double[] {1, 5, 1, 5}, day)))
            .contains("No source is shown", "it adds nothing that can be seen", "day &lt;x&gt;")
            .doesNotContain("day <x>");
        assertThat(html("unequal", AnalysisOfVariance.oneWay("day", new double[] {1, 2},
            new double[] {3, 4, 5}))).contains("not determined", "cells are not of one size");
    }

    /** Critical value 2.0200: R 4.2 from qt. */
    @Test
    void aSuspectIsMarkedAndStaysInTheTable() {
        final String html = html("grubbs", OutlierTest.grubbs(Kind.GRUBBS_TWO_SIDED, SEVEN, 0.05));
        assertThat(html).contains("Grubbs, two-sided, 7 readings: reading 6 is suspected, 2.022 above 2.020",
            "Reading 6 stands out more than chance explains: suspected, and kept.",
            "reading 6: suspected, kept", "The suspect stays in every figure", "+2.022");
        assertThat(html.split("<tr", -1)).as("a head and all seven readings").hasSize(9);
        assertThat(html("lowest", OutlierTest.grubbs(Kind.GRUBBS_LOWEST, SEVEN, 0.05)))
            .contains("Grubbs, one-sided, lowest", "most apart, not suspected", "\u22121.322");
        assertThat(html("cochran", OutlierTest.cochran(List.of(new Sample(3, 0, 0.1), new Sample(3, 5, 0.9),
            new Sample(3, 1, 0.2)), 0.05))).contains("group 2: suspected, kept", ">0.942<");
    }

    @Test
    void theStatisticsOfARunAnswerTheQuestions() {
        final String html = html("run", channel().statistics());
        assertThat(html).contains("a single reading scatters by", "15 degrees of freedom",
            "Does a straight line describe the errors?", "Does a reading stand out?", "Cochran",
            "Nothing is left out");
        assertThat(html).as("no point was read downscale").contains("not determined: ");
    }

    @Test
    void oneCycleIsNotDeterminedAndSaysWhy() {
        final String html = InventedChannel.html("single", InventedChannel.with(p -> 0.01).statistics());
        assertThat(html).contains("not determined, the record has one cycle only",
            "not determined: the record has one cycle only");
    }

    @Test
    void aSuspectOfARunIsNamedByItsCell() {
        assertThat(html("suspect", channel().statistics().suspectReading(0.05)))
            .contains("test.csv:", "error (% of span)");
    }

    @Test
    void repeatabilityShowsEachPointAndSide() {
        final String html = html("repeatability", channel().nonRepeatability());
        assertThat(html).contains("Non-repeatability", "pooled, 15 degrees of freedom",
            ">standard deviation<",
            "Hysteresis has no part in it");
        assertThat(html).containsOnlyOnce("\u25b6 ");
    }

    @Test
    void hysteresisOfATraverseOneWayIsNotDetermined() {
        assertThat(InventedChannel.html("one-way", channel().hysteresis()))
            .contains("Not determined: no point was read both upscale and downscale.");
    }

    @Test
    void pairsAndShiftsHaveTheirTables() {
        assertThat(InventedChannel.html("pair", channel().inaccuracy())).contains("The two extremes",
            ">highest<", ">lowest<", "test.csv:");
        assertThat(InventedChannel.html("shift", channel().zeroShift())).contains("zero shift: ",
            ">end point<", ">least squares<");
    }

    @Test
    void aDeadBandLiesBetweenTwoReversals() {
        final String html = html("deadband", DeadBand.of(List.of(new Reversal(10, 0.01, 0),
            new Reversal(10, 0.02, 0.02), new Reversal(50, 0.03, -0.005), new Reversal(50, 0.05, -0.05),
            new Reversal(90, 0.02, 0.015)), 0.006));
        assertThat(html).contains("Dead band 0.03 % of span, at 50 %.", ">0.03<", ">0.05<", ">none<",
            "In the manner of IEC 61298-2");
        assertThat(html).containsOnlyOnce("\u25b6 ");
    }

    @Test
    void warmUpShowsTheCourse() {
        final String html = html("warmup", WarmUp.of(new double[] {0, 5, 10, 15, 20, 25, 30, 40, 50, 60},
            new double[] {12.08, 12.03, 12.012, 12.001, 12.005, 12.0012, 12.0008, 12, 12, 12},
            Span.milliamps4to20(), new PercentOfSpan(0.01)));
        assertThat(html).contains("Settled within \u00b10.01 % of span from 25 minutes on", ">+0.500<",
            "\u2717 no", "\u2713 yes");
        assertThat(html).containsOnlyOnce("\u25b6 ");
    }
}
