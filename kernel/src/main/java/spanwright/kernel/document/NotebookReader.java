package spanwright.kernel.document;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import spanwright.kernel.display.CellOutput.Stream;
import spanwright.kernel.display.MimeBundle;

/** Turns JSON values into a notebook, or says which cell is wrong. */
final class NotebookReader {
    private static final int MAJOR = 4;
    private static final int NEWEST_MINOR = 5;
    private static final Set<String> TOP = Set.of("cells", "metadata", "nbformat", "nbformat_minor");
    private static final Map<NotebookCell.Kind, Set<String>> KEYS = Map.of(
        NotebookCell.Kind.CODE, Set.of("id", "cell_type", "metadata", "source", "outputs", "execution_count"),
        NotebookCell.Kind.MARKDOWN, Set.of("id", "cell_type", "metadata", "source", "attachments"),
        NotebookCell.Kind.RAW, Set.of("id", "cell_type", "metadata", "source", "attachments"));
    private static final Map<String, Set<String>> OUTPUT_KEYS = Map.of(
        "stream", Set.of("output_type", "name", "text"),
        "display_data", Set.of("output_type", "data", "metadata"),
        "execute_result", Set.of("output_type", "data", "metadata", "execution_count"),
        "error", Set.of("output_type", "ename", "evalue", "traceback"));

    private final String name;
    private final Set<String> ids = new HashSet<>();

    NotebookReader(String name) {
        this.name = name;
    }

