package spanwright.readings;

import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * One number of a record, in the unit of the range it belongs to, with what stood in the cell.
 *
 * @param value      the number in the unit of the range
 * @param resolution the step of the last displayed digit in that unit, above 0: 0.01 for "4.00"
 * @param written    the text of the cell, untouched
 * @param cell       where it stands
 */
public record Entry(double value, double resolution, String written, CellAddress cell) {
    /** Checks the components. */
    public Entry {
        Checks.finite("reading", value);
        Checks.positive("resolution", resolution);
        Objects.requireNonNull(written, "written");
        Objects.requireNonNull(cell, "cell");
    }

    /**
     * Standard uncertainty of the displayed resolution: a rectangle one step wide (JCGM 100:2008, F.2.2.1).
     */
    public double resolutionUncertainty() {
        return resolution / Math.sqrt(12);
    }
}
