package spanwright.kernel.jshell;

import java.util.Optional;

/**
 * Whom an interrupt stops: the running cell or, if it does not run yet, the one that waits for its turn. Safe
 * for several threads.
 */
final class Stops {
    private CellRun running;
    private boolean waiting;
    private boolean asked;

    /** A cell of the user waits for its turn. */
    synchronized void arrives() {
        waiting = true;
        asked = false;
    }

    /** A cell begins to run; one of the user may have been asked to stop before. */
    synchronized void begins(CellRun run, boolean ofUser) {
        running = run;
        if (ofUser) {
            waiting = false;
            if (asked) {
                run.stop();
            }
        }
    }

    /** What ran has ended. */
    synchronized void ends() {
        running = null;
    }

    /** The user's cell is over, also if it never began. */
    synchronized void leaves() {
        waiting = false;
    }

    /** Asks for a stop; without effect if nothing runs and nothing waits. */
    synchronized void ask() {
        if (waiting) {
            asked = true;
        } else if (running != null) {
            running.stop();
        }
    }

    /** Whether a cell of the user waits for its turn. */
    synchronized boolean isWaiting() {
        return waiting;
    }

    synchronized Optional<CellRun> running() {
        return Optional.ofNullable(running);
    }
}
