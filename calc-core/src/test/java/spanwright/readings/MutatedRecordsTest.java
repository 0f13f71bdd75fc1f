package spanwright.readings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.sun.management.ThreadMXBean;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import spanwright.quantity.Span;
import spanwright.reference.PublishedData;

/**
 * Mutated files: every row is accounted for, only our own exception is thrown, and no value differs from its
 * cell but where the log says so. The rows and the cells are found here by a reader of its own, which splits
 * lines and nothing more.
 */
class MutatedRecordsTest {
    /** Bytes that reading a file of about 1 kB may take, with all that the test makes of it: 16 MB. */
    private static final long MOST_MEMORY = 1L << 24;
    private static final List<byte[]> SEEDS = seeds();
    private static final String[] TOKENS = {",", ";", "\t", "\"", "\n", "\r\n", "\r", "4,012", "4.012",
        "1e999", "1e-320", "-0.00", "OL", ">21", "n/a", "20-Apr", "mA", " V across 250 ohm", "%", "\u00a0",
        "\u2212", "\u00b0", "NaN", "Infinity", "#", "()", "Applied (mA)", "Phase,as left\n", "Tag,X\n",
        "\ufeff", "0x10", "1.2.3", "99999999999999999999999999999999999999999999999", "up", "\u0000", "'",
        "=1+1", "(", "[mA]", "to"};

