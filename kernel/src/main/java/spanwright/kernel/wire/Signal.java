package spanwright.kernel.wire;

import java.util.Objects;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;

/**
 * A thread that runs a task each time the signal was raised; raises while it runs count as one. Raising takes
 * no lock and touches no channel, so it is safe in a thread that is interrupted or stopped.
 */
public final class Signal implements AutoCloseable {
    private final Runnable task;
    private final Thread thread;
    private final AtomicBoolean raised = new AtomicBoolean();
    private volatile boolean closed;

    /**
     * A signal, not yet listening.
     *
     * @param task run by the thread of the signal
     * @param name of the thread
     */
    public Signal(Runnable task, String name) {
        this.task = Objects.requireNonNull(task, "task");
        this.thread = new Thread(this::run, name);
        thread.setDaemon(true);
    }

    /** Begins to listen. */
    public void start() {
        thread.start();
    }

    /** Has the task run soon. */
    public void raise() {
        if (raised.compareAndSet(false, true)) {
            LockSupport.unpark(thread);
        }
    }

    private void run() {
        while (!closed) {
            if (raised.compareAndSet(true, false)) {
                task.run();
            } else {
                LockSupport.park(this);
            }
        }
    }

    /** Ends the thread; a task that runs is finished. */
    @Override
    public void close() {
        closed = true;
        LockSupport.unpark(thread);
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
