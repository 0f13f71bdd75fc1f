package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.ConnectionFile;

/**
 * One server, driven over loopback by a client that shares no code with it. What is expected of each message
 * is from "Messaging in Jupyter", the documentation of the protocol, version 5.5.
 */
class KernelServerTest {
    @TempDir
    Path state;
    private KernelServer server;
    private RawClient client;

    @BeforeEach
    void start() throws IOException {
        server = KernelServer.start(ConnectionFile.local("a key"), new ScriptedInterpreter(),
            new KernelSettings(state, new PrintStream(OutputStream.nullOutputStream())));
        client = new RawClient(server.connection()).awaitWelcome();
    }

    @AfterEach
    void stop() {
        client.close();
        server.close();
    }

    private static List<String> types(List<RawClient.Received> messages) {
        return messages.stream().map(m -> m.type().equals("status")
            ? m.content().get("execution_state").asText() : m.type()).toList();
    }

    @Test
    void saysWhoItIsOnShellAndControl() {
        for (final Channel channel : List.of(Channel.SHELL, Channel.CONTROL)) {
            final String id = client.send(channel, "kernel_info_request", "{}");
            final JsonNode info = client.reply(channel, id).content();
            assertThat(info.get("status").asText()).isEqualTo("ok");
            assertThat(info.get("protocol_version").asText()).isEqualTo("5.5");
            assertThat(info.get("language_info").get("name").asText()).isEqualTo("java");
            assertThat(info.get("language_info").get("file_extension").asText()).isEqualTo(".java");
            assertThat(info.get("supported_features")).isEmpty();
            assertThat(types(client.published(id))).containsExactly("busy", "idle");
        }
    }

    @Test
    void runsACellAndPublishesInOrder() {
        final String id = client.execute("out hello\nvalue 42");
        final RawClient.Received reply = client.reply(Channel.SHELL, id);
        assertThat(reply.content().get("status").asText()).isEqualTo("ok");
        assertThat(reply.content().get("execution_count").asInt()).isEqualTo(1);
        final List<RawClient.Received> published = client.published(id);
        assertThat(types(published))
            .containsExactly("busy", "execute_input", "stream", "execute_result", "idle");
        assertThat(published.get(2).content().get("text").asText()).isEqualTo("hello\n");
        assertThat(published.get(3).content().get("data").get("text/html").asText()).isEqualTo("<b>42</b>");
        assertThat(published).allSatisfy(m -> assertThat(m.topic()).isEqualTo(m.type()));
    }
}
