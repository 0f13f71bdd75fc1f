package spanwright.fit;

/**
 * The straight lines against which a characteristic may be called straight, in the manner of IEC 61298-2.
 * "Linearity" without a word before it usually means {@link #INDEPENDENT} (common practice, no source).
 */
public enum ReferenceKind {
    /** Free in slope and position, placed so that the largest deviation is as small as it can be. */
    INDEPENDENT("independent"),
    /** Through the value at the lowest point; the slope makes the largest deviation as small as it can be. */
    ZERO_BASED("zero-based"),
    /** Through the values at the lowest and the highest point. */
    TERMINAL_BASED("terminal-based"),
    /** The specified characteristic itself. */
    ABSOLUTE("absolute"),
    /** Least squares through the points: not one of the four, stated beside them to show the difference. */
    LEAST_SQUARES("least squares");

    private final String words;

    ReferenceKind(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
