package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import spanwright.error.Finding;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderers;

/** What a question to a record found is shown as the value itself would be. The figures are made up. */
class FindingRendererTest {
    private static final Renderers ALL = Renderers.of(FindingRendererTest.class.getClassLoader());

    @Test
    void whatIsNotDeterminedShowsItsReasonWithMarkupAsText() {
        final MimeBundle shown = ALL.render(Finding.notDetermined("the cell holds <b>"));
        assertThat(shown.data().get(MimeBundle.HTML).toString())
            .contains("Not determined: the cell holds &lt;b&gt;.").doesNotContain("<b>");
    }

    @Test
    void whatWasFoundIsShownAsTheValueItself() {
        final Comparison value = Comparison.of("Lines").row("slope", "2.0", 2.01, "made up");
        assertThat(ALL.render(Finding.of(value)).data()).isEqualTo(ALL.render(value).data());
    }

    @Test
    void aPlainNumberStaysText() {
        assertThat(ALL.render(Finding.of(0.25)).data()).containsOnlyKeys(MimeBundle.TEXT);
        assertThat(ALL.render(Finding.of(0.25)).data().get(MimeBundle.TEXT)).isEqualTo("0.25");
    }
}
