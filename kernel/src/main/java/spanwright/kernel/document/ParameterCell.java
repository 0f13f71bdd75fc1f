package spanwright.kernel.document;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Puts a cell that sets values after the cell tagged "parameters". */
final class ParameterCell {
    static final String INJECTED_TAG = "injected-parameters";

    private ParameterCell() { }

    /**
     * The notebook with the cell, in place of one that an earlier run put in; the same if nothing is to be
     * set.
     */
    static Notebook injected(Notebook notebook, String name, List<Parameter> parameters) {
        if (parameters.isEmpty()) {
            return notebook;
        }
        final long tagged = notebook.cells().stream().filter(c -> isParameters(c)).count();
        if (tagged != 1) {
            throw new IllegalArgumentException(name + " has " + (tagged == 0 ? "no" : Long.toString(tagged))
                + " code cells tagged \"" + Notebook.PARAMETERS_TAG + "\"; exactly one is needed to set "
                + parameters.stream().map(Parameter::name).collect(Collectors.joining(", ")));
        }
        final List<NotebookCell> cells = new ArrayList<>();
        for (NotebookCell cell : notebook.cells()) {
            if (!cell.hasTag(INJECTED_TAG)) {
                cells.add(cell);
            }
            if (isParameters(cell)) {
                cells.add(cell(notebook, parameters));
            }
        }
        return notebook.withCells(cells);
    }

    private static boolean isParameters(NotebookCell cell) {
        return cell.isCode() && cell.hasTag(Notebook.PARAMETERS_TAG);
    }

    private static NotebookCell cell(Notebook notebook, List<Parameter> parameters) {
        String id = "set-for-this-run";
        for (int i = 2; has(notebook, id); i++) {
            id = "set-for-this-run-" + i;
        }
        final String source = "// Set for this run.\n"
            + parameters.stream().map(Parameter::statement).collect(Collectors.joining("\n"));
        return NotebookCell.code(id, source).withMetadata("tags", List.of(INJECTED_TAG));
    }

    private static boolean has(Notebook notebook, String id) {
        return notebook.cells().stream().anyMatch(c -> c.id().equals(id) && !c.hasTag(INJECTED_TAG));
    }
}
