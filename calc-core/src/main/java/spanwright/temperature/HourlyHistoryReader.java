package spanwright.temperature;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spanwright.quantity.Celsius;

/** Reads one hourly history; used once. */
final class HourlyHistoryReader {
    private static final String TIME = "time";
    private static final String TEMPERATURE = "temperature_degC";

    private final Path file;
    private final ZoneId zone;
    private final List<HourlyTemperature> hours = new ArrayList<>();
    private final Map<Instant, Integer> rowOf = new HashMap<>();
    private final List<String> remarks = new ArrayList<>();

    HourlyHistoryReader(Path file, ZoneId zone) {
        this.file = file;
        this.zone = zone;
    }

    HourlyHistory read() {
        final List<CsvRecord> rows = rows();
        if (rows.isEmpty()) {
            throw new IllegalArgumentException(file.getFileName() + ": the file is empty");
        }
        final int time = column(rows.get(0), TIME);
        final int temperature = column(rows.get(0), TEMPERATURE);
        for (CsvRecord row : rows.subList(1, rows.size())) {
            add(row, time, temperature);
        }
        hours.sort((a, b) -> a.time().compareTo(b.time()));
        listGaps();
        return new HourlyHistory(file.getFileName().toString(), hours, remarks);
    }

    private List<CsvRecord> rows() {
        try (CsvReader<CsvRecord> reader = CsvReader.builder().commentStrategy(CommentStrategy.SKIP)
                .allowUnclosedQuote(false).missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE).ofCsvRecord(file)) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(file.getFileName() + " cannot be read", e);
        } catch (CsvParseException e) {
            throw new IllegalArgumentException(file.getFileName() + " is no CSV file: " + e.getMessage(), e);
        }
    }

    private int column(CsvRecord header, String name) {
        for (int i = 0; i < header.getFieldCount(); i++) {
            if (header.getField(i).replace("\uFEFF", "").strip().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException(where(header, 0) + ": no column \"" + name + "\", only "
            + header.getFields());
    }

    private void add(CsvRecord row, int time, int temperature) {
        if (row.getFieldCount() <= Math.max(time, temperature)) {
            throw new IllegalArgumentException(where(row, row.getFieldCount() - 1) + ": "
                + row.getFieldCount() + " columns, " + (Math.max(time, temperature) + 1) + " needed");
        }
        final String written = row.getField(time).strip();
        final String value = row.getField(temperature).strip();
        if (value.isEmpty()) {
            remarks.add("row " + row.getStartingLineNumber() + ", " + written + ": no temperature recorded");
            return;
        }
        final Instant at = unique(row, time, instants(row, time, written));
        rowOf.put(at, (int) row.getStartingLineNumber());
        hours.add(new HourlyTemperature(at, celsius(row, temperature, value),
            (int) row.getStartingLineNumber(), written));
    }

    private Celsius celsius(CsvRecord row, int column, String text) {
        try {
            return new Celsius(Double.parseDouble(text.replace('\u2212', '-')));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(where(row, column) + ": \"" + text
                + "\" is not a temperature in degC", e);
        }
    }

    /** The instants that a written time may mean: one, or two where the clock went back. */
    private List<Instant> instants(CsvRecord row, int column, String written) {
        final String iso = written.replaceFirst("^(\\d{4}-\\d\\d-\\d\\d) ", "$1T");
        try {
            if (iso.matches(".*(Z|[+-]\\d\\d:\\d\\d)$")) {
                return List.of(OffsetDateTime.parse(iso).toInstant());
            }
            final LocalDateTime local = LocalDateTime.parse(iso);
            final List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
            if (offsets.isEmpty()) {
                throw new IllegalArgumentException(where(row, column) + ": " + written
                    + " does not exist in " + zone + ": the clock went forward over it");
            }
            return offsets.stream().map(local::toInstant).sorted().toList();
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(where(row, column) + ": \"" + written
                + "\" is not an ISO 8601 date and time", e);
        }
    }

    private Instant unique(CsvRecord row, int column, List<Instant> candidates) {
        for (Instant candidate : candidates) {
            if (!rowOf.containsKey(candidate)) {
                if (candidates.size() == 2) {
                    remarks.add("row " + row.getStartingLineNumber() + ": clock change, "
                        + row.getField(column) + " taken as " + candidate);
                }
                return candidate;
            }
        }
        throw new IllegalArgumentException(where(row, column) + ": " + row.getField(column)
            + " was already given in row " + rowOf.get(candidates.get(0)));
    }

    private void listGaps() {
        for (int i = 1; i < hours.size(); i++) {
            final HourlyTemperature before = hours.get(i - 1);
            final Duration step = Duration.between(before.time(), hours.get(i).time());
            if (!step.equals(Duration.ofHours(1))) {
                remarks.add(step.compareTo(Duration.ofHours(1)) > 0
                    ? "gap of " + (step.toHours() - 1) + " h after " + before.written()
                        + " (row " + before.row() + ")"
                    : "row " + hours.get(i).row() + ": only " + step.toMinutes()
                        + " min after the hour before");
            }
        }
    }

    private String where(CsvRecord row, int column) {
        return file.getFileName() + ", row " + row.getStartingLineNumber() + ", column " + (column + 1);
    }
}
