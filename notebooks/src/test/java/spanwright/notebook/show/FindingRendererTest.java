package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.error.Finding;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderers;

/** Through the service loader, as a cell has it. */
class FindingRendererTest {
    private static MimeBundle shown(Object value) {
        return Renderers.of(FindingRenderer.class.getClassLoader()).render(value);
    }

    @Test
    void whatWasFoundIsShownAsIfItStoodAlone() {
        final Comparison alone = Comparison.of("thermometer").row("y", "0.5", 0.5, "by hand");
        assertThat(shown(Finding.of(alone)).data()).isEqualTo(shown(alone).data())
            .containsKey(MimeBundle.HTML);
        assertThat(shown(Finding.of(Finding.of(alone))).data()).isEqualTo(shown(alone).data());
    }

    @Test
    void aPlainValueIsShownAsItsText() {
        assertThat(shown(Finding.of(List.of(1, 2))).data().get(MimeBundle.TEXT)).isEqualTo("[1, 2]");
    }

    @Test
    void whatWasNotFoundIsShownWithTheReasonEscaped() {
        final MimeBundle bundle = shown(Finding.notDetermined("the record <LT-101> has one cycle only"));
        assertThat(bundle.data().get(MimeBundle.TEXT))
            .isEqualTo("Not determined: the record <LT-101> has one cycle only.");
        assertThat(bundle.data().get(MimeBundle.HTML).toString()).contains("the record &lt;LT-101&gt; has");
    }
}
