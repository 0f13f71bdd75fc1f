package spanwright.kernel.jshell;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import jdk.jshell.JShell;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.CellScope;
import spanwright.kernel.display.DisplayHandle;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderers;
import spanwright.kernel.display.Streams;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Completeness;
import spanwright.kernel.interpreter.Completions;
import spanwright.kernel.interpreter.Inspection;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.interpreter.LanguageInfo;
import spanwright.kernel.interpreter.Outcome;
import spanwright.kernel.interpreter.Outcome.ErrorReport;

/**
 * A session of Java cells in this process, compiled by JShell.
 *
 * <p>Cells see the class path of the process, and what {@link spanwright.kernel.display.Session#addJars}
 * adds. Nothing is loaded before {@link #warmUp} or the first cell, so that a kernel can answer at once.
 */
public final class JShellInterpreter implements Interpreter {
    private final Prelude prelude;
    private final ReentrantLock engine = new ReentrantLock();
    private final Origins origins = new Origins();
    private final SnippetLoader loader = new SnippetLoader(JShellInterpreter.class.getClassLoader());
    private final SnippetControl control = new SnippetControl(loader, engine);
    private volatile CellRun running;
    private JShell shell;
    private byte[] ballast = new byte[2 << 20];

    /** A session that knows the prelude; takes over the streams of the process. */
    public JShellInterpreter(Prelude prelude) {
        this.prelude = Objects.requireNonNull(prelude, "prelude");
        Streams.install();
    }

    @Override
    public Outcome evaluate(Cell cell, CellOutput output) {
        Objects.requireNonNull(cell, "cell");
        final CellScope scope = CellScope.begin(output, this::addToClassPath, loader.classLoader());
        engine.lock();
        try {
            start();
            return run(cell, scope);
        } catch (OutOfMemoryError e) {
            ballast = null;
            return new Outcome.UserThrew(plainReport(e));
        } catch (RuntimeException | Error e) {
            return new Outcome.EngineLost(plainReport(e));
        } finally {
            engine.unlock();
            ballast = ballast == null ? new byte[2 << 20] : ballast;
            scope.flush();
        }
    }

    private Outcome run(Cell cell, CellScope scope) {
        final CellRun run = new CellRun(cell.label(), scope, loader.classLoader(), this::rendered);
        control.runIn(run);
        running = run;
        try {
            return new CellEvaluation(shell, origins, run, scope, cell).outcome();
        } finally {
            running = null;
            run.end();
        }
    }

    private Optional<MimeBundle> rendered(Object value) {
        return value instanceof DisplayHandle ? Optional.empty()
            : Optional.of(Renderers.of(loader.classLoader()).render(value));
    }

    private static ErrorReport plainReport(Throwable e) {
        final String message = Objects.toString(e.getMessage(), "");
        return new ErrorReport(RuntimeErrors.nameOf(e), message,
            List.of(RuntimeErrors.nameOf(e) + ": " + message), 0, 0);
    }

    private void addToClassPath(List<Path> paths) {
        engine.lock();
        try {
            for (Path p : paths) {
                shell.addToClasspath(p.toAbsolutePath().toString());
            }
            Renderers.forget(loader.classLoader());
        } finally {
            engine.unlock();
        }
    }

    /** Builds the engine and runs the prelude, once. The engine's lock is held. */
    private void start() {
        if (shell != null) {
            return;
        }
        shell = JShell.builder().executionEngine(control.provider(), java.util.Map.of())
            .compilerOptions(SessionClassPath.compilerOptions().toArray(String[]::new)).build();
        final CellScope scope =
            CellScope.begin(new PreludeOutput(), this::addToClassPath, loader.classLoader());
        for (String line : prelude.imports()) {
            runPrelude(line, scope);
        }
        for (String snippet : prelude.snippets()) {
            runPrelude(snippet, scope);
        }
        scope.flush();
    }

    private void runPrelude(String code, CellScope scope) {
        final Outcome outcome = run(new Cell(code, "prelude"), scope);
        if (!(outcome instanceof Outcome.Value)) {
            throw new IllegalStateException("the prelude fails at '" + code + "': " + outcome);
        }
    }

    @Override
    public void interrupt() {
        final CellRun run = running;
        if (run != null) {
            run.stop();
        }
    }

    @Override
    public void warmUp() {
        engine.lock();
        try {
            start();
            final CellScope scope =
                CellScope.begin(new PreludeOutput(), this::addToClassPath, loader.classLoader());
            runPrelude("1 + 1", scope);
            scope.flush();
        } finally {
            engine.unlock();
        }
    }

    @Override
    public Completions complete(String code, int cursor) {
        return new Completions(List.of(), cursor, cursor);
    }

    @Override
    public Optional<Inspection> inspect(String code, int cursor, int detail) {
        return Optional.empty();
    }

    @Override
    public Completeness completeness(String code) {
        return new Completeness(Completeness.Status.UNKNOWN, "");
    }

    @Override
    public LanguageInfo language() {
        final String version = System.getProperty("java.version");
        return new LanguageInfo(version, "Spanwright " + prelude.kernelVersion() + ", Java " + version
            + ". The last expression of a cell is shown; a semicolon at its end hides it.",
            prelude.kernelVersion());
    }

    @Override
    public void close() {
        interrupt();
        engine.lock();
        try {
            if (shell != null) {
                shell.close();
            }
        } finally {
            engine.unlock();
        }
    }
}
