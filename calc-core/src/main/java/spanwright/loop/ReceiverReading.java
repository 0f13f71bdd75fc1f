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
 * @param orMore    whether the current is this or more: nothing is worked out above 50 mA
 */
public record ReceiverReading(String receiver, OptionalDouble milliamps, boolean orMore) {
    /** Checks the components. */
    public ReceiverReading {
        Objects.requireNonNull(receiver, "receiver");
        Objects.requireNonNull(milliamps, "milliamps");
    }

    static ReceiverReading of(String receiver, double milliamps) {
        return new ReceiverReading(receiver, OptionalDouble.of(milliamps), milliamps >= PiecewiseLine.END);
    }

    static ReceiverReading notDetermined(String receiver) {
        return new ReceiverReading(receiver, OptionalDouble.empty(), false);
    }

    /** What limits in the manner of NE 43 say of it; empty if not determined. */
    public Optional<Ne43> ne43() {
        return milliamps.isPresent() ? Optional.of(Ne43.of(milliamps.getAsDouble())) : Optional.empty();
    }

    /** Whether it differs from the right reading, in mA; empty if not determined. */
    public Optional<Boolean> isWrong(double right) {
        return milliamps.isPresent() ? Optional.of(Math.abs(milliamps.getAsDouble() - right) > 1e-6)
            : Optional.empty();
    }

    @Override
    public String toString() {
        return receiver + (milliamps.isPresent() ? " reads " + NumberText.fixed(milliamps.getAsDouble(), 2)
            + " mA " + (orMore ? "or more " : "") + "(" + Ne43.of(milliamps.getAsDouble()) + ")"
            : ": not determined");
    }
}
