package spanwright.kernel.wire;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Pipe;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import spanwright.kernel.message.Bytes;

/**
 * The sockets of a kernel. One thread owns shell, control, stdin and iopub, since a ZeroMQ socket belongs to
 * one thread; the heartbeat has its own. {@link #send} may be called from any thread, also from one that a
 * cell runs on and that is interrupted or stopped meanwhile: it only appends to a queue and unparks a thread.
 *
 * <p>Nothing is dropped on the way out to a slow reader (no high-water mark on iopub); what a cell may write
 * is bounded by its writer. Replies to a client that reads none are bounded to {@value #REPLIES_KEPT}.
 */
public final class Channels implements AutoCloseable {
    /** Replies kept for a client that does not read them. */
    static final int REPLIES_KEPT = 20_000;
    /** Frames of one message that are kept; a message with more is dropped. */
    static final int MAX_FRAMES = 4_096;
    /** Messages taken from one socket before the others get their turn. */
    private static final int TURN = 64;
    private static final int LINGER_MILLIS = 800;
    private static final int OVERLOADED_POLL_MILLIS = 10;

    private record Outgoing(Channel channel, List<Bytes> frames) { }

    private final ZMQ.Context context = ZMQ.context(1);
    private final ConnectionFile requested;
    private final ChannelListener listener;
    private final Map<Channel, ZMQ.Socket> sockets = new EnumMap<>(Channel.class);
    private final Queue<Outgoing> outbox = new ConcurrentLinkedQueue<>();
    private final Waker waker;
    private final Thread io;
    private final Heartbeat heartbeat;
    private final CompletableFuture<Ports> bound = new CompletableFuture<>();
    private volatile ConnectionFile connection;
    private volatile boolean closing;

    private Channels(ConnectionFile requested, ChannelListener listener) throws IOException {
        this.requested = requested;
        this.connection = requested;
        this.listener = Objects.requireNonNull(listener, "listener");
        this.waker = new Waker();
        this.io = new Thread(this::run, "spanwright-io");
        this.heartbeat = new Heartbeat(context, requested);
        io.setDaemon(true);
    }

    /**
     * Binds all sockets and begins to listen.
     *
     * @param requested where; ports that are 0 are picked
     * @param listener  told of what arrives
     * @throws IOException if an address cannot be bound; names it
     */
    public static Channels open(ConnectionFile requested, ChannelListener listener) throws IOException {
        final Channels channels = new Channels(requested, listener);
        channels.waker.start();
        channels.heartbeat.start();
        channels.io.start();
        try {
            final Ports four = channels.bound.join();
            channels.connection = requested.withPorts(new Ports(four.shell(), four.iopub(), four.stdin(),
                four.control(), channels.heartbeat.port()));
            return channels;
        } catch (CompletionException e) {
            channels.close();
            throw new IOException(e.getCause().getMessage(), e.getCause());
        }
    }

    /** Where this listens, with the ports that were picked. */
    public ConnectionFile connection() {
        return connection;
    }

    /** Queues a message for sending. Messages of one channel, and of all, leave in the order of the calls. */
    public void send(Channel channel, List<Bytes> frames) {
        outbox.add(new Outgoing(channel, frames));
        waker.wake();
    }

    private void run() {
        try {
            bound.complete(bindAll());
        } catch (RuntimeException e) {
            bound.completeExceptionally(e);
            sockets.values().forEach(ZMQ.Socket::close);
            return;
        }
        try (ZMQ.Poller all = poller(Channel.CONTROL, Channel.STDIN, Channel.IOPUB, Channel.SHELL);
             ZMQ.Poller urgent = poller(Channel.CONTROL, Channel.STDIN, Channel.IOPUB)) {
            while (!closing) {
                turn(all, urgent);
            }
        } catch (RuntimeException | Error e) {
            listener.lost(e);
            throw e;
        } finally {
            sendQueued();
            sockets.values().forEach(ZMQ.Socket::close);
        }
    }

    private void turn(ZMQ.Poller all, ZMQ.Poller urgent) {
        final boolean overloaded = listener.overloaded();
        if (overloaded) {
            urgent.poll(OVERLOADED_POLL_MILLIS);
        } else {
            all.poll(-1);
        }
        waker.rest();
        sendQueued();
        receive(Channel.IOPUB);
        receive(Channel.CONTROL);
        receive(Channel.STDIN);
        if (!overloaded) {
            receive(Channel.SHELL);
        }
        sendQueued();
    }

