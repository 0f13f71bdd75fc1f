package spanwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.quantity.Span;

/** Forms of records: wide, several channels, other units, mapped columns; folders, histories, export. */
class RecordFormsTest {
    private static final String HEAD = """
        Tag,MK-8
        Serial,KF-1
        Date,2026-03-14
        Input range,4 to 20 mA
        Output range,4 to 20 mA
        Ambient,23 degC
        """;

    @TempDir
    private Path folder;

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void readsTheWideFormWithBothPhases() {
        final CalibrationRecord record = RecordText.read(HEAD + """
            Point (%),Applied (mA),As found up (mA),As found down (mA),As left up (mA),As left down (mA)
            0,4.000,4.020,4.022,4.001,4.002
            50,12.000,12.031,12.034,12.003,12.004
            100,20.000,20.042,20.041,20.003,20.002
            """);
        assertEquals(List.of("MK-8"), record.channels());
        final CalibrationRun found = record.run("MK-8", Phase.AS_FOUND);
        assertEquals(6, found.readings().size());
        assertEquals(Direction.DOWNSCALE, found.readings().get(1).direction());
        assertEquals(12.004, record.run("MK-8", Phase.AS_LEFT).readings().get(3).indicated().value());
        assertEquals(1, found.cycles());
    }

    @Test
    void readsSeveralChannelsOfOneDevice() {
        final CalibrationRecord record = RecordText.read(HEAD + "Phase,as found\n" + """
            Channel,Point (%),Direction,Applied (mA),Indicated (mA)
            1,0,up,4.000,4.001
            2,0,up,4.000,4.002
            1,100,up,20.000,20.001
            2,100,up,20.000,20.002
            """);
        assertEquals(List.of("MK-8 channel 1", "MK-8 channel 2"), record.channels());
        assertEquals(20.002, record.run("MK-8 channel 2").readings().get(1).indicated().value());
        assertThatThrownBy(() -> record.run("MK-9"))
            .hasMessageContaining("no channel \"MK-9\", only [MK-8 channel 1");
    }

    @ParameterizedTest(name = "{0}: {1} is {2} mA")
    @CsvSource({"A, 0.012004, 12.004, 0.001", "V across 250 ohm, 3.0010, 12.004, 0.0004",
        "mV across 10 ohm, 120.04, 12.004, 0.001", "% of span, 50.025, 12.004, 0.00016",
            "uA, 12004, 12.004, 0.001"})
    void readsOtherUnitsThroughTheRange(String unit, String written, double value, double resolution) {
        final Entry e = RecordText.read(HEAD + "Point (%),Direction,Applied (mA),Indicated (" + unit
            + ")\n50,up,12,"
            + written + "\n").runs().get(0).readings().get(0).indicated();
        assertEquals(value, e.value());
        assertEquals(resolution, e.resolution(), 1e-15);
        assertEquals(written, e.written());
    }

    @Test
    void readsEngineeringUnitsThroughTheScale() {
        final Reading r = RecordText.read(HEAD
            + "Output scale,0 to 8 m\nPoint (%),Applied (mA),Indicated (m)\n"
            + "50,12.0,4.01\n").runs().get(0).readings().get(0);
        assertEquals(12.02, r.indicated().value(), 1e-12);
        assertEquals(0.02, r.indicated().resolution(), 1e-12);
    }

    @Test
    void takesColumnsAndRangesFromTheCall() throws IOException {
        final Path file = write("bench.csv", "Stim;Resp [V]\n4,000;1,0005\n20,00;5,0010\n");
        final CalibrationRun run = Readings.reading(file).input(Span.milliamps4to20())
            .output(Span.milliamps4to20())
            .column("Stim").as(ColumnRole.APPLIED, "mA")
            .column("Resp").as(ColumnRole.INDICATED, "V across 250 ohm").read().runs().get(0);
        assertEquals(4.002, run.readings().get(0).indicated().value());
        assertEquals(0.01, run.readings().get(1).applied().resolution());
        assertEquals("channel 1", run.channel());
        assertThatThrownBy(() -> Readings.read(file))
            .hasMessageStartingWith("bench.csv:1:1: no row names");
    }

