package spanwright.chain;

import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * One entry of the register: what a claim takes for granted.
 *
 * @param id          A1, A2, ...
 * @param text        the assumption
 * @param source      where it comes from
 * @param falsifiedBy what would show that it does not hold
 */
public record Assumption(String id, String text, String source, String falsifiedBy) {
    /** Checks the components. */
    public Assumption {
        Checks.notBlank("id", id);
        Checks.notBlank("text", text);
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(falsifiedBy, "falsifiedBy");
    }

    @Override
    public String toString() {
        return id + ": " + text + " (" + source + "). Falsified by: " + falsifiedBy;
    }
}
