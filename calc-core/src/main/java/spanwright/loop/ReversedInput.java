package spanwright.loop;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What receivers read when the current enters a ring the wrong way round: each device decides what it does,
 * and what its output then does to those behind it.
 */
final class ReversedInput {
    private final double milliamps;
    private final Map<String, OptionalDouble> readings = new LinkedHashMap<>();
    private boolean blocks;

    /** Of a current that is this in the sound loop. */
    ReversedInput(double milliamps) {
        this.milliamps = milliamps;
    }

    /** Sends the current through devices with the sign of the sound loop, the other one, or not at all. */
    void through(List<LoopElement> ring, int sign) {
        for (LoopElement element : ring) {
            if (element instanceof Burden burden) {
                burden(burden, sign);
            } else if (element instanceof Isolator isolator) {
                isolator(isolator, sign);
            }
        }
    }

    private void burden(Burden burden, int sign) {
        if (sign >= 0) {
            readings.put(burden.name(), OptionalDouble.of(sign * milliamps));
            return;
        }
        final WhenReversed behaviour = burden.traits().whenReversed();
        blocks |= behaviour == WhenReversed.BLOCKS;
        readings.put(burden.name(), behaviour == WhenReversed.UNKNOWN ? OptionalDouble.empty()
            : OptionalDouble.of(signBehind(behaviour) * milliamps));
    }

    private void isolator(Isolator isolator, int sign) {
        if (sign >= 0) {
            through(isolator.output().fed(), sign);
            return;
        }
        final WhenReversed behaviour = isolator.traits().whenReversed();
        blocks |= behaviour == WhenReversed.BLOCKS;
        if (behaviour == WhenReversed.UNKNOWN) {
            isolator.behind().forEach(e -> readings.put(e.name(), OptionalDouble.empty()));
        } else {
            through(isolator.output().fed(), signBehind(behaviour));
        }
    }

    private static int signBehind(WhenReversed behaviour) {
        return switch (behaviour) {
            case WORKS -> 1;
            case PASSES_REVERSED -> -1;
            case PASSES_WITHOUT_SIGNAL, BLOCKS, UNKNOWN -> 0;
        };
    }

    /** Whether a device lets no current through, so that the ring is broken. */
    boolean isBlocked() {
        return blocks;
    }

    /** The reading, if the device was met; itself empty if not determined. */
    ReceiverReading of(ReceiverReading sound) {
        final OptionalDouble found = readings.get(sound.receiver());
        return found == null ? sound
            : found.isEmpty() ? ReceiverReading.notDetermined(sound.receiver())
                : ReceiverReading.of(sound.receiver(), found.getAsDouble());
    }
}
