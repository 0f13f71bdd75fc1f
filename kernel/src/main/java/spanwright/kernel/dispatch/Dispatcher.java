package spanwright.kernel.dispatch;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicLong;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.interpreter.LanguageInfo;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Event;
import spanwright.kernel.message.Failure;
import spanwright.kernel.message.MalformedMessageException;
import spanwright.kernel.message.Message;
import spanwright.kernel.message.Reply;
import spanwright.kernel.message.Request;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.ChannelListener;
import spanwright.kernel.wire.Envelope;
import spanwright.kernel.wire.ReplayGuard;
import spanwright.kernel.wire.Signer;

/**
 * Gives each request to the thread that answers it: cells and comms to one, in order; questions about code to
 * another; what must be answered at once to a third. Busy and idle are sent here and nowhere else.
 *
 * <p>{@link #received} runs on the thread that owns the sockets, which alone uses the memory of signatures.
 */
final class Dispatcher implements ChannelListener, AutoCloseable {
    /** Requests that may wait before no more are taken from the shell channel. */
    static final int WAITING = 2_000;
    /** Bytes of requests that may wait. */
    private static final long WAITING_BYTES =
        Math.min(256L << 20, Runtime.getRuntime().maxMemory() / 4);

    /** What answers requests. */
    record Parts(Interpreter interpreter, Publisher publisher, PublishedOutput.Shared outputs,
                 HistoryStore history, Questions questions, CommDesk comms, Log log) { }

    private record Arrived(Origin origin, Message message, Request request, int size) { }

    private final Parts parts;
    private final Signer signer;
    private final ReplayGuard guard = new ReplayGuard();
    private final AtomicLong executes = new AtomicLong();
    private final AtomicLong waitingBytes = new AtomicLong();
    private final CodeAssist assist;
    private final CellRunner runner;
    private final Usage usage = new Usage();
    private final Lane cells;
    private final Lane analysis;
    private final Lane prompt;
    private final CompletableFuture<Boolean> shutdown = new CompletableFuture<>();
    private final CompletableFuture<Void> warm = new CompletableFuture<>();
    private final CompletableFuture<Reply> connect = new CompletableFuture<>();

    Dispatcher(Parts parts, Signer signer) {
        this.parts = parts;
        this.signer = signer;
        this.assist = new CodeAssist(parts.interpreter());
        this.runner = new CellRunner(parts.interpreter(), parts.outputs(), parts.history(), executes::get);
        this.cells = new Lane("cells", Integer.MAX_VALUE, parts.log());
        this.analysis = new Lane("analysis", Integer.MAX_VALUE, parts.log());
        this.prompt = new Lane("prompt", WAITING, parts.log());
    }

    /** Begins to warm the interpreter, ahead of the first cell; the sockets are opened meanwhile. */
    void warm() {
        cells.put(this::warmUp);
        cells.start();
    }

    /** Begins to answer. */
    void start(Reply.Connect ports) {
        connect.complete(ports);
        analysis.start();
        prompt.start();
    }

    private void warmUp() {
        try {
            parts.interpreter().warmUp();
        } catch (RuntimeException e) {
            if (!shutdown.isDone()) {
                parts.log().failure("warming up failed; the first cell will be slow, or fail too", e);
            }
        } finally {
            warm.complete(null);
        }
    }

    /** Completes with whether a restart follows, once a client asked for a shutdown. */
    CompletableFuture<Boolean> shutdown() {
        return shutdown;
    }

    CellRunner runner() {
        return runner;
    }

    /** Stops the running cell, or comm handler, and what it asks. */
    void interrupt() {
        parts.questions().interrupt();
        parts.comms().comms().interrupt();
        if (warm.isDone()) {
            parts.interpreter().interrupt();
        }
    }

    @Override
    public void received(Channel channel, List<Bytes> frames) {
        try {
            final Message message = Envelope.open(frames, signer, guard);
            final Request request = Request.of(message);
            if (request instanceof Request.Input != (channel == Channel.STDIN)) {
                throw new MalformedMessageException(message.header().type() + " on channel " + channel);
            }
            final int size = frames.stream().mapToInt(Bytes::size).sum();
            route(new Arrived(Origin.of(channel, message), message, request, size));
        } catch (MalformedMessageException e) {
            parts.log().dropped(e.getMessage());
        } catch (RuntimeException | OutOfMemoryError e) {
            // Whatever a message does to us, the thread that owns the sockets goes on.
            parts.log().failure("a message was dropped", e);
        }
    }

