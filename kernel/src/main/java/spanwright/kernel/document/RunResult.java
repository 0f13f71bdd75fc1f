package spanwright.kernel.document;

import java.time.Duration;
import java.util.List;
import java.util.Objects;

/**
 * What came of running a notebook.
 *
 * @param notebook  with the outputs of this run; a cell that did not run has none
 * @param headlines in the order of the cells
 * @param failures  empty if all cells ran to their end
 * @param cellsRun  how many code cells were started
 * @param elapsed   from the first cell to the last
 */
public record RunResult(Notebook notebook, List<CellHeadline> headlines, List<CellFailure> failures,
        int cellsRun,
                        Duration elapsed) {
    /** Copies the lists. */
    public RunResult {
        Objects.requireNonNull(notebook, "notebook");
        headlines = List.copyOf(headlines);
        failures = List.copyOf(failures);
        Objects.requireNonNull(elapsed, "elapsed");
    }

    /**
     * A headline and where it was shown.
     *
     * @param cellId   id of the cell
     * @param headline what it said
     */
    public record CellHeadline(String cellId, Headline headline) { }

    /**
     * A cell that did not run to its end.
     *
     * @param cellId  id of the cell
     * @param cell    its place in the notebook file, counting cells of every kind from 1
     * @param count   the number in brackets
     * @param line    line in the cell, from 1; 0 if not known
     * @param name    class of the exception or a word for what happened
     * @param message what is wrong
     */
    public record CellFailure(String cellId, int cell, int count, int line, String name, String message) {
        /** One line: the cell, the line, the error. */
        @Override
        public String toString() {
            return "cell " + cell + " [" + count + "]" + (line > 0 ? ", line " + line : "") + ": " + name
                + (message.isBlank() ? "" : ": " + message.strip());
        }
    }

    /** Whether all cells ran to their end. */
    public boolean passed() {
        return failures.isEmpty();
    }
}
