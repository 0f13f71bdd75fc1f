package spanwright.readings;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One reading before direction and cycle are settled. */
record Point(Key key, Optional<Direction> direction, OptionalInt cycle, OptionalDouble nominalPercent,
             Entry applied, Entry indicated, OptionalDouble ambient, boolean directionFromHead) {
    /** What tells runs of one table apart. */
    record Key(String channel, String serial, Optional<Phase> phase) { }

    /** The nominal point, or where the applied input lies in its range, in percent. */
    double percent(spanwright.quantity.Span input) {
        return nominalPercent.orElseGet(() -> input.percentAt(applied.value()));
    }
}
