package spanwright.readings;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * When a record was made.
 *
 * @param day     the day at the place of the job
 * @param instant the moment, where the record states a time and a zone is known
 * @param written the text of the record
 */
public record RecordDate(LocalDate day, Optional<Instant> instant, String written) {
    /** Checks the components. */
    public RecordDate {
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(instant, "instant");
        Objects.requireNonNull(written, "written");
    }

    @Override
    public String toString() {
        return instant.map(Instant::toString).orElseGet(day::toString);
    }
}
