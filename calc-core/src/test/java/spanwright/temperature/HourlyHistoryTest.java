package spanwright.temperature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.quantity.Celsius.degC;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.reference.PublishedData;
import spanwright.uncertainty.Estimate;

class HourlyHistoryTest {
    private static final ZoneId DUBLIN = ZoneId.of("Europe/Dublin");

    @TempDir
    private Path folder;

    private Path file(String header, List<String> lines) throws IOException {
        final Path file = folder.resolve("weather.csv");
        final List<String> all = new ArrayList<>(List.of(header));
        all.addAll(lines);
        return Files.write(file, all);
    }

    /** Lines of consecutive local hours from midnight of a day, all of 10 degC. */
    private static List<String> hours(String day, int count) {
        final LocalDateTime start = LocalDateTime.parse(day + "T00:00");
        return new ArrayList<>(
            IntStream.range(0, count).mapToObj(i -> start.plusHours(i) + ",10.0").toList());
    }

    private HourlyHistory read(List<String> lines) throws IOException {
        return HourlyHistory.read(file("time,temperature_degC", lines), DUBLIN);
    }

    private String refused(List<String> lines) {
        return assertThrows(IllegalArgumentException.class, () -> read(lines)).getMessage();
    }

    private static HourlyHistory madeUpYear() {
        final Instant start = Instant.parse("2023-01-01T00:00:00Z");
        return new HourlyHistory("made up", IntStream.range(0, 8760).mapToObj(h ->
            new HourlyTemperature(start.plusSeconds(3600L * h), degC(10
                - 12 * Math.cos(2 * Math.PI * h / 8760) - 6 * Math.cos(2 * Math.PI * (h % 24) / 24)),
            h + 2, "hour " + h)).toList(), List.of());
    }

    @Test
    @DisplayName("largest, P95, median, rms and hours beyond agree with R"
        + " [test-data/published/duration-curve.R]")
    void durationCurveAgreesWithR() {
        final DurationCurve curve = madeUpYear().excursions(degC(23), 8);
        final PublishedData r = PublishedData.load("duration-curve");
        assertEquals(r.numbers("largest")[0], curve.largest(), 1e-10);
        assertEquals(r.numbers("p95")[0], curve.notExceededFor(0.95), 1e-10);
        assertEquals(r.numbers("p50")[0], curve.notExceededFor(0.5), 1e-10);
        assertEquals(r.numbers("rms")[0], curve.rootMeanSquare(), 1e-10);
        assertEquals(r.numbers("hours_beyond_20")[0], curve.hoursBeyond(20));
        assertEquals(8760, curve.hours());
    }

    @ParameterizedTest(name = "{0} K at 0.01 %/degC is {1} % of span")
    @CsvSource(textBlock = """
        # design excursion, largest, P95 and rms of a year; computed and verified
        # independently of this project
        33,   0.33
        27.9, 0.28
        19.3, 0.19
        10.4, 0.10
        """)
    void anExcursionBecomesAnErrorByTheCoefficient(double kelvin, String percent) {
        assertAsPrinted(percent, new DurationCurve(List.of(0.0, kelvin)).times(0.01).largest());
    }

    @Test
    void errorsOfACoefficientFollowTheHours() {
        final TemperatureCoefficient c = new TemperatureCoefficient(TemperatureEffect.ZERO,
            CoefficientMethod.BOW_TIE, Estimate.exactly(0.01), degC(23), degC(-10), degC(55), 0, "LT-101A");
        final DurationCurve kelvin = madeUpYear().excursions(degC(23), 8);
        final DurationCurve errors = madeUpYear().errors(c, 8);
        assertEquals(kelvin.largest() * 0.01, errors.largest(), 1e-12);
        assertEquals(kelvin.hoursBeyond(20), errors.hoursBeyond(0.2));
    }

    @Test
    void anAmbientFromAHistoryIsWeightedByTime() {
        final HourlyHistory year = madeUpYear();
        final Ambient a = Ambient.of(year);
        assertEquals(Ambient.Basis.SHARE_OF_TIME, a.basis());
        assertEquals(year.lowest(), a.lowest());
        assertEquals(year.highest(), a.highest());
        assertEquals(10, a.distribution().orElseThrow().mean(), 1e-9);
        assertEquals(0, year.missingHours());
    }

    @Test
    void gapsAreListedAndNotFilled() throws IOException {
        final List<String> lines = hours("2023-01-10", 30);
        lines.remove(7);
        lines.remove(6);
        lines.set(10, "2023-01-10T12:00,");
        final HourlyHistory h = read(lines);
        assertEquals(27, h.hours().size());
        assertEquals(3, h.missingHours());
        assertEquals(
            List.of("row 12, 2023-01-10T12:00: no temperature recorded",
                "gap of 2 h after 2023-01-10T05:00 (row 7)", "gap of 1 h after 2023-01-10T11:00 (row 11)"),
            h.remarks());
        assertTrue(h.toString().contains("27 hours, 10 \u00b0C to 10 \u00b0C, 3 missing"), h::toString);
    }

