package spanwright.kernel.interpreter;

import java.util.Objects;

/**
 * A cell to run.
 *
 * @param code  Java source: any number of statements, declarations and expressions
 * @param label how messages and traces name the cell, for example "cell [7]"
 */
public record Cell(String code, String label) {
    /** Checks the components. */
    public Cell {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(label, "label");
    }
}
