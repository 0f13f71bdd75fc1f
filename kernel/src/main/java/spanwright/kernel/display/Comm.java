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
    private volatile CommHandler<Consumer<CommMessage>> onMessage = CommHandler.of(m -> { });
    private volatile CommHandler<Consumer<CommMessage>> onClose = CommHandler.of(m -> { });

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
        onMessage = CommHandler.of(handler);
    }

    /** What to do when the front end closes the comm. */
    public void onClose(Consumer<CommMessage> handler) {
        onClose = CommHandler.of(handler);
    }

    /** Closes the comm; without effect if it is closed. */
    public void close() {
        if (owner.forget(this)) {
            transport.close(id, CommMessage.of(Map.of()));
        }
    }

    void message(CommMessage message, CellOutput output) {
        onMessage.call(output, owner, handler -> handler.accept(message));
    }

    void closedByFrontEnd(CommMessage message, CellOutput output) {
        onClose.call(output, owner, handler -> handler.accept(message));
    }
}
