package spanwright.kernel.jshell;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
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
    private static final int FORGET_AFTER = 32;
    private final Prelude prelude;
    /** Held while cells run, from the first statement to the last. */
    private final ReentrantLock turn = new ReentrantLock();
    /** Held while JShell works, but not while a statement of a cell runs. */
    private final ReentrantLock engine = new ReentrantLock();
    private final Origins origins = new Origins();
    private final SnippetLoader loader = new SnippetLoader(JShellInterpreter.class.getClassLoader());
    private final SnippetControl control = new SnippetControl(loader, engine);
    private final SessionEngine jshell;
    private final DirectBlocks direct;
    private final CellEvaluation.Parts parts;
    private final Duration noteAfter;
    private final Stops stops = new Stops();
    private long lastEnded = System.nanoTime();
    private volatile boolean closed;
    private CellRun latest;
    private boolean begun;
    private DocIndex docs;
    private Optional<DeadSnippets> dead = Optional.empty();
    private int cellsSinceForgotten;
    private byte[] ballast = new byte[2 << 20];

    /** A session that knows the prelude; takes over the streams of the process. */
    public JShellInterpreter(Prelude prelude) {
        this(prelude, Duration.ofSeconds(2));
    }

    /** A session that says so when a cell still runs so long after it was asked to stop. */
    JShellInterpreter(Prelude prelude, Duration noteAfter) {
        this.noteAfter = noteAfter;
        this.prelude = Objects.requireNonNull(prelude, "prelude");
        this.jshell = new SessionEngine(control, prelude.imports());
        this.direct = new DirectBlocks(loader, control, prelude.imports(),
            SessionClassPath.beyondTheProcess().stream().map(Path::of).toList());
        this.parts = new CellEvaluation.Parts(jshell, direct, origins);
        Streams.install();
        EndNotice.watch(this);
    }

    @Override
    public Outcome evaluate(Cell cell, CellOutput output) {
        Objects.requireNonNull(cell, "cell");
        stops.arrives();
        turn.lock();
        final CellScope scope = CellScope.begin(output, this::addToClassPath, loader.classLoader());
        engine.lock();
        try {
            begin();
            return run(cell, scope, true);
        } catch (OutOfMemoryError e) {
            ballast = null;
            return new Outcome.UserThrew(plainReport(e));
        } catch (RuntimeException | Error e) {
            return isTooDeep(e) ? new Outcome.UserThrew(tooDeep()) : new Outcome.EngineLost(plainReport(e));
        } finally {
            engine.unlock();
            ballast = ballast == null ? new byte[2 << 20] : ballast;
            stops.leaves();
            lastEnded = System.nanoTime();
            turn.unlock();
            scope.flush();
        }
    }

    private Outcome run(Cell cell, CellScope scope, boolean ofUser) {
        if (latest != null) {
            latest.leavePools();
        }
        final CellRun run = new CellRun(cell.label(), scope, loader.classLoader(), this::rendered, noteAfter);
        control.runIn(run);
        stops.begins(run, ofUser);
        latest = run;
        try {
            return forgetting(new CellEvaluation(parts, run, scope, cell).outcome());
        } finally {
            stops.ends();
            run.end();
        }
    }

    /**
     * A definition that failed is forgotten at once, or the next one of that name would try all older ones.
     */
    private Outcome forgetting(Outcome outcome) {
        cellsSinceForgotten++;
        if (cellsSinceForgotten >= FORGET_AFTER || outcome instanceof Outcome.UserThrew) {
            cellsSinceForgotten = 0;
            dead = dead.or(() -> jshell.started().flatMap(DeadSnippets::of));
            dead.ifPresent(d -> loader.declared().keepOnly(d.forget()));
        }
        return outcome;
    }

    /** Tells the running cell, if there is one, that the process ends. */
    void tellThatTheProcessEnds() {
        stops.running().ifPresent(CellRun::tellThatTheProcessEnds);
    }

    private Optional<MimeBundle> rendered(Object value) {
        return value instanceof DisplayHandle ? Optional.empty()
            : Optional.of(Renderers.of(loader.classLoader()).render(value));
    }

    /** The compiler itself overflowed its stack, by itself or wrapped in an exception of its own. */
    private static boolean isTooDeep(Throwable e) {
        Throwable t = e;
        while (t != null && !(t instanceof StackOverflowError)) {
            t = t.getCause();
        }
        return t != null;
    }

    private static ErrorReport tooDeep() {
        final String message = "the code is nested too deeply for the compiler; split the expression";
        return new ErrorReport(CompileErrors.NAME, message,
            List.of(CompileErrors.NAME + ": " + message), 0, 0);
    }

    private static ErrorReport plainReport(Throwable e) {
        final String message = Objects.toString(e.getMessage(), "");
        return new ErrorReport(RuntimeErrors.nameOf(e), message,
            List.of(RuntimeErrors.nameOf(e) + ": " + message), 0, 0);
    }

    private void addToClassPath(List<Path> paths) {
        engine.lock();
        try {
            jshell.addToClassPath(paths);
            direct.addToClassPath(paths);
            Renderers.forget(loader.classLoader());
            docs = null;
        } finally {
            engine.unlock();
        }
    }

    /** Runs what the prelude has beyond imports, once; those are left until JShell is needed. */
    private void begin() {
        if (begun) {
            return;
        }
        begun = true;
        final CellScope scope = preludeScope();
        for (String snippet : prelude.snippets()) {
            runPrelude(snippet, scope);
        }
        scope.flush();
    }

    private void runPrelude(String code, CellScope scope) {
        final Outcome outcome = run(new Cell(code, "prelude"), scope, false);
        if (!(outcome instanceof Outcome.Value)) {
            throw new IllegalStateException("the prelude fails at '" + code + "': " + outcome);
        }
    }

    @Override
    public void interrupt() {
        stops.ask();
    }

    /**
     * Has the compiler ready for a first plain cell; what else is slow the first time is done once on a
     * thread of its own, later, while no cell runs or waits.
     */
    @Override
    public void warmUp() {
        turn.lock();
        engine.lock();
        try {
            begin();
            direct.warmUp();
        } finally {
            engine.unlock();
            turn.unlock();
        }
        final Thread rest = new Thread(() -> new Rehearsal(this).run(), "spanwright-warm");
        rest.setDaemon(true);
        rest.start();
    }

    /**
     * Does something if the session has been idle for so long and nothing else wants it.
     *
     * @return whether it was done, or never will be as the session is closed
     */
    boolean whenIdle(long nanos, Runnable task) {
        if (stops.isWaiting() || !turn.tryLock()) {
            return closed;
        }
        try {
            final boolean now = closed || System.nanoTime() - lastEnded >= nanos;
            if (now && !closed) {
                task.run();
            }
            return now;
        } finally {
            turn.unlock();
        }
    }

    /** Runs a cell whose output and outcome nobody wants. The turn is held. */
    void tried(String code) {
        engine.lock();
        try {
            run(new Cell(code, "prelude"), preludeScope(), false);
        } finally {
            engine.unlock();
        }
    }

    /** Does a part of the start of JShell. The turn is held. */
    void startFurther() {
        engine.lock();
        try {
            jshell.step();
        } finally {
            engine.unlock();
        }
    }

    /** Whether JShell has not been started to the end, and still may be. */
    boolean isToStart() {
        engine.lock();
        try {
            return !closed && jshell.started().isEmpty();
        } finally {
            engine.unlock();
        }
    }

    private CellScope preludeScope() {
        return CellScope.begin(new PreludeOutput(), this::addToClassPath, loader.classLoader());
    }

    @Override
    public Completions complete(String code, int cursor) {
        return analysed(shell -> new Completer(shell, new TypeNames(shell, loader)).at(code, cursor));
    }

    @Override
    public Optional<Inspection> inspect(String code, int cursor, int detail) {
        return analysed(shell -> {
            docs = docs == null ? new DocIndex(loader.classLoader()) : docs;
            return new Inspector(shell, new TypeNames(shell, loader), control, docs).at(code, cursor, detail);
        });
    }

    @Override
    public Completeness completeness(String code) {
        return analysed(shell -> CompletenessCheck.of(shell.sourceCodeAnalysis(), code));
    }

    /** Analyses the session; waits while the compiler works, not while a cell runs. */
    private <T> T analysed(Function<JShell, T> analysis) {
        engine.lock();
        try {
            begin();
            return analysis.apply(jshell.shell());
        } finally {
            engine.unlock();
        }
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
        closed = true;
        interrupt();
        engine.lock();
        try {
            jshell.close();
        } finally {
            engine.unlock();
        }
    }
}
