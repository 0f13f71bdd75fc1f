package spanwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Large files and many files: bounded memory, told progress, one summary. */
class LargeInputTest {
    private static final int ROWS = 100_000;

    @TempDir
    private Path folder;

    /** Reads a workbook and prints what it found; run in a process of its own, which has little memory. */
    public static void main(String[] args) {
        final ReadingsTable table = Readings.table(args[0]);
        System.out.println(table.rowCount() + " rows, last cell \"" + table.column("x")
            .written(table.rowCount()
            - 1) + "\" at " + table.cell("x", table.rowCount() - 1));
    }

    /** The sheet alone is 30 MB of text, as cells it would be several times that; the heap has 32 MB. */
    @Test
    void readsAWorkbookOfAHundredThousandRowsInAHeapOf32Megabytes() throws IOException, InterruptedException {
        final StringBuilder text = new StringBuilder(
            "tag,cycle,direction,point (%),applied (mA),x (mA),t (°C)\n");
        for (int i = 0; i < ROWS; i++) {
            text.append(String.format(Locale.ROOT, "T-%d,%d,up,%d,%.3f,%.4f,%.1f%n", i % 4000, 1 + i % 3,
                25 * (i % 5), 4 + i % 16 + 0.001, 4 + i % 16 + 0.0012, 20 + i % 7 + 0.5));
        }
        Readings.table(Files.writeString(folder.resolve("long.csv"), text))
            .writeXlsx(folder.resolve("long.xlsx"));
        final Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java")
            .toString(), "-Xmx32m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp",
            System.getProperty("java.class.path") + File.pathSeparator + classes(),
                LargeInputTest.class.getName(),
            folder.resolve("long.xlsx").toString()).redirectErrorStream(true).start();
        final String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), said);
        assertThat(said).contains("100000 rows, last cell \"19.0012\" at long.xlsx:table:100001:6");
    }

    /** Where the classes of this test, of the module and of its libraries lie, whoever runs the tests. */
    private static String classes() throws IOException {
        final List<String> out = new ArrayList<>();
        for (Class<?> c : List.of(LargeInputTest.class, Readings.class)) {
            out.add(Path.of(java.net.URI.create(c.getProtectionDomain().getCodeSource().getLocation()
                .toString()))
                .toString());
        }
        if (LargeInputTest.class.getClassLoader() instanceof java.net.URLClassLoader loader) {
            for (java.net.URL url : loader.getURLs()) {
                out.add(Path.of(java.net.URI.create(url.toString())).toString());
            }
        }
        return String.join(File.pathSeparator, out);
    }

    @Test
    void readsTwoThousandFilesWithProgressAndOneSummary() throws IOException {
        for (int i = 0; i < 2000; i++) {
            final Path area = Files.createDirectories(folder.resolve("area-" + i / 500));
            Files.writeString(area.resolve(String.format(Locale.ROOT, "LT-%04d.csv", i)), i % 1000 == 7
                ? "spoiled"
                : RecordText.SOUND.replace("LT-101A", String.format(Locale.ROOT, "LT-%04d", i)));
        }
        final List<Integer> told = new ArrayList<>();
        final FolderOutcome outcome = Readings.folder(folder, r -> r, (done, of, file) -> {
            assertEquals(2000, of);
            told.add(done);
        });
        assertEquals(2000, told.size());
        assertEquals(2000, told.get(1999));
        assertEquals(1998, outcome.records().size());
        assertThat(outcome.summary())
            .isEqualTo("2000 files, 17984 rows of readings, 2 refused; files accepted 1998,"
            + " refused 2");
        assertEquals(1998, TagHistory.join(outcome.records()).size());
    }

    @Test
    void readsTabsLikeCommas() throws IOException {
        final Path tabs = Files.writeString(folder.resolve("LT-101A.tsv"), RecordText.SOUND.replace("; ", " ")
            .replace(',', '\t'));
        final CalibrationRecord record = Readings.read(tabs);
        assertThat(record.understood().get(0)).isEqualTo("cells separated by tab, decimal sign \".\"");
        assertEquals(20.012, record.run("LT-101A").readings().get(4).indicated().value());
        assertEquals(1, Readings.check(folder).records().size());
    }
}
