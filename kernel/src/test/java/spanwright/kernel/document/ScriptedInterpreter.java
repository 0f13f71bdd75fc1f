package spanwright.kernel.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.BiFunction;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Completeness;
import spanwright.kernel.interpreter.Completions;
import spanwright.kernel.interpreter.Inspection;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.interpreter.LanguageInfo;
import spanwright.kernel.interpreter.Outcome;

/** The port's double: a cell does what the test says. */
final class ScriptedInterpreter implements Interpreter {
    static final Outcome NOTHING = new Outcome.Value(Optional.empty());

    final List<Cell> evaluated = new ArrayList<>();
    final CountDownLatch interrupted = new CountDownLatch(1);
    boolean closed;
    boolean warm;
    private final BiFunction<String, CellOutput, Outcome> script;

    ScriptedInterpreter(BiFunction<String, CellOutput, Outcome> script) {
        this.script = script;
    }

    static Outcome value(MimeBundle bundle) {
        return new Outcome.Value(Optional.of(bundle));
    }

    static Outcome threw(String name, String message, int line) {
        return new Outcome.UserThrew(new Outcome.ErrorReport(name, message,
            List.of("\u001b[31m" + name + "\u001b[0m: " + message), line, 1));
    }

    @Override
    public Outcome evaluate(Cell cell, CellOutput output) {
        evaluated.add(cell);
        return script.apply(cell.code(), output);
    }

    @Override
    public void interrupt() {
        interrupted.countDown();
    }

    @Override
    public Completions complete(String code, int cursor) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Optional<Inspection> inspect(String code, int cursor, int detail) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Completeness completeness(String code) {
        throw new UnsupportedOperationException();
    }

    @Override
    public LanguageInfo language() {
        return new LanguageInfo("17.0.1", "hello", "0.1");
    }

    @Override
    public void warmUp() {
        warm = true;
    }

    @Override
    public void close() {
        closed = true;
    }
}
