package spanwright.loop;

import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * Something that goes wrong in a loop.
 *
 * @param kind what
 * @param at   where: a device or the supply
 */
public record LoopFault(Kind kind, String at) {
    /** What goes wrong. */
    public enum Kind {
        /** The output of an isolator opens. */
        OPEN_OUTPUT("output open"),
        /** The output of an isolator is shorted. */
        SHORTED_OUTPUT("output shorted"),
        /** A wire comes off at an input. */
        OPEN_INPUT("input open"),
        /** Two wires are swapped. */
        REVERSED("polarity reversed"),
        /** The common return of a supply breaks. */
        BROKEN_COMMON("common broken"),
        /** The supply sinks to its minimum. */
        SUPPLY_AT_MINIMUM("supply at its minimum");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Checks the components. */
    public LoopFault {
        Objects.requireNonNull(kind, "kind");
        Checks.notBlank("where", at);
    }

    @Override
    public String toString() {
        return at + ": " + kind;
    }
}
