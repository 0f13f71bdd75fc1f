package spanwright.error;

import java.util.Optional;
import spanwright.quantity.Checks;

/**
 * The record cannot tell.
 *
 * @param reason what it lacks
 * @param <T>    what was asked for
 */
public record NotDetermined<T>(String reason) implements Finding<T> {
    /** Checks the component. */
    public NotDetermined {
        Checks.notBlank("reason", reason);
    }

    @Override
    public Optional<T> value() {
        return Optional.empty();
    }

    @Override
    public String toString() {
        return "not determined: " + reason;
    }
}
