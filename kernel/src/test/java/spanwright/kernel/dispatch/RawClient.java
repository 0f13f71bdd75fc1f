package spanwright.kernel.dispatch;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.ConnectionFile;
import spanwright.kernel.wire.CurveKeys;

/**
 * A client that knows the protocol from its documentation alone: it frames, signs and reads by its own code,
 * so that an error in ours cannot cancel out.
 */
final class RawClient implements AutoCloseable {
    static final ObjectMapper JSON = new ObjectMapper();
    private static final Map<String, String> MACS = Map.of("hmac-sha256", "HmacSHA256", "hmac-sha512",
        "HmacSHA512", "hmac-sha1", "HmacSHA1", "hmac-md5", "HmacMD5");

    /** A message as it came. */
    record Received(String topic, JsonNode header, JsonNode parent, JsonNode metadata, JsonNode content,
                    List<byte[]> buffers) {
        String type() {
            return header.path("msg_type").asText();
        }

        String parentId() {
            return parent.path("msg_id").asText();
        }
    }

    private final ZMQ.Context context = ZMQ.context(1);
    private final Map<Channel, ZMQ.Socket> sockets = new EnumMap<>(Channel.class);
    private final ConnectionFile connection;
    final String session;
    String version = "5.3";

    RawClient(ConnectionFile connection) {
        this(connection, "");
    }

    RawClient(ConnectionFile connection, String topic) {
        this(connection, topic, UUID.randomUUID().toString());
    }

    RawClient(ConnectionFile connection, String topic, String session) {
        this.connection = connection;
        this.session = session;
        open(Channel.SHELL, SocketType.DEALER, connection.ports().shell());
        open(Channel.CONTROL, SocketType.DEALER, connection.ports().control());
        open(Channel.STDIN, SocketType.DEALER, connection.ports().stdin());
        open(Channel.IOPUB, SocketType.SUB, connection.ports().iopub()).subscribe(topic);
    }

    private ZMQ.Socket open(Channel channel, SocketType type, int port) {
        final ZMQ.Socket socket = context.socket(type);
        sockets.put(channel, socket);
        socket.setLinger(0);
        socket.setHWM(0);
        // Some outgoing connections of JeroMQ 0.6.0 stall before the handshake: connect again then.
        socket.setHandshakeIvl(1_000);
        if (type == SocketType.DEALER) {
            socket.setIdentity(session.getBytes(StandardCharsets.UTF_8));
        }
        encrypt(socket);
        socket.connect("tcp://127.0.0.1:" + port);
        return socket;
    }

    private void encrypt(ZMQ.Socket socket) {
        if (connection.curve().isPresent()) {
            final CurveKeys server = connection.curve().get();
            final ZMQ.Curve.KeyPair own = ZMQ.Curve.generateKeyPair();
            socket.setCurveServerKey(ZMQ.Curve.z85Decode(server.publicKey()));
            socket.setCurvePublicKey(ZMQ.Curve.z85Decode(own.publicKey));
            socket.setCurveSecretKey(ZMQ.Curve.z85Decode(own.secretKey));
        }
    }

    /** Waits for the welcome, so that nothing published later is missed. */
    RawClient awaitWelcome() {
        Received r = receive(Channel.IOPUB, 5_000);
        while (!r.type().equals("iopub_welcome")) {
            r = receive(Channel.IOPUB, 5_000);
        }
        return this;
    }

    ObjectNode header(String type) {
        return JSON.createObjectNode().put("msg_id", UUID.randomUUID().toString()).put("session", session)
            .put("username", "tester").put("date", "2024-01-01T00:00:00Z").put("msg_type", type)
            .put("version", version);
    }

    /** Sends a request with content as JSON text; returns its id. */
    String send(Channel channel, String type, String content) {
        final ObjectNode header = header(type);
        sendFrames(channel, frames(header.toString(), "{}", "{}", content));
        return header.get("msg_id").asText();
    }

    String execute(String code) {
        return execute(code, "");
    }

