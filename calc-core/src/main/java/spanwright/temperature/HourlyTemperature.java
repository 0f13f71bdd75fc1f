package spanwright.temperature;

import java.time.Instant;
import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;

/**
 * One hour of a temperature history.
 *
 * @param time        instant, so that no clock change can hide in it
 * @param temperature outdoor temperature
 * @param row         row of the file, from 1
 * @param written     the time as it stood in the file
 */
public record HourlyTemperature(Instant time, Celsius temperature, int row, String written) {
    /** Checks the components. */
    public HourlyTemperature {
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(temperature, "temperature");
        Objects.requireNonNull(written, "written");
        Checks.atLeast("row", row, 1);
    }
}
