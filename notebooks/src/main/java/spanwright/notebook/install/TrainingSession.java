package spanwright.notebook.install;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.zeromq.SocketType;
import org.zeromq.ZContext;
import org.zeromq.ZMQ;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.wire.ConnectionFile;
import spanwright.kernel.wire.Signer;

/**
 * A short session with a kernel, of the kinds of requests that a front end makes, so that the kernel loads
 * what it needs for them. Answers are waited for and not looked at.
 */
final class TrainingSession {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int PATIENCE_MILLIS = 60_000;
    private static final int POLL_MILLIS = 1_000;
    private static final String DELIMITER = "<IDS|MSG>";
    /** Cells of the kinds that notebooks hold: a value, text, declarations, a table, two errors. */
    private static final List<String> CELLS = List.of(
        "1 + 1", "System.out.println(\"one\"); System.err.println(\"two\");",
        "var values = java.util.List.of(1.5, 2.5, 3.5);\nvalues",
        "record Point(double x, double y) {\n    double sum() {\n        return x + y;\n    }\n}\n"
            + "double twice(double x) {\n    return 2 * x;\n}",
        "double total = 0;\nfor (double v : values) {\n    total += twice(v);\n}\n"
            + "total + new Point(1, 2).sum()",
        "values.stream().map(v -> String.format(java.util.Locale.ROOT, \"%.2f\", v)).toList()",
        "class Counter {\n    int n;\n}\nvar counter = new Counter();\ncounter.n++;\ncounter.n",
        "undefinedName + 1", "Integer.parseInt(\"x\")", "int[] numbers = {1, 2};\nnumbers[0] = 5;\nnumbers");
    private static final List<String[]> QUESTIONS = List.of(
        new String[] {"is_complete_request", "{\"code\":\"for (int i = 0; i < 3; i++) {\"}"},
        new String[] {"complete_request", "{\"code\":\"values.str\",\"cursor_pos\":10}"},
        new String[] {"complete_request", "{\"code\":\"Sys\",\"cursor_pos\":3}"},
        new String[] {"inspect_request", "{\"code\":\"values.size()\",\"cursor_pos\":9,\"detail_level\":0}"},
        new String[] {"history_request",
            "{\"hist_access_type\":\"tail\",\"n\":5,\"raw\":true,\"output\":false}"},
        new String[] {"comm_info_request", "{}"});

    private final ConnectionFile connection;
    private final Signer signer;
    private final String session = UUID.randomUUID().toString();

    TrainingSession(ConnectionFile connection) {
        this.connection = connection;
        this.signer = Signer.of(connection.signatureScheme(), connection.key());
    }

    /**
     * Runs the session and asks the kernel to end.
     *
     * @throws IllegalStateException if the kernel does not answer
     */
    void run(Process kernel) throws IOException, InterruptedException {
        try (ZContext context = new ZContext()) {
            final ZMQ.Socket output = context.createSocket(SocketType.SUB);
            output.subscribe("");
            output.connect(address(connection.ports().iopub()));
            final ZMQ.Socket shell = socket(context, connection.ports().shell());
            final ZMQ.Socket control = socket(context, connection.ports().control());
            // The welcome comes when the subscription has arrived; nothing published later can be missed.
            answer(kernel, output);
            ask(kernel, control, output, "kernel_info_request", "{}");
            ask(kernel, shell, output, "kernel_info_request", "{}");
            for (String cell : CELLS) {
                ask(kernel, shell, output, "execute_request", execution(cell));
            }
            for (String[] question : QUESTIONS) {
                ask(kernel, shell, output, question[0], question[1]);
            }
            send(control, "shutdown_request", "{\"restart\":false}");
            answer(kernel, control);
        }
    }

    private ZMQ.Socket socket(ZContext context, int port) {
        final ZMQ.Socket socket = context.createSocket(SocketType.DEALER);
        socket.setIdentity(session.getBytes(StandardCharsets.US_ASCII));
        socket.setLinger(1000);
        socket.connect(address(port));
        return socket;
    }

    private String address(int port) {
        return "tcp://" + connection.ip() + ":" + port;
    }

    private static String execution(String code) {
        return JSON.createObjectNode().put("code", code).put("silent", false).put("store_history", false)
            .put("allow_stdin", false).put("stop_on_error", true).toString();
    }

    /** Sends a request, waits for its reply and for the kernel to be idle after it. */
    private void ask(Process kernel, ZMQ.Socket socket, ZMQ.Socket output, String type, String content)
            throws IOException {
        final String id = send(socket, type, content);
        answer(kernel, socket);
        JsonNode published = answer(kernel, output);
        while (!(published.path("parent").path("msg_id").asText().equals(id)
                && published.path("content").path("execution_state").asText().equals("idle"))) {
            published = answer(kernel, output);
        }
    }

    private String send(ZMQ.Socket socket, String type, String content) {
        final ObjectNode header = JSON.createObjectNode().put("msg_id", UUID.randomUUID().toString())
            .put("session", session).put("username", "install").put("date", "2026-01-01T00:00:00Z")
            .put("msg_type", type).put("version", "5.3");
        final List<Bytes> signed = new ArrayList<>();
        for (String frame : List.of(header.toString(), "{}", "{}", content)) {
            signed.add(Bytes.of(frame));
        }
        socket.sendMore(DELIMITER);
        socket.sendMore(signer.sign(signed).shared());
        for (int i = 0; i < signed.size(); i++) {
            socket.send(signed.get(i).shared(), i < signed.size() - 1 ? ZMQ.SNDMORE : 0);
        }
        return header.get("msg_id").asText();
    }

    /** The parent header and the content of the next message. */
    private static JsonNode answer(Process kernel, ZMQ.Socket socket) throws IOException {
        socket.setReceiveTimeOut(POLL_MILLIS);
        for (int waited = 0; waited < PATIENCE_MILLIS && kernel.isAlive(); waited += POLL_MILLIS) {
            final byte[] first = socket.recv();
            if (first != null) {
                final List<byte[]> frames = new ArrayList<>(List.of(first));
                while (socket.hasReceiveMore()) {
                    frames.add(socket.recv());
                }
                return opened(frames);
            }
        }
        throw new IllegalStateException("the kernel did not answer");
    }

    private static JsonNode opened(List<byte[]> frames) throws IOException {
        int start = 0;
        while (!new String(frames.get(start), StandardCharsets.UTF_8).equals(DELIMITER)) {
            start++;
        }
        final ObjectNode message = JSON.createObjectNode();
        message.set("parent", JSON.readTree(frames.get(start + 3)));
        message.set("content", JSON.readTree(frames.get(start + 5)));
        return message;
    }
}
