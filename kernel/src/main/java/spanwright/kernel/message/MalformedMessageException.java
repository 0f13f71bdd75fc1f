package spanwright.kernel.message;

/**
 * A message that breaks the protocol: framing, signature, JSON or a field of the wrong type. It is logged and
 * dropped, nothing is answered.
 */
public final class MalformedMessageException extends Exception {
    private static final long serialVersionUID = 1L;

    /** One line that says what is wrong. */
    public MalformedMessageException(String message) {
        super(message);
    }

    /** One line that says what is wrong, and what found it. */
    public MalformedMessageException(String message, Throwable cause) {
        super(message, cause);
    }
}
