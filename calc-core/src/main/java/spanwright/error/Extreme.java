package spanwright.error;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.readings.CellAddress;
import spanwright.readings.Direction;

/**
 * A deviation that decides a metric, with the place on the scale and the cells it comes from.
 *
 * @param deviation the deviation
 * @param position  place on the scale, in percent of the input span
 * @param direction from which side the point was approached
 * @param cells     cells of the indications behind it, at least one
 */
public record Extreme(PercentOfSpan deviation, double position, Direction direction,
    List<CellAddress> cells) {
    /** Checks the components and copies the list. */
    public Extreme {
        Objects.requireNonNull(deviation, "deviation");
        Checks.finite("position", position);
        Objects.requireNonNull(direction, "direction");
        cells = List.copyOf(cells);
        Checks.atLeast("number of cells", cells.size(), 1);
    }

    @Override
    public String toString() {
        return NumberText.signed(deviation.value(), 3) + " % of span at " + NumberText.plain(position, 4)
            + " % "
            + direction;
    }
}
