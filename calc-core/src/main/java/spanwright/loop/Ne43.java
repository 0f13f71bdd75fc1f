package spanwright.loop;

import spanwright.quantity.Checks;

/** What a receiver makes of a current, by limits in the manner of NAMUR NE 43. */
public enum Ne43 {
    /** At or below 3.6 mA. */
    FAILURE_LOW("failure, low"),
    /** Between 3.6 and 3.8 mA, or 20.5 and 21.0 mA: neither a measurement nor a failure. */
    UNDEFINED("undefined, not valid"),
    /** From 3.8 to 20.5 mA. */
    MEASURING("taken as a measurement"),
    /** At or above 21.0 mA. */
    FAILURE_HIGH("failure, high");

    private final String words;

    Ne43(String words) {
        this.words = words;
    }

    /** The state at a current in mA; it must hold for some seconds before it counts as a failure. */
    public static Ne43 of(double milliamps) {
        Checks.finite("current in mA", milliamps);
        if (milliamps <= 3.6) {
            return FAILURE_LOW;
        }
        if (milliamps >= 21) {
            return FAILURE_HIGH;
        }
        return milliamps >= 3.8 && milliamps <= 20.5 ? MEASURING : UNDEFINED;
    }

    /** Whether a receiver that follows these limits flags the current as a failure. */
    public boolean isFlagged() {
        return this == FAILURE_LOW || this == FAILURE_HIGH;
    }

    @Override
    public String toString() {
        return words;
    }
}
