package spanwright.kernel.wire;

import java.util.concurrent.CompletableFuture;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import org.zeromq.ZMQException;

/** Echoes what it receives, on a thread of its own, so that a client sees the kernel alive while it works. */
final class Heartbeat {
    private final ZMQ.Context context;
    private final ConnectionFile requested;
    private final Thread thread = new Thread(this::run, "spanwright-heartbeat");
    private final CompletableFuture<Integer> bound = new CompletableFuture<>();

    Heartbeat(ZMQ.Context context, ConnectionFile requested) {
        this.context = context;
        this.requested = requested;
        thread.setDaemon(true);
        thread.setPriority(Thread.MAX_PRIORITY);
    }

    void start() {
        thread.start();
    }

    /** The port bound; throws CompletionException if there is none. */
    int port() {
        return bound.join();
    }

    void await() {
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void run() {
        try (ZMQ.Socket socket = context.socket(SocketType.REP)) {
            socket.setLinger(0);
            try {
                bound.complete(Sockets.bind(socket, requested, requested.ports().heartbeat(), "heartbeat"));
            } catch (RuntimeException e) {
                bound.completeExceptionally(e);
                return;
            }
            echo(socket);
        }
    }

    private static void echo(ZMQ.Socket socket) {
        try {
            while (true) {
                final byte[] frame = socket.recv();
                socket.send(frame, socket.hasReceiveMore() ? ZMQ.SNDMORE : 0);
            }
        } catch (ZMQException e) {
            if (e.getErrorCode() != ZMQ.Error.ETERM.getCode()) {
                throw e;
            }
        }
    }
}
