package spanwright.loop;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.NumberText;

/**
 * What a receiver reads.
 *
 * @param receiver  its name
 * @param milliamps the current through it, in mA, negative if reversed; empty if not determined
 */
public record ReceiverReading(String receiver, OptionalDouble milliamps) {
    /** Checks the components. */
    public ReceiverReading {
        Objects.requireNonNull(receiver, "receiver");
        Objects.requireNonNull(milliamps, "milliamps");
    }

    static ReceiverReading of(String receiver, double milliamps) {
        return new ReceiverReading(receiver, OptionalDouble.of(milliamps));
    }

    /** What limits in the manner of NE 43 say of it; empty if not determined. */
    public Optional<Ne43> ne43() {
        return milliamps.isPresent() ? Optional.of(Ne43.of(milliamps.getAsDouble())) : Optional.empty();
    }

    @Override
    public String toString() {
        return receiver + (milliamps.isPresent() ? " reads " + NumberText.fixed(milliamps.getAsDouble(), 2)
            + " mA ("
            + Ne43.of(milliamps.getAsDouble()) + ")" : ": not determined");
    }
}