    private static List<byte[]> seeds() {
        try (Stream<Path> files = Files.list(PublishedData.folder().resolve("faults"))) {
            final List<byte[]> out = new ArrayList<>();
            for (Path f : files.filter(p -> p.toString().endsWith(".csv")).sorted().toList()) {
                final byte[] bytes = Files.readAllBytes(f);
                if (bytes.length < 900 && !f.toString().contains("utf-16")) {
                    out.add(bytes);
                }
            }
            return out;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    @Timeout(120)
    void everyRowOfTwentyThousandMutatedRecordsIsAccountedFor() {
        for (int i = 0; i < 20_000; i++) {
            final byte[] bytes = mutated(new Random(20261125L + i));
            final long before = allocated();
            accountFor(bytes);
            assertTrue(allocated() - before < MOST_MEMORY, () -> "too much memory for " + text(bytes));
        }
    }

    /** Bytes that this thread has allocated so far: unlike the heap in use, no other thread disturbs it. */
    private static long allocated() {
        return ((ThreadMXBean) ManagementFactory.getThreadMXBean()).getCurrentThreadAllocatedBytes();
    }

    private static void accountFor(byte[] bytes) {
        final RecordReading reading = RecordReading.of(Path.of("m.csv"));
        final List<CalibrationRecord> records = new ArrayList<>();
        final FileOutcome outcome;
        try {
            outcome = FolderReading.check(reading, () -> RecordReader.grid("m.csv", bytes),
                () -> FolderReading.lines(bytes), records);
        } catch (RuntimeException e) {
            fail("not our own exception for " + text(bytes), e);
            return;
        }
        final RowAccount account = outcome.account();
        if (countable(bytes)) {
            assertEquals(countLines(bytes), account.rows(), () -> outcome + " " + outcome.says() + "\n"
                + text(bytes));
        }
        if (account.refused() > 0) {
            assertTrue(outcome.findings().stream().anyMatch(f -> f.outcome() == Outcome.REFUSED
                || f.isOpenQuestion()), () -> "refused without a reason: " + text(bytes));
        }
        assertTrue(account.repaired() <= outcome.findings().stream()
            .filter(f -> f.outcome() == Outcome.REPAIRED)
            .count(), () -> "repaired without being listed: " + text(bytes));
        records.forEach(r -> valuesAreTheirCells(r, bytes));
    }

    private static void valuesAreTheirCells(CalibrationRecord record, byte[] bytes) {
        if (!countable(bytes)) {
            return;
        }
        for (RunRecord run : record.allRuns()) {
            for (Reading r : Stream.concat(run.run().readings().stream(), run.clamped().stream()).toList()) {
                isItsCell(r.applied(), run.run().input(), record, bytes);
                isItsCell(r.indicated(), run.run().output(), record, bytes);
            }
        }
    }

    private static void isItsCell(Entry e, Span range, CalibrationRecord record, byte[] bytes) {
        final String line = text(bytes).split("\r\n|\n|\r", -1)[e.cell().row() - 1];
        final String delimiter = String.valueOf(DelimitedGrid.delimiter(text(bytes)));
        final String cell = line.split(delimiter, -1)[e.cell().column() - 1];
        assertEquals(cell, e.written(), () -> text(bytes));
        final boolean logged = record.repairs().stream().anyMatch(f -> f.cell().equals(e.cell()));
        final List<String> column = record.understood().stream().filter(u ->
            u.startsWith("column " + e.cell().column() + " ")).distinct().toList();
        if (!logged && range.symbol().equals("mA") && column.size() == 1 && column.get(0)
            .endsWith(", in mA")) {
            final boolean comma = record.understood().get(0).contains("sign \",\"");
            assertEquals(Double.parseDouble((comma ? cell.replace(',', '.') : cell).strip()), e.value(),
                () -> "value of \"" + cell + "\" in " + text(bytes));
        }
    }

    @Test
    void aMutatedTableIsReadWholeOrRefused(@TempDir Path folder) throws IOException {
        for (int i = 0; i < 2_000; i++) {
            readWholeOrRefused(folder.resolve("t.csv"), mutatedTable(new Random(20261126L + i)));
        }
    }

    private static void readWholeOrRefused(Path file, byte[] bytes) throws IOException {
        Files.write(file, bytes);
        try {
            final ReadingsTable table = Readings.table(file);
            if (countable(bytes)) {
                assertEquals(countLines(bytes), table.account().rows(), () -> text(bytes));
            }
            final String[] lines = text(bytes).replaceFirst("^\ufeff", "").split("\r\n|\n|\r", -1);
            final char delimiter = DelimitedGrid.delimiter(text(bytes));
            for (int row = 0; countable(bytes) && row < table.rowCount(); row++) {
                final String[] cells = lines[table.cell(table.columns().get(0).head(), row).row() - 1]
                    .split(String.valueOf(delimiter), -1);
                for (int c = 0; c < table.columns().size(); c++) {
                    final String written = TableExport.original(cells[c]);
                    assertEquals(written, table.columns().get(c).written(row), () -> text(bytes));
                    final CellAddress at = table.cell(table.columns().get(c).head(), row);
                    assertTrue(written.equals(cells[c]) || table.findings().stream().anyMatch(f ->
                        f.cell().equals(at)), () -> "apostrophe not listed: " + text(bytes));
                }
            }
        } catch (ReadingsFormatException e) {
            assertTrue(e.getMessage().startsWith("t.csv:"), e.getMessage());
        }
    }

    static byte[] mutatedTable(Random random) {
        final String seed = "# source\ntag,x (mA),n\nT-1,4.00,1\nT-2,8.012,2\nT-1,-0.5,3.25\n\nT-3,12,4e2\n";
        return mutate(seed.getBytes(StandardCharsets.UTF_8), random);
    }

    static byte[] mutated(Random random) {
        return mutate(SEEDS.get(random.nextInt(SEEDS.size())), random);
    }

    private static byte[] mutate(byte[] seed, Random random) {
        byte[] bytes = seed;
        final int changes = 1 + random.nextInt(4);
        for (int i = 0; i < changes; i++) {
            bytes = change(bytes, random);
        }
        return bytes;
    }

    private static byte[] change(byte[] b, Random random) {
        final int at = random.nextInt(b.length + 1);
        final int to = Math.min(b.length, at + 1 + random.nextInt(12));
        final byte[] token = TOKENS[random.nextInt(TOKENS.length)].getBytes(StandardCharsets.UTF_8);
        return switch (random.nextInt(7)) {
            case 0 -> join(b, at, token, at);
            case 1 -> join(b, at, token, to);
            case 2 -> join(b, at, new byte[0], to);
            case 3 -> join(b, at, new byte[] {(byte) random.nextInt(256)}, Math.min(b.length, at + 1));
            case 4 -> Arrays.copyOf(b, at);
            case 5 -> join(b, at, Arrays.copyOfRange(b, at, to), at);
            default -> swapLines(b, random);
        };
    }

    private static byte[] join(byte[] b, int at, byte[] middle, int rest) {
        final ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(b, 0, at);
        out.writeBytes(middle);
        out.write(b, rest, b.length - rest);
        return out.toByteArray();
    }

    private static byte[] swapLines(byte[] b, Random random) {
        final String[] lines = new String(b, StandardCharsets.ISO_8859_1).split("\n", -1);
        final int i = random.nextInt(lines.length);
        final int j = random.nextInt(lines.length);
        final String line = lines[i];
        lines[i] = lines[j];
        lines[j] = line;
        return String.join("\n", lines).getBytes(StandardCharsets.ISO_8859_1);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    /** Whether lines and cells can be counted without a CSV reader: no quotes, no odd blanks, plain UTF-8. */
    private static boolean countable(byte[] bytes) {
        final String text = text(bytes);
        return text.indexOf('"') < 0 && text.chars().noneMatch(c -> c < ' ' && "\t\r\n".indexOf(c) < 0)
            && text.indexOf('\ufffd') < 0
            && Arrays.stream(text.split("\r\n|\n|\r", -1)).noneMatch(l -> !l.isEmpty()
                && l.chars().allMatch(c -> ",;\t \u00a0\ufeff\u2212".indexOf(c) >= 0));
    }

    private static int countLines(byte[] bytes) {
        return (int) Arrays.stream(text(bytes).split("\r\n|\n|\r", -1)).filter(l -> !l.isBlank()).count();
    }
}