    Notebook notebook(Map<?, ?> top) throws NotebookFormatException {
        final int major = number(top, "nbformat", name);
        final int minor = number(top, "nbformat_minor", name);
        if (major != MAJOR || minor > NEWEST_MINOR || minor < 0) {
            throw new NotebookFormatException(name + ": nbformat " + major + "." + minor
                + " is not read here, only 4.0 to 4.5; save it in that format first");
        }
        known(top, TOP, name);
        final List<?> cells = list(top, "cells", name);
        collectIds(cells);
        final List<NotebookCell> read = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            final String where = name + ": cell " + (i + 1);
            if (!(cells.get(i) instanceof Map<?, ?> cell)) {
                throw new NotebookFormatException(where + " is not a JSON object");
            }
            read.add(cell(cell, i + 1, where));
        }
        return new Notebook(read, object(top, "metadata", name));
    }

    /** Ids in the file come first, so that a made one never takes the place of one that is there. */
    private void collectIds(List<?> cells) throws NotebookFormatException {
        for (int i = 0; i < cells.size(); i++) {
            if (cells.get(i) instanceof Map<?, ?> cell && cell.get("id") != null) {
                final String where = name + ": cell " + (i + 1);
                if (!(cell.get("id") instanceof String id) || !NotebookCell.isId(id)) {
                    throw new NotebookFormatException(where + " has the id \"" + cell.get("id")
                        + "\", not 1 to 64 letters, digits, hyphens and underscores");
                }
                if (!ids.add(id)) {
                    throw new NotebookFormatException(where + " has the id \"" + id
                        + "\" of an earlier cell");
                }
            }
        }
    }

    private NotebookCell cell(Map<?, ?> cell, int number, String where) throws NotebookFormatException {
        final NotebookCell.Kind kind = kind(cell.get("cell_type"), where);
        known(cell, KEYS.get(kind), where);
        final String id = cell.get("id") instanceof String s ? s : madeId(number);
        final String source = joined(cell, "source", where);
        final Map<String, Object> metadata = object(cell, "metadata", where);
        final Map<String, Object> attachments =
            cell.containsKey("attachments") ? object(cell, "attachments", where) : Map.of();
        if (kind != NotebookCell.Kind.CODE) {
            return new NotebookCell(kind, id, source, metadata, attachments, List.of(), OptionalInt.empty());
        }
        final List<SavedOutput> outputs = new ArrayList<>();
        for (Object output : list(cell, "outputs", where)) {
            outputs.add(output(output, where));
        }
        return new NotebookCell(kind, id, source, metadata, attachments, outputs, count(cell, where));
    }

    private String madeId(int number) {
        String id = "cell-" + number;
        for (int i = 2; !ids.add(id); i++) {
            id = "cell-" + number + "-" + i;
        }
        return id;
    }

    private static NotebookCell.Kind kind(Object value, String where) throws NotebookFormatException {
        for (NotebookCell.Kind kind : NotebookCell.Kind.values()) {
            if (kind.formatName().equals(value)) {
                return kind;
            }
        }
        throw new NotebookFormatException(where + " has the cell_type " + value
            + ", not code, markdown or raw");
    }

    private static OptionalInt count(Map<?, ?> cell, String where) throws NotebookFormatException {
        return cell.get("execution_count") == null
            ? OptionalInt.empty() : OptionalInt.of(number(cell, "execution_count", where));
    }

    private static SavedOutput output(Object value, String where) throws NotebookFormatException {
        if (!(value instanceof Map<?, ?> map)
                || !(map.get("output_type") instanceof String type) || !OUTPUT_KEYS.containsKey(type)) {
            throw new NotebookFormatException(where + " has an output that is none of "
                + OUTPUT_KEYS.keySet());
        }
        known(map, OUTPUT_KEYS.get(type), where + ", " + type);
        switch (type) {
            case "stream":
                return new SavedOutput.Text("stderr".equals(map.get("name")) ? Stream.STDERR : Stream.STDOUT,
                    joined(map, "text", where));
            case "display_data":
                return new SavedOutput.Shown(bundle(map, where));
            case "execute_result":
                return new SavedOutput.Result(bundle(map, where));
            default:
                final List<String> lines = new ArrayList<>();
                list(map, "traceback", where).forEach(line -> lines.add(String.valueOf(line)));
                return new SavedOutput.Failure(joined(map, "ename", where), joined(map, "evalue", where),
                    lines);
        }
    }

    private static MimeBundle bundle(Map<?, ?> output, String where) throws NotebookFormatException {
        final Map<String, Object> data = new LinkedHashMap<>();
        for (var entry : object(output, "data", where).entrySet()) {
            data.put(entry.getKey(), isJson(entry.getKey())
                ? entry.getValue() : joined(Map.of("data", entry.getValue()), "data", where));
        }
        return new MimeBundle(data, object(output, "metadata", where));
    }

    /** JSON representations are values; all others are text, perhaps split into lines. */
    static boolean isJson(String mimeType) {
        return mimeType.equals("application/json") || mimeType.endsWith("+json");
    }

    private static String joined(Map<?, ?> map, String key, String where) throws NotebookFormatException {
        final Object value = map.get(key);
        if (value instanceof String text) {
            return text;
        }
        if (value instanceof List<?> lines && lines.stream().allMatch(String.class::isInstance)) {
            final StringBuilder all = new StringBuilder();
            lines.forEach(all::append);
            return all.toString();
        }
        throw new NotebookFormatException(where + ": \"" + key + "\" is neither text nor a list of lines");
    }

    private static void known(Map<?, ?> map, Set<String> keys, String where) throws NotebookFormatException {
        for (Object key : map.keySet()) {
            if (!keys.contains(key)) {
                throw new NotebookFormatException(where + ": nbformat 4.5 has no \"" + key + "\" here");
            }
        }
    }

    private static List<?> list(Map<?, ?> map, String key, String where) throws NotebookFormatException {
        if (map.get(key) instanceof List<?> list) {
            return list;
        }
        throw new NotebookFormatException(where + ": \"" + key + "\" is missing or not a list");
    }

    private static Map<String, Object> object(Map<?, ?> map, String key, String where)
            throws NotebookFormatException {
        if (map.get(key) instanceof Map<?, ?> found) {
            final Map<String, Object> copy = new LinkedHashMap<>();
            found.forEach((k, v) -> copy.put((String) k, v));
            return copy;
        }
        throw new NotebookFormatException(where + ": \"" + key + "\" is missing or not an object");
    }

    private static int number(Map<?, ?> map, String key, String where) throws NotebookFormatException {
        if (map.get(key) instanceof Integer number) {
            return number;
        }
        throw new NotebookFormatException(where + ": \"" + key + "\" is missing or not a whole number");
    }
}
