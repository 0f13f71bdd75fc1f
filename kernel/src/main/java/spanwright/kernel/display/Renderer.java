package spanwright.kernel.display;

import java.util.Optional;

/**
 * Shows values of some types richly. Implementations are found through {@link java.util.ServiceLoader}, have
 * a public constructor without arguments and are stateless. The first that answers, highest {@link
 * #precedence()} first, wins.
 */
public interface Renderer {
    /**
     * The representations of a value, empty if this renderer does not know its type. A renderer that fails
     * throws; the value is then shown as text with a note.
     *
     * @param value the value, not null
     */
    Optional<MimeBundle> render(Object value);

    /** Higher goes first. */
    default int precedence() {
        return 0;
    }
}
