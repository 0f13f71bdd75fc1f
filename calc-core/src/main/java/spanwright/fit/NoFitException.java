package spanwright.fit;

/**
 * The data are valid, but the fit that was asked for has no solution, or no unique one; the message says why.
 */
public final class NoFitException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** With the reason. */
    public NoFitException(String message) {
        super(message);
    }

    /** With the reason and what the numerical library said. */
    public NoFitException(String message, Throwable cause) {
        super(message, cause);
    }
}
