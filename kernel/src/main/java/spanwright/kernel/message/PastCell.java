package spanwright.kernel.message;

import java.util.Objects;
import java.util.Optional;

/**
 * A cell that ran.
 *
 * @param session number of the session
 * @param line    execution count in it
 * @param input   its code
 * @param output  its value as text
 */
public record PastCell(int session, int line, String input, Optional<String> output) {
    /** Checks the components. */
    public PastCell {
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(output, "output");
    }
}
