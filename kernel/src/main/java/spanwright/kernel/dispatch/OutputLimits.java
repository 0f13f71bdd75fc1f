package spanwright.kernel.dispatch;

/**
 * How much one cell may send, so that an endless loop cannot fill the memory of kernel and front end.
 *
 * @param streamCharacters  on stdout and stderr together
 * @param displayCharacters in everything it shows
 */
record OutputLimits(long streamCharacters, long displayCharacters) {
    /** What a person can still look at, with room to spare. */
    static final OutputLimits USUAL = new OutputLimits(16L << 20, 256L << 20);

    OutputLimits {
        if (streamCharacters < 1 || displayCharacters < 1) {
            throw new IllegalArgumentException("limits must be at least 1, not " + streamCharacters + " and "
                + displayCharacters);
        }
    }

    /** The usual limits, that of streams from the system property {@code spanwright.kernel.streamLimit}. */
    static OutputLimits fromProperties() {
        return new OutputLimits(Long.getLong("spanwright.kernel.streamLimit", USUAL.streamCharacters),
            USUAL.displayCharacters);
    }
}
