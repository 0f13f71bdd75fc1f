package spanwright.readings;

import java.util.Objects;
import java.util.Optional;
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
 * @param time           when it was taken, with the text of the cell; empty if the record does not say, or
 *                       not so that the day can be told
 * @param ambient        temperature at the device beside this reading, in °C, empty if its row has none
 */
public record Reading(OptionalDouble nominalPercent, Entry applied, Entry indicated, Direction direction,
                      int cycle, Optional<RecordDate> time, Optional<Entry> ambient) {
    /** A reading without time and ambient temperature of its own. */
    public Reading(OptionalDouble nominalPercent, Entry applied, Entry indicated, Direction direction,
                   int cycle) {
        this(nominalPercent, applied, indicated, direction, cycle, Optional.empty(), Optional.empty());
    }

    /** Checks the components. */
    public Reading {
        Objects.requireNonNull(nominalPercent, "nominalPercent");
        Objects.requireNonNull(applied, "applied");
        Objects.requireNonNull(indicated, "indicated");
        Objects.requireNonNull(direction, "direction");
        Checks.atLeast("cycle", cycle, 1);
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(ambient, "ambient");
    }
}
