package spanwright.loop;

/** What a device does to its loop when its two terminals are swapped. */
public enum WhenReversed {
    /** Blocks: no current flows, as with a series diode. */
    BLOCKS("blocks the current"),
    /** The current flows and the device reads or passes it with the other sign, as a resistor does. */
    PASSES_REVERSED("passes the current, its signal has the other sign"),
    /** The current flows past the device, which passes no signal on, as with a diode across its input. */
    PASSES_WITHOUT_SIGNAL("passes the current, gives no signal"),
    /** Works either way, as with a bridge rectifier. */
    WORKS("works either way"),
    /** Not stated. */
    UNKNOWN("is not stated");

    private final String words;

    WhenReversed(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