    @Override
    public void subscribed(String topic) {
        parts.publisher().welcome(topic);
    }

    @Override
    public boolean overloaded() {
        return cells.waiting() + analysis.waiting() > WAITING || waitingBytes.get() > WAITING_BYTES;
    }

    @Override
    public void lost(Throwable why) {
        parts.log().failure("the sockets are lost, the kernel ends", why);
        shutdown.complete(false);
    }

    private void route(Arrived a) {
        final Request request = a.request;
        if (request instanceof Request.Input input) {
            parts.questions().answered(a.message.idents(), input.value());
        } else if (request instanceof Request.Execute execute) {
            final CellRunner.Turn turn =
                new CellRunner.Turn(a.origin, execute, executes.incrementAndGet());
            put(cells, a, () -> {
                runner.run(turn);
                return Optional.empty();
            });
        } else if (request instanceof Request.CommOpen || request instanceof Request.CommMessage
            || request instanceof Request.CommClose) {
            put(cells, a, () -> deliver(a));
        } else if (request instanceof Request.CommInfo info) {
            put(a.origin.channel() == Channel.SHELL ? cells : prompt, a,
                () -> Optional.of(parts.comms().info(info)));
        } else if (request instanceof Request.Complete || request instanceof Request.Inspect
            || request instanceof Request.IsComplete || request instanceof Request.History) {
            put(analysis, a, () -> Optional.of(analyse(a)));
        } else {
            put(prompt, a, () -> atOnce(a));
        }
    }

    private interface Handler {
        Optional<Reply> answer();
    }

    private void put(Lane lane, Arrived a, Handler handler) {
        waitingBytes.addAndGet(a.size);
        lane.put(() -> {
            try {
                answer(a, handler);
            } finally {
                waitingBytes.addAndGet(-a.size);
            }
        });
    }

    private void answer(Arrived a, Handler handler) {
        parts.publisher().publish(a.origin, Event.Status.BUSY);
        Current.enter(a.origin);
        try {
            handler.answer().ifPresent(r -> parts.publisher().reply(a.origin, r));
        } catch (Throwable e) {
            // Also an Error such as no memory: the client waits for a reply, and the next request for its
            // turn.
            parts.log().failure(a.message.header().type() + " failed", e);
            final String type = a.message.header().type();
            if (type.endsWith("_request")) {
                parts.publisher().reply(a.origin,
                    new Reply.Failed(type.replace("_request", "_reply"), Failure.of(e)));
            }
        } finally {
            Current.leave();
            parts.publisher().publish(a.origin, Event.Status.IDLE);
        }
        if (a.request instanceof Request.Shutdown s) {
            shutdown.complete(s.restart());
        }
    }

    private Optional<Reply> deliver(Arrived a) {
        final PublishedOutput output = new PublishedOutput(parts.outputs(), a.origin, false, false);
        parts.comms().deliver(a.message, a.request, output);
        output.flush();
        return Optional.empty();
    }

    private Reply analyse(Arrived a) {
        if (a.request instanceof Request.History wanted) {
            return new Reply.History(parts.history().find(wanted), wanted.output());
        }
        warm.join();
        if (a.request instanceof Request.Complete complete) {
            return assist.complete(a.message.header(), complete);
        } else if (a.request instanceof Request.Inspect inspect) {
            return assist.inspect(a.message.header(), inspect);
        }
        return assist.isComplete((Request.IsComplete) a.request);
    }

    private Optional<Reply> atOnce(Arrived a) {
        if (a.request instanceof Request.KernelInfo) {
            final LanguageInfo l = parts.interpreter().language();
            return Optional.of(new Reply.KernelInfo(l.version(), l.banner(), l.kernelVersion()));
        } else if (a.request instanceof Request.Interrupt) {
            interrupt();
            return Optional.of(new Reply.Interrupt());
        } else if (a.request instanceof Request.Shutdown s) {
            final Reply reply = new Reply.Shutdown(s.restart());
            parts.publisher().publish(a.origin, new Event.Announced(reply));
            return Optional.of(reply);
        } else if (a.request instanceof Request.Usage) {
            return Optional.of(new Reply.Usage(usage.figures()));
        } else if (a.request instanceof Request.Connect) {
            return Optional.of(connect.join());
        }
        parts.log().line("no answer to " + a.message.header().type() + ": not known here");
        return Optional.empty();
    }

    /** Forgets what waits; what runs is left to run. */
    @Override
    public void close() {
        cells.close();
        analysis.close();
        prompt.close();
    }
}
