package spanwright.error;

import java.util.Optional;
import java.util.function.Function;

/**
 * The answer to a question put to a record: a value, or the reason why the record cannot tell. Zero is never
 * used for "unknown".
 *
 * @param <T> what is found
 */
public sealed interface Finding<T> permits Determined, NotDetermined {
    /** A value that was found. */
    static <T> Finding<T> of(T value) {
        return new Determined<>(value);
    }

    /**
     * No value, and why.
     *
     * @param reason what the record lacks, as a clause: "the record has one cycle only"
     * @throws IllegalArgumentException if the reason is blank
     */
    static <T> Finding<T> notDetermined(String reason) {
        return new NotDetermined<>(reason);
    }

    /** Whether there is a value. */
    default boolean isDetermined() {
        return this instanceof Determined;
    }

    /** The value, empty if not determined. */
    Optional<T> value();

    /** Why there is no value; empty text if there is one. */
    String reason();

    /**
     * The value.
     *
     * @throws IllegalStateException if not determined; the message is the reason
     */
    default T orElseThrow() {
        return value().orElseThrow(() -> new IllegalStateException("not determined: " + reason()));
    }

    /** The finding made from the value, or the same reason. */
    default <R> Finding<R> map(Function<? super T, ? extends R> function) {
        return value().<Finding<R>>map(v -> of(function.apply(v))).orElseGet(() -> notDetermined(reason()));
    }
}
