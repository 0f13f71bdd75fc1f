package spanwright.chain;

/** What an error term rests on. */
public enum Standing {
    /** A limit that the maker guarantees. */
    GUARANTEED("guaranteed limit"),
    /** A measurement or certificate. */
    MEASURED("measured"),
    /** A typical figure that was forced into the budget. */
    TYPICAL("typical, forced"),
    /** A judgement without a document. */
    ASSUMED("assumed");

    private final String words;

    Standing(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
