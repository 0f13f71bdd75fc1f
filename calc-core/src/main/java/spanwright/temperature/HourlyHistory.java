package spanwright.temperature;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.uncertainty.Empirical;

/**
 * Outdoor temperatures hour by hour, at least 24 of them, in order of time. Missing hours are listed, never
 * filled: what is not recorded counts neither as good nor as bad.
 *
 * @param source  name of the file
 * @param hours   the recorded hours
 * @param remarks gaps, clock changes and other things a reader should know
 */
public record HourlyHistory(String source, List<HourlyTemperature> hours, List<String> remarks) {
    /** Checks the components, sorts by time and copies the lists. */
    public HourlyHistory {
        Checks.notBlank("source", source);
        hours = hours.stream().sorted(Comparator.comparing(HourlyTemperature::time)).toList();
        remarks = List.copyOf(remarks);
        Checks.atLeast("number of hours in " + source, hours.size(), 24);
    }

    /**
     * Reads a CSV file with a header: a column {@code time} and a column {@code temperature_degC}. Other
     * columns are ignored. Times are ISO 8601; those without offset are local to the zone. Where the clock
     * goes back an hour occurs twice: the first row is the earlier. Where it goes forward a local hour does
     * not exist and is refused.
     *
     * @param zone for example {@code "Europe/Dublin"}
     * @throws IllegalArgumentException if a column, time or temperature is wrong; the message names file,
     * row and column
     * @throws java.io.UncheckedIOException if the file cannot be read
     */
    public static HourlyHistory read(Path file, ZoneId zone) {
        return new HourlyHistoryReader(file, Objects.requireNonNull(zone, "zone")).read();
    }

    /** As the other, with the names as text. */
    public static HourlyHistory read(String file, String zone) {
        return read(Path.of(file), ZoneId.of(zone));
    }

    /** Lowest recorded temperature. */
    public Celsius lowest() {
        return hours.stream().map(HourlyTemperature::temperature).min(Comparator.naturalOrder())
            .orElseThrow();
    }

    /** Highest recorded temperature. */
    public Celsius highest() {
        return hours.stream().map(HourlyTemperature::temperature).max(Comparator.naturalOrder())
            .orElseThrow();
    }

    /** Hours between the first and the last that are not recorded. */
    public long missingHours() {
        final Duration spanned = Duration.between(hours.get(0).time(), hours.get(hours.size() - 1).time());
        return spanned.toHours() + 1 - hours.size();
    }

    /** The recorded temperatures as a distribution, each hour equally likely, degC. */
    public Empirical distribution() {
        return Empirical.of(hours.stream().mapToDouble(h -> h.temperature().value()).toArray());
    }

    /**
     * How long a module that is so much warmer than the air was how far from its calibration temperature,
     * kelvin.
     */
    public DurationCurve excursions(Celsius calibration, double riseKelvin) {
        return new DurationCurve(hours.stream()
            .map(h -> Math.abs(h.temperature().value() + riseKelvin - calibration.value())).toList());
    }

    /** How long the temperature error of a coefficient was how large, percent of span. */
    public DurationCurve errors(TemperatureCoefficient coefficient, double riseKelvin) {
        return excursions(coefficient.reference(), riseKelvin).times(coefficient.perKelvin().value());
    }

    @Override
    public String toString() {
        return source + ": " + hours.size() + " hours, " + lowest() + " to " + highest() + ", "
            + missingHours() + " missing"
            + (remarks.isEmpty() ? "" : "\n  " + String.join("\n  ", remarks));
    }
}
