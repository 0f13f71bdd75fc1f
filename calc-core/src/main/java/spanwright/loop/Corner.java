package spanwright.loop;

/** Which limits of the toleranced parameters count. */
public enum Corner {
    /** Every parameter at its nominal value, no ripple. */
    NOMINAL("nominal"),
    /** Supply at its minimum, at the trough of the ripple; hot cable, every drop at its largest. */
    LEAST_VOLTAGE("least voltage"),
    /** Supply at its maximum, at the crest of the ripple; cold cable, every drop at its smallest. */
    MOST_VOLTAGE("most voltage");

    private final String words;

    Corner(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
