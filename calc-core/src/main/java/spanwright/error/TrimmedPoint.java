package spanwright.error;

import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;
import spanwright.quantity.Kelvin;
import spanwright.quantity.NumberText;
import spanwright.readings.Direction;
import spanwright.verdict.ToleranceInterval;

/**
 * The error at one point and service temperature before an adjustment, and the one predicted after it.
 *
 * @param position    place on the scale, in percent of the input span
 * @param direction   from which side the point was approached
 * @param temperature service temperature less that of the calibration
 * @param expected    expected output, in percent of the output span
 * @param before      error before, percent of span
 * @param after       predicted error after, percent of span
 * @param permitted   permissible errors there, percent of span; empty if the record states no tolerance
 */
public record TrimmedPoint(double position, Direction direction, Kelvin temperature, double expected,
                           double before, double after, Optional<ToleranceInterval> permitted) {
    /** Checks the components. */
    public TrimmedPoint {
        Checks.finite("position", position);
        Objects.requireNonNull(direction, "direction");
        Objects.requireNonNull(temperature, "temperature");
        Checks.finite("expected output", expected);
        Checks.finite("error before", before);
        Checks.finite("error after", after);
        Objects.requireNonNull(permitted, "permitted");
    }

    /** Whether the error predicted after is permissible; not determined without a tolerance. */
    public Finding<Boolean> isPermittedAfter() {
        return permitted.map(t -> Finding.of(t.contains(after)))
            .orElseGet(() -> Finding.notDetermined("the record states no tolerance with its basis"));
    }

    @Override
    public String toString() {
        return NumberText.plain(position, 4) + " % " + direction
            + (temperature.value() == 0 ? "" : " at " + NumberText.signed(temperature.value(), 1) + " K")
            + ": "
            + NumberText.signed(before, 4) + " becomes " + NumberText.signed(after, 4) + " % of span";
    }
}
