package spanwright.chain;

/** What an error term comes from. */
public enum Influence {
    /** The accuracy rating: holds linearity, hysteresis and repeatability already. */
    ACCURACY_RATING("accuracy rating", true),
    /** Departure from the straight line. */
    LINEARITY("linearity", true),
    /** Difference between upscale and downscale. */
    HYSTERESIS("hysteresis", true),
    /** Spread of readings taken the same way. */
    REPEATABILITY("repeatability", true),
    /** A known error that was measured and not removed. */
    KNOWN_ERROR("known error", true),
    /** Uncertainty of the standard of the calibration. */
    STANDARD("calibration standard", true),
    /** The calibration of the whole chain at once. */
    END_TO_END("end-to-end calibration", true),
    /** Change with temperature. */
    TEMPERATURE("temperature", false),
    /** Change with the load on the output. */
    LOAD("load", false),
    /** Change with the supply voltage. */
    SUPPLY("supply", false),
    /** Change with time. */
    AGEING("ageing", false),
    /** Steps of a converter or display. */
    RESOLUTION("resolution", false),
    /** Anything else, as named. */
    OTHER("other", false);

    private final String words;
    private final boolean found;

    Influence(String words, boolean found) {
        this.words = words;
        this.found = found;
    }

    /**
     * Whether a calibration finds it, so that calibrating the whole chain replaces the terms of the stages.
     */
    public boolean isFoundByCalibration() {
        return found;
    }

    @Override
    public String toString() {
        return words;
    }
}
