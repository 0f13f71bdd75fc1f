package spanwright.readings;

import java.util.Objects;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;

/**
 * One reading of a channel: what was applied, what was indicated.
 *
 * @param nominalPercent the point the technician aimed at, in percent of the input range; empty if the
 *                       record has none
 * @param applied        the input actually applied, in the unit of the input range
 * @param indicated      the output actually read, in the unit of the output range
 * @param direction      from which side the point was approached
 * @param cycle          number of the up-and-down traverse, from 1
 */
public record Reading(OptionalDouble nominalPercent, Entry applied, Entry indicated, Direction direction,
                      int cycle) {
    /** Checks the components. */
    public Reading {
        Objects.requireNonNull(nominalPercent, "nominalPercent");
        Objects.requireNonNull(applied, "applied");
        Objects.requireNonNull(indicated, "indicated");
        Objects.requireNonNull(direction, "direction");
        Checks.atLeast("cycle", cycle, 1);
    }
}
