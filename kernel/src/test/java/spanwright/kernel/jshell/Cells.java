package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Outcome;

/** A session for a test: runs cells, numbers them, and keeps the output of the last one. */
final class Cells implements AutoCloseable {
    final JShellInterpreter session;
    RecordedOutput output = new RecordedOutput();
    private int count;

    Cells(String... imports) {
        this(Duration.ofSeconds(2), imports);
    }

    /** A session with another patience with cells that do not stop. */
    Cells(Duration noteAfter, String... imports) {
        session = new JShellInterpreter(Prelude.ofImports(List.of(imports), "test"), noteAfter);
    }

    Outcome run(String code) {
        return run(code, new RecordedOutput());
    }

    Outcome run(String code, RecordedOutput to) {
        output = to;
        count++;
        return session.evaluate(new Cell(code, "cell [" + count + "]"), to);
    }

    /** Runs a cell that must end well; its value as text. */
    Optional<String> shown(String code) {
        final Outcome outcome = run(code);
        assertThat(outcome).as(code).isInstanceOf(Outcome.Value.class);
        return ((Outcome.Value) outcome).shown().map(b -> (String) b.data().get(MimeBundle.TEXT));
    }

    /** Runs a cell that must show a value; the value as text. */
    String value(String code) {
        return shown(code).orElseThrow(() -> new AssertionError("nothing shown by: " + code));
    }

    /** Runs a cell that must fail; its error. */
    Outcome.ErrorReport error(String code) {
        final Outcome outcome = run(code);
        assertThat(outcome).as(code).isInstanceOf(Outcome.UserThrew.class);
        return ((Outcome.UserThrew) outcome).error();
    }

    /** The traceback without colours. */
    static String plain(Outcome.ErrorReport error) {
        return String.join("\n", error.traceback()).replaceAll("\u001b\\[[0-9;]*m", "");
    }

    @Override
    public void close() {
        session.close();
    }
}
