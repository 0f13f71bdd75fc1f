package spanwright.error;

import java.util.Objects;
import java.util.Optional;

/**
 * A value that the record determines.
 *
 * @param found the value
 * @param <T>   what is found
 */
public record Determined<T>(T found) implements Finding<T> {
    /** Checks the component. */
    public Determined {
        Objects.requireNonNull(found, "found");
    }

    @Override
    public Optional<T> value() {
        return Optional.of(found);
    }

    @Override
    public String reason() {
        return "";
    }

    @Override
    public String toString() {
        return found.toString();
    }
}
