package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.uncertainty.Estimate;
import spanwright.verdict.AgreedRule;
import spanwright.verdict.DecisionRule;
import spanwright.verdict.GuardBand;
import spanwright.verdict.Limit;
import spanwright.verdict.LimitUse;
import spanwright.verdict.MeasurementResult;
import spanwright.verdict.PermissibleError;
import spanwright.verdict.Question;
import spanwright.verdict.Reliability;
import spanwright.verdict.RiskSurface;
import spanwright.verdict.RootDifference;
import spanwright.verdict.SimpleAcceptance;
import spanwright.verdict.TwoPercentGuardBand;
import spanwright.verdict.Verdict;

/** The pictures of decisions, and what they say; figures from test-data/published. */
class VerdictChartsTest {
    private static final SimpleAcceptance SIMPLE = SimpleAcceptance.withRatioAtLeast(1);
    private static final List<DecisionRule> RULES =
        List.of(SIMPLE, new TwoPercentGuardBand(), new RootDifference(), GuardBand.wholeUncertainty());

    private static void keep(String name, Picture picture) throws IOException {
        if (System.getProperty("spanwright.pictures") != null) {
            Files.write(Path.of(System.getProperty("spanwright.pictures"), name + ".png"), picture.png());
            Files.writeString(Path.of(System.getProperty("spanwright.pictures"), name + ".svg"),
                picture.svg());
        }
    }

    private static RiskSurface surface(DecisionRule rule) {
        return RiskSurface.of(rule, Reliability.TRUE, 2,
            IntStream.rangeClosed(4, 40).mapToObj(i -> i / 4.0).toList(),
            IntStream.rangeClosed(0, 29).mapToObj(i -> 0.70 + i * 0.01).toList());
    }

    @Test
    void theSurfaceLabelsItsLinesOfEqualRisk() throws IOException {
        final Picture picture = VerdictCharts.riskSurface(surface(SIMPLE));
        keep("surface", picture);
        assertThat(picture.title()).startsWith("Simple acceptance: false accept is at most ")
            .endsWith(" of all measured, at a ratio of 1 and 70 % in tolerance.");
        assertThat(picture.svg()).contains(">1 %<", ">2 %<", ">5 %<", ">false accept<", ">false reject<");
    }

    @Test
    void theSurfaceSaysWhereTheRuleDoesNotApply() throws IOException {
        final Picture picture = VerdictCharts.riskSurface(surface(SimpleAcceptance.withRatioAtLeast(4)));
        keep("surface-4", picture);
        assertThat(picture.title()).endsWith("white where the risk is not determined.");
        // Ratios 1 to 3.75 in quarters, 30 proportions each.
        assertThat(picture.alternative()).endsWith("Not determined at 360 of 1110 pairs.");
        assertThatThrownBy(() -> VerdictCharts.riskSurface(RiskSurface.of(
            SimpleAcceptance.withRatioAtLeast(4), Reliability.TRUE, 2, List.of(1.0, 2.0),
            List.of(0.8, 0.9)))).isInstanceOf(IllegalArgumentException.class)
            .hasMessageStartingWith("no risk to draw");
    }

    /** 4:1, k = 2, 95 % in tolerance: false accept 0.858 %, false reject 1.554 % (own calculation, SciPy). */
    @Test
    void theRulesStandSideBySideWithTheTwoPercentLine() throws IOException {
        final Picture picture = VerdictCharts.rules(RULES, 0.95, 2);
        keep("rules", picture);
        assertThat(picture.title()).startsWith("With 95 % of the population in tolerance, false accept and"
            + " false reject at a ratio of 4: simple acceptance 0.858 % and 1.55 %; guard band w = M U ");
        assertThat(picture.svg()).contains(">2 %<", ">root difference<", ">guard band w = U<",
            ">guard band w = M U<", ">simple acceptance<");
    }

    /** Simple acceptance 2.24 % at a ratio of 4, the multiplier 1.91 to 1.96 % (worst_case_risk.csv). */
    @Test
    void fourToOneDoesNotEnsureTwoPercent() throws IOException {
        final Picture picture = VerdictCharts.worstCases(RULES, 2);
        keep("worst", picture);
        assertThat(picture.title()).contains("simple acceptance 2.24 %;", "guard band w = M U 1.96 %;");
        assertThat(picture.svg()).contains(">2 %<");
        assertThatThrownBy(() -> VerdictCharts.worstCases(List.of(), 2))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("number of rules");
    }

