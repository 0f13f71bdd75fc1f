package spanwright.notebook.show;

import java.util.Optional;
import spanwright.error.Finding;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.kernel.display.Renderers;

/**
 * Shows what was found as if it had been asked for by itself: {@code channel.hysteresis()} in a cell shows
 * the hysteresis. What is not determined shows its reason.
 */
public final class FindingRenderer implements Renderer {
    /** For the service loader. */
    public FindingRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (!(value instanceof Finding<?> finding)) {
            return Optional.empty();
        }
        if (!finding.isDetermined()) {
            return Optional.of(Sheet.saying("Not determined: " + finding.reason() + ".").bundle());
        }
        final MimeBundle shown = Renderers.of(FindingRenderer.class.getClassLoader())
            .render(finding.value().orElseThrow());
        return Optional.of(shown).filter(b -> b.data().containsKey(MimeBundle.HTML));
    }
}
