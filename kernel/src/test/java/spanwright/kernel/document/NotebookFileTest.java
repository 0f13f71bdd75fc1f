package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import spanwright.kernel.display.CellOutput.Stream;
import spanwright.kernel.display.MimeBundle;

class NotebookFileTest {
    private static final String SAMPLE = NbformatSchema.resource("every-kind-of-cell.ipynb");

    @TempDir
    Path folder;

    @Test
    void whatIsWrittenIsValidByTheSchemaOfNbformat45() throws Exception {
        final String written = NotebookFile.text(NotebookFile.parse(SAMPLE, "sample"));
        NbformatSchema.assertValid(written);
        assertThat(written).contains("\"nbformat_minor\" : 5").endsWith("}\n");
    }

    @Test
    void theSchemaTestCanFail() {
        assertThat(NbformatSchema.errors(SAMPLE)).as("4.4 has no ids, which 4.5 requires").isNotEmpty();
    }

    @Test
    void nothingIsLostOnTheWayThrough() throws Exception {
        final JsonNode before = tree(SAMPLE);
        final JsonNode after = tree(NotebookFile.text(NotebookFile.parse(SAMPLE, "sample")));
        assertThat(after.get("metadata")).isEqualTo(before.get("metadata"));
        for (int i = 0; i < before.get("cells").size(); i++) {
            final JsonNode old = before.get("cells").get(i);
            final JsonNode made = after.get("cells").get(i);
            for (String key : List.of("cell_type", "metadata", "attachments", "execution_count")) {
                assertThat(made.get(key)).as("cell %s, %s", i + 1, key).isEqualTo(old.get(key));
            }
            assertThat(joined(made.get("source"))).isEqualTo(joined(old.get("source")));
            assertThat(made.path("outputs").size()).isEqualTo(old.path("outputs").size());
            for (int o = 0; o < old.path("outputs").size(); o++) {
                assertSameOutput(old.get("outputs").get(o), made.get("outputs").get(o));
            }
        }
        final String second = NotebookFile.text(NotebookFile.parse(NotebookFile.text(
            NotebookFile.parse(SAMPLE, "sample")), "again"));
        assertThat(second).isEqualTo(NotebookFile.text(NotebookFile.parse(SAMPLE, "sample")));
    }

    private static void assertSameOutput(JsonNode old, JsonNode made) {
        for (String key : List.of("output_type", "name", "metadata", "execution_count", "ename", "evalue",
                "traceback")) {
            assertThat(made.get(key)).as(key).isEqualTo(old.get(key));
        }
        assertThat(joined(made.path("text"))).isEqualTo(joined(old.path("text")));
        old.path("data").properties().forEach(entry -> {
            final JsonNode same = made.get("data").get(entry.getKey());
            if (entry.getKey().equals("application/json")) {
                assertThat(same).isEqualTo(entry.getValue());
            } else {
                assertThat(joined(same)).isEqualTo(joined(entry.getValue()));
            }
        });
    }

    private static JsonNode tree(String json) throws Exception {
        return JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build()
            .readTree(json);
    }

    private static String joined(JsonNode text) {
        final StringBuilder all = new StringBuilder();
        if (text.isArray()) {
            text.forEach(line -> all.append(line.textValue()));
        } else {
            all.append(text.textValue());
        }
        return all.toString();
    }

    @Test
    void digitsOfNumbersAreKept() throws Exception {
        assertThat(NotebookFile.text(NotebookFile.parse(SAMPLE, "sample")))
            .contains("1.10").contains("12345678901234567890").contains("102.50");
    }

