package spanwright.kernel.jshell;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.CellScope;
import spanwright.kernel.display.MimeBundle;

/**
 * One run of one cell: the thread that executes its compiled units, and the means to stop it.
 *
 * <p>{@link #invoke} and {@link #end} are called by the evaluating thread, {@link #stop} by any other.
 */
final class CellRun {
    private static final long GRACE_NANOS = 2_000_000;
    private static final long POOL_NANOS = 500_000_000L;
    private static final long LINGER_NANOS = 5_000_000_000L;

    private final CellScope scope;
    private final CellGroup group;
    private final Thread worker;
    private final Thread evaluator = Thread.currentThread();
    private volatile Method next;
    private volatile boolean running;
    private volatile boolean ended;
    private volatile long endedAt;
    private volatile boolean stopRequested;
    private volatile boolean poolsArmed;
    private volatile boolean noted;
    private volatile boolean abandoned;
    private volatile Throwable thrown;
    private volatile boolean wanted;
    private volatile Optional<MimeBundle> shown = Optional.empty();
    private final ValueRendering rendering;
    private final Duration noteAfter;

    /** Makes the representation of a value, on the thread of the cell so that it can be stopped too. */
    interface ValueRendering {
        Optional<MimeBundle> render(Object value);
    }

    CellRun(String label, CellScope scope, ClassLoader loader, ValueRendering rendering, Duration noteAfter) {
        this.noteAfter = noteAfter;
        this.scope = scope;
        this.rendering = rendering;
        this.group = new CellGroup(label, scope);
        this.group.belongsTo(this);
        this.worker = new Thread(group, this::work, label);
        this.worker.setContextClassLoader(loader);
        this.worker.setDaemon(true);
        this.worker.start();
    }

    private void work() {
        scope.enter();
        while (!ended) {
            final Method m = next;
            if (m == null) {
                LockSupport.park(this);
            } else {
                execute(m);
                next = null;
                running = false;
                LockSupport.unpark(evaluator);
            }
        }
    }

    private void execute(Method m) {
        try {
            final Object result = m.invoke(null);
            if (wanted && result != null) {
                shown = rendering.render(result);
            }
        } catch (InvocationTargetException e) {
            thrown = e.getCause();
        } catch (Throwable e) {
            thrown = e;
        }
    }

    /** Called by compiled code with the value of the last expression. */
    void show(Object result) {
        shown = result == null ? Optional.empty() : rendering.render(result);
    }

    /** Whether the value that the next invoked method returns is to be rendered. */
    void wantValue(boolean want) {
        wanted = want;
        shown = Optional.empty();
    }

    Optional<MimeBundle> shown() {
        return shown;
    }

    /** What the last unit threw, empty if it ended well. */
    Optional<Throwable> thrown() {
        return Optional.ofNullable(thrown);
    }

    boolean stopRequested() {
        return stopRequested;
    }

    boolean abandoned() {
        return abandoned;
    }

    /** Runs a compiled unit to its end on the thread of the cell. */
    void invoke(Method m) throws InvocationTargetException {
        thrown = null;
        if (stopRequested) {
            thrown = new StopCheck.Stopped();
            throw new InvocationTargetException(thrown);
        }
        running = true;
        next = m;
        LockSupport.unpark(worker);
        while (running && worker.isAlive() && !abandoned) {
            LockSupport.parkNanos(this, 50_000_000);
        }
        if (running) {
            running = false;
            thrown = thrown == null ? new StopCheck.Stopped() : thrown;
        }
        if (thrown != null) {
            throw new InvocationTargetException(thrown);
        }
    }

    /** The cell has ended; its thread ends, those it has started go on. */
    void end() {
        synchronized (this) {
            endedAt = System.nanoTime();
            ended = true;
        }
        LockSupport.unpark(worker);
    }

    /** Says on the cell's error stream that the process ends, and passes it on at once. */
    void tellThatTheProcessEnds() {
        scope.write(CellOutput.Stream.STDERR, "The Java process ends while this cell runs: it was asked to"
            + " shut down, or the cell called Runtime.exit. All variables are lost.\n");
        scope.flush();
    }

    /**
     * Asks the cell to stop and keeps asking until it does. A second request, once a note has said that the
     * code does not react, leaves that code running in the background and gives the session back.
     */
    void stop() {
        if (stopRequested) {
            abandoned = noted;
            LockSupport.unpark(evaluator);
            return;
        }
        stopRequested = true;
        poolsArmed = true;
        StopCheck.arm();
        group.askToStop();
        final Thread stopper = new Thread(this::keepStopping, "spanwright-stop");
        stopper.setDaemon(true);
        stopper.start();
    }

    /** Goes on until the cell has ended, and then for a while with threads it has started. */
    private void keepStopping() {
        final long begin = System.nanoTime();
        long wait = GRACE_NANOS;
        while (isStillToStop(begin)) {
            LockSupport.parkNanos(wait);
            synchronized (this) {
                if (running || ended) {
                    group.askToStop();
                    group.force();
                }
                if (ended && poolsArmed) {
                    group.forcePoolThreads();
                }
            }
            wait = Math.min(wait * 2, 100_000_000);
            if (!noted && !ended && System.nanoTime() - begin > noteAfter.toNanos()) {
                noted = true;
                scope.write(CellOutput.Stream.STDERR, note());
            }
        }
        leavePools();
        StopCheck.disarm();
    }

    /** The next cell is about to begin: from now on pool threads work for that one. */
    synchronized void leavePools() {
        if (poolsArmed) {
            poolsArmed = false;
            StopCheck.disarmPools();
        }
    }

    private boolean isStillToStop(long begin) {
        final long now = System.nanoTime();
        return !ended || poolsArmed && now - endedAt < POOL_NANOS
            || group.activeCount() > 0 && now - begin < LINGER_NANOS;
    }

    private String note() {
        final StackTraceElement[] trace = worker.getStackTrace();
        return "Still running " + noteAfter.toMillis() / 1000.0 + " s after it was asked to stop"
            + (trace.length == 0 ? "" : ", in " + trace[0])
            + ". This code does not react. Interrupt once more to leave it behind in the background and go on"
            + " with the session, or restart the kernel.\n";
    }
}