    /** Sends an execute_request; more is a list of JSON fields, each after a comma. */
    String execute(String code, String more) {
        return send(Channel.SHELL, "execute_request",
            "{\"code\":" + JSON.valueToTree(code) + more + "}");
    }

    List<byte[]> frames(String... four) {
        final List<byte[]> signed = new ArrayList<>();
        for (final String s : four) {
            signed.add(s.getBytes(StandardCharsets.UTF_8));
        }
        final List<byte[]> frames = new ArrayList<>();
        frames.add("<IDS|MSG>".getBytes(StandardCharsets.US_ASCII));
        frames.add(sign(signed));
        frames.addAll(signed);
        return frames;
    }

    byte[] sign(List<byte[]> signed) {
        if (connection.key().size() == 0) {
            return new byte[0];
        }
        try {
            final Mac mac = Mac.getInstance(MACS.get(connection.signatureScheme()));
            mac.init(new SecretKeySpec(connection.key().shared(), mac.getAlgorithm()));
            signed.forEach(mac::update);
            return HexFormat.of().formatHex(mac.doFinal()).getBytes(StandardCharsets.US_ASCII);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    void sendFrames(Channel channel, List<byte[]> frames) {
        for (int i = 0; i < frames.size(); i++) {
            sockets.get(channel).send(frames.get(i), i < frames.size() - 1 ? ZMQ.SNDMORE : 0);
        }
    }

    /** The next message, or a failure. */
    Received receive(Channel channel, int millis) {
        final ZMQ.Socket socket = sockets.get(channel);
        socket.setReceiveTimeOut(millis);
        final byte[] first = socket.recv();
        if (first == null) {
            throw new AssertionError("nothing on " + channel + " within " + millis + " ms");
        }
        final List<byte[]> frames = new ArrayList<>(List.of(first));
        while (socket.hasReceiveMore()) {
            frames.add(socket.recv());
        }
        return read(frames);
    }

    /** Whether a message is there within the time. */
    boolean silentFor(Channel channel, int millis) {
        final ZMQ.Socket socket = sockets.get(channel);
        socket.setReceiveTimeOut(millis);
        final boolean silent = socket.recv() == null;
        while (socket.hasReceiveMore()) {
            socket.recv();
        }
        return silent;
    }

    private Received read(List<byte[]> frames) {
        int i = 0;
        while (!new String(frames.get(i), StandardCharsets.UTF_8).equals("<IDS|MSG>")) {
            i++;
        }
        final List<byte[]> signed = frames.subList(i + 2, i + 6);
        final String expected = new String(sign(signed), StandardCharsets.US_ASCII);
        final String actual = new String(frames.get(i + 1), StandardCharsets.US_ASCII);
        if (!expected.equals(actual)) {
            throw new AssertionError("signature " + actual + ", expected " + expected);
        }
        try {
            return new Received(i == 0 ? "" : new String(frames.get(0), StandardCharsets.UTF_8),
                JSON.readTree(signed.get(0)), JSON.readTree(signed.get(1)), JSON.readTree(signed.get(2)),
                JSON.readTree(signed.get(3)), List.copyOf(frames.subList(i + 6, frames.size())));
        } catch (java.io.IOException e) {
            throw new AssertionError("not JSON", e);
        }
    }

    /** The reply to a request; others are skipped. */
    Received reply(Channel channel, String id) {
        Received r = receive(channel, 10_000);
        while (!r.parentId().equals(id)) {
            r = receive(channel, 10_000);
        }
        return r;
    }

    /** Everything published for a request, up to and with idle; that of others is skipped. */
    List<Received> published(String id) {
        return published(Set.of(id));
    }

    /** Everything published for some requests, until all are idle. */
    List<Received> published(Set<String> ids) {
        final List<Received> all = new ArrayList<>();
        int idle = 0;
        while (idle < ids.size()) {
            final Received r = receive(Channel.IOPUB, 10_000);
            if (ids.contains(r.parentId())) {
                all.add(r);
                idle += r.content().path("execution_state").asText().equals("idle") ? 1 : 0;
            }
        }
        return all;
    }

    @Override
    public void close() {
        sockets.values().forEach(ZMQ.Socket::close);
        context.term();
    }
}
