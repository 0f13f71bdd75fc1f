package spanwright.readings;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Tolerance;

/**
 * What a record says about the job, beside the readings.
 *
 * @param tag              tag of the channel as the header states it, empty if it does not
 * @param serial           serial number of the device, empty if not recorded
 * @param channelNumber    number of the channel within the device, empty if not recorded
 * @param technician       name or pseudonym, empty if not recorded
 * @param date             when, empty if not recorded or not yet clear
 * @param standards        standards used
 * @param settingTolerance tolerance for setting (as left), empty if not recorded or without basis
 * @param adjusted         whether the device was adjusted, empty if not recorded
 * @param lines            every header line as written, by its key
 * @param cells            where each of these lines stands, by its key
 */
public record RecordHeader(String tag, String serial, String channelNumber, String technician,
                           Optional<RecordDate> date, List<Standard> standards,
                           Optional<Tolerance> settingTolerance, Optional<Boolean> adjusted,
                           Map<String, String> lines, Map<String, CellAddress> cells) {
    /** Checks the components and copies the collections. */
    public RecordHeader {
        Objects.requireNonNull(tag, "tag");
        Objects.requireNonNull(serial, "serial");
        Objects.requireNonNull(channelNumber, "channelNumber");
        Objects.requireNonNull(technician, "technician");
        Objects.requireNonNull(date, "date");
        standards = List.copyOf(standards);
        Objects.requireNonNull(settingTolerance, "settingTolerance");
        Objects.requireNonNull(adjusted, "adjusted");
        lines = Map.copyOf(lines);
        cells = Map.copyOf(cells);
    }
}
