package spanwright.kernel.display;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ForkJoinWorkerThread;

/**
 * The cell that a thread belongs to: where its output goes and which session it may ask. Threads that a cell
 * starts belong to the same cell, also after it has ended. Safe for use by several threads.
 */
public final class CellScope {
    /** What a cell can ask of the session it runs in. */
    public interface SessionAccess {
        /** Adds jar files or class folders to the class path of later statements. */
        void addToClassPath(List<Path> paths);
    }

    private static final InheritableThreadLocal<CellScope> CURRENT = new InheritableThreadLocal<>();
    private static volatile CellScope latest;

    private final OutputQueue queue;
    private final SessionAccess session;
    private final ClassLoader loader;

    private CellScope(OutputQueue queue, SessionAccess session, ClassLoader loader) {
        this.queue = queue;
        this.session = session;
        this.loader = loader;
    }

    /**
     * Begins a cell.
     *
     * @param output  where its output goes
     * @param session the session it runs in
     * @param loader  loader of the session's classes, where renderers are looked up
     */
    public static CellScope begin(CellOutput output, SessionAccess session, ClassLoader loader) {
        final CellScope scope = new CellScope(new OutputQueue(Objects.requireNonNull(output, "output")),
            Objects.requireNonNull(session, "session"), Objects.requireNonNull(loader, "loader"));
        latest = scope;
        return scope;
    }

    /** Makes the calling thread, and threads it starts from now on, belong to this cell. */
    public void enter() {
        CURRENT.set(this);
    }

    /** The cell of the calling thread; pool threads that outlive cells belong to the latest cell. */
    static Optional<CellScope> current() {
        final CellScope own = CURRENT.get();
        return Optional.ofNullable(
            Thread.currentThread() instanceof ForkJoinWorkerThread && latest != null ? latest : own);
    }

    /**
     * The cell of the calling thread.
     *
     * @throws IllegalStateException if the thread belongs to no cell
     */
    static CellScope required() {
        return current().orElseThrow(() -> new IllegalStateException(
            "this works in a cell only; thread '" + Thread.currentThread().getName() + "' belongs to none"));
    }

    /** Passes on everything written so far. Not for threads of a cell. */
    public void flush() {
        queue.passOn();
    }

    /** Appends text as if the cell had printed it. */
    public void write(CellOutput.Stream stream, String text) {
        queue.write(stream, text);
    }

    OutputQueue queue() {
        return queue;
    }

    SessionAccess session() {
        return session;
    }

    ClassLoader loader() {
        return loader;
    }

    /** Asks for a line, after everything written so far is shown. */
    Optional<String> readLine(String prompt, boolean password) throws IOException, InterruptedException {
        queue.awaitPassedOn();
        return queue.output().readLine(prompt, password);
    }
}
