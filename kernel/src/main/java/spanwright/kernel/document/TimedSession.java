package spanwright.kernel.document;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.interpreter.Outcome;

/** Runs cells on one thread of their own, as the interpreter asks, and stops a cell that takes too long. */
final class TimedSession implements AutoCloseable {
    /** How long a stopped cell may take to end before the session is given up. */
    private static final Duration GRACE = Duration.ofSeconds(5);

    private final Interpreter interpreter;
    private final Optional<Duration> limit;
    private final ExecutorService thread = Executors.newSingleThreadExecutor(task -> {
        final Thread made = new Thread(task, "notebook");
        made.setDaemon(true);
        return made;
    });

    TimedSession(Interpreter interpreter, Optional<Duration> limit) {
        this.interpreter = interpreter;
        this.limit = limit;
    }

    /**
     * How a cell ended.
     *
     * @param shown         value of the last expression
     * @param failure       what stopped it
     * @param line          line of the failure, 0 if not known
     * @param sessionUsable whether another cell may follow
     */
    record Ending(Optional<MimeBundle> shown, Optional<SavedOutput.Failure> failure, int line,
                  boolean sessionUsable) {
        private static Ending failed(SavedOutput.Failure failure, int line, boolean usable) {
            return new Ending(Optional.empty(), Optional.of(failure), line, usable);
        }
    }

    /**
     * Has the interpreter do its slow first-time work, which must not count against the first cell.
     *
     * @throws IllegalStateException if that fails
     */
    void start() {
        try {
            thread.submit(interpreter::warmUp).get();
        } catch (ExecutionException e) {
            throw new IllegalStateException("the session does not start: " + e.getCause().getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the run was interrupted", e);
        }
    }

    Ending run(String code, String label, CellOutput output) {
        final Future<Outcome> running = thread
            .submit(() -> interpreter.evaluate(new Cell(code, label), output));
        try {
            if (limit.isEmpty()) {
                return ending(running.get(), false);
            }
            try {
                return ending(running.get(limit.get().toMillis(), TimeUnit.MILLISECONDS), false);
            } catch (TimeoutException e) {
                interpreter.interrupt();
                return ending(running.get(GRACE.toMillis(), TimeUnit.MILLISECONDS), true);
            }
        } catch (TimeoutException e) {
            return lost(tooLong() + " and could not be stopped; the session is given up");
        } catch (ExecutionException e) {
            return lost("the interpreter failed: " + e.getCause());
        } catch (InterruptedException e) {
            interpreter.interrupt();
            Thread.currentThread().interrupt();
            return lost("the run was interrupted");
        }
    }

    private Ending ending(Outcome outcome, boolean late) {
        if (late) {
            final SavedOutput.Failure failure = outcome instanceof Outcome.Interrupted i
                ? failure("TimeLimit", tooLong(), i.error()) : new SavedOutput.Failure("TimeLimit", tooLong(),
                    List.of("TimeLimit: " + tooLong()));
            return Ending.failed(failure, 0, !(outcome instanceof Outcome.EngineLost));
        }
        if (outcome instanceof Outcome.Value value) {
            return new Ending(value.shown(), Optional.empty(), 0, true);
        }
        if (outcome instanceof Outcome.UserThrew threw) {
            return failed(threw.error(), true);
        }
        if (outcome instanceof Outcome.Interrupted interrupted) {
            return failed(interrupted.error(), true);
        }
        return failed(((Outcome.EngineLost) outcome).error(), false);
    }

    private static Ending failed(Outcome.ErrorReport error, boolean usable) {
        return Ending.failed(failure(error.name(), error.message(), error), error.line(), usable);
    }

    private static SavedOutput.Failure failure(String name, String message, Outcome.ErrorReport error) {
        return new SavedOutput.Failure(name, message, error.traceback());
    }

    private static Ending lost(String message) {
        return Ending.failed(new SavedOutput.Failure("SessionLost", message, List.of(message)), 0, false);
    }

    private String tooLong() {
        return "the cell ran longer than the limit of "
            + limit.map(l -> l.toMillis() / 1e3).orElse(0.0) + " s";
    }

    @Override
    public void close() {
        thread.shutdownNow();
    }
}
