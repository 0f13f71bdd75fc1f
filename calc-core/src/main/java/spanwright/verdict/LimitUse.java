package spanwright.verdict;

/** What a limit is for. The two tolerances of a calibration are different promises and are kept apart. */
public enum LimitUse {
    /** What an instrument must have held since it was last set: judged as found. */
    ACCEPTANCE("acceptance limit, as found"),
    /** How close an adjustment must come: judged as left. */
    SETTING("setting tolerance, as left"),
    /** What a design or a chain promises. */
    CLAIM("claimed limit");

    private final String words;

    LimitUse(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
