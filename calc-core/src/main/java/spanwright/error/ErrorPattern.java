package spanwright.error;

/** What may be behind the shape of a channel's errors, with the check that tells. */
public enum ErrorPattern {
    /** The errors are no larger than the scatter and resolution of the record. */
    NONE("no fault", "nothing to do"),
    /** All points off by one amount. */
    ZERO("zero shift", "compare with the as-left record; adjust zero"),
    /** A stray current of one size through a second ground. */
    GROUND_LOOP("ground-loop offset",
        "same shape as a zero shift: lift one ground or measure the voltage between grounds; it often "
            + "wanders"),
    /** Errors that grow from nothing at the lower range value. */
    SPAN("span error", "compare with the as-left record; adjust span"),
    /** Errors in proportion to the output itself, 4 mA included. */
    PERCENT_OF_READING("percent-of-reading error",
        "a gain about 0 mA: a sense resistor or a ratio trim, not a span adjusted about 4 mA"),
    /** 249 ohm in place of 250 ohm. */
    RESISTOR_249("249 ohm in place of 250 ohm", "read the resistor's marking, measure it disconnected"),
    /** Both zero and span. */
    ZERO_AND_SPAN("zero and span shift", "adjust zero, then span, and repeat"),
    /** Curvature that no straight adjustment removes. */
    BOW("bow", "no zero or span adjustment removes it: share it by the trim, or correct in the receiver"),
    /** Right up to a current, flat above it. */
    COMPLIANCE_KNEE("compliance knee",
        "the supply cannot drive the loop above this current: measure the voltage at the device at full "
            + "output"),
    /** Flat at the bottom, right above. */
    LOW_CLAMP("stuck at a lower clamp",
        "the output does not go below this value: a clamp or a failure signal"),
    /** One output whatever the input. */
    STUCK("stuck output", "the output does not follow the input: wrong terminal, wrong channel, or failed"),
    /** 0 to 20 mA where 4 to 20 mA is meant. */
    LIVE_ZERO_LEFT_OUT("live zero left out", "one side is scaled 0 to 20 mA, the other 4 to 20 mA"),
    /** 20 mA taken as the span. */
    FACTOR_1_25("span taken as 20 mA",
        "percent of the upper range value was taken for percent of span: factor 1.25"),
    /** The errors are those of another channel. */
    OTHER_CHANNEL("another channel's record",
        "channels swapped or shifted by one: check tags and serial numbers");

    private final String words;
    private final String check;

    ErrorPattern(String words, String check) {
        this.words = words;
        this.check = check;
    }

    /** What tells whether it is this. */
    public String check() {
        return check;
    }

    @Override
    public String toString() {
        return words;
    }
}
