package spanwright.readings;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A reading that is not there, and why: three different things that are never zero and never a number.
 *
 * @param kind    missing, known only by a bound, or beyond the instrument
 * @param bound   the bound in the unit of the range, where one is stated
 * @param written the text of the cell
 * @param cell    where it stands
 * @param role    whether the applied input is absent or the indicated output (or a point or a temperature)
 * @param beside  the other of the two in its row: what was applied where the output is absent; empty if there
 *                is none
 */
public record AbsentReading(Kind kind, OptionalDouble bound, String written, CellAddress cell,
    ColumnRole role,
                            Optional<Entry> beside) {
    /** Why a reading is absent. */
    public enum Kind {
        /** Nothing was read or written down. */
        MISSING("missing"),
        /** It lies below the bound. */
        BELOW("below a bound"),
        /** It lies above the bound. */
        ABOVE("above a bound"),
        /** The instrument showed that it was beyond its range. */
        OVERLOAD("beyond the instrument");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Checks the components. */
    public AbsentReading {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(bound, "bound");
        Objects.requireNonNull(written, "written");
        Objects.requireNonNull(cell, "cell");
        Objects.requireNonNull(role, "role");
        Objects.requireNonNull(beside, "beside");
    }

    AbsentReading beside(Optional<Entry> other) {
        return new AbsentReading(kind, bound, written, cell, role, other);
    }
}
