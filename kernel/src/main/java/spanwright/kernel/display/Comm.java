package spanwright.kernel.display;

import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * A channel between a cell's code and an object at the front end, as widgets use it. Messages of the front
 * end are handled between cells, on the thread that runs cells. Safe for several threads.
 */
public final class Comm {
    private final String id;
    private final String target;
    private final Comms.Transport transport;
    private final Comms owner;
    private volatile Consumer<CommMessage> onMessage = m -> { };
    private volatile Consumer<CommMessage> onClose = m -> { };

    Comm(String id, String target, Comms.Transport transport, Comms owner) {
        this.id = Objects.requireNonNull(id, "id");
        this.target = Objects.requireNonNull(target, "target");
        this.transport = transport;
        this.owner = owner;
    }

    /** Unique among the comms of a session. */
    public String id() {
        return id;
    }

    /** What kind of object is at the other end. */
    public String target() {
        return target;
    }

    /** Sends data to the front end. */
    public void send(Map<String, Object> data) {
        send(CommMessage.of(data));
    }

    /** Sends a message to the front end. */
    public void send(CommMessage message) {
        transport.send(id, message);
    }

    /** What to do with messages of the front end; replaces what was said before. */
    public void onMessage(Consumer<CommMessage> handler) {
        onMessage = Objects.requireNonNull(handler, "handler");
    }

    /** What to do when the front end closes the comm. */
    public void onClose(Consumer<CommMessage> handler) {
        onClose = Objects.requireNonNull(handler, "handler");
    }

    /** Closes the comm; without effect if it is closed. */
    public void close() {
        if (owner.forget(this)) {
            transport.close(id, CommMessage.of(Map.of()));
        }
    }

    void message(CommMessage message) {
        onMessage.accept(message);
    }

    void closedByFrontEnd(CommMessage message) {
        onClose.accept(message);
    }
}