    @Test
    void infersDirectionAndCycleFromTheOrder() {
        final List<Reading> r = RecordText.read(HEAD
            + "Phase,as found\nApplied (mA),Indicated (mA)\n4.0,4.0\n12.0,12.0"
            + "\n20.0,20.0\n20.0,20.1\n12.0,12.1\n4.0,4.1\n4.0,4.0\n12.0,12.0\n20.0,20.0\n20.0,20.1\n"
            + "12.0,12.1\n4.0,4.1\n").runs().get(0).readings();
        assertThat(r).extracting(x -> x.direction() + " " + x.cycle()).containsExactly("up 1", "up 1", "up 1",
            "down 1", "down 1", "down 1", "up 2", "up 2", "up 2", "down 2", "down 2", "down 2");
    }

    @Test
    void givesATableWithThePlaceOfEachReading() {
        final var table = RecordText.read(RecordText.SOUND).toTable();
        assertEquals(9, table.rowCount());
        assertEquals(8.006, table.doubleColumn("indicated").get(1));
        assertEquals("8.006", table.stringColumn("indicated as written").get(1));
        assertEquals("LT-101A.csv:18:5", table.stringColumn("indicated at").get(1));
    }

    @Test
    void writesTablesWithoutLossAndWithoutFormulas() throws IOException {
        final Path file = write("t.csv",
            "# source\nname,x (mA),note\n=1+1,4.00,a\n@x,-0.50,+cmd\n-y,1e3,'quoted\n\"#z\",007,\n");
        final ReadingsTable table = Readings.table(file);
        table.writeCsv(folder.resolve("out.csv"));
        table.writeXlsx(folder.resolve("out.xlsx"));
        assertThat(Files.readString(folder.resolve("out.csv"))).contains("'=1+1").contains("'@x")
            .contains("'+cmd")
            .contains("'-y").contains("-0.50");
        final ReadingsTable csv = Readings.table(folder.resolve("out.csv"));
        final ReadingsTable xlsx = Readings.table(folder.resolve("out.xlsx"));
        for (TableColumn c : table.columns()) {
            final List<String> written = table.texts(c.head());
            assertEquals(written, csv.texts(c.head()));
            assertEquals(written, xlsx.texts(c.head()));
        }
        assertThat(csv.findings()).extracting(RecordFinding::fault).containsOnly(Fault.CHARACTER).hasSize(5);
        assertThat(xlsx.findings()).isEmpty();
        assertEquals(List.of("source"), csv.comments());
        assertEquals(List.of("source"), xlsx.comments());
    }

    @Test
    void readsALongWorkbookRowByRow() throws IOException {
        final StringBuilder text = new StringBuilder("tag,x (mA)\n");
        for (int i = 0; i < 20_000; i++) {
            text.append("T-").append(i % 7).append(',').append(i / 1000).append('.').append(100 + i % 900)
                .append('\n');
        }
        final ReadingsTable table = Readings.table(write("long.csv", text.toString()));
        table.writeXlsx(folder.resolve("long.xlsx"));
        final ReadingsTable again = Readings.table(folder.resolve("long.xlsx"));
        assertEquals(table.texts("x"), again.texts("x"));
        assertEquals(table.texts("tag"), again.texts("tag"));
        assertEquals(new CellAddress("long.xlsx", "table", 20_001, 2), again.cell("x", 19_999));
    }

