package spanwright.kernel.display;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;

/**
 * Output of one cell on its way from the threads that write to the one that passes it on. Text of the same
 * stream in a row is joined; the order of text, displays and clears is kept.
 *
 * <p>The threads of a cell only append here, under a monitor that is held for the append alone: they may be
 * stopped at any instruction, and must never be stopped inside the code of a {@link CellOutput}. One daemon
 * thread, or the one that ends the cell, calls the {@link CellOutput}.
 */
final class OutputQueue {
    /** Text of one cell beyond this is cut, so that a printing loop cannot fill the memory or the file. */
    static final long CAP_CHARS = 50_000_000;
    private static final long PERIOD_NANOS = 40_000_000;
    private static final int URGENT_CHARS = 1 << 16;
    private static final int BLOCK_CHARS = 1 << 24;
    private static final ConcurrentLinkedQueue<OutputQueue> DIRTY = new ConcurrentLinkedQueue<>();
    private static final Thread FLUSHER = startFlusher();
    private static volatile boolean urgent;

    private final CellOutput output;
    private final Object passing = new Object();
    private ArrayDeque<Object> events = new ArrayDeque<>();
    private long pending;
    private long written;
    private boolean capped;
    private volatile boolean busy;

    OutputQueue(CellOutput output) {
        this.output = output;
    }

    CellOutput output() {
        return output;
    }

    /** Text that waits, all of one stream. */
    private record Text(CellOutput.Stream stream, StringBuilder text) { }

    /** Appends text; waits only if very much is already waiting. */
    void write(CellOutput.Stream stream, String text) {
        if (text.isEmpty()) {
            return;
        }
        final long waiting;
        final boolean muchNow;
        synchronized (this) {
            if (capped) {
                return;
            }
            final String kept = uncapped(text);
            if (events.peekLast() instanceof Text last && last.stream() == stream) {
                last.text().append(kept);
            } else {
                events.add(new Text(stream, new StringBuilder(kept)));
            }
            waiting = pending + kept.length();
            // Once per heap, not with each further line: the next heap would be sent when it has hardly
            // begun.
            muchNow = waiting > URGENT_CHARS && pending <= URGENT_CHARS;
            pending = waiting;
        }
        wake(muchNow);
        if (waiting > BLOCK_CHARS) {
            awaitRoom();
        }
    }

    private String uncapped(String text) {
        written += text.length();
        if (written <= CAP_CHARS) {
            return text;
        }
        capped = true;
        return text.substring(0, (int) (text.length() - (written - CAP_CHARS)))
            + "\n[output of this cell is cut here, after " + CAP_CHARS + " characters]\n";
    }

    /** Appends an action on the output, such as a display. */
    void post(Consumer<CellOutput> action) {
        synchronized (this) {
            events.add(action);
        }
        wake(false);
    }

    private void wake(boolean now) {
        if (now) {
            urgent = true;
        }
        if (!busy) {
            busy = true;
            DIRTY.add(this);
            LockSupport.unpark(FLUSHER);
        } else if (now) {
            LockSupport.unpark(FLUSHER);
        }
    }

    private void awaitRoom() {
        while (true) {
            synchronized (this) {
                if (pending <= BLOCK_CHARS) {
                    return;
                }
            }
            LockSupport.parkNanos(1_000_000);
            if (Thread.currentThread().isInterrupted()) {
                return;
            }
        }
    }

    /** Waits until all that was written before is passed on; returns early when interrupted. */
    void awaitPassedOn() throws InterruptedException {
        final boolean[] done = {false};
        post(o -> done[0] = true);
        wake(true);
        while (true) {
            synchronized (passing) {
                if (done[0]) {
                    return;
                }
            }
            Thread.sleep(1);
        }
    }

    /** Passes everything on that waits. Not for threads of a cell. */
    void passOn() {
        synchronized (passing) {
            busy = false;
            final List<Object> now;
            synchronized (this) {
                now = new ArrayList<>(events);
                events = new ArrayDeque<>();
                pending = 0;
            }
            for (Object event : now) {
                if (event instanceof Text t) {
                    output.write(t.stream(), t.text().toString());
                } else {
                    @SuppressWarnings("unchecked")
                    final Consumer<CellOutput> action = (Consumer<CellOutput>) event;
                    action.accept(output);
                }
            }
        }
    }

    private static Thread startFlusher() {
        final Thread t = new Thread(OutputQueue::flushForever, "spanwright-output");
        t.setDaemon(true);
        t.start();
        return t;
    }

    private static void flushForever() {
        while (true) {
            if (DIRTY.isEmpty()) {
                LockSupport.park();
                continue;
            }
            final long end = System.nanoTime() + PERIOD_NANOS;
            long left = PERIOD_NANOS;
            while (left > 0 && !urgent) {
                LockSupport.parkNanos(left);
                left = end - System.nanoTime();
            }
            urgent = false;
            for (OutputQueue q = DIRTY.poll(); q != null; q = DIRTY.poll()) {
                passOnReporting(q);
            }
        }
    }

    private static void passOnReporting(OutputQueue q) {
        try {
            q.passOn();
        } catch (RuntimeException e) {
            Streams.originalErr().println("output of a cell was lost: " + e);
        }
    }
}
