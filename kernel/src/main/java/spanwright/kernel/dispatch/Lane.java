package spanwright.kernel.dispatch;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/** A thread that runs tasks in the order they are put. A task that fails is logged, the next one runs. */
final class Lane implements AutoCloseable {
    private static final Runnable END = () -> { };

    private final BlockingQueue<Runnable> tasks;
    private final Thread thread;
    private final Log log;
    private volatile boolean closed;

    /**
     * A lane.
     *
     * @param capacity tasks that may wait; putting one more blocks
     */
    Lane(String name, int capacity, Log log) {
        this.tasks = new LinkedBlockingQueue<>(capacity);
        this.log = log;
        this.thread = new Thread(this::run, "spanwright-" + name);
        thread.setDaemon(true);
    }

    void start() {
        thread.start();
    }

    /** Has a task run in its turn; once the lane is closed, it is forgotten. */
    void put(Runnable task) {
        boolean interrupted = false;
        while (!closed) {
            try {
                tasks.put(task);
                break;
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    int waiting() {
        return tasks.size();
    }

    private void run() {
        while (true) {
            try {
                final Runnable task = tasks.take();
                if (task == END) {
                    return;
                }
                task.run();
            } catch (InterruptedException e) {
                // A cell may leave its interrupt behind; the lane itself ends only by close.
                log.line("an interrupt was left behind on " + thread.getName());
            } catch (Throwable e) {
                // Also an Error: a lane that dies would leave all later requests without an answer.
                log.failure("a task failed on " + thread.getName(), e);
            }
        }
    }

    /** Forgets what waits and ends after the running task, without waiting for it. */
    @Override
    public void close() {
        closed = true;
        tasks.clear();
        tasks.offer(END);
    }
}
