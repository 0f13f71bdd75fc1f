package spanwright.readings;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads dates and times of day. Year-month-day is plain; two numbers of at most 12 before a year are asked
 * for; a time of day needs a zone.
 */
final class DateText {
    /** Whether 03/04 is the third of April; empty if nobody said. */
    private final Optional<Boolean> dayFirst;
    private final Optional<ZoneId> zone;

    private static final Pattern ISO = Pattern.compile("(\\d{4})[-/.](\\d{1,2})[-/.](\\d{1,2})");
    private static final Pattern NUMERIC = Pattern.compile("(\\d{1,2})([-/.])(\\d{1,2})[-/.](\\d{4})");
    private static final Pattern WORDED = Pattern.compile(
        "(\\d{1,2})[-\\s.]*([A-Za-z]{3})[A-Za-z]*[-\\s.,]*(\\d{4})");
    private static final Pattern CLOCK = Pattern.compile(
        "(.*?\\d)[T\\s]+(\\d{1,2}):(\\d{2})(?::(\\d{2})(?:\\.\\d+)?)?\\s*(.*)");
    private static final Pattern TIME_ONLY = Pattern.compile(
        "\\d{1,2}:\\d{2}(:\\d{2}(\\.\\d+)?)?(\\s*\\S+)?");
    private static final List<String> MONTHS = List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug",
        "sep", "oct", "nov", "dec");

    DateText(Optional<Boolean> dayFirst, Optional<ZoneId> zone) {
        this.dayFirst = dayFirst;
        this.zone = zone;
    }

    /**
     * What a text says of the time.
     *
     * @param date   the day, empty if it cannot be told
     * @param fault  what is wrong with it, empty if nothing
     * @param says   the sentence for that
     */
    record Answer(Optional<RecordDate> date, Optional<Fault> fault, String says) {
        private static Answer of(LocalDate day, Optional<Instant> instant, String written) {
            return new Answer(Optional.of(new RecordDate(day, instant, written)), Optional.empty(), "");
        }

        private static Answer wrong(Fault fault, String says) {
            return new Answer(Optional.empty(), Optional.of(fault), says);
        }
    }

    /** Reads a date, a date with a time of day, or a time of the day that the record states. */
    Answer read(String text, Optional<LocalDate> day) {
        if (day.isEmpty() || !TIME_ONLY.matcher(text).matches()) {
            return read(text);
        }
        final Answer answer = read(day.get() + " " + text);
        return new Answer(answer.date().map(d -> new RecordDate(d.day(), d.instant(), text)), answer.fault(),
            answer.says());
    }

    /** Reads a date, or a date with a time of day. */
    Answer read(String text) {
        final Matcher clock = CLOCK.matcher(text);
        if (!clock.matches()) {
            return day(text, text);
        }
        final Answer day = day(clock.group(1), text);
        if (day.date().isEmpty()) {
            return day;
        }
        try {
            final LocalTime time = LocalTime.of(Integer.parseInt(clock.group(2)),
                Integer.parseInt(clock.group(3)), clock.group(4) == null ? 0
                : Integer.parseInt(clock.group(4)));
            return moment(day.date().get().day().atTime(time), clock.group(5).strip(), text);
        } catch (DateTimeException e) {
            return Answer.wrong(Fault.HEADER_UNREADABLE, "\"" + text + "\" is no time of day");
        }
    }

    private Answer moment(LocalDateTime local, String zoneText, String text) {
        if (zoneText.matches("Z|UTC|[+-]\\d{2}:?\\d{2}")) {
            final ZoneOffset offset = zoneText.startsWith("Z") || zoneText.equals("UTC") ? ZoneOffset.UTC
                : ZoneOffset.of(zoneText);
            return Answer.of(local.toLocalDate(), Optional.of(local.toInstant(offset)), text);
        }
        final Optional<ZoneId> place = zoneText.isEmpty() ? zone : zone(zoneText);
        if (place.isEmpty()) {
            return new Answer(Optional.of(new RecordDate(local.toLocalDate(), Optional.empty(), text)),
                Optional.of(Fault.ZONE_MISSING), "time \"" + text
                + "\" has no zone: write one, such as +01:00"
                    + " or Europe/London, or a header line \"Zone\"");
        }
        final List<ZoneOffset> offsets = place.get().getRules().getValidOffsets(local);
        if (offsets.size() == 1) {
            return Answer.of(local.toLocalDate(), Optional.of(local.toInstant(offsets.get(0))), text);
        }
        return new Answer(Optional.of(new RecordDate(local.toLocalDate(), Optional.empty(), text)),
            Optional.of(Fault.CLOCK_CHANGE), "time \"" + text + "\" "
                + (offsets.isEmpty() ? "did not exist" : "existed twice") + " in " + place.get()
                + ", where the clock was changed: write it with its offset from UTC");
    }

    private static Optional<ZoneId> zone(String text) {
        try {
            return Optional.of(ZoneId.of(text));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private Answer day(String dayText, String written) {
        try {
            return dayOrThrow(dayText.strip(), written);
        } catch (DateTimeException e) {
            return Answer.wrong(Fault.HEADER_UNREADABLE, "date \"" + written + "\" does not exist");
        }
    }

    private Answer dayOrThrow(String text, String written) {
        final Matcher iso = ISO.matcher(text);
        if (iso.matches()) {
            return on(iso.group(1), iso.group(2), iso.group(3), written);
        }
        final Matcher worded = WORDED.matcher(text);
        if (worded.matches()) {
            final int month = 1 + MONTHS.indexOf(worded.group(2).toLowerCase(Locale.ROOT));
            return on(worded.group(3), String.valueOf(month), worded.group(1), written);
        }
        final Matcher m = NUMERIC.matcher(text);
        if (!m.matches()) {
            return Answer.wrong(Fault.HEADER_UNREADABLE, "\"" + written + "\" is no date: write it like"
                + " 2026-03-14");
        }
        final int first = Integer.parseInt(m.group(1));
        final int second = Integer.parseInt(m.group(3));
        final boolean dotted = m.group(2).equals(".");
        if (first <= 12 && second <= 12 && first != second && !dotted && dayFirst.isEmpty()) {
            return Answer.wrong(Fault.DATE_ORDER, "date \"" + written + "\" may be " + LocalDate.of(
                Integer.parseInt(m.group(4)), second, first) + " or " + LocalDate.of(
                Integer.parseInt(m.group(4)), first, second) + ": write it like 2026-03-14, or say dayFirst()"
                + " or monthFirst() in the call");
        }
        final boolean day = first > 12 || second <= 12 && (dotted || dayFirst.orElse(true));
        return on(m.group(4), m.group(day ? 3 : 1), m.group(day ? 1 : 3), written);
    }

    private static Answer on(String year, String month, String day, String written) {
        return Answer.of(LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day)),
            Optional.empty(), written);
    }
}
