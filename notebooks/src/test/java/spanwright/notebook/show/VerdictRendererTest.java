package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.chain.ChainElement;
import spanwright.chain.Coverage;
import spanwright.chain.MeasuringChain;
import spanwright.kernel.display.MimeBundle;
import spanwright.quantity.Span;
import spanwright.uncertainty.Estimate;
import spanwright.verdict.AgreedRule;
import spanwright.verdict.GuardBand;
import spanwright.verdict.Limit;
import spanwright.verdict.LimitUse;
import spanwright.verdict.MeasurementResult;
import spanwright.verdict.NormalPrior;
import spanwright.verdict.Population;
import spanwright.verdict.Question;
import spanwright.verdict.Reliability;
import spanwright.verdict.RiskSurface;
import spanwright.verdict.Verdict;

/** A channel, a chain and a plant show their verdict alike. The figures are made up. */
class VerdictRendererTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final AgreedRule WHOLE =
        new AgreedRule(GuardBand.wholeUncertainty(), LocalDate.of(2026, 1, 12), "QP-7");

    private static String html(Object value) {
        return new VerdictRenderer().render(value).orElseThrow().data().get(MimeBundle.HTML).toString();
    }

    private static Verdict channel() {
        return Question.about("error of LT-101A", Span.milliamps4to20())
            .within(Limit.plusMinus(percentOfSpan(0.1)), LimitUse.ACCEPTANCE).under(WHOLE).dated(DAY)
            .among(Population.ofPoints(NormalPrior.of(0, 0.04, "five years of records")))
            .decide(MeasurementResult.of("50 % up", 50, Estimate.of(0.03, 0.011), 2),
                MeasurementResult.of("100 % up", 100, Estimate.of(0.09, 0.011), 2));
    }

    private static Verdict chain() {
        return MeasuringChain.of(ChainElement.oneToOne("card").withAccuracy(percentOfSpan(0.1)))
            .withTrials(10_000).claim(percentOfSpan(0.3), Coverage.coverage(0.95)).verdict(WHOLE, DAY);
    }

    @Test
    void theSentenceTheBandsAndTheRisksOfAChannelAreShown() {
        assertThat(html(channel())).contains("? Not shown \u00b10.1 % of span", "accepted by the rule",
            "risk over the population, at this point", "Points, the deciding one first",
            "What would change it");
    }

    @Test
    void aChainIsShownLikeAChannel() {
        assertThat(html(chain())).contains("error of the measuring chain", "accepted by the rule", "QP-7",
            "test uncertainty ratio");
    }

    @Test
    void aPlantShowsEachOfItsVerdicts() {
        assertThat(html(Verdict.overall("Kestrel Fen Water Works", List.of(channel(), chain()))))
            .contains("Verdicts, the worst first", "error of LT-101A", "error of the measuring chain",
                "accepted by the rule");
    }

    @Test
    void nothingJudgedIsShownWithoutAPicture() {
        final Verdict nothing = Question.about("error of LT-102", Span.milliamps4to20()).decide();
        assertThat(html(nothing)).contains("Not determined", "a finding").doesNotContain("<svg");
    }

    @Test
    void aRiskSurfaceIsDrawn() {
        final RiskSurface surface = RiskSurface.of(GuardBand.wholeUncertainty(), Reliability.TRUE, 2,
            List.of(2.0, 4.0), List.of(0.8, 0.95));
        assertThat(html(surface)).contains("<svg", "false reject");
        assertThat(new VerdictRenderer().render(RiskSurface.of(GuardBand.wholeUncertainty(), Reliability.TRUE,
            2, List.of(2.0), List.of(0.8)))).isEmpty();
    }
}
