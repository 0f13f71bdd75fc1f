package spanwright.readings;

/** What the reader did about something it found in a record. */
public enum Outcome {
    /** The value or the file cannot be used; nothing was guessed. */
    REFUSED("refused"),
    /** The record can be read in two ways; nothing of what hangs on it is given until it is answered. */
    ASKED("asked"),
    /** Read after a change that is listed and cannot alter the meaning. */
    REPAIRED("repaired"),
    /** Read as written; a person should look at it. */
    FLAGGED("flagged");

    private final String word;

    Outcome(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
