package spanwright.kernel.dispatch;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import spanwright.kernel.message.Header;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.ConnectionFile;

/**
 * A server with a scripted engine, driven over loopback by a client that shares no code with it. What is
 * expected of each message is from "Messaging in Jupyter", the documentation of the protocol, version 5.5.
 */
abstract class ServerCase {
    @TempDir
    Path state;
    final ByteArrayOutputStream log = new ByteArrayOutputStream();
    KernelServer server;
    RawClient client;

    ConnectionFile requested() {
        return ConnectionFile.local("a key");
    }

    @BeforeEach
    void start() throws IOException {
        server = KernelServer.start(requested(), new ScriptedInterpreter(), settings());
        client = new RawClient(server.connection()).awaitWelcome();
    }

    KernelSettings settings() {
        return new KernelSettings(state, new PrintStream(log, true, StandardCharsets.UTF_8));
    }

    @AfterEach
    void stop() {
        client.close();
        server.close();
    }

    /** Types in order, a status by its state. */
    static List<String> types(List<RawClient.Received> messages) {
        return messages.stream().map(m -> m.type().equals("status")
            ? m.content().get("execution_state").asText() : m.type()).toList();
    }

    /** The text of all stream messages of a name. */
    static String text(List<RawClient.Received> messages, String name) {
        final StringBuilder all = new StringBuilder();
        messages.stream().filter(m -> m.type().equals("stream"))
            .filter(m -> m.content().get("name").asText().equals(name))
            .forEach(m -> all.append(m.content().get("text").asText()));
        return all.toString();
    }

    /** Asks who the kernel is and checks that it answers: the sign of life. */
    static void assertAlive(RawClient client) {
        final String id = client.send(Channel.SHELL, "kernel_info_request", "{}");
        final String version =
            client.reply(Channel.SHELL, id).content().get("protocol_version").asText();
        if (!version.equals(Header.PROTOCOL_VERSION)) {
            throw new AssertionError("protocol version " + version);
        }
    }
}
