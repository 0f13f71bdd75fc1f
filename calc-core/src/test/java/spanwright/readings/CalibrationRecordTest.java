package spanwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Tolerance;

class CalibrationRecordTest {
    @Test
    void readsHeaderAndReadingsWithTheirCells() {
        final CalibrationRecord record = RecordText.read(RecordText.SOUND);
        assertThat(record.findings()).isEmpty();
        final CalibrationRun run = record.run("LT-101A");
        assertEquals(9, run.readings().size());
        assertEquals("KF-0417", run.serial());
        assertEquals(Phase.AS_FOUND, run.phase());
        assertEquals(Tolerance.plusMinus(PercentOfSpan.percentOfSpan(0.1)), run.tolerance().orElseThrow());
        assertEquals(23.1, run.conditions().ambient().orElseThrow().value());
        assertEquals(250, run.conditions().loadOhms().orElseThrow());
        final Reading second = run.readings().get(1);
        assertEquals(new Entry(8.006, 0.001, "8.006", new CellAddress("LT-101A.csv", "", 18, 5)),
            second.indicated());
        assertEquals(25, second.nominalPercent().orElseThrow());
        assertEquals(Direction.DOWNSCALE, run.readings().get(8).direction());
        assertEquals(new RowAccount(1, 14, 9, 0, 0), record.account());
    }

    @Test
    void keepsWhatTheRecordSaysOfTheJob() {
        final RunRecord run = RecordText.read(RecordText.SOUND).runRecords("LT-101A").get(0);
        assertEquals(LocalDate.of(2026, 3, 14), run.header().date().orElseThrow().day());
        assertEquals("T-07", run.header().technician());
        final Standard s = run.header().standards().get(0);
        assertEquals("S-01", s.id());
        assertEquals("C-2211", s.certificate());
        assertEquals(LocalDate.of(2026, 12, 1), s.due().orElseThrow());
        assertEquals(0.0015, s.standardUncertainty().orElseThrow());
        assertEquals("mA", s.unit());
    }

    @Test
    void readsAChamberRecordAsOneRunPerStay() {
        final String text = RecordText.SOUND.replace("Ambient,23.1 °C\n", "")
            .replace("Cycle,Point (%),Direction,Applied (mA),Indicated (mA)\n",
                "Point (%),Direction,Applied (mA),Indicated (mA),Ambient (°C)\n")
            .replaceAll("(?m)^1,(\\d+,(?:up|down).*)$", "$1,23.0");
        final StringBuilder chamber = new StringBuilder(text);
        for (String ambient : new String[] {"-10.1", "44.9", "23.2"}) {
            text.lines().filter(l -> l.endsWith(",23.0"))
                .forEach(l -> chamber.append(l.replace(",23.0", "," + ambient)).append('\n'));
        }
        assertThat(RecordText.read(chamber.toString()).runs("LT-101A"))
            .extracting(r -> r.conditions().ambient().orElseThrow().value())
            .containsExactly(23.0, -10.1, 44.9, 23.2);
    }

    private static String timed(String... times) {
        final StringBuilder rows = new StringBuilder(RecordText.SOUND.replace("Indicated (mA)\n",
            "Indicated (mA),Time\n"));
        int at = rows.indexOf("1,0,up");
        for (String time : times) {
            at = rows.indexOf("\n", at);
            rows.insert(at, "," + time);
            at += time.length() + 2;
        }
        return rows.toString();
    }

    /** Times with offsets: by the definition of the offset, local time minus offset is UTC (ISO 8601). */
    @Test
    void keepsTheTimeOfEachReadingInUtcAndAsWritten() {
        final CalibrationRecord record = RecordText.read(timed("2026-03-14 08:15 +01:00", "08:16 +01:00",
            "2026-03-14T23:30:10-02:00", "2026-03-14"));
        assertThat(record.questions()).isEmpty();
        final var readings = record.run("LT-101A").readings();
        assertEquals("2026-03-14T07:15:00Z", readings.get(0).time().orElseThrow().toString());
        assertEquals("2026-03-14T07:16:00Z", readings.get(1).time().orElseThrow().toString());
        assertEquals("08:16 +01:00", readings.get(1).time().orElseThrow().written());
        assertEquals("2026-03-15T01:30:10Z", readings.get(2).time().orElseThrow().toString());
        assertThat(readings.get(3).time().orElseThrow().instant()).isEmpty();
        assertThat(readings.get(4).time()).isEmpty();
        final var table = record.toTable();
        assertEquals("2026-03-14T07:16:00Z", table.instantColumn("time (UTC)").get(1).toString());
        assertEquals("08:16 +01:00", table.stringColumn("time as written").get(1));
        assertThat(table.instantColumn("time (UTC)").isMissing(3)).isTrue();
    }

    @Test
    void asksOnceForTheZoneOfTimesWithoutOneAndKeepsTheirText() {
        final CalibrationRecord record = RecordText.read(timed("08:15", "08:16"));
        assertThat(record.questions()).extracting(RecordFinding::fault).containsExactly(Fault.ZONE_MISSING);
        final RecordDate time = record.run("LT-101A").readings().get(1).time().orElseThrow();
        assertThat(time.instant()).isEmpty();
        assertEquals("08:16", time.written());
        assertEquals("2026-03-14T08:16:00Z", RecordText.readAll(timed("08:15", "08:16"), RecordReading.of(
            java.nio.file.Path.of("LT-101A.csv")).zone(java.time.ZoneOffset.UTC)).run("LT-101A").readings()
            .get(1).time().orElseThrow().toString());
    }

    @Test
    void showsAbsentReadingsInTheTableWithWhatWasApplied() {
        final var table = RecordText.read(RecordText.SOUND.replace("20.000,20.012", "20.000,>21")
            .replace("12.001,12.011", "n/a,12.011")).toTable();
        assertEquals(9, table.rowCount());
        assertEquals("absent: above a bound", table.stringColumn("use").get(7));
        assertEquals(20, table.doubleColumn("applied").get(7));
        assertThat(table.doubleColumn("indicated").isMissing(7)).isTrue();
        assertEquals(">21", table.stringColumn("indicated as written").get(7));
        assertEquals("LT-101A.csv:21:5", table.stringColumn("indicated at").get(7));
        assertEquals("absent: missing", table.stringColumn("use").get(8));
        assertEquals(12.011, table.doubleColumn("indicated").get(8));
        assertEquals("value missing", table.stringColumn("flags").get(8));
    }

    @Test
    void pointsAtTheStandardAndFlagsEveryReadingThatItWasUsedFor() {
        final CalibrationRecord record = RecordText.read(RecordText.SOUND.replace("due 2026-12-01",
            "due 2026-02-01").replace("Phase,", "Standard,S-09; due 2027-01-01\nPhase,"));
        assertThat(record.flags()).extracting(f -> f.cell().row() + " " + f.written())
            .containsExactly("15 S-01");
        assertEquals(15, record.runRecords("LT-101A").get(0).header().standards().get(1).cell().row());
        assertThat(record.toTable().stringColumn("flags").asList()).hasSize(9)
            .containsOnly("standard past its due date");
    }
}
