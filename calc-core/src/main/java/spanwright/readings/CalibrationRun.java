package spanwright.readings;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;

/**
 * One calibration of one channel in one phase, under one set of conditions: what the analysis works on.
 *
 * @param channel    tag of the channel, with its channel number where a device has several
 * @param serial     serial number of the device, empty if not recorded
 * @param phase      as found, as left, or both at once
 * @param transfer   specified characteristic
 * @param input      range of the applied input
 * @param output     range of the indicated output
 * @param tolerance  what the record allows, with its basis; empty if it states none or no basis
 * @param conditions ambient, supply and load as recorded
 * @param readings   the readings in the order of the record, at least one
 */
public record CalibrationRun(String channel, String serial, Phase phase, Transfer transfer,
                             Span input, Span output, Optional<Tolerance> tolerance,
                             Conditions conditions, List<Reading> readings) {
    /** Checks the components and copies the list. */
    public CalibrationRun {
        Objects.requireNonNull(channel, "channel");
        Objects.requireNonNull(serial, "serial");
        Objects.requireNonNull(phase, "phase");
        Objects.requireNonNull(transfer, "transfer");
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(output, "output");
        Objects.requireNonNull(tolerance, "tolerance");
        Objects.requireNonNull(conditions, "conditions");
        readings = List.copyOf(readings);
        if (readings.isEmpty()) {
            throw new IllegalArgumentException("channel " + channel + " has no reading");
        }
    }

    /**
     * The output that the specified characteristic gives for what was applied at a reading, in the output's
     * unit.
     */
    public double expected(Reading reading) {
        return transfer.ideal(input, output, reading.applied().value());
    }

    /** Number of up-and-down traverses. */
    public int cycles() {
        return (int) readings.stream().mapToInt(Reading::cycle).distinct().count();
    }
}
