package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.ConnectionFile;

/** Every request but execute, on shell and on control. */
@Timeout(20)
class RequestsTest extends ServerCase {

    private JsonNode ask(Channel channel, String type, String content) {
        final String id = client.send(channel, type, content);
        final RawClient.Received reply = client.reply(channel, id);
        assertThat(reply.type()).isEqualTo(type.replace("_request", "_reply"));
        assertThat(types(client.published(id))).containsExactly("busy", "idle");
        return reply.content();
    }

    @ParameterizedTest
    @EnumSource(names = {"SHELL", "CONTROL"})
    void saysWhoItIs(Channel channel) {
        final JsonNode info = ask(channel, "kernel_info_request", "{}");
        assertThat(info.get("status").asText()).isEqualTo("ok");
        assertThat(info.get("protocol_version").asText()).isEqualTo("5.5");
        assertThat(info.get("implementation").asText()).isEqualTo("spanwright");
        assertThat(info.get("banner").asText()).isEqualTo("a banner");
        assertThat(info.get("language_info").get("name").asText()).isEqualTo("java");
        assertThat(info.get("language_info").get("version").asText()).isEqualTo("17.0.15");
        assertThat(info.get("language_info").get("file_extension").asText()).isEqualTo(".java");
        assertThat(info.get("language_info").get("mimetype").asText()).isEqualTo("text/x-java");
        assertThat(info.get("supported_features")).isEmpty();
        assertThat(info.get("help_links")).isEmpty();
    }

    @Test
    void saysWhoItIsBeforeTheInterpreterIsWarm() throws IOException {
        final ScriptedInterpreter cold = new ScriptedInterpreter(false);
        try (KernelServer other = KernelServer.start(ConnectionFile.local("k"), cold, settings());
             RawClient early = new RawClient(other.connection()).awaitWelcome()) {
            assertAlive(early);
            final String id = early.execute("value 1");
            assertAlive(early);
            cold.mayWarm.countDown();
            assertThat(early.reply(Channel.SHELL, id).content().get("status").asText()).isEqualTo("ok");
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"SHELL", "CONTROL"})
    void completesWithTypesAndSignatures(Channel channel) {
        final JsonNode reply = ask(channel, "complete_request", "{\"code\":\"x = pr\",\"cursor_pos\":6}");
        assertThat(reply.toString()).isEqualTo("{\"status\":\"ok\",\"cursor_start\":4,\"cursor_end\":6,"
            + "\"matches\":[\"print\",\"private\"],\"metadata\":{\"_jupyter_types_experimental\":["
            + "{\"start\":4,\"end\":6,\"text\":\"print\",\"type\":\"function\","
            + "\"signature\":\"(String text)\"},"
            + "{\"start\":4,\"end\":6,\"text\":\"private\",\"type\":\"keyword\",\"signature\":\"\"}]}}");
    }

    /** U+1D465 is one code point and two UTF-16 units; positions count code points since version 5.2. */
    @ParameterizedTest
    @CsvSource({"5.3, 4, 2, 4", "5.2, 4, 2, 4", "5.1, 6, 4, 6", "5.0, 6, 4, 6"})
    void countsPositionsInTheUnitOfTheSender(String version, int cursor, int start, int end) {
        client.version = version;
        final String code = "\\ud835\\udc65\\ud835\\udc65pr";
        final JsonNode reply = ask(Channel.SHELL, "complete_request",
            "{\"code\":\"" + code + "\",\"cursor_pos\":" + cursor + "}");
        assertThat(reply.get("cursor_start").asInt()).isEqualTo(start);
        assertThat(reply.get("cursor_end").asInt()).isEqualTo(end);
        final JsonNode inspected = ask(Channel.SHELL, "inspect_request",
            "{\"code\":\"known" + code + "\",\"cursor_pos\":" + (cursor + 5) + ",\"detail_level\":1}");
        assertThat(inspected.get("data").get("text/plain").asText()).isEqualTo("at 11 detail 1");
    }

    @ParameterizedTest
    @CsvSource({"-5, 0", "99, 2", "2, 2"})
    void movesACursorOutsideTheCodeToItsEnd(int cursor, int end) {
        final JsonNode reply =
            ask(Channel.SHELL, "complete_request", "{\"code\":\"pr\",\"cursor_pos\":" + cursor + "}");
        assertThat(reply.get("cursor_end").asInt()).isEqualTo(end);
    }

