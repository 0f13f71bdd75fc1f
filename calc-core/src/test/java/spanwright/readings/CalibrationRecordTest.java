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
}
