package spanwright.kernel.document;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A notebook as nbformat 4 describes it, whatever its minor version was. Immutable as long as nobody changes
 * the JSON values inside the metadata.
 *
 * @param cells    in their order
 * @param metadata of the notebook, all keys that the file had, known or not
 */
public record Notebook(List<NotebookCell> cells, Map<String, Object> metadata) {
    /** The tag of the cell whose values a run may set. */
    public static final String PARAMETERS_TAG = "parameters";

    /** Copies the list and the map. */
    public Notebook {
        cells = List.copyOf(cells);
        metadata = Collections.unmodifiableMap(
            new LinkedHashMap<>(Objects.requireNonNull(metadata, "metadata")));
    }

    /** This notebook with other cells. */
    public Notebook withCells(List<NotebookCell> others) {
        return new Notebook(others, metadata);
    }

    /** This notebook with one more entry of metadata, or another value of one. */
    public Notebook withMetadata(String key, Object value) {
        final Map<String, Object> more = new LinkedHashMap<>(metadata);
        more.put(key, value);
        return new Notebook(cells, more);
    }

    /**
     * The language its code is in, in lower case: from language_info, else from kernelspec; empty if the file
     * does not say.
     */
    public Optional<String> language() {
        return text("language_info", "name").or(() -> text("kernelspec", "language"));
    }

    private Optional<String> text(String outer, String inner) {
        return metadata.get(outer) instanceof Map<?, ?> map && map.get(inner) instanceof String s
            && !s.isBlank()
            ? Optional.of(s.toLowerCase(Locale.ROOT)) : Optional.empty();
    }
}
