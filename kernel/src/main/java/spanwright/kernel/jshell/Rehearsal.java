package spanwright.kernel.jshell;

import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * Starts JShell, in small steps, and does once what is slow the first time: a value, a completion, an
 * inspection, errors. Each only after the session has been idle for a while, so that the first cells of a
 * user do not wait for it.
 */
final class Rehearsal {
    private static final long PAUSE_NANOS = 150_000_000;
    private static final long STEP_NANOS = 500_000;

    private final JShellInterpreter session;

    Rehearsal(JShellInterpreter session) {
        this.session = session;
    }

    void run() {
        whenIdle(PAUSE_NANOS, session::startFurther);
        while (session.isToStart()) {
            whenIdle(STEP_NANOS, session::startFurther);
        }
        final List<Runnable> steps = List.of(
            () -> session.tried("1 + 1"),
            () -> session.complete("Sys", 3),
            () -> session.inspect("System.out.println(", 19, 0),
            () -> session.tried("String.valueOf(1)"),
            () -> session.tried("throw new IllegalStateException()"),
            () -> session.tried("noSuchName"),
            () -> session.completeness("int f() {"),
            () -> session.complete("String.val", 10));
        for (Runnable step : steps) {
            whenIdle(PAUSE_NANOS, step);
        }
    }

    private void whenIdle(long pauseNanos, Runnable step) {
        do {
            LockSupport.parkNanos(pauseNanos);
        } while (!session.whenIdle(pauseNanos, step));
    }
}
