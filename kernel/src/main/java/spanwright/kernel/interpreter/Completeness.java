package spanwright.kernel.interpreter;

import java.util.Locale;
import java.util.Objects;

/**
 * Whether code can run as it stands.
 *
 * @param status the answer
 * @param indent what to put before the next line if incomplete, else empty
 */
public record Completeness(Status status, String indent) {
    /** The answers of the protocol. */
    public enum Status {
        /** It can run. */
        COMPLETE,
        /** More lines are needed. */
        INCOMPLETE,
        /** No further line can make it right. */
        INVALID,
        /** Cannot tell. */
        UNKNOWN;

        /** The word in the Jupyter protocol. */
        public String protocolName() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Checks the components. */
    public Completeness {
        Objects.requireNonNull(status, "status");
        Objects.requireNonNull(indent, "indent");
    }
}