    @Test
    @DisplayName("the hour that the clock repeats is two hours [tz database: Dublin, 29 October 2023]")
    void theRepeatedHourIsTwoHours() throws IOException {
        final List<String> lines = hours("2023-10-28", 26);
        lines.add("2023-10-29T01:00,11.5");
        lines.addAll(hours("2023-10-29", 24).subList(2, 24));
        final HourlyHistory h = read(lines);
        assertEquals(49, h.hours().size());
        assertEquals(0, h.missingHours());
        assertEquals(Instant.parse("2023-10-29T00:00:00Z"), h.hours().get(25).time());
        assertEquals(Instant.parse("2023-10-29T01:00:00Z"), h.hours().get(26).time());
        assertEquals(degC(11.5), h.hours().get(26).temperature());
        assertEquals(2, h.remarks().size());
        assertTrue(h.remarks().get(0).startsWith("row 27: clock change"), h.remarks()::toString);
    }

    @Test
    @DisplayName("the hour that the clock skips is no gap, and no local time"
        + " [tz database: Dublin, 26 March 2023]")
    void theSkippedHourIsNoGap() throws IOException {
        final List<String> lines = hours("2023-03-25", 48);
        assertEquals("weather.csv, row 27, column 1: 2023-03-26T01:00 does not exist in Europe/Dublin:"
            + " the clock went forward over it", refused(lines));
        lines.remove(25);
        final HourlyHistory h = read(lines);
        assertEquals(47, h.hours().size());
        assertEquals(0, h.missingHours());
        assertTrue(h.remarks().isEmpty(), h.remarks()::toString);
    }

    @Test
    void timesWithAnOffsetNeedNoZone() throws IOException {
        final List<String> lines = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            lines.add(String.format(java.util.Locale.ROOT, "2023-10-29 %02d:00+02:00,\u22123.5", i));
        }
        final HourlyHistory h = read(lines);
        assertEquals(Instant.parse("2023-10-28T22:00:00Z"), h.hours().get(0).time());
        assertEquals(degC(-3.5), h.lowest());
    }

    @Test
    void otherColumnsCommentsAndAByteOrderMarkDoNotMatter() throws IOException {
        final Path file = folder.resolve("w.csv");
        final StringBuilder text = new StringBuilder("\uFEFFtime,wind,temperature_degC\n");
        hours("2023-01-10", 24).forEach(l -> text.append(l.replace(",", ",7,")).append('\n'));
        Files.writeString(file, text);
        assertEquals(24, HourlyHistory.read(file.toString(), "Europe/Dublin").hours().size());
    }

    @Test
    void badCellsAreNamedByFileRowAndColumn() {
        final List<String> text = hours("2023-01-10", 24);
        text.set(2, "2023-01-10T02:00,warm");
        assertEquals("weather.csv, row 4, column 2: \"warm\" is not a temperature in degC", refused(text));
        final List<String> cold = hours("2023-01-10", 24);
        cold.set(2, "2023-01-10T02:00,-300");
        assertEquals("weather.csv, row 4, column 2: \"-300\" is not a temperature in degC", refused(cold));
        final List<String> date = hours("2023-01-10", 24);
        date.set(0, "10/01/2023 00:00,10");
        assertEquals("weather.csv, row 2, column 1: \"10/01/2023 00:00\" is not an ISO 8601 date and time",
            refused(date));
        final List<String> twice = hours("2023-01-10", 24);
        twice.set(5, "2023-01-10T03:00,10");
        assertEquals("weather.csv, row 7, column 1: 2023-01-10T03:00 was already given in row 5",
            refused(twice));
        assertEquals("weather.csv, row 2, column 1: 1 columns, 2 needed",
            refused(List.of("2023-01-10T03:00")));
        assertEquals("number of hours in weather.csv is 23: at least 24 needed",
            refused(hours("2023-01-10", 23)));
    }

    @Test
    void aColumnWithoutUnitIsRefused() throws IOException {
        final Path file = file("time,temperature", hours("2023-01-10", 24));
        final var e = assertThrows(IllegalArgumentException.class, () -> HourlyHistory.read(file, DUBLIN));
        assertEquals("weather.csv, row 1, column 1: no column \"temperature_degC\", only [time, temperature]",
            e.getMessage());
        final Path empty = Files.writeString(folder.resolve("empty.csv"), "");
        assertEquals("empty.csv: the file is empty", assertThrows(IllegalArgumentException.class,
            () -> HourlyHistory.read(empty, DUBLIN)).getMessage());
        final Path quote = Files.writeString(folder.resolve("quote.csv"),
            "time,temperature_degC\n\"2023,10\n");
        assertTrue(assertThrows(IllegalArgumentException.class, () -> HourlyHistory.read(quote, DUBLIN))
            .getMessage().startsWith("quote.csv is no CSV file: "));
        assertEquals("none.csv cannot be read", assertThrows(java.io.UncheckedIOException.class,
            () -> HourlyHistory.read(folder.resolve("none.csv"), DUBLIN)).getMessage());
    }

    @Test
    void halfHoursAreRemarked() throws IOException {
        final List<String> lines = hours("2023-01-10", 25);
        lines.add("2023-01-11T00:30,10");
        assertEquals(List.of("row 27: only 30 min after the hour before"), read(lines).remarks());
    }

    @Test
    void aCurveOfNothingIsZero() {
        final DurationCurve c = new DurationCurve(List.of(0.0, 0.0));
        assertEquals(0, c.rootMeanSquare());
        assertEquals(0, c.hoursBeyond(0));
        assertThrows(IllegalArgumentException.class, () -> new DurationCurve(List.of()));
        assertThrows(IllegalArgumentException.class, () -> new DurationCurve(List.of(-1.0)));
        assertThrows(IllegalArgumentException.class, () -> c.notExceededFor(1));
    }
}
