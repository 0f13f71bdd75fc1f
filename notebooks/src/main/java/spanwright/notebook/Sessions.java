package spanwright.notebook;

import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.jshell.JShellInterpreter;

/** Opens sessions, live and headless ones alike, so that a notebook gives the same in both. */
final class Sessions {
    private Sessions() { }

    /** A fresh session that knows what every cell may use without importing. */
    static Interpreter open() {
        return new JShellInterpreter(CellPrelude.of(Main.version()));
    }
}
