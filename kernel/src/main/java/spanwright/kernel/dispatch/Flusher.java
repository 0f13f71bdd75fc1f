package spanwright.kernel.dispatch;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import spanwright.kernel.wire.Signal;

/**
 * Sends what outputs have gathered, at most {@value #GATHER_MILLIS} ms after it was written. Outputs call
 * {@link #soon} from any thread.
 */
final class Flusher implements AutoCloseable {
    /** How long text is gathered before it is sent. */
    static final int GATHER_MILLIS = 50;

    private final Queue<PublishedOutput> dirty = new ConcurrentLinkedQueue<>();
    private final Signal signal = new Signal(this::flush, "spanwright-out");

    void start() {
        signal.start();
    }

    void soon(PublishedOutput output) {
        dirty.add(output);
        signal.raise();
    }

    private void flush() {
        try {
            Thread.sleep(GATHER_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        for (PublishedOutput next = dirty.poll(); next != null; next = dirty.poll()) {
            next.flush();
        }
    }

    @Override
    public void close() {
        signal.close();
    }
}
