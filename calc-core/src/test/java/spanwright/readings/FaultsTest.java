package spanwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import spanwright.reference.PublishedData;

/** Every row of the index of test-data/faults, and what happens when a question is answered. */
class FaultsTest {
    private static final Path FOLDER = PublishedData.folder().resolve("faults");
    private static final FolderOutcome OUTCOME = Readings.check(FOLDER);

    record Row(String file, String word, String findings) { }

    static List<Row> index() throws IOException {
        final List<Row> rows = new ArrayList<>();
        for (String line : Files.readAllLines(FOLDER.resolve("README.md"))) {
            final String[] cells = line.split("\\|");
            if (cells.length == 5 && cells[1].matches(" \\S+\\.(csv|xlsx) ")) {
                rows.add(new Row(cells[1].strip(), cells[3].strip(), cells[4].strip()));
            }
        }
        return rows;
    }

    @Test
    void everyFileIsInTheIndexAndTheOtherWayRound() throws IOException {
        assertEquals(index().stream().map(Row::file).toList(),
            OUTCOME.files().stream().map(FileOutcome::file).toList());
        assertTrue(index().size() >= 60);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("index")
    void saysWhatTheIndexSays(Row row) {
        final FileOutcome actual = OUTCOME.files().stream().filter(f -> f.file().equals(row.file()))
            .findFirst()
            .orElseThrow();
        final Map<Fault, String> first = new LinkedHashMap<>();
        actual.findings().forEach(f -> first.putIfAbsent(f.fault(), f.fault().name() + " " + f.cell().row()
            + ":"
            + f.cell().column()));
        assertEquals(row.findings(), first.isEmpty() ? "-" : String.join(", ", first.values()));
        assertEquals(row.word(), actual.word());
        final boolean refused = actual.word().equals("refused");
        final Path file = FOLDER.resolve(row.file());
        if (refused) {
            final var e = assertThrows(ReadingsFormatException.class, () -> Readings.read(file));
            assertThat(e.getMessage()).startsWith(row.file() + ":").doesNotContain("\n");
            assertThat(e.findings()).isNotEmpty();
        } else {
            assertEquals(actual.findings(), Readings.read(file).findings());
        }
    }

    @Test
    void theIndexHasAFileForNearlyEveryFault() throws IOException {
        final Set<Fault> shown = EnumSet.noneOf(Fault.class);
        OUTCOME.files().forEach(f -> shown.addAll(f.faults()));
        assertThat(EnumSet.complementOf(EnumSet.copyOf(shown))).as("faults of histories, and answers")
            .containsExactlyInAnyOrder(Fault.ANSWERED, Fault.IDENTITY_CONFLICT, Fault.CHANNEL_SHIFTED);
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"columns-swapped.csv", "volts-as-milliamps.csv", "readings-swapped.csv",
        "range-turned-date.csv", "columns-swapped-units.csv", "comma-thousands.csv",
            "columns-swapped-ranges.csv",
        "columns-swapped-root.csv"})
    void givesNothingBeforeItsQuestionIsAnswered(String file) {
        final CalibrationRecord record = Readings.read(FOLDER.resolve(file));
        assertThat(record.questions()).hasSize(1);
        assertThatThrownBy(record::runs).isInstanceOf(ReadingsFormatException.class)
            .hasMessageContaining("; proposed: ");
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"volts-as-milliamps.csv, VOLTAGE_AS_CURRENT, 0.0004",
        "amps-as-milliamps.csv, UNIT_MISMATCH, 0.001",
        "percent-as-milliamps.csv, UNIT_MISMATCH, 0.0016",
        "millivolts-10-ohm-as-milliamps.csv, VOLTAGE_AS_CURRENT, 0.001",
        "millivolts-100-ohm-as-milliamps.csv, VOLTAGE_AS_CURRENT, 0.001",
        "readings-swapped.csv, READINGS_SWAPPED, 0.001", "range-turned-date.csv, RANGE_TURNED_DATE, 0.001"})
    void readsTheSoundRecordOnceTheQuestionIsAnswered(String file, Fault question, double resolution) {
        final CalibrationRun sound = Readings.read(FOLDER.resolve("as-left-not-adjusted.csv")).runs().get(0);
        final CalibrationRecord record = Readings.read(FOLDER.resolve(file)).accepting(question);
        final CalibrationRun run = record.runs().get(0);
        assertThat(record.repairs()).extracting(RecordFinding::fault).contains(Fault.ANSWERED);
        for (int i = 0; i < 9; i++) {
            assertEquals(sound.readings().get(i).indicated().value(),
                run.readings().get(i).indicated().value(), 0.0011, "reading " + i);
            assertEquals(resolution, run.readings().get(i).indicated().resolution(), 1e-12);
        }
    }

    @Test
    void exchangesColumnsOnlyWhenTold() {
        final Path file = FOLDER.resolve("columns-swapped.csv");
        assertEquals(4.003, Readings.reading(file).declining(Fault.COLUMNS_SWAPPED).read().runs().get(0)
            .readings().get(0).applied().value());
        assertEquals(4.003, Readings.reading(file).accepting(Fault.COLUMNS_SWAPPED).read().runs().get(0)
            .readings().get(0).indicated().value());
        final CalibrationRun level = Readings.reading(FOLDER.resolve("columns-swapped-units.csv"))
            .accepting(Fault.COLUMNS_SWAPPED).read().runs().get(0);
        assertEquals(2.0, level.readings().get(1).applied().value());
        assertEquals(8.006, level.readings().get(1).indicated().value());
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"columns-swapped-ranges.csv", "columns-swapped-root.csv"})
    void readsColumnsThatFitOnlyExchangedOnceTold(String file) {
        final CalibrationRecord record = Readings.read(FOLDER.resolve(file));
        assertThat(record.questions().get(0).says())
            .matches("as they stand the readings miss the characteristic"
            + " by \\d+ % of span \\(root mean square\\), exchanged by 0\\.[0-3] %");
        final CalibrationRun run = record.accepting(Fault.COLUMNS_SWAPPED).runs().get(0);
        assertEquals("4.000", run.readings().get(0).applied().written());
        for (Reading r : run.readings()) {
            assertEquals(run.expected(r), r.indicated().value(), run.output().width() / 100);
        }
    }

    @Test
    void readsADateOnlyWhenItsOrderIsKnown() {
        final Path file = FOLDER.resolve("date-order.csv");
        assertTrue(header(Readings.read(file)).date().isEmpty());
        assertEquals("2026-04-03", header(Readings.reading(file).dayFirst().read()).date().orElseThrow()
            .toString());
        assertEquals("2026-03-04", header(Readings.reading(file).monthFirst().read()).date().orElseThrow()
            .toString());
    }

    @Test
    void keepsMissingCensoredAndOverloadApart() {
        assertEquals(AbsentReading.Kind.MISSING, absent("value-missing.csv").kind());
        assertEquals(AbsentReading.Kind.ABOVE, absent("value-censored.csv").kind());
        assertEquals(21, absent("value-censored.csv").bound().orElseThrow());
        assertEquals(AbsentReading.Kind.OVERLOAD, absent("value-overload.csv").kind());
        assertEquals("OL", absent("value-overload.csv").written());
    }

    @Test
    void takesAClampOutAndAPlateauOnlyFromLinearity() {
        final RunRecord clamp = Readings.read(FOLDER.resolve("over-range-clamp.csv")).runRecords("LT-201")
            .get(0);
        assertEquals(3, clamp.clamped().size());
        assertEquals(9, clamp.run().readings().size());
        final RunRecord plateau = Readings.read(FOLDER.resolve("supply-plateau.csv")).runRecords("LT-201")
            .get(0);
        assertEquals(10, plateau.run().readings().size());
        assertEquals(4, plateau.plateau().size());
        assertEquals(6, plateau.followingPart().readings().size());
    }

    @Test
    void refusesPassOrFailWithoutABasis() {
        assertTrue(Readings.read(FOLDER.resolve("tolerance-basis-missing.csv")).runs().get(0).tolerance()
            .isEmpty());
    }

    @Test
    void leavesOutRefusedRowsWhenToldAndStillListsThem() {
        final CalibrationRecord record = Readings.reading(FOLDER.resolve("text-in-number.csv"))
            .leavingOutRefusedRows().read();
        assertEquals(8, record.runs().get(0).readings().size());
        assertEquals(new RowAccount(0, 15, 8, 0, 1), record.account());
        assertThat(record.findings(Outcome.REFUSED)).hasSize(1);
    }

    @Test
    void readsTheSameFromEveryEncodingAndFromAWorkbook() {
        final CalibrationRun sound = Readings.read(FOLDER.resolve("as-left-not-adjusted.csv")).runs().get(0);
        for (String file : List.of("byte-order-mark.csv", "utf-16.csv", "latin-1.csv", "decimal-comma.csv",
            "unit-in-cells.csv", "workbook-clean.xlsx")) {
            final CalibrationRun run = Readings.read(FOLDER.resolve(file)).runs().get(0);
            assertEquals(23.1, run.conditions().ambient().orElseThrow().value(), file);
            for (int i = 0; i < 9; i++) {
                final Reading a = sound.readings().get(i);
                final Reading b = run.readings().get(i);
                assertEquals(a.applied().value(), b.applied().value(), file);
                assertEquals(a.indicated().value(), b.indicated().value(), file);
                assertEquals(a.indicated().resolution(), b.indicated().resolution(), 1e-15, file);
            }
        }
    }

    @Test
    void printsTheOutcomeTableAndGivesItToANotebook() {
        final String[] lines = OUTCOME.toString().split("\n");
        assertEquals(OUTCOME.files().size() + 1, lines.length);
        assertTrue(Arrays.stream(lines).allMatch(l -> l.length() < 160));
        assertThat(lines[lines.length - 1]).contains(OUTCOME.files().size() + " files");
        assertThat(OUTCOME.toTable().columnNames()).containsExactly("file", "outcome", "fault", "row",
            "column", "written", "what");
    }

    @Test
    void joinsHistoriesAndNamesWhatDoesNotFit() {
        final List<TagHistory> histories = TagHistory.join(Readings.check(FOLDER.resolve("history"))
            .records());
        assertThat(histories).extracting(TagHistory::channel).containsExactly("LT-301", "LT-302", "MK-81",
            "MK-82", "MK-83");
        assertThat(histories).extracting(h -> h.conflicts().stream().map(RecordFinding::fault).toList())
            .containsExactly(List.of(Fault.IDENTITY_CONFLICT), List.of(Fault.IDENTITY_CONFLICT),
                List.of(Fault.CHANNEL_SHIFTED),
                List.of(Fault.CHANNEL_SHIFTED), List.of(Fault.CHANNEL_SHIFTED));
        assertThat(histories.get(1).conflicts().get(0).says()).contains("\"417\", and \"00417\"")
            .contains("only zeros in front differ, which a spreadsheet drops");
        assertThat(histories.get(2).toString())
            .contains("the errors repeat those of MK-82 in MK-82-2025.csv");
    }

    private static RecordHeader header(CalibrationRecord record) {
        return record.runRecords(record.channels().get(0)).get(0).header();
    }

    private static AbsentReading absent(String file) {
        final List<AbsentReading> absent = Readings.read(FOLDER.resolve(file)).runRecords("LT-201").get(0)
            .absent();
        assertEquals(1, absent.size());
        return absent.get(0);
    }
}
