package spanwright.kernel.display;

import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/**
 * Code of a cell that is called when a front end sends, together with the cell that set it: it sees the
 * classes of that cell's session, and what it prints goes to the message it handles.
 *
 * @param <T> kind of the code
 */
record CommHandler<T>(T code, Optional<CellScope> cell) {
    /** Handles one message. */
    @FunctionalInterface
    interface Call<T> {
        void on(T code);
    }

    CommHandler {
        Objects.requireNonNull(code, "handler");
        Objects.requireNonNull(cell, "cell");
    }

    /** Code set by the calling thread. */
    static <T> CommHandler<T> of(T code) {
        return new CommHandler<>(code, CellScope.current());
    }

    /**
     * Runs the code on a thread of its own, so that it can be interrupted, and waits for it.
     *
     * @param output where what it prints goes
     * @param comms  told of the thread while it runs
     */
    void call(CellOutput output, Comms comms, Call<T> call) {
        final CompletableFuture<Void> done = new CompletableFuture<>();
        final Thread thread = new Thread(() -> {
            try {
                enter(output, () -> call.on(code));
                done.complete(null);
            } catch (RuntimeException | Error e) {
                done.completeExceptionally(e);
            }
        }, "comm handler");
        thread.setDaemon(true);
        comms.handling(Optional.of(thread));
        thread.start();
        try {
            done.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException r) {
                throw r;
            }
            throw new IllegalStateException("a comm handler failed: " + e.getCause(), e.getCause());
        } finally {
            comms.handling(Optional.empty());
        }
    }

    private void enter(CellOutput output, Runnable task) {
        if (cell.isEmpty()) {
            task.run();
            return;
        }
        final CellScope scope = CellScope.begin(output, cell.get().session(), cell.get().loader());
        Thread.currentThread().setContextClassLoader(cell.get().loader());
        scope.enter();
        try {
            task.run();
        } finally {
            scope.flush();
        }
    }
}
