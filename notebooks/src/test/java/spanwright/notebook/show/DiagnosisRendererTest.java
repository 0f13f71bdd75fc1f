package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.notebook.show.InventedChannel.html;
import static spanwright.notebook.show.InventedChannel.text;

import org.junit.jupiter.api.Test;
import spanwright.error.Diagnosis;
import spanwright.error.ErrorPattern;

/** Faults made from their own definition. */
class DiagnosisRendererTest {
    @Test
    void theLikeliestStandsFirstWithItsEvidenceAndCheck() {
        final String shown = html("diagnosis", InventedChannel.with(p -> Math.min(0, 88.56 - p)).diagnosis());
        assertThat(shown).contains("LT-102B: The errors speak for: compliance knee (flat at 88.6 % of span",
            "Hypotheses, the likeliest first", "\u25b6 compliance knee", "What would tell",
            ErrorPattern.COMPLIANCE_KNEE.check().replace("'", "&#39;"), "<svg", "Tried, and below 0.5 %");
    }

    @Test
    void atEachPointShapeAndRestAddUp() {
        assertThat(text(InventedChannel.with(p -> 0.3 + (p == 50 ? 0.01 : 0)).diagnosis()))
            .containsPattern("50\\.00 +\\+0\\.310 +\\+0\\.302 +\\+0\\.008")
            .containsPattern("> zero shift").containsPattern("  ground-loop offset +\\d+ ");
    }

    @Test
    void noneFitsMarksNoRow() {
        final String shown = text(InventedChannel.with(p -> p % 50 == 0 ? 0.4 : -0.4).diagnosis());
        assertThat(shown).startsWith("LT-102B: None of the known shapes fits")
            .contains("Nearest hypotheses: none fits", "look at the readings and the set-up")
            .doesNotContain("\n> ");
    }

    @Test
    void tooFewPointsSayWhy() {
        final Diagnosis any = InventedChannel.with(p -> 0.3).diagnosis().orElseThrow();
        assertThat(text(any.about(ErrorPattern.OTHER_CHANNEL)))
            .isEqualTo("Not determined: another channel's record was not among the hypotheses tried.");
    }
}
