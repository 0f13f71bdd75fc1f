package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spanwright.kernel.display.MimeBundle;
import spanwright.readings.FolderOutcome;
import spanwright.readings.Readings;

/** Records in a notebook: values as written, marks at the cells, the log below, markup as text. */
class RecordRendererTest {
    private static final Path FAULTS = Path.of("").toAbsolutePath().getParent().resolve("test-data/faults");
    private static final String SCRIPT = "<script>alert(1)</script>";
    private static final String IMAGE = "<img src=x onerror=alert(1)>";

    @TempDir
    private Path folder;

    private static MimeBundle shown(Object value) {
        return new RecordRenderer().render(value).orElseThrow();
    }

    private static String html(Object value) {
        return (String) shown(value).data().get(MimeBundle.HTML);
    }

    private static String text(Object value) {
        return (String) shown(value).data().get(MimeBundle.TEXT);
    }

    private static void holdsMarkupAsText(String html) {
        assertThat(html).contains("&lt;script&gt;alert(1)").contains("&lt;img src=x onerror=alert(1)&gt;")
            .doesNotContain("<script", "<img");
    }

    @Test
    void showsMarkupInAnyCellOfARecordAsText() throws IOException {
        final String sound = Files.readString(FAULTS.resolve("as-left-not-adjusted.csv"));
        final Path file = Files.writeString(folder.resolve("r.csv"), sound.replace("LT-201", SCRIPT)
            .replace("KF-0417", IMAGE).replace("Plant,", IMAGE + ","));
        holdsMarkupAsText(html(Readings.read(file)));
        holdsMarkupAsText(html(Readings.read(file).runs().get(0)));
        holdsMarkupAsText(html(Readings.check(Files.writeString(folder.resolve("s.csv"),
            sound.replace("8.006",
            SCRIPT + IMAGE)))));
    }

    @Test
    void showsMarkupInAnyCellOfATableAsText() throws IOException {
        final Path file = Files.writeString(folder.resolve("t.csv"), "# " + SCRIPT + "\n" + IMAGE + ",x\n"
            + SCRIPT
            + ",1\n");
        holdsMarkupAsText(html(Readings.table(file)));
    }

    @Test
    void theOutcomeTableOfTheCommandIsTheOneOfTheNotebook() {
        final FolderOutcome outcome = Readings.check(FAULTS);
        final String text = text(outcome);
        final String html = html(outcome);
        outcome.files().forEach(f -> {
            assertThat(text).contains(f.file());
            assertThat(html).contains(">" + f.file() + "<");
            f.findings().forEach(x -> assertThat(text).contains(x.says()));
        });
        final String[] printed = outcome.toString().split("\n");
        assertThat(text).contains(printed[printed.length - 1]);
        assertEquals(outcome.files().size() + 1, printed.length);
        assertThat(Arrays.asList(printed)).allSatisfy(l -> assertThat(l).isNotBlank());
    }

    @Test
    void marksTheCellsAndSaysBelowWhatWasDone() {
        final String text = text(Readings.read(FAULTS.resolve("no-break-space.csv")));
        assertThat(text).contains("\u2691 8.006\u00a0mA");
        assertThat(text.indexOf("Repaired")).isGreaterThan(text.indexOf("\u2691 8.006"));
        assertThat(text.substring(text.indexOf("Repaired"))).contains("no-break-space.csv:18:4");
    }

    @Test
    void showsAbsentAndClampedReadingsInTheirRowAndNotAsNumbers() {
        final List<String> censored = lines("value-censored.csv");
        assertThat(censored).anyMatch(l -> l.matches(".*20\\.000 +\u2691 >21 +absent: above a bound +21"));
        assertThat(lines("value-overload.csv")).anyMatch(l -> l.contains("\u2691 OL") && l.contains(
            "absent: beyond the instrument"));
        assertThat(lines("over-range-clamp.csv").stream().filter(l -> l.contains("clamped, not used")))
            .hasSize(3);
        assertThat(lines("supply-plateau.csv").stream().filter(l -> l.contains("on a plateau"))).hasSize(4);
        assertThat(lines("hourly-in-clock-change.csv")).anyMatch(l -> l.contains("2026-10-25 01:00"));
    }

    private static List<String> lines(String file) {
        return text(Readings.read(FAULTS.resolve(file))).lines().map(String::strip).toList();
    }
}
