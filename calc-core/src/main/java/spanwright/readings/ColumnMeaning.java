package spanwright.readings;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What one column of a table was understood to hold.
 *
 * @param index     column, from 0
 * @param head      its head as written
 * @param role      what it holds
 * @param unit      text of its unit, empty if the head has none
 * @param ohms      resistor that a voltage was read across, empty if the head has none
 * @param phase     phase of its readings, empty if the head does not say
 * @param direction direction of its readings, empty if the head does not say
 * @param cycle     traverse of its readings, empty if the head does not say
 */
record ColumnMeaning(int index, String head, ColumnRole role, String unit, String ohms,
                     Optional<Phase> phase, Optional<Direction> direction, OptionalInt cycle) {
    ColumnMeaning {
        Objects.requireNonNull(head, "head");
        Objects.requireNonNull(role, "role");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(ohms, "ohms");
        Objects.requireNonNull(phase, "phase");
        Objects.requireNonNull(direction, "direction");
        Objects.requireNonNull(cycle, "cycle");
    }

    ColumnMeaning withRole(ColumnRole other) {
        return new ColumnMeaning(index, head, other, unit, ohms, phase, direction, cycle);
    }

    ColumnMeaning withUnit(String otherUnit, String otherOhms) {
        return new ColumnMeaning(index, head, role, otherUnit, otherOhms, phase, direction, cycle);
    }

    /** Whether two columns hold the same, so that one of them is one too many. */
    boolean sameAs(ColumnMeaning other) {
        return role == other.role && phase.equals(other.phase) && direction.equals(other.direction)
            && cycle.equals(other.cycle);
    }

    @Override
    public String toString() {
        return "column " + (index + 1) + " \"" + head + "\": " + role
            + phase.map(p -> ", " + p).orElse("") + direction.map(d -> ", " + d + "scale").orElse("")
            + (cycle.isPresent() ? ", cycle " + cycle.getAsInt() : "")
            + (unit.isEmpty() ? "" : ", in " + unit)
            + (ohms.isEmpty() ? "" : " across " + ohms + " ohm");
    }
}