    @Test
    void madeIdsNeverTakeThePlaceOfOneInTheFile() throws Exception {
        final String json = "{\"nbformat\":4,\"nbformat_minor\":5,\"metadata\":{},\"cells\":["
            + "{\"cell_type\":\"raw\",\"metadata\":{},\"source\":\"\"},"
            + "{\"cell_type\":\"raw\",\"id\":\"cell-1\",\"metadata\":{},\"source\":\"\"}]}";
        assertThat(NotebookFile.parse(json, "x").cells()).extracting(NotebookCell::id)
            .containsExactly("cell-1-2", "cell-1");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5})
    void everyMinorVersionOf4IsRead(int minor) throws Exception {
        final String json = "{\"nbformat\":4,\"nbformat_minor\":" + minor + ",\"metadata\":{},\"cells\":["
            + "{\"cell_type\":\"code\",\"metadata\":{},\"source\":\"1\","
            + "\"execution_count\":null,\"outputs\":[]}]}";
        final Notebook read = NotebookFile.parse(json, "x");
        assertThat(read.cells()).containsExactly(NotebookCell.code("cell-1", "1"));
        NbformatSchema.assertValid(NotebookFile.text(read));
    }

    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        `{`                             | x: not JSON, line 1, column 2
        `{"a":1,"a":2}`                 | x: not JSON, line 1, column 11: Duplicate field 'a'
        `[]`                            | x: the top of a notebook is a JSON object
        `{"nbformat":"4"}`              | x: "nbformat" is missing or not a whole number
        `{"nbformat":3,VERSION}`        | x: nbformat 3.5 is not read here, only 4.0 to 4.5
        `{"nbformat":4,"nbformat_minor":6}` | x: nbformat 4.6 is not read here, only 4.0 to 4.5
        `{"nbformat":4,VERSION,"metadata":{}}`   | x: "cells" is missing or not a list
        `{"nbformat":4,VERSION,"cells":[]}`      | x: "metadata" is missing or not an object
        `{"nbformat":4,VERSION,"worksheets":[]}` | x: nbformat 4.5 has no "worksheets" here
        """)
    void aFileThatIsNoNotebookIsRefusedWithOneClearError(String json, String message) {
        assertThatThrownBy(() -> NotebookFile.parse(json.replace("VERSION", "\"nbformat_minor\":5"), "x"))
            .isInstanceOf(NotebookFormatException.class).hasMessageContaining(message);
    }

    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        `1`                                      | cell 2 is not a JSON object
        `{"cell_type":"heading"}`                | cell 2 has the cell_type heading, not code, markdown or raw
        `{RAW,"metadata":{},"source":5}`         | cell 2: "source" is neither text nor a list of lines
        `{RAW,"source":""}`                      | cell 2: "metadata" is missing or not an object
        `{RAW,"metadata":{},"source":"","outputs":[]}` | cell 2: nbformat 4.5 has no "outputs" here
        `{RAW,"id":"a b","metadata":{},"source":""}`   | cell 2 has the id "a b"
        `{RAW,"id":"first","metadata":{},"source":""}` | cell 2 has the id "first" of an earlier cell
        `{CODE,"outputs":[{"output_type":"pyout"}]}`   | cell 2 has an output that is none of
        `{CODE,"outputs":[{"output_type":"stream","name":"stdout"}]}` | cell 2: "text" is neither text nor
        """)
    void aWrongCellIsNamed(String cell, String message) {
        final String second = cell.replace("RAW", "\"cell_type\":\"raw\"").replace("CODE",
            "\"cell_type\":\"code\",\"metadata\":{},\"source\":\"\",\"execution_count\":1");
        final String json = "{\"nbformat\":4,\"nbformat_minor\":5,\"metadata\":{},\"cells\":["
            + "{\"cell_type\":\"raw\",\"id\":\"first\",\"metadata\":{},\"source\":\"\"}," + second + "]}";
        assertThatThrownBy(() -> NotebookFile.parse(json, "x.ipynb"))
            .isInstanceOf(NotebookFormatException.class).hasMessageContaining("x.ipynb: " + message);
    }

    @Test
    void aValueThatIsNotJsonIsRefusedWhenWriting() {
        final Notebook notebook = new Notebook(List.of(), Map.of("limit", new Object()));
        assertThatThrownBy(() -> NotebookFile.text(notebook)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void writingReplacesTheFileAndLeavesNothingBeside() throws Exception {
        final Path file = folder.resolve("out/a.ipynb");
        NotebookFile.write(new Notebook(List.of(NotebookCell.code("a", "1")), Map.of()), file);
        NotebookFile.write(new Notebook(List.of(NotebookCell.code("a", "2\n3")), Map.of()), file);
        assertThat(NotebookFile.read(file).cells().get(0).source()).isEqualTo("2\n3");
        try (var files = Files.list(file.getParent())) {
            assertThat(files).containsExactly(file);
        }
    }

    @Property(tries = 300)
    void everyNotebookIsValidAndComesBackTheSame(@ForAll("cells") List<NotebookCell> cells) throws Exception {
        final Notebook notebook = new Notebook(distinct(cells), Map.of("site", "Kestrel Fen"));
        final String text = NotebookFile.text(notebook);
        NbformatSchema.assertValid(text);
        assertThat(NotebookFile.parse(text, "x")).isEqualTo(notebook);
    }

    private static List<NotebookCell> distinct(List<NotebookCell> cells) {
        final Set<String> ids = new HashSet<>();
        return cells.stream().filter(c -> ids.add(c.id())).toList();
    }

    @Provide
    Arbitrary<List<NotebookCell>> cells() {
        final Arbitrary<String> ids = Arbitraries.strings().withCharRange('a', 'z').withChars('-', '_', '7')
            .ofMinLength(1).ofMaxLength(64);
        final Arbitrary<String> sources = Arbitraries.strings().ofMaxLength(30)
            .map(s -> s.replaceAll("[\\ud800-\\udfff]", "\n"));
        final Arbitrary<SavedOutput> outputs = Arbitraries.oneOf(
            sources.map(s -> new SavedOutput.Text(Stream.STDERR, s)),
            sources.map(s -> new SavedOutput.Shown(MimeBundle.text(s).with(MimeBundle.HTML, s + "\n" + s))),
            sources.map(s -> new SavedOutput.Result(MimeBundle.text(s).with(Headline.MIME, List.of(s)))),
            sources.map(s -> new SavedOutput.Failure("E", s, List.of(s, "at 1"))));
        final Arbitrary<NotebookCell> code = Combinators.combine(ids, sources, outputs.list().ofMaxSize(4),
            Arbitraries.integers().between(1, 999)).as((id, source, shown, count) ->
                NotebookCell.code(id, source).executed(shown, OptionalInt.of(count)));
        final Arbitrary<NotebookCell> text = Combinators.combine(ids, sources).as(NotebookCell::markdown);
        return Arbitraries.oneOf(code, text).list().ofMaxSize(5);
    }
}
