package spanwright.notebook.show;

import java.util.Optional;
import spanwright.error.Finding;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.kernel.display.Renderers;

/** Shows what was found as if it stood alone, and what could not be found with the reason. */
public final class FindingRenderer implements Renderer {
    /** For the service loader. */
    public FindingRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (!(value instanceof Finding<?> finding)) {
            return Optional.empty();
        }
        return Optional.of(finding.isDetermined()
            ? Renderers.of(FindingRenderer.class.getClassLoader()).render(finding.orElseThrow())
            : Sheet.saying("Not determined: " + finding.reason() + ".").bundle());
    }
}
