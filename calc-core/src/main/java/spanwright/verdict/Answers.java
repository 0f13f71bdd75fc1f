package spanwright.verdict;

/** Which answers a rule knows. */
public enum Answers {
    /** Accept or reject. */
    TWO,
    /** Pass, conditional pass, conditional fail, fail. */
    FOUR,
    /** Accept or reject, where a rejection counts as outside only if outside is the more probable. */
    CLAIM
}
