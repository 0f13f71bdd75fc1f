package spanwright.readings;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Celsius;

/**
 * Conditions of a calibration run, as far as the record states them.
 *
 * @param ambient     temperature at the device, empty if not recorded
 * @param supplyVolts supply voltage, empty if not recorded
 * @param loadOhms    load on the output, empty if not recorded
 */
public record Conditions(Optional<Celsius> ambient, OptionalDouble supplyVolts, OptionalDouble loadOhms) {
    /** Nothing was recorded. */
    public static final Conditions NOT_RECORDED =
        new Conditions(Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    /** Checks the components. */
    public Conditions {
        Objects.requireNonNull(ambient, "ambient");
        Objects.requireNonNull(supplyVolts, "supplyVolts");
        Objects.requireNonNull(loadOhms, "loadOhms");
    }
}
