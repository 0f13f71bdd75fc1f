package spanwright.kernel.document;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * One cell of a notebook.
 *
 * @param kind           code, markdown or raw
 * @param id             unique in the notebook; 1 to 64 letters, digits, hyphens and underscores
 * @param source         its text, lines ended by a line feed
 * @param metadata       all keys that the file had, known or not
 * @param attachments    pictures pasted into a markdown or raw cell, by name, each a map from MIME type to
 *                       data
 * @param outputs        what a code cell showed, in order; empty for the others
 * @param executionCount the number in brackets of a code cell; empty if it was not run
 */
public record NotebookCell(Kind kind, String id, String source, Map<String, Object> metadata,
                           Map<String, Object> attachments, List<SavedOutput> outputs,
                           OptionalInt executionCount) {
    /** The kinds of cells of nbformat 4. */
    public enum Kind {
        /** Runs. */
        CODE,
        /** Is read. */
        MARKDOWN,
        /** Is passed through. */
        RAW;

        /** The word in the file. */
        public String formatName() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Checks the id and that only code cells hold outputs; copies the collections. */
    public NotebookCell {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(executionCount, "executionCount");
        metadata = copy(metadata, "metadata");
        attachments = copy(attachments, "attachments");
        outputs = List.copyOf(outputs);
        if (!isId(id)) {
            throw new IllegalArgumentException("cell id \"" + id
                + "\" is not 1 to 64 letters, digits, hyphens and underscores");
        }
        if (kind != Kind.CODE && (!outputs.isEmpty() || executionCount.isPresent())) {
            throw new IllegalArgumentException("a " + kind.formatName() + " cell has no outputs");
        }
    }

    /** A code cell that was not run, without metadata. */
    public static NotebookCell code(String id, String source) {
        return new NotebookCell(Kind.CODE, id, source, Map.of(), Map.of(), List.of(), OptionalInt.empty());
    }

    /** A markdown cell without metadata and attachments. */
    public static NotebookCell markdown(String id, String source) {
        return new NotebookCell(Kind.MARKDOWN, id, source, Map.of(), Map.of(), List.of(),
            OptionalInt.empty());
    }

    /** This cell with other outputs and another count. */
    public NotebookCell executed(List<SavedOutput> results, OptionalInt count) {
        return new NotebookCell(kind, id, source, metadata, attachments, results, count);
    }

    /** This cell with one more entry of metadata, or another value of one. */
    public NotebookCell withMetadata(String key, Object value) {
        final Map<String, Object> more = new LinkedHashMap<>(metadata);
        more.put(key, value);
        return new NotebookCell(kind, id, source, more, attachments, outputs, executionCount);
    }

    /** Whether this is a code cell. */
    public boolean isCode() {
        return kind == Kind.CODE;
    }

    /** Whether its metadata carry the tag. */
    public boolean hasTag(String tag) {
        return metadata.get("tags") instanceof List<?> tags && tags.contains(tag);
    }

    static boolean isId(String id) {
        return id != null && id.matches("[a-zA-Z0-9_-]{1,64}");
    }

    private static Map<String, Object> copy(Map<String, Object> map, String name) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(Objects.requireNonNull(map, name)));
    }
}
