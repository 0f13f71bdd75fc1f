package spanwright.temperature;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.readings.CellAddress;
import spanwright.uncertainty.Estimate;

/**
 * A zero or span error found at one chamber temperature.
 *
 * @param temperature temperature at the device, as recorded
 * @param error       percent of span; its uncertainty is that of the readings and their resolution
 * @param cells       where the readings stand, empty if the pair was typed in
 */
public record ChamberPoint(Celsius temperature, Estimate error, List<CellAddress> cells) {
    /** Checks the components and copies the list. */
    public ChamberPoint {
        Objects.requireNonNull(temperature, "temperature");
        Objects.requireNonNull(error, "error");
        cells = List.copyOf(cells);
    }

    /**
     * A point that was typed in.
     *
     * @throws IllegalArgumentException if a value is not finite
     */
    public static ChamberPoint of(double degC, double errorPercentOfSpan) {
        return new ChamberPoint(new Celsius(degC), Estimate.exactly(errorPercentOfSpan), List.of());
    }
}
