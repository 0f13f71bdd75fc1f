package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.notebook.show.InventedChannel.html;
import static spanwright.notebook.show.InventedChannel.text;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import spanwright.error.Trim;
import spanwright.error.TrimPivot;

/**
 * Offset 0.1 % and bow 0.1 % of span: figures worked independently before the code was written (TrimTest).
 */
class TrimRendererTest {
    private static double offsetAndBow(double p) {
        return 0.1 + 0.4 * p / 100 * (1 - p / 100);
    }

    @Test
    void theOneTargetStandsFirstThenWhatItLeaves() {
        final String shown = html("trim-advice", Trim.gainAbout(0).settableTo(0.002)
            .advise(InventedChannel.with(TrimRendererTest::offsetAndBow)));
        assertThat(shown)
            .contains("LT-102B: Adjust the gain trim (pivot 0 mA): apply 20.000 mA, set 19.9846 mA");
        assertThat(shown.indexOf("What to set")).isLessThan(shown.indexOf("<svg"));
        assertThat(shown.split("fixes the setting", -1)).as("two residuals fix one gain").hasSize(3);
        assertThat(shown).contains("\u2713 within").doesNotContain("\u2717 beyond");
    }

    @Test
    void nullingAtTheTopIsShownBesideTheTarget() {
        assertThat(text(Trim.gainAbout(0).advise(InventedChannel.with(TrimRendererTest::offsetAndBow))))
            .containsPattern("> the target +19\\.9846 +0\\.0963")
            .containsPattern("nulled at 20\\.000 mA +20\\.0000 +0\\.1399")
            .containsPattern("left as found +20\\.0160 +0\\.2000 +2\\.00")
            .doesNotContain("missed low");
    }

    @Test
    void whereNothingHelpsTheTableSaysSoAndWhichPointsStayBeyond() {
        final String shown = html("trim-cannot", Trim.gainAbout(0).advise(InventedChannel.with(p ->
            p == 50 ? 0.4 : -0.1)));
        assertThat(shown).contains("Adjustment cannot help: the best setting still leaves",
            "What the best setting would be: adjustment cannot help", "\u2717 beyond");
    }

    @Test
    void aSmallWishIsLeftAlone() {
        assertThat(text(Trim.gainAbout(4).settableTo(0.01).advise(InventedChannel.with(p -> p / 5000))))
            .contains("Do not touch: the wanted change", "What the best setting would be: do not touch")
            .contains("missed low by what can be set", "settability 0.010 mA");
    }

    @Test
    void withoutToleranceNothingIsSaidOfTolerances() {
        final String shown = text(Trim.gainAbout(0)
            .advise(InventedChannel.with(TrimRendererTest::offsetAndBow,
            1, Optional.empty())));
        assertThat(shown).contains("not stated", "not determined", "whether adjustment can help is not");
    }

    @Test
    void zeroAndSpanHaveTwoStepsAndNoCurve() {
        final String shown = text(Trim.zeroAndSpan()
            .advise(InventedChannel.with(TrimRendererTest::offsetAndBow)));
        assertThat(shown).containsPattern("> +4\\.000 mA +3\\.992")
            .containsPattern("> +20\\.000 mA +19\\.992")
            .doesNotContain("What other readings");
    }

    @Test
    void thePivotIsShownWithItsPoints() {
        final String shown = html("trim-pivot", TrimPivot.between(
            InventedChannel.with(p -> p % 50 == 0 ? 0.001 : -0.001),
            InventedChannel.with(p -> 0.002 * (p + 25))));
        assertThat(shown).contains("LT-102B: the turn left ", "95 % interval", "may pivot at 0 mA", "<svg",
            "What the turn did, point by point");
    }
}
