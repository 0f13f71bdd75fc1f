package spanwright.readings;

import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.UnitSymbols;

/**
 * What the call says of a column.
 *
 * @param head      its head, with or without the unit
 * @param role      what it holds
 * @param unit      its unit, with the resistor where it is a voltage; empty to take the one in the head
 * @param phase     phase of its readings, empty if not said
 * @param direction direction of its readings, empty if not said
 */
public record ColumnMapping(String head, ColumnRole role, String unit, Optional<Phase> phase,
                            Optional<Direction> direction) {
    /** Checks the components. */
    public ColumnMapping {
        Objects.requireNonNull(head, "head");
        Objects.requireNonNull(role, "role");
        Objects.requireNonNull(phase, "phase");
        Objects.requireNonNull(direction, "direction");
        if (!unit.isEmpty() && !unit.startsWith("%")) {
            UnitSymbols.parse(ColumnHead.across(unit)[0]);
        }
    }

    /** A column that has been named and waits for its meaning. */
    public static final class Stage {
        private final RecordReading reading;
        private final String head;

        Stage(RecordReading reading, String head) {
            this.reading = reading;
            this.head = head;
        }

        /** The column holds this, in the unit that its head states. */
        public RecordReading as(ColumnRole role) {
            return as(role, "");
        }

        /**
         * The column holds this, in this unit: {@code "mA"}, {@code "V across 250 ohm"}, {@code "% of span"}.
         *
         * @throws IllegalArgumentException if the unit is not known
         */
        public RecordReading as(ColumnRole role, String unit) {
            return reading.with(new ColumnMapping(head, role, unit, Optional.empty(), Optional.empty()));
        }

        /**
         * The column of a wide table holds the output of one phase and direction.
         *
         * @throws IllegalArgumentException if the unit is not known
         */
        public RecordReading asIndicated(String unit, Phase phase, Direction direction) {
            return reading.with(new ColumnMapping(head, ColumnRole.INDICATED, unit, Optional.of(phase),
                Optional.of(direction)));
        }
    }
}