    private static Question asked(Limit limit) {
        return Question.about("output error of LT-101A", Span.milliamps4to20())
            .within(limit, LimitUse.ACCEPTANCE).dated(LocalDate.of(2026, 3, 2))
            .under(new AgreedRule(GuardBand.wholeUncertainty(), LocalDate.of(2026, 1, 12), "QP-7"));
    }

    private static MeasurementResult at(double percent, double error) {
        return MeasurementResult.of(percent + " % up", percent, Estimate.of(error, 0.011), 2);
    }

    @Test
    void theBandsShowLimitGuardBandAndEachDecision() throws IOException {
        final Verdict verdict = asked(Limit.plusMinus(new PercentOfSpan(0.1)))
            .decide(at(0, 0.01), at(25, 0.05), at(50, 0.09), at(75, 0.13), at(100, -0.085));
        final Picture picture = VerdictCharts.bands(verdict);
        keep("bands", picture);
        // The accepted values end at 0.1 - 2 x 0.011: the error of 0.13 is 0.052 beyond.
        assertThat(picture.title()).isEqualTo("Does not meet: output error of LT-101A; deciding is 75.0 % up,"
            + " 0.052 % of span too much.");
        assertThat(picture.svg()).contains("Does not meet<", "Not shown<", "Meets<", ">guard band<",
            ">limit<", ">accepted by the rule<", ">error (% of span)<");
        assertThat(picture.alternative()).contains("75.0 % up: Does not meet; 50.0 % up: Not shown");
    }

    @Test
    void theBandsTakeOneSideBreakpointsAndWhatIsNotDetermined() throws IOException {
        final Limit limit = Limit.of(PermissibleError.between(-0.2, 0.1, Tolerance.Basis.PERCENT_OF_SPAN))
            .above(60, PermissibleError.atMost(0.05, Tolerance.Basis.PERCENT_OF_SPAN));
        final Verdict channel = asked(limit).decide(at(0, -0.15), at(50, 0.02), at(75, -0.3),
            MeasurementResult.withoutUncertainty("100 % up", 100, 0.02));
        keep("bands-odd", VerdictCharts.bands(channel));
        assertThat(VerdictCharts.bands(channel).title()).startsWith("Not determined: ");
        final Picture plant = VerdictCharts.bands(Verdict.overall("Kestrel Fen Water Works",
            List.of(channel, asked(limit).decide(at(50, 0.15)))));
        keep("bands-plant", plant);
        assertThat(plant.title())
            .startsWith("Does not meet: Kestrel Fen Water Works; deciding is output error");
        assertThatThrownBy(() -> VerdictCharts.bands(asked(limit).decide()))
            .isInstanceOf(IllegalArgumentException.class).hasMessageStartingWith("nothing was judged");
    }

    /** On the plane x + 2 y the line at 2 is where x + 2 y = 2. */
    @Test
    void contoursLieOnTheirLevel() {
        final double[] x = {0, 0.4, 1, 2};
        final double[] y = {0, 0.3, 1};
        final double[][] z = new double[x.length][y.length];
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < y.length; j++) {
                z[i][j] = x[i] + 2 * y[j];
            }
        }
        final List<Contours.Segment> line = new Contours(x, y, z).at(2);
        assertThat(line).isNotEmpty().allSatisfy(s -> {
            assertThat(s.x1() + 2 * s.y1()).isCloseTo(2, within(1e-12));
            assertThat(s.x2() + 2 * s.y2()).isCloseTo(2, within(1e-12));
        });
        // From (0, 1) to (2, 0): the length of the pieces is that of the line.
        assertThat(line.stream().mapToDouble(s -> Math.hypot(s.x1() - s.x2(), s.y1() - s.y2())).sum())
            .isCloseTo(Math.sqrt(5), within(1e-12));
        z[1][1] = Double.NaN;
        assertThat(new Contours(x, y, z).at(2)).hasSizeLessThan(line.size());
    }
}
