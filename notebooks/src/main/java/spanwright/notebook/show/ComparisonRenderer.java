package spanwright.notebook.show;

import java.util.Optional;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.kernel.document.Headline;

/** Shows comparisons with published figures. */
public final class ComparisonRenderer implements Renderer {
    /** For the service loader. */
    public ComparisonRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof Comparison comparison) {
            return Optional.of(new Headline("", comparison.sentence()).on(comparison.sheet().bundle()));
        }
        return Optional.empty();
    }
}
