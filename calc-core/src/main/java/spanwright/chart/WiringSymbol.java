package spanwright.chart;

import spanwright.loop.Burden;
import spanwright.loop.Cable;
import spanwright.loop.Isolator;
import spanwright.loop.LoopElement;
import spanwright.loop.Transmitter;

/**
 * The symbols of a wiring diagram, in the manner of IEC 60617 where it has one: battery, resistor, fuse,
 * converter (a square with a diagonal), converter with galvanic separation (two parallel lines). A dashed
 * frame holds what is one device. Sizes in pixels, above and below the wire in which the symbol stands.
 */
enum WiringSymbol {
    /** Direct-voltage supply. */
    SUPPLY(28, 15, 15),
    /** Conductor of a cable. */
    CORE(28, 7, 7),
    /** Transmitter powered by its loop. */
    TRANSMITTER(28, 18, 18),
    /** Transmitter with a supply of its own, or output card. */
    OWN_SUPPLY_TRANSMITTER(28, 18, 18),
    /** Receiver with its resistor. */
    RECEIVER(30, 15, 15),
    /** Receiver whose resistor a second one shares. */
    TAPPED_RECEIVER(30, 39, 15),
    /** Device that the current drives. */
    FIELD_DEVICE(28, 16, 16),
    /** Meter in series. */
    METER(26, 16, 16),
    /** Added resistor. */
    RESISTOR(28, 9, 9),
    /** Barrier. */
    BARRIER(30, 12, 26),
    /** Surge protective device. */
    SURGE_DEVICE(28, 12, 30),
    /** Fuse. */
    FUSE(28, 9, 9),
    /** Isolator powered by its input current. */
    INPUT_POWERED_ISOLATOR(24, 16, 16),
    /** Isolator powered by the loop at its output. */
    OUTPUT_POWERED_ISOLATOR(24, 16, 16),
    /** Isolator with a supply of its own. */
    SEPARATE_ISOLATOR(24, 16, 16);

    private final double halfWidth;
    private final double up;
    private final double down;

    WiringSymbol(double halfWidth, double up, double down) {
        this.halfWidth = halfWidth;
        this.up = up;
        this.down = down;
    }

    /** From the middle to a terminal. */
    double halfWidth() {
        return halfWidth;
    }

    double up() {
        return up;
    }

    double down() {
        return down;
    }

    boolean isIsolator() {
        return this == INPUT_POWERED_ISOLATOR || this == OUTPUT_POWERED_ISOLATOR || this == SEPARATE_ISOLATOR;
    }

    static WiringSymbol of(LoopElement element) {
        if (element instanceof Cable) {
            return CORE;
        }
        if (element instanceof Transmitter transmitter) {
            return transmitter.kind() == Transmitter.Kind.TWO_WIRE ? TRANSMITTER : OWN_SUPPLY_TRANSMITTER;
        }
        if (element instanceof Isolator isolator) {
            return switch (isolator.kind()) {
                case INPUT_LOOP_POWERED -> INPUT_POWERED_ISOLATOR;
                case OUTPUT_LOOP_POWERED -> OUTPUT_POWERED_ISOLATOR;
                case SEPARATELY_POWERED -> SEPARATE_ISOLATOR;
            };
        }
        final Burden burden = (Burden) element;
        return switch (burden.kind()) {
            case RECEIVER -> burden.traits().tappedOhms().isPresent() ? TAPPED_RECEIVER : RECEIVER;
            case FIELD_DEVICE -> FIELD_DEVICE;
            case METER -> METER;
            case RESISTOR -> RESISTOR;
            case BARRIER -> BARRIER;
            case SURGE_DEVICE -> SURGE_DEVICE;
            case FUSE -> FUSE;
        };
    }
}
