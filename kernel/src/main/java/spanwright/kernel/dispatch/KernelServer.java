package spanwright.kernel.dispatch;

import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import spanwright.kernel.display.Comms;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.message.Event;
import spanwright.kernel.message.Failure;
import spanwright.kernel.message.Reply;
import spanwright.kernel.wire.Channels;
import spanwright.kernel.wire.ConnectionFile;
import spanwright.kernel.wire.Signer;

/**
 * One kernel: listens, answers, and ends when a client asks for it. It answers who it is before the
 * interpreter is warm. The interpreter stays the caller's: it is not closed here.
 */
public final class KernelServer implements AutoCloseable {
    private final Channels channels;
    private final Dispatcher dispatcher;
    private final Publisher publisher;
    private final Flusher flusher;
    private final HistoryStore history;
    private final CommDesk comms;
    private final Log log;

    private KernelServer(ConnectionFile requested, Interpreter interpreter, KernelSettings settings)
        throws IOException {
        log = new Log(settings.log());
        final Signer signer = Signer.of(requested.signatureScheme(), requested.key());
        final CompletableFuture<Channels> opened = new CompletableFuture<>();
        publisher = new Publisher(UUID.randomUUID().toString(), signer,
            (channel, frames) -> opened.join().send(channel, frames));
        flusher = new Flusher();
        history = new HistoryStore(settings.stateFolder().resolve("history"), log);
        final Questions questions = new Questions(publisher);
        comms = new CommDesk(publisher, Current::origin);
        final PublishedOutput.Shared outputs = new PublishedOutput.Shared(publisher, flusher, questions,
            comms.comms(), OutputLimits.fromProperties());
        dispatcher = new Dispatcher(
            new Dispatcher.Parts(interpreter, publisher, outputs, history, questions, comms, log), signer);
        dispatcher.warm();
        channels = opened(requested, dispatcher);
        opened.complete(channels);
        publisher.publish(Origin.NONE, Event.Status.STARTING);
        flusher.start();
        dispatcher.start(new Reply.Connect(channels.connection().ports().byName()));
    }

    private static Channels opened(ConnectionFile requested, Dispatcher dispatcher) throws IOException {
        try {
            return Channels.open(requested, dispatcher);
        } catch (IOException e) {
            dispatcher.close();
            throw e;
        }
    }

    /**
     * Starts a kernel; it listens when this returns.
     *
     * @param requested   where to listen; ports that are 0 are picked
     * @param interpreter runs the cells; warmed on a thread of the kernel
     * @param settings    its surroundings
     * @throws IOException              if an address cannot be bound
     * @throws IllegalArgumentException if the signature scheme is unknown
     */
    public static KernelServer start(ConnectionFile requested, Interpreter interpreter,
                                     KernelSettings settings) throws IOException {
        Objects.requireNonNull(interpreter, "interpreter");
        return new KernelServer(requested, interpreter, settings);
    }

    /** Where it listens, with the ports that were picked. */
    public ConnectionFile connection() {
        return channels.connection();
    }

    /** The comms of the session. */
    public Comms comms() {
        return comms.comms();
    }

    /** Stops the running cell, as an interrupt_request does. */
    public void interrupt() {
        dispatcher.interrupt();
    }

    /** How many messages were dropped because they broke the protocol. */
    int dropped() {
        return log.drops();
    }

    /** Has {@link #awaitShutdown} return, as a shutdown_request does. */
    public void requestShutdown() {
        dispatcher.shutdown().complete(false);
    }

    /**
     * Waits until a client asks for a shutdown; its reply is on its way then.
     *
     * @return whether the client will start a new kernel
     */
    public boolean awaitShutdown() throws InterruptedException {
        try {
            return dispatcher.shutdown().get();
        } catch (ExecutionException e) {
            throw new IllegalStateException("a shutdown cannot fail", e);
        }
    }

    /**
     * Tells the client whose cell runs that the process ends under it: an error, its reply, and idle. Closes
     * the sockets, and leaves the cell alone, since its thread is the one that ends the process.
     *
     * @param why one sentence
     */
    void abandon(String why) {
        final Optional<CellRunner.Turn> running = dispatcher.runner().running();
        running.ifPresent(turn -> {
            final Failure failure = new Failure("KernelEnded", why, List.of(why));
            publisher.publish(turn.origin(), new Event.Error(failure));
            publisher.reply(turn.origin(), new Reply.ExecuteFailed(dispatcher.runner().count(), failure));
            publisher.publish(turn.origin(), Event.Status.IDLE);
        });
        channels.close();
    }

    /** Stops the running cell, sends what is queued and closes the sockets; takes up to about a second. */
    @Override
    public void close() {
        dispatcher.close();
        dispatcher.interrupt();
        flusher.close();
        channels.close();
        history.close();
    }
}
