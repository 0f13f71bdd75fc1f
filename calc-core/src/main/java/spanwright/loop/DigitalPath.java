package spanwright.loop;

/** What a device does to the tone of the digital communication that rides on the loop current. */
public enum DigitalPath {
    /** Passes it both ways. */
    PASSES("passes the digital signal"),
    /** Passes it from input to output only: it can be listened to, not answered. */
    PASSES_ONE_WAY("passes the digital signal one way"),
    /** Filters or blocks it. */
    BLOCKS("blocks the digital signal"),
    /** Not stated. */
    UNKNOWN("does not state whether it passes the digital signal");

    private final String words;

    DigitalPath(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
