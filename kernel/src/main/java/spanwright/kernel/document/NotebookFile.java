package spanwright.kernel.document;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/**
 * Reads notebook files of nbformat 4.0 to 4.5 and writes them as 4.5. Metadata that nobody here knows come
 * out as they went in; numbers keep their digits.
 *
 * <p>Source: the nbformat 4.5 JSON schema and the format's description in the Jupyter documentation.
 */
public final class NotebookFile {
    private static final ObjectMapper JSON = JsonMapper.builder()
        .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
        .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
        .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
        .disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)
        .build();

    private NotebookFile() { }

    /**
     * Reads a file.
     *
     * @throws NotebookFormatException if it is not JSON or not a notebook of nbformat 4.0 to 4.5; names the
     *     file and the cell
     * @throws IOException             if it cannot be read
     */
    public static Notebook read(Path file) throws IOException {
        return parse(Files.readString(file, StandardCharsets.UTF_8), file.toString());
    }

    /**
     * Reads the text of a notebook.
     *
     * @param json the text
     * @param name how messages name it
     * @throws NotebookFormatException as for a file
     */
    public static Notebook parse(String json, String name) throws NotebookFormatException {
        final Object top;
        try {
            top = JSON.readValue(json, Object.class);
        } catch (JsonProcessingException e) {
            final var at = e.getLocation();
            throw new NotebookFormatException(name + ": not JSON, line " + (at == null ? "?" : at.getLineNr())
                + ", column " + (at == null ? "?" : at.getColumnNr()) + ": " + e.getOriginalMessage(), e);
        }
        if (top instanceof Map<?, ?> map) {
            return new NotebookReader(name).notebook(map);
        }
        throw new NotebookFormatException(name + ": the top of a notebook is a JSON object");
    }

    /**
     * The text of the notebook, nbformat 4.5, indented by one space as Jupyter does, with a line feed at the
     * end.
     */
    public static String text(Notebook notebook) {
        final var indenter = new DefaultIndenter(" ", "\n");
        final var printer = new DefaultPrettyPrinter()
            .withObjectIndenter(indenter)
            .withArrayIndenter(indenter);
        try {
            return JSON.writer(printer).writeValueAsString(NotebookWriter.notebook(notebook)) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("a value in the notebook is not JSON: "
                + e.getOriginalMessage(), e);
        }
    }

    /**
     * Writes a file by way of a neighbour that is then renamed, so that a reader never sees half a notebook.
     *
     * @throws IOException if it cannot be written
     */
    public static void write(Notebook notebook, Path file) throws IOException {
        WholeFile.write(file, text(notebook));
    }
}