    @Test
    void readsAFolderWithProgressAndStopsWhenInterrupted() throws IOException {
        for (int i = 0; i < 20; i++) {
            write("LT-10" + i + ".csv", i == 7 ? "" : RecordText.SOUND.replace("LT-101A", "LT-10" + i));
        }
        final List<String> told = new ArrayList<>();
        final FolderOutcome outcome = Readings.folder(folder, r -> r, (n, of, f) -> told.add(n + "/" + of));
        assertEquals(20, told.size());
        assertEquals("20/20", told.get(19));
        assertEquals(19, outcome.records().size());
        assertEquals(1, outcome.counts().get("refused"));
        assertThatThrownBy(() -> Readings.folder(folder, r -> r, (n, of, f) -> {
            if (n == 3) {
                Thread.currentThread().interrupt();
            }
        })).isInstanceOf(CancellationException.class).hasMessageContaining("after 3 of 20 files");
        assertTrue(Thread.interrupted(), "the interrupt status stays set");
    }

    @Test
    void joinsTheHistoryOfATagAndNamesConflicts() {
        final String other = RecordText.SOUND.replace("2026-03-14", "2025-03-10");
        final CalibrationRecord first = RecordText.read(other);
        final CalibrationRecord second = RecordText.read(RecordText.SOUND.replace("KF-0417", "KF-0999"));
        final List<TagHistory> histories = TagHistory.join(List.of(second, first));
        assertEquals(1, histories.size());
        assertThat(histories.get(0).entries()).extracting(e -> e.record().header().date().orElseThrow()
            .toString())
            .containsExactly("2025-03-10", "2026-03-14");
        assertThat(histories.get(0).conflicts()).extracting(RecordFinding::fault)
            .containsExactly(Fault.IDENTITY_CONFLICT);
        assertThat(histories.get(0).conflicts().get(0).says()).contains("\"KF-0999\"")
            .contains("\"KF-0417\"");
    }

    @Test
    void findsChannelsThatAreOffByOne() {
        final List<CalibrationRecord> records = new ArrayList<>();
        final double[] zero = {0.004, -0.006, 0.011};
        for (int year = 2025; year <= 2026; year++) {
            for (int channel = 0; channel < 3; channel++) {
                final double error = zero[year == 2025 ? channel : (channel + 1) % 3];
                final StringBuilder rows = new StringBuilder();
                for (int p = 0; p <= 100; p += 25) {
                    final double in = 4 + 0.16 * p;
                    rows.append(p).append(",up,").append(String.format(java.util.Locale.ROOT, "%.3f,%.3f%n",
                        in, in + error + 1e-5 * p * (channel + 1)));
                }
                records.add(RecordText.read(HEAD.replace("MK-8", "MK-" + channel).replace("2026", "" + year)
                    + "Point (%),Direction,Applied (mA),Indicated (mA)\n" + rows));
            }
        }
        final List<TagHistory> histories = TagHistory.join(records);
        assertThat(histories).allSatisfy(h -> assertThat(h.conflicts()).extracting(RecordFinding::fault)
            .containsExactly(Fault.CHANNEL_SHIFTED));
        assertThat(histories.get(0).conflicts().get(0).says()).contains("those of MK-1 in");
    }

    @Test
    void readsEveryDemoRecordWithoutAFinding() {
        final FolderOutcome demo = Readings.check(spanwright.reference.PublishedData.folder()
            .resolve("demo"));
        assertThat(demo.files()).isNotEmpty().allSatisfy(f -> assertThat(f.word()).as(f.says())
            .isIn("accepted", "flagged"));
    }

    @ParameterizedTest
    @CsvSource({"0.1 % of span, ±0.1 % of span", "±0.25 % span, ±0.25 % of span",
        "0.5 % of reading, ±0.5 % of reading",
        "0.016 mA, ±0.016 in the unit of the output", "-0.1 to 0.2 % of span, −0.1 to 0.2 % of span",
        "0.1 % of upper range value, ±0.1 % of upper range value"})
    void readsTolerancesWithTheirBasis(String text, String expected) {
        assertEquals(expected, new HeaderText(DecimalSign.POINT).tolerance(text, "", Span.milliamps4to20(),
            Span.milliamps4to20()).orElseThrow().toString());
    }
}
