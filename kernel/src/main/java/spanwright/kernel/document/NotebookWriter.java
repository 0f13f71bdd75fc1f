package spanwright.kernel.document;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import spanwright.kernel.display.MimeBundle;

/** Turns a notebook into JSON values of nbformat 4.5. */
final class NotebookWriter {
    private NotebookWriter() { }

    static Map<String, Object> notebook(Notebook notebook) {
        final Map<String, Object> top = new LinkedHashMap<>();
        top.put("cells", notebook.cells().stream().map(NotebookWriter::cell).toList());
        top.put("metadata", notebook.metadata());
        top.put("nbformat", 4);
        top.put("nbformat_minor", 5);
        return top;
    }

    private static Map<String, Object> cell(NotebookCell cell) {
        final Map<String, Object> map = new LinkedHashMap<>();
        if (!cell.attachments().isEmpty()) {
            map.put("attachments", cell.attachments());
        }
        map.put("cell_type", cell.kind().formatName());
        if (cell.isCode()) {
            map.put("execution_count", boxed(cell.executionCount()));
        }
        map.put("id", cell.id());
        map.put("metadata", cell.metadata());
        if (cell.isCode()) {
            map.put("outputs", cell.outputs().stream().map(o -> output(o, cell.executionCount())).toList());
        }
        map.put("source", lines(cell.source()));
        return map;
    }

    private static Integer boxed(OptionalInt count) {
        return count.isPresent() ? Integer.valueOf(count.getAsInt()) : null;
    }

    private static Map<String, Object> output(SavedOutput output, OptionalInt count) {
        final Map<String, Object> map = new LinkedHashMap<>();
        if (output instanceof SavedOutput.Text text) {
            map.put("name", text.stream().protocolName());
            map.put("output_type", "stream");
            map.put("text", lines(text.text()));
        } else if (output instanceof SavedOutput.Failure failure) {
            map.put("ename", failure.name());
            map.put("evalue", failure.message());
            map.put("output_type", "error");
            map.put("traceback", failure.traceback());
        } else if (output instanceof SavedOutput.Result result) {
            putBundle(map, result.bundle());
            map.put("execution_count", boxed(count));
            map.put("output_type", "execute_result");
        } else if (output instanceof SavedOutput.Shown shown) {
            putBundle(map, shown.bundle());
            map.put("output_type", "display_data");
        }
        return map;
    }

    private static void putBundle(Map<String, Object> map, MimeBundle bundle) {
        final Map<String, Object> data = new LinkedHashMap<>();
        bundle.data().forEach((mimeType, value) -> data.put(mimeType,
            value instanceof String text && !NotebookReader.isJson(mimeType) && text.indexOf('\n') >= 0
                ? lines(text) : value));
        map.put("data", data);
        map.put("metadata", bundle.metadata());
    }

    /** Several lines as a list, each with its line feed, so that version control shows changes by line. */
    private static Object lines(String text) {
        final List<String> lines = new ArrayList<>();
        int start = 0;
        for (int end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', start)) {
            lines.add(text.substring(start, end + 1));
            start = end + 1;
        }
        if (start < text.length()) {
            lines.add(text.substring(start));
        }
        return lines;
    }
}
