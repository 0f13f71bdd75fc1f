package spanwright.kernel.wire;

import org.zeromq.ZMQ;
import org.zeromq.ZMQException;

/** What all sockets of a kernel have in common. Stateless. */
final class Sockets {
    /** Largest frame that is taken; a peer that announces more is disconnected. */
    static final long MAX_FRAME = Math.min(256L << 20, Runtime.getRuntime().maxMemory() / 4);

    /** A connection that has not shaken hands within this time is closed, so that the client tries again. */
    private static final int HANDSHAKE_MILLIS = 5_000;

    private Sockets() { }

    /**
     * Sets encryption and limits, and binds.
     *
     * @param port 0 for one to be picked
     * @return the port bound
     * @throws IllegalStateException if it cannot be bound; names the address
     */
    static int bind(ZMQ.Socket socket, ConnectionFile file, int port, String channel) {
        socket.setMaxMsgSize(MAX_FRAME);
        socket.setHandshakeIvl(HANDSHAKE_MILLIS);
        if (file.ip().contains(":")) {
            socket.setIPv6(true);
        }
        file.curve().ifPresent(keys -> {
            socket.setCurveServer(true);
            socket.setCurvePublicKey(ZMQ.Curve.z85Decode(keys.publicKey()));
            socket.setCurveSecretKey(ZMQ.Curve.z85Decode(keys.secretKey()));
        });
        final String host = file.ip().contains(":") ? "[" + file.ip() + "]" : file.ip();
        final String address = "tcp://" + host + ":" + (port == 0 ? "*" : Integer.toString(port));
        try {
            if (!socket.bind(address)) {
                throw new IllegalStateException("cannot bind " + address + " for " + channel);
            }
        } catch (ZMQException | IllegalArgumentException e) {
            throw new IllegalStateException(
                "cannot bind " + address + " for " + channel + ": " + e.getMessage(), e);
        }
        final String end = socket.getLastEndpoint();
        return Integer.parseInt(end.substring(end.lastIndexOf(':') + 1));
    }
}
