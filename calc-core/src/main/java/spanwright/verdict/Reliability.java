package spanwright.verdict;

/** What an in-tolerance proportion, or a history of errors, is a proportion or a history of. */
public enum Reliability {
    /** Of the true errors. */
    TRUE("true"),
    /** Of the errors as observed, in which the measurement's own scatter is mixed. */
    OBSERVED("observed");

    private final String words;

    Reliability(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
