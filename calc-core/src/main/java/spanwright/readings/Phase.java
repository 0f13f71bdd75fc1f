package spanwright.readings;

/** When in the job a reading was taken. */
public enum Phase {
    /** Before any adjustment. */
    AS_FOUND("as found"),
    /** After the last adjustment. */
    AS_LEFT("as left"),
    /** As found and as left at once: nothing was adjusted. */
    NOT_ADJUSTED("as found = as left, not adjusted");

    private final String words;

    Phase(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
