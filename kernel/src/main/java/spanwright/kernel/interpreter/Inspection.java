package spanwright.kernel.interpreter;

import java.util.Objects;
import spanwright.kernel.display.MimeBundle;

/**
 * What is known of a name.
 *
 * @param bundle text and, where it helps, HTML
 */
public record Inspection(MimeBundle bundle) {
    /** Checks the components. */
    public Inspection {
        Objects.requireNonNull(bundle, "bundle");
    }
}
