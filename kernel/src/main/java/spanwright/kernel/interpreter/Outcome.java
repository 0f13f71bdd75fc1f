package spanwright.kernel.interpreter;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spanwright.kernel.display.MimeBundle;

/** How a cell ended: exactly one of these, never null and never a flag. */
public sealed interface Outcome {
    /**
     * It ran to its end.
     *
     * @param shown the last expression, rendered; empty if it was a statement, void, null, or closed by a
     *              semicolon
     */
    record Value(Optional<MimeBundle> shown) implements Outcome {
        /** Checks the components. */
        public Value {
            Objects.requireNonNull(shown, "shown");
        }
    }

    /**
     * The code did not compile, or it threw.
     *
     * @param error what to show
     */
    record UserThrew(ErrorReport error) implements Outcome {
        /** Checks the components. */
        public UserThrew {
            Objects.requireNonNull(error, "error");
        }
    }

    /**
     * It was stopped on request.
     *
     * @param error what to show
     */
    record Interrupted(ErrorReport error) implements Outcome {
        /** Checks the components. */
        public Interrupted {
            Objects.requireNonNull(error, "error");
        }
    }

    /**
     * The engine itself failed; the session cannot be trusted any more.
     *
     * @param error what to show
     */
    record EngineLost(ErrorReport error) implements Outcome {
        /** Checks the components. */
        public EngineLost {
            Objects.requireNonNull(error, "error");
        }
    }

    /**
     * An error as the protocol's error message carries it.
     *
     * @param name      class of the exception, or "CompileError" or "Interrupted"
     * @param message   one line: what is wrong with which value, and what is allowed
     * @param traceback lines to print, may hold ANSI colours; they point at lines of the cell
     * @param line      line of the cell, from 1; 0 if not known
     * @param column    column of the cell, from 1; 0 if not known
     */
    record ErrorReport(String name, String message, List<String> traceback, int line, int column) {
        /** Checks the components. */
        public ErrorReport {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(message, "message");
            traceback = List.copyOf(traceback);
        }
    }
}
