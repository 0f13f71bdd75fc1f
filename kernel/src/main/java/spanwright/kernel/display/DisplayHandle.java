package spanwright.kernel.display;

import java.util.Objects;

/**
 * Something shown that can be replaced where it stands.
 *
 * @param id its display id
 */
public record DisplayHandle(String id) {
    /** Checks the components. */
    public DisplayHandle {
        Objects.requireNonNull(id, "id");
    }

    /** Shows another value in its place, everywhere it stands. */
    public void update(Object value) {
        final CellScope scope = CellScope.required();
        final MimeBundle bundle = Renderers.of(scope.loader()).render(value);
        scope.queue().post(o -> o.updateDisplay(bundle, id));
    }
}
