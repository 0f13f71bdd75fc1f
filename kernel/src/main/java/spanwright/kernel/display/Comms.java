package spanwright.kernel.display;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/** The comms of a session: those that are open, and what may be opened by the front end. Safe for threads. */
public final class Comms {
    /** Carries comm messages to the front end. */
    public interface Transport {
        /** Tells the front end that a comm is open. */
        void open(String id, String target, CommMessage first);

        /** Sends on a comm. */
        void send(String id, CommMessage message);

        /** Tells the front end that a comm is closed, or refused. */
        void close(String id, CommMessage last);
    }

    /** What happens when a front end opens a comm. */
    @FunctionalInterface
    public interface Target {
        /** A comm was opened; set its handlers here. */
        void opened(Comm comm, CommMessage first);
    }

    private final Transport transport;
    private final Map<String, Comm> open = new ConcurrentHashMap<>();
    private final Map<String, Target> targets = new ConcurrentHashMap<>();

    /** No comms yet. */
    public Comms(Transport transport) {
        this.transport = Objects.requireNonNull(transport, "transport");
    }

    /** Lets front ends open comms of a target; replaces what was registered under the name. */
    public void register(String target, Target handler) {
        targets.put(target, Objects.requireNonNull(handler, "handler"));
    }

    /** Opens a comm with the front end. */
    public Comm open(String target, CommMessage first) {
        final Comm comm = new Comm(UUID.randomUUID().toString().replace("-", ""), target, transport, this);
        open.put(comm.id(), comm);
        transport.open(comm.id(), target, first);
        return comm;
    }

    /** Target by id of the comms that are open. */
    public Map<String, String> targetsById() {
        final Map<String, String> found = new LinkedHashMap<>();
        open.values().forEach(c -> found.put(c.id(), c.target()));
        return found;
    }

    /** The front end opened a comm; it is refused if nobody registered its target. */
    public void openedByFrontEnd(String id, String target, CommMessage first) {
        final Optional<Target> handler = Optional.ofNullable(targets.get(target));
        if (handler.isEmpty()) {
            transport.close(id, CommMessage.of(Map.of()));
            return;
        }
        final Comm comm = new Comm(id, target, transport, this);
        open.put(id, comm);
        try {
            handler.get().opened(comm, first);
        } catch (RuntimeException e) {
            comm.close();
            throw e;
        }
    }

    /** The front end sent on a comm; ignored if it is not open. */
    public void sentByFrontEnd(String id, CommMessage message) {
        Optional.ofNullable(open.get(id)).ifPresent(c -> c.message(message));
    }

    /** The front end closed a comm; ignored if it is not open. */
    public void closedByFrontEnd(String id, CommMessage last) {
        Optional.ofNullable(open.remove(id)).ifPresent(c -> c.closedByFrontEnd(last));
    }

    boolean forget(Comm comm) {
        return open.remove(comm.id(), comm);
    }
}
