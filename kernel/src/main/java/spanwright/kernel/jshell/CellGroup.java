package spanwright.kernel.jshell;

import java.util.Arrays;
import java.util.concurrent.ForkJoinWorkerThread;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.CellScope;
import spanwright.kernel.display.GeneratedNames;

/** The threads of one cell: the one that runs it, and those it has started. */
final class CellGroup extends ThreadGroup {
    private final CellScope scope;
    private volatile CellRun run;
    private volatile boolean toStop;

    /** The group removes itself when its last thread ends; newer JDKs do so without being told. */
    @SuppressWarnings("removal")
    CellGroup(String name, CellScope scope) {
        super(name);
        this.scope = scope;
        setDaemon(true);
    }

    void belongsTo(CellRun theRun) {
        run = theRun;
    }

    CellRun run() {
        return run;
    }

    boolean isToStop() {
        return toStop;
    }

    /** Marks all its threads as to be stopped, and wakes those that sleep or wait. */
    void askToStop() {
        toStop = true;
        interrupt();
    }

    /** Stops all its threads wherever they are. Works up to JDK 19 only; later ones only have the checks. */
    @SuppressWarnings("removal")
    void force() {
        if (Runtime.version().feature() < 20) {
            stop();
        }
    }

    /** Stops pool threads, which are outside the group, where they run code of a cell. JDK 19 or older. */
    @SuppressWarnings("deprecation")
    void forcePoolThreads() {
        if (Runtime.version().feature() < 20) {
            Thread.getAllStackTraces().forEach((thread, trace) -> {
                if (thread instanceof ForkJoinWorkerThread
                    && Arrays.stream(trace).anyMatch(f -> f.getClassName().startsWith("REPL."))) {
                    thread.stop();
                }
            });
        }
    }

    @Override
    public void uncaughtException(Thread thread, Throwable thrown) {
        if (!toStop) {
            scope.write(CellOutput.Stream.STDERR, "Thread '" + thread.getName() + "', started by " + getName()
                + ", ended with " + GeneratedNames.strip(thrown.toString()) + ".\n");
        }
    }
}