    @Test
    void inspectsWhatIsKnownAndSaysWhenNothingIs() {
        assertThat(ask(Channel.SHELL, "inspect_request", "{\"code\":\"known\",\"cursor_pos\":2}").toString())
            .isEqualTo("{\"status\":\"ok\",\"found\":true,\"data\":{\"text/plain\":\"at 2 detail 0\"},"
                + "\"metadata\":{}}");
        assertThat(ask(Channel.SHELL, "inspect_request", "{\"code\":\"other\",\"cursor_pos\":2}").toString())
            .isEqualTo("{\"status\":\"ok\",\"found\":false,\"data\":{},\"metadata\":{}}");
    }

    @Test
    void saysWhetherCodeIsCompleteWithAnIndentOnlyIfNot() {
        assertThat(ask(Channel.SHELL, "is_complete_request", "{\"code\":\"a {\"}").toString())
            .isEqualTo("{\"status\":\"incomplete\",\"indent\":\"    \"}");
        assertThat(ask(Channel.SHELL, "is_complete_request", "{\"code\":\"a\"}").toString())
            .isEqualTo("{\"status\":\"complete\"}");
    }

    @ParameterizedTest
    @EnumSource(names = {"SHELL", "CONTROL"})
    void tellsItsPorts(Channel channel) {
        final JsonNode ports = ask(channel, "connect_request", "{}");
        assertThat(ports.get("shell_port").asInt()).isEqualTo(server.connection().ports().shell());
        assertThat(ports.get("hb_port").asInt()).isEqualTo(server.connection().ports().heartbeat());
    }

    @ParameterizedTest
    @EnumSource(names = {"SHELL", "CONTROL"})
    void tellsWhatItUses(Channel channel) {
        final JsonNode usage = ask(channel, "usage_request", "{}");
        assertThat(usage.get("pid").asLong()).isEqualTo(ProcessHandle.current().pid());
        assertThat(usage.get("kernel_memory").asLong()).isGreaterThan(10_000_000);
        assertThat(usage.get("kernel_cpu").asDouble()).isGreaterThanOrEqualTo(0);
        assertThat(usage.get("cpu_count").asInt()).isPositive();
    }

    @ParameterizedTest
    @EnumSource(names = {"SHELL", "CONTROL"})
    void takesNoteOfWhatItDoesNotKnow(Channel channel) {
        final String id = client.send(channel, "tomorrow_request", "{}");
        assertThat(types(client.published(id))).containsExactly("busy", "idle");
        assertThat(client.silentFor(channel, 100)).isTrue();
        assertAlive(client);
    }

    @Test
    void answersWhileACellRuns() {
        final String running = client.execute("sleep 60000");
        final long begun = System.nanoTime();
        assertAlive(client);
        for (final String type : List.of("complete_request", "inspect_request", "is_complete_request")) {
            final String id = client.send(Channel.SHELL, type, "{\"code\":\"pr\",\"cursor_pos\":2}");
            assertThat(client.reply(Channel.SHELL, id).content().get("status")).isNotNull();
        }
        final String stop = client.send(Channel.CONTROL, "interrupt_request", "{}");
        assertThat(client.reply(Channel.CONTROL, stop).content().toString()).isEqualTo("{\"status\":\"ok\"}");
        final JsonNode stopped = client.reply(Channel.SHELL, running).content();
        assertThat(stopped.get("status").asText()).isEqualTo("error");
        assertThat(stopped.get("ename").asText()).isEqualTo("Interrupted");
        assertThat(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun)).isLessThan(5_000);
    }

    @ParameterizedTest
    @CsvSource({"SHELL, false", "SHELL, true", "CONTROL, false", "CONTROL, true"})
    void shutsDownWithAReplyAlsoOnIopub(Channel channel, boolean restart) throws InterruptedException {
        client.execute("sleep 60000");
        final String id = client.send(channel, "shutdown_request", "{\"restart\":" + restart + "}");
        final String expected = "{\"status\":\"ok\",\"restart\":" + restart + "}";
        assertThat(client.reply(channel, id).content().toString()).isEqualTo(expected);
        final List<RawClient.Received> published = client.published(id);
        assertThat(types(published)).containsExactly("busy", "shutdown_reply", "idle");
        assertThat(published.get(1).content().toString()).isEqualTo(expected);
        assertThat(server.awaitShutdown()).isEqualTo(restart);
        final long begun = System.nanoTime();
        server.close();
        assertThat(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun)).as("ms to close")
            .isLessThan(1_500);
    }
}
