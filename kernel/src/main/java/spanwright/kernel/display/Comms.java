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
    private final Map<String, CommHandler<Target>> targets = new ConcurrentHashMap<>();
    private volatile Optional<Thread> handling = Optional.empty();

    /** No comms yet. */
    public Comms(Transport transport) {
        this.transport = Objects.requireNonNull(transport, "transport");
    }

    /**
     * The comms of the session that the calling cell runs in.
     *
     * @throws IllegalStateException if called outside a cell, or if no front end is there, as when a notebook
     *                               is run headless
     */
    public static Comms ofSession() {
        return CellScope.required().queue().output().comms().orElseThrow(
            () -> new IllegalStateException("there is no front end to open a comm with"));
    }

    /** Lets front ends open comms of a target; replaces what was registered under the name. */
    public void register(String target, Target handler) {
        targets.put(target, CommHandler.of(handler));
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

    /**
     * The front end opened a comm; it is refused if nobody registered its target.
     *
     * @param output where what the handler prints goes
     */
    public void openedByFrontEnd(String id, String target, CommMessage first, CellOutput output) {
        final Optional<CommHandler<Target>> handler = Optional.ofNullable(targets.get(target));
        if (handler.isEmpty()) {
            transport.close(id, CommMessage.of(Map.of()));
            return;
        }
        final Comm comm = new Comm(id, target, transport, this);
        open.put(id, comm);
        try {
            handler.get().call(output, this, code -> code.opened(comm, first));
        } catch (RuntimeException e) {
            comm.close();
            throw e;
        }
    }

    /**
     * The front end sent on a comm; ignored if it is not open.
     *
     * @param output where what the handler prints goes
     */
    public void sentByFrontEnd(String id, CommMessage message, CellOutput output) {
        Optional.ofNullable(open.get(id)).ifPresent(c -> c.message(message, output));
    }

    /**
     * The front end closed a comm; ignored if it is not open.
     *
     * @param output where what the handler prints goes
     */
    public void closedByFrontEnd(String id, CommMessage last, CellOutput output) {
        Optional.ofNullable(open.remove(id)).ifPresent(c -> c.closedByFrontEnd(last, output));
    }

    /** Interrupts the handler that runs now; without effect if none does. */
    public void interrupt() {
        handling.ifPresent(Thread::interrupt);
    }

    void handling(Optional<Thread> thread) {
        handling = thread;
    }

    boolean forget(Comm comm) {
        return open.remove(comm.id(), comm);
    }
}