    private ZMQ.Poller poller(Channel... polled) {
        final ZMQ.Poller poller = context.poller(polled.length + 1);
        for (final Channel channel : polled) {
            poller.register(sockets.get(channel), ZMQ.Poller.POLLIN);
        }
        poller.register(waker.channel(), ZMQ.Poller.POLLIN);
        return poller;
    }

    private Ports bindAll() {
        final Ports wanted = requested.ports();
        return new Ports(bind(Channel.SHELL, SocketType.ROUTER, wanted.shell()),
            bind(Channel.IOPUB, SocketType.XPUB, wanted.iopub()),
            bind(Channel.STDIN, SocketType.ROUTER, wanted.stdin()),
            bind(Channel.CONTROL, SocketType.ROUTER, wanted.control()), 0);
    }

    private int bind(Channel channel, SocketType type, int port) {
        final ZMQ.Socket socket = context.socket(type);
        sockets.put(channel, socket);
        if (type == SocketType.ROUTER) {
            // A browser that connects again under its old name while we are busy takes the name over.
            socket.setRouterHandover(true);
            socket.setSndHWM(REPLIES_KEPT);
        } else {
            socket.setXpubVerbose(true);
            socket.setSndHWM(0);
        }
        socket.setLinger(LINGER_MILLIS);
        return Sockets.bind(socket, requested, port, channel.name());
    }

    private void sendQueued() {
        for (Outgoing next = outbox.poll(); next != null; next = outbox.poll()) {
            final ZMQ.Socket socket = sockets.get(next.channel());
            final int last = next.frames().size() - 1;
            for (int i = 0; i <= last; i++) {
                socket.send(next.frames().get(i).shared(), i < last ? ZMQ.SNDMORE : 0);
            }
        }
    }

    private void receive(Channel channel) {
        final ZMQ.Socket socket = sockets.get(channel);
        for (int i = 0; i < TURN; i++) {
            final byte[] first = socket.recv(ZMQ.DONTWAIT);
            if (first == null) {
                return;
            }
            final List<Bytes> frames = new ArrayList<>(8);
            frames.add(Bytes.owned(first));
            boolean whole = true;
            while (socket.hasReceiveMore()) {
                final Bytes frame = Bytes.owned(socket.recv());
                whole = whole && frames.size() < MAX_FRAMES;
                if (whole) {
                    frames.add(frame);
                }
            }
            if (channel == Channel.IOPUB) {
                subscription(frames.get(0).shared());
            } else if (whole) {
                listener.received(channel, frames);
            }
        }
        // More may be there, and a poll does not report again what was ready before: come back at once.
        waker.wake();
    }

    private void subscription(byte[] frame) {
        if (frame.length == 0 || frame[0] != 1) {
            return;
        }
        try {
            listener.subscribed(StandardCharsets.UTF_8.newDecoder()
                .decode(ByteBuffer.wrap(frame, 1, frame.length - 1)).toString());
        } catch (CharacterCodingException e) {
            // The topic cannot be named in JSON, so there is no welcome; the subscription itself holds.
            return;
        }
    }

    /** Sends what is queued, waits up to 0.8 s for it to leave, and closes the sockets. */
    @Override
    public void close() {
        closing = true;
        waker.wake();
        try {
            io.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        context.term();
        heartbeat.await();
        waker.close();
    }

    /** Lets any thread wake the one that polls, without touching a socket or a channel itself. */
    private static final class Waker implements AutoCloseable {
        private final Pipe pipe;
        private final Signal signal;

        Waker() throws IOException {
            pipe = Pipe.open();
            pipe.source().configureBlocking(false);
            signal = new Signal(this::poke, "spanwright-waker");
        }

        void start() {
            signal.start();
        }

        void wake() {
            signal.raise();
        }

        Pipe.SourceChannel channel() {
            return pipe.source();
        }

        private void poke() {
            try {
                pipe.sink().write(ByteBuffer.wrap(new byte[1]));
            } catch (IOException e) {
                throw new java.io.UncheckedIOException("the thread that owns the sockets cannot be woken", e);
            }
        }

        void rest() {
            try {
                final ByteBuffer bytes = ByteBuffer.allocate(256);
                while (pipe.source().read(bytes) == bytes.capacity()) {
                    bytes.clear();
                }
            } catch (IOException e) {
                throw new java.io.UncheckedIOException("the wake pipe cannot be read", e);
            }
        }

        @Override
        public void close() {
            signal.close();
            try {
                pipe.sink().close();
                pipe.source().close();
            } catch (IOException e) {
                throw new java.io.UncheckedIOException("the wake pipe cannot be closed", e);
            }
        }
    }
}
