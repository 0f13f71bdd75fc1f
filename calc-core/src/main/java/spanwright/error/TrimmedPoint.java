package spanwright.error;

import spanwright.quantity.Checks;
import spanwright.quantity.Kelvin;
import spanwright.quantity.NumberText;
import spanwright.readings.Direction;

/**
 * The error at one point and service temperature before an adjustment, and the one predicted after it.
 *
 * @param position    place on the scale, in percent of the input span
 * @param direction   from which side the point was approached
 * @param temperature service temperature less that of the calibration
 * @param before      error before, percent of span
 * @param after       predicted error after, percent of span
 */
public record TrimmedPoint(double position, Direction direction, Kelvin temperature, double before,
    double after) {
    /** Checks the components. */
    public TrimmedPoint {
        Checks.finite("position", position);
        Checks.finite("error before", before);
        Checks.finite("error after", after);
    }

    @Override
    public String toString() {
        return NumberText.plain(position, 4) + " % " + direction
            + (temperature.value() == 0 ? "" : " at " + NumberText.signed(temperature.value(), 1) + " K")
            + ": "
            + NumberText.signed(before, 4) + " becomes " + NumberText.signed(after, 4) + " % of span";
    }
}
