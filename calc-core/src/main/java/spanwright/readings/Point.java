package spanwright.readings;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One reading before direction and cycle are settled. */
record Point(Key key, Optional<Direction> direction, OptionalInt cycle, OptionalDouble nominalPercent,
             Entry applied, Entry indicated, Optional<Entry> ambient, Optional<RecordDate> time,
             boolean directionFromHead) {
    /** What tells runs of one table apart. */
    record Key(String channel, String serial, Optional<Phase> phase) { }

    /** The reading, once direction and cycle are settled. */
    Reading settled(Direction way, int traverse) {
        return new Reading(nominalPercent, applied, indicated, way, traverse, time, ambient);
    }

    /** The nominal point, or where the applied input lies in its range, in percent. */
    double percent(spanwright.quantity.Span input) {
        return nominalPercent.orElseGet(() -> input.percentAt(applied.value()));
    }
}
