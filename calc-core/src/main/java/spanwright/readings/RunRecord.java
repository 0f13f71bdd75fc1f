package spanwright.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One run of a record with what belongs to it and is no reading to calculate with.
 *
 * @param run       the readings to calculate with
 * @param header    what the record says of the job
 * @param clamped   readings at a clamp beyond the range: not in {@code run}, kept for diagnosis
 * @param plateau   readings within the range where the output no longer follows: in {@code run}, since they
 *                  are errors of the channel, but no measure of its linearity
 * @param absent    readings that are not there, and why
 */
public record RunRecord(CalibrationRun run, RecordHeader header, List<Reading> clamped, List<Reading> plateau,
                        List<AbsentReading> absent) {
    /** Checks the components and copies the lists. */
    public RunRecord {
        Objects.requireNonNull(run, "run");
        Objects.requireNonNull(header, "header");
        clamped = List.copyOf(clamped);
        plateau = List.copyOf(plateau);
        absent = List.copyOf(absent);
    }

    /** One line: channel, phase, ambient temperature, and how many readings of which kind. */
    @Override
    public String toString() {
        return run.channel() + " " + run.phase() + run.conditions().ambient().map(a -> " at " + a).orElse("")
            + header.date().map(d -> " on " + d).orElse("") + ": " + run.readings().size() + " readings"
            + (plateau.isEmpty() ? "" : ", " + plateau.size() + " of them on a plateau")
            + (clamped.isEmpty() ? "" : ", " + clamped.size() + " clamped beyond the range")
            + (absent.isEmpty() ? "" : ", " + absent.size() + " absent");
    }

    /**
     * The run without its plateau, for linearity; the run itself if it has none.
     *
     * @throws IllegalArgumentException if nothing remains
     */
    public CalibrationRun followingPart() {
        final List<Reading> rest = new ArrayList<>(run.readings());
        rest.removeAll(plateau);
        return plateau.isEmpty() ? run : new CalibrationRun(run.channel(), run.serial(), run.phase(),
            run.transfer(), run.input(), run.output(), run.tolerance(), run.conditions(), rest);
    }
}
