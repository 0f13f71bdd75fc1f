package spanwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import spanwright.quantity.Span;
import spanwright.reference.PublishedData;

/**
 * A record that is written and read again is the same record, down to the text and the place of each cell.
 */
class WrittenAgainTest {
    private static final Path FAULTS = PublishedData.folder().resolve("faults");

    @TempDir
    private Path folder;

    static Stream<Path> readableRecords() throws IOException {
        try (Stream<Path> files = Stream.concat(Files.walk(FAULTS), Files.walk(PublishedData.folder()
            .resolve("demo")))) {
            return files.filter(f -> f.toString().matches(".*\\.(csv|xlsx)"))
                .filter(f -> Readings.check(f).records().stream().anyMatch(r -> r.questions().stream()
                    .noneMatch(RecordFinding::isOpenQuestion))).sorted().toList().stream();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("readableRecords")
    void everyReadableRecordComesBackFromCsvAndXlsx(Path file) throws IOException {
        comesBack(Readings.read(file));
    }

    @Test
    void mutatedRecordsComeBack() throws IOException {
        int readable = 0;
        for (int i = 0; i < 1200; i++) {
            final CalibrationRecord record;
            try {
                record = Readings.read(Files.write(folder.resolve("LT-201.csv"),
                    MutatedRecordsTest.mutated(new Random(20261127L + i))));
                record.runs();
            } catch (ReadingsFormatException e) {
                continue;
            }
            readable++;
            comesBack(record);
        }
        assertThat(readable).isGreaterThan(90);
    }

    @Test
    void mutatedTablesComeBack() throws IOException {
        int readable = 0;
        for (int i = 0; i < 500; i++) {
            final byte[] mutated = MutatedRecordsTest.mutatedTable(new Random(20261128L + i));
            final byte[] bytes = i % 2 == 0 ? mutated : new String(mutated, StandardCharsets.ISO_8859_1)
                .replace(',', ';').replace('.', ',').getBytes(StandardCharsets.ISO_8859_1);
            final ReadingsTable table;
            try {
                table = Readings.table(Files.write(folder.resolve("t.csv"), bytes));
            } catch (ReadingsFormatException e) {
                continue;
            }
            readable++;
            table.writeCsv(folder.resolve("u.csv"));
            table.writeXlsx(folder.resolve("u.xlsx"));
            final String text = Files.readString(folder.resolve("u.csv"));
            same(told(table, false), told(Readings.table(folder.resolve("u.csv")), false), text);
            TableReading workbook = Readings.tableReading(folder.resolve("u.xlsx"));
            for (TableColumn c : table.columns()) {
                workbook = c.isNumeric() ? workbook : workbook.text(c.head());
            }
            same(told(table, true), told(workbook.read(), true), text);
        }
        assertThat(readable).isGreaterThan(80);
    }

    /** Comments, heads, kinds and cells; in a workbook numbers have no decimal comma. */
    private static String told(ReadingsTable table, boolean workbook) {
        final StringBuilder out = new StringBuilder().append(table.comments());
        for (TableColumn c : table.columns()) {
            out.append('\n').append(c.head()).append(c.isNumeric()).append(c.isNumeric() && workbook
                ? table.texts(c.head()).toString().replace(',', '.') : table.texts(c.head()).toString());
        }
        return out.toString();
    }

    private void comesBack(CalibrationRecord record) throws IOException {
        final Path again = Files.createDirectories(folder.resolve("again"));
        record.writeCsv(again.resolve("a.csv"));
        record.writeXlsx(again.resolve("a.xlsx"));
        final String expected = told(record);
        same(expected, told(Readings.read(again.resolve("a.csv"))), text(again));
        same(expected, told(Readings.read(again.resolve("a.xlsx"))), text(again));
    }

    /** Says where they part: the whole of both is too long to see it. */
    private static void same(String expected, String actual, String text) {
        final int at = Arrays.mismatch(expected.toCharArray(), actual.toCharArray());
        if (at >= 0) {
            final int from = Math.max(0, at - 60);
            assertEquals(expected.substring(from, Math.min(expected.length(), at + 60)),
                actual.substring(from, Math.min(actual.length(), at + 60)), () -> text);
        }
    }

    private static String text(Path again) {
        try {
            return Files.readString(again.resolve("a.csv"));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** All that a record holds, without the name of the file and the sheet. */
    private static String told(CalibrationRecord record) {
        final StringBuilder out = new StringBuilder();
        for (String channel : record.channels()) {
            record.runRecords(channel).forEach(r -> out.append(r.run()).append(r.header())
                .append(r.clamped()).append(r.plateau()).append(r.absent()).append('\n'));
        }
        record.findings().stream().filter(f -> !ofTheBytes(f.fault())).forEach(f -> out.append(f.cell())
            .append(' ').append(f.fault()).append(' ').append(f.written()).append('\n'));
        final String sheet = record.allRuns().get(0).run().readings().get(0).applied().cell().sheet();
        return out.toString().replace(record.file() + (sheet.isEmpty() ? "" : ":" + sheet) + ":", "");
    }

    /** Repairs that the written file, in UTF-8 and with one separator, needs no more, or needs anew. */
    private static boolean ofTheBytes(Fault fault) {
        return fault == Fault.BYTE_ORDER_MARK || fault == Fault.ENCODING || fault == Fault.TAG_MISMATCH
            || fault == Fault.CHARACTER;
    }

    @Test
    void whatTheCallSaidStandsInTheWrittenRecord() throws IOException {
        final Path file = Files.writeString(folder.resolve("bench.csv"), """
            Date;03/04/2026
            Standard;S-01; due 01/02/2027
            Stim;Resp [V];When
            4,000;1,0005;03/04/2026 08:15
            12,00;OL;03/04/2026 08:16
            20,00;5,0010;03/04/2026 08:17
            """);
        final CalibrationRecord record = Readings.reading(file).input(Span.milliamps4to20())
            .output(Span.milliamps4to20()).dayFirst().zone(ZoneId.of("Europe/London"))
            .column("Stim").as(ColumnRole.APPLIED, "mA").column("When").as(ColumnRole.TIME, "")
            .column("Resp").as(ColumnRole.INDICATED, "V across 250 ohm").read();
        record.writeCsv(folder.resolve("again.csv"));
        final CalibrationRecord again = Readings.read(folder.resolve("again.csv"));
        final RunRecord run = again.runRecords("channel 1").get(0);
        assertEquals("2026-04-03", run.header().date().orElseThrow().day().toString());
        assertEquals("2027-02-01", run.header().standards().get(0).due().orElseThrow().toString());
        assertEquals(4.002, run.run().readings().get(0).indicated().value());
        assertEquals("1,0005", run.run().readings().get(0).indicated().written());
        assertEquals("2026-04-03T07:15:00Z", run.run().readings().get(0).time().orElseThrow().toString());
        assertEquals(AbsentReading.Kind.OVERLOAD, run.absent().get(0).kind());
        assertEquals(12, run.absent().get(0).beside().orElseThrow().value());
        assertThat(again.questions()).isEmpty();
        assertThat(Files.readString(folder.resolve("again.csv")))
            .contains("# changed when written, as told in the call: row 6, column 1 now \"Applied (mA)\", was"
                + " \"Stim\"");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"volts-as-milliamps.csv, VOLTAGE_AS_CURRENT", "amps-as-milliamps.csv, UNIT_MISMATCH",
        "percent-as-milliamps.csv, UNIT_MISMATCH", "millivolts-10-ohm-as-milliamps.csv, VOLTAGE_AS_CURRENT",
        "readings-swapped.csv, READINGS_SWAPPED", "range-turned-date.csv, RANGE_TURNED_DATE",
        "columns-swapped.csv, COLUMNS_SWAPPED", "columns-swapped-units.csv, COLUMNS_SWAPPED"})
    void anAnswerStandsInTheWrittenRecord(String file, Fault question) throws IOException {
        final CalibrationRecord record = Readings.read(FAULTS.resolve(file)).accepting(question);
        final Path target = folder.resolve(file);
        record.writeCsv(target);
        final CalibrationRecord again = Readings.read(target);
        assertThat(again.questions()).isEmpty();
        assertEquals(values(record), values(again));
        assertThat(Files.readString(target)).contains("# changed when written, as told in the call: row ");
    }

    private static List<String> values(CalibrationRecord record) {
        return record.runs().stream().flatMap(r -> r.readings().stream().map(x -> r.input() + " " + r.output()
            + String.format(Locale.ROOT, " %s %s %s %s", x.applied().value(), x.indicated().value(),
                x.indicated().resolution(), x.indicated().written()))).toList();
    }

    @Test
    void aRefusedRowThatWasLeftOutBecomesAComment() throws IOException {
        final CalibrationRecord record = Readings.reading(FAULTS.resolve("text-in-number.csv"))
            .leavingOutRefusedRows().read();
        record.writeCsv(folder.resolve("LT-201.csv"));
        final CalibrationRecord again = Readings.read(folder.resolve("LT-201.csv"));
        assertEquals(values(record), values(again));
        assertThat(Files.readString(folder.resolve("LT-201.csv"))).contains("# refused: 75 | up | ");
    }

    @Test
    void aTagThatASpreadsheetWouldRunComesBackAndIsListed() throws IOException {
        final String tag = "=W1+K2-B1";
        final CalibrationRecord record = Readings.read(Files.writeString(folder.resolve("a.csv"),
            RecordText.SOUND.replace("LT-101A", tag).replace("4.003", "-0.5 mA"), StandardCharsets.UTF_8));
        record.writeCsv(folder.resolve("b.csv"));
        assertThat(Files.readString(folder.resolve("b.csv"))).contains("Tag,'=W1+K2-B1\n")
            .contains(",-0.5 mA\n");
        final CalibrationRecord again = Readings.read(folder.resolve("b.csv"));
        assertEquals(List.of(tag), again.channels());
        assertThat(again.repairs()).extracting(f -> f.cell().row() + ":" + f.cell().column() + " "
            + f.written()).contains("2:2 '=W1+K2-B1");
        record.writeXlsx(folder.resolve("b.xlsx"));
        assertEquals(List.of(tag), Readings.read(folder.resolve("b.xlsx")).channels());
    }
}
