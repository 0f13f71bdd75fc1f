package spanwright.kernel.wire;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Json;

/**
 * Announces the ports a kernel picked to the client that started it, where the connection file asks for that:
 * {@code <IDS|MSG>}, signature, one signed frame with the kernel's name and its ports. The client answers
 * with a signed acknowledgement.
 *
 * <p>Source: Jupyter Enhancement Proposal 66, "Kernel Handshaking pattern". The proposal does not fix the
 * frames: they are those of the protocol's wire format, with one content frame. Stateless.
 */
public final class Registrar {
    private static final Bytes DELIMITER = Bytes.of("<IDS|MSG>");

    private static final int HANDSHAKE_MILLIS = 500;

    private Registrar() { }

    /**
     * Announces and waits for the acknowledgement.
     *
     * @param connection   with the ports that were picked
     * @param registration where to announce
     * @param millis       how long to wait
     * @throws IOException if no acknowledgement with the right signature comes within the time
     */
    public static void announce(ConnectionFile connection, ConnectionFile.Registration registration,
                                int millis) throws IOException {
        final Signer signer = Signer.of(connection.signatureScheme(), connection.key());
        final ObjectNode content = Json.object().put("kernel_id", registration.kernelId());
        connection.ports().byName().forEach((name, port) -> content.put(name, Integer.toString(port)));
        final Bytes json = Json.write(content);
        final ZMQ.Context context = ZMQ.context(1);
        try (ZMQ.Socket socket = context.socket(SocketType.DEALER)) {
            socket.setLinger(0);
            // Of JeroMQ 0.6.0's outgoing connections about 1 in 80 stalls before the handshake (measured on
            // loopback, also towards libzmq); after this time it connects again.
            socket.setHandshakeIvl(HANDSHAKE_MILLIS);
            socket.connect("tcp://" + registration.ip() + ":" + registration.port());
            socket.send(DELIMITER.shared(), ZMQ.SNDMORE);
            socket.send(signer.sign(List.of(json)).shared(), ZMQ.SNDMORE);
            socket.send(json.shared());
            if (!acknowledged(socket, signer, System.nanoTime() + millis * 1_000_000L)) {
                throw new IOException("the client at " + registration.ip() + ":" + registration.port()
                    + " has not acknowledged the ports within " + millis + " ms");
            }
        } finally {
            context.term();
        }
    }

    private static boolean acknowledged(ZMQ.Socket socket, Signer signer, long deadline) {
        for (long left = left(deadline); left > 0; left = left(deadline)) {
            socket.setReceiveTimeOut((int) left);
            final byte[] first = socket.recv();
            if (first == null) {
                return false;
            }
            final List<Bytes> frames = new ArrayList<>(List.of(Bytes.owned(first)));
            while (socket.hasReceiveMore()) {
                frames.add(Bytes.owned(socket.recv()));
            }
            final int d = frames.indexOf(DELIMITER);
            if (d >= 0 && frames.size() > d + 2
                && signer.accepts(frames.get(d + 1), frames.subList(d + 2, frames.size()))) {
                return true;
            }
        }
        return false;
    }

    private static long left(long deadline) {
        return (deadline - System.nanoTime()) / 1_000_000;
    }
}
