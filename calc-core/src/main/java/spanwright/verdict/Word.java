package spanwright.verdict;

/** The decision, in the words every result of this project uses. From best to worst. */
public enum Word {
    /** Accepted by the rule, and the result with its whole expanded uncertainty lies inside the limit. */
    MEETS("Meets", "\u2713"),
    /** Accepted by the rule, but the expanded uncertainty reaches over the limit. */
    MEETS_WITH_STATED_RISK("Meets with stated risk", "\u2248"),
    /** Neither inside nor outside is shown. */
    NOT_SHOWN("Not shown", "?"),
    /** Something that a decision needs is missing; the verdict says what. */
    NOT_DETERMINED("Not determined", "\u2013"),
    /** Rejected by the rule, and the result lies outside the limit. */
    DOES_NOT_MEET("Does not meet", "\u2717");

    private final String words;
    private final String mark;

    Word(String words, String mark) {
        this.words = words;
        this.mark = mark;
    }

    /** A mark to stand beside the word, so that colour is never alone. */
    public String mark() {
        return mark;
    }

    /** Whether the rule accepted. */
    public boolean isAccepted() {
        return this == MEETS || this == MEETS_WITH_STATED_RISK;
    }

    /** Whether the rule rejected: outside, or inside but not shown. */
    public boolean isRejected() {
        return this == NOT_SHOWN || this == DOES_NOT_MEET;
    }

    /** The worse of the two: an error outside its limit settles the whole, whatever else is missing. */
    public Word worse(Word other) {
        return compareTo(other) >= 0 ? this : other;
    }

    @Override
    public String toString() {
        return words;
    }
}
