package spanwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import spanwright.reference.PublishedData;
import tech.tablesaw.api.Table;

class ReadingsTableTest {
    @TempDir
    private Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("t.csv"), text, StandardCharsets.UTF_8);
    }

    static Stream<Path> publishedFiles() throws IOException {
        try (Stream<Path> files = Files.walk(PublishedData.folder().resolve("published"))) {
            return files.filter(f -> f.toString().endsWith(".csv")).sorted().toList().stream();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("publishedFiles")
    void givesEveryPublishedCellBackAsItStandsInTheFile(Path file) throws IOException {
        final ReadingsTable table = Readings.table(file);
        final List<String> lines = Files.readAllLines(file).stream().filter(l -> !l.startsWith("#")
            && !l.isBlank()).toList();
        assertEquals(lines.size() - 1, table.rowCount());
        assertThat(table.comments()).isNotEmpty();
        for (int row = 0; row < table.rowCount(); row++) {
            final String[] cells = lines.get(row + 1).split(",", -1);
            for (int c = 0; c < cells.length; c++) {
                assertEquals(cells[c], table.columns().get(c).written(row), table.file() + " row " + row);
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"nist-strd/Norris", "nist-strd/Pontius", "nist-strd/NoInt1", "nist-strd/NumAcc4"})
    void readsTheNumbersOfNistAsTheJdkDoes(String name) {
        final ReadingsTable table = Readings.table(PublishedData.folder().resolve("published/" + name
            + ".csv"));
        for (TableColumn column : table.columns()) {
            assertArrayEquals(PublishedData.load(name).numbers(column.head()), table.numbers(column.head()));
        }
    }

    @Test
    void readsGumH3WithItsUnits() {
        final ReadingsTable table = Readings.table(PublishedData.folder().resolve("published/gum_h3.csv"));
        assertEquals(11, table.numbers("t_degC").length);
        assertEquals("°C", spanwright.quantity.UnitSymbols.symbol(table.column("t").unit().orElseThrow()));
        assertEquals(new Entry(-0.171, 0.001, "-0.171", new CellAddress("gum_h3.csv", "", 3, 3)),
            table.entry("b", 0));
        assertThat(table.comments().get(0)).startsWith("Source: JCGM 100:2008 Table H.6");
    }

    @Test
    void convertsByTheUnitOfTheHead() throws IOException {
        final ReadingsTable table = Readings.table(file("Out (A),Name\n0.004012,a\n0.012,b\n"));
        assertArrayEquals(new double[] {4.012, 12}, table.numbers("Out", "mA"), 1e-15);
        assertThatThrownBy(() -> table.numbers("Out", "bar")).hasMessageContaining("cannot become bar");
    }

    @Test
    void readsDecimalCommaBetweenSemicolonsAndDoesNotLoseAFactorOfThousand() throws IOException {
        final ReadingsTable table = Readings.table(file("x;y\n4,012;1,5\n8,0;2\n"));
        assertArrayEquals(new double[] {4.012, 8}, table.numbers("x"));
        assertEquals("4,012", table.column("x").written(0));
    }

    @Test
    void asksWhereACommaMaySeparateThousands() throws IOException {
        final Path file = file("x;y\n4,012;1\n8,013;2\n");
        assertThatThrownBy(() -> Readings.table(file)).isInstanceOf(ReadingsFormatException.class)
            .hasMessageStartingWith("t.csv:2:1: ").hasMessageContaining("thousands");
        assertArrayEquals(new double[] {4.012, 8.013},
            Readings.tableReading(file).decimal(DecimalSign.COMMA).read().numbers("x"));
    }

    @Test
    void keepsTrailingZerosNegativeZeroAndUnusualNumbersAsWritten() throws IOException {
        final String[] cells = {"4.0", "4.00", "-0.00", "1e3", "+5", ".5", "007", "123456789012345678.5",
            "0.1234567890123456789", " 12.0", "12 "};
        final ReadingsTable table = Readings.table(file("k,x\n1," + String.join("\n1,", cells) + "\n"));
        assertEquals(List.of(cells), table.texts("x"));
        assertEquals(0.01, table.entry("x", 1).resolution());
        assertEquals(1000, table.numbers("x")[3]);
        assertEquals(0.5, table.numbers("x")[5]);
        assertEquals(0L, Double.doubleToRawLongBits(table.numbers("x")[2]), "negative zero is read as zero");
    }

    @Test
    void refusesTextInAColumnWithUnit() throws IOException {
        assertThatThrownBy(() -> Readings.table(file("# s\nx (mA),y\n4.0,1\n\n4.O1,2\n")))
            .isInstanceOf(ReadingsFormatException.class)
            .hasMessageStartingWith("t.csv:5:1: \"4.O1\": no number");
    }

    @Test
    void refusesMissingAndTextWhenNumbersAreWanted() throws IOException {
        final ReadingsTable table = Readings.table(file("x,y,z\n1,,a\n2,3,4\n"));
        assertThatThrownBy(() -> table.numbers("y")).hasMessageStartingWith("t.csv:2:2: ");
        assertThatThrownBy(() -> table.numbers("z")).hasMessageStartingWith("t.csv:2:3: ");
        assertThatThrownBy(() -> table.numbers("w")).hasMessageContaining("no column \"w\"");
    }

    @Test
    void refusesRaggedRowsAndDuplicateHeads() throws IOException {
        assertThatThrownBy(() -> Readings.table(file("x,y\n1,2\n3\n"))).hasMessageStartingWith("t.csv:3:1: ");
        assertThatThrownBy(() -> Readings.table(file("x,y\n1,2\n3,4,5\n")))
            .hasMessageStartingWith("t.csv:3:3: ");
        assertThatThrownBy(() -> Readings.table(file("x,x\n1,2\n"))).hasMessageStartingWith("t.csv:1:2: ");
        assertThatThrownBy(() -> Readings.table(file("")))
            .hasMessageStartingWith("t.csv:1:1: the file is empty");
    }

    @Test
    void readsQuotedCellsAndLatin1AndUtf16ByTheSlowerWay() throws IOException {
        final String text = "name,t (°C)\n\"a, b\",1.50\nc\u00e9,2\n";
        for (var set : List.of(StandardCharsets.UTF_8, StandardCharsets.ISO_8859_1,
            StandardCharsets.UTF_16)) {
            final Path file = Files.write(folder.resolve("q.csv"), text.getBytes(set));
            final ReadingsTable table = Readings.table(file);
            assertEquals(List.of("a, b", "c\u00e9"), table.texts("name"), set.name());
            assertArrayEquals(new double[] {1.5, 2}, table.numbers("t"));
            assertEquals(3, table.cell("t", 1).row());
        }
    }

    @Test
    void readsPartsSideBySideLikeOnePart() throws IOException {
        final StringBuilder text = new StringBuilder("tag,x (mA),n\n");
        final int rows = 700_000;
        for (int i = 0; i < rows; i++) {
            text.append("T-").append(i % 5000).append(',').append(i / 1000).append('.').append(100 + i % 900)
                .append(',').append(i == rows - 1 ? "end" : i).append(i % 2 == 0 ? "\n" : "\r\n");
        }
        final ReadingsTable table = Readings.table(file(text.toString()));
        assertEquals(rows, table.rowCount());
        final Table shown = table.toTable();
        for (int i = 0; i < rows; i += 997) {
            assertEquals("T-" + i % 5000, shown.stringColumn("tag").get(i));
            assertEquals(Double.parseDouble(i / 1000 + "." + (100 + i % 900)),
                shown.doubleColumn("x (mA)").getDouble(i));
            assertEquals(String.valueOf(i), table.column("n").written(i), "numbers before the one text");
            assertEquals(i + 2, table.cell("x", i).row());
        }
        assertEquals(5000, shown.stringColumn("tag").countUnique());
    }

    @Test
    void refusesALateBadCellOfALargeFileWithItsLine() throws IOException {
        final StringBuilder text = new StringBuilder("# source\ntag,x (mA)\n");
        for (int i = 0; i < 1_200_000; i++) {
            text.append("T-1,").append(i == 1_000_000 ? "4,O" : "4.001").append('\n');
        }
        assertThatThrownBy(() -> Readings.table(file(text.toString().replace("4,O", "4.O"))))
            .hasMessageStartingWith("t.csv:1000003:2: \"4.O\"");
    }

    @ParameterizedTest(name = "U+{0}")
    @ValueSource(ints = {0, 1, 0x11, 0x1b, 0x7f, 0xfffd})
    void refusesACharacterThatIsInNoTextWhereverItStands(int c) throws IOException {
        final String bad = Character.toString(c);
        final String far = "T-1,4.0\n".repeat(20_000);
        for (String text : List.of("t" + bad + ",x\n1,2\n", "# s" + bad + "\nt,x\n1,2\n",
            "t,x\n1,2" + bad + "\n", "t,x\n" + far + "T" + bad + ",5\n", "t,x\n" + far + "# " + bad + "\n")) {
            assertThatThrownBy(() -> Readings.table(file(text))).isInstanceOf(ReadingsFormatException.class)
                .hasMessageContaining(String.format("character U+%04X is in no text", c));
        }
    }

    @Test
    void aChangedNotebookTableLeavesWhatWasReadAsItIs() throws IOException {
        final ReadingsTable table = Readings.table(file("tag,x (mA)\nT-2,8.0\nT-1,4.0\nT-3,\n"));
        final Table shown = table.toTable();
        shown.doubleColumn("x (mA)").set(0, 99).append(7);
        shown.stringColumn("tag").set(0, "changed");
        assertEquals(8, table.column("x").number(0).orElseThrow());
        assertEquals("T-2", table.column("tag").written(0));
        final Table fresh = table.toTable();
        assertEquals(1, fresh.doubleColumn("x (mA)").countMissing());
        assertEquals(List.of("T-1", "T-2"), fresh.where(fresh.doubleColumn("x (mA)").isNotMissing())
            .sortOn("x (mA)").stringColumn("tag").asList());
        assertEquals(12.0, fresh.copy().doubleColumn("x (mA)").sum());
    }

    @Test
    void findsTheHeadsBehindCommentsAndBlankLinesHoweverMany() throws IOException {
        for (int n : new int[] {0, 1, 5000}) {
            final String before = "# a line of the source, with a comma\n\n ,\u00a0,\n".repeat(n);
            for (char separator : new char[] {',', ';', '\t'}) {
                final ReadingsTable table = Readings
                    .table(file((before + "x,y\n1,2\n").replace(',', separator)));
                assertArrayEquals(new double[] {1}, table.numbers("x"), n + " times, " + (int) separator);
                assertEquals(n, table.comments().size());
                assertEquals(3 * n + 2, table.cell("x", 0).row());
            }
        }
    }

    @Test
    void readsBytesThatAreNotUtf8BehindTheFirstLinesAsLatin1AndSaysSo() throws IOException {
        final String rows = "T-1,4.0\n".repeat(20_000) + "M\u00fchle,5.0\n";
        final Path file = Files.write(folder.resolve("t.csv"),
            ("tag,x (mA)\n" + rows).getBytes(StandardCharsets.ISO_8859_1));
        final ReadingsTable table = Readings.table(file);
        assertEquals("M\u00fchle", table.column("tag").written(20_000));
        assertThat(table.findings()).anyMatch(f -> f.fault() == Fault.ENCODING);
    }
}
