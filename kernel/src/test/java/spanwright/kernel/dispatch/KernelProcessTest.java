package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.neilalexander.jnacl.crypto.curve25519;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.zeromq.ZMQ;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.ConnectionFile;

/** A kernel in a process of its own: how it starts, and every way it may end. */
@Timeout(60)
class KernelProcessTest {
    @TempDir
    Path folder;
    private Process process;

    private Process launch(Map<String, String> environment, String connection) throws IOException {
        Files.writeString(folder.resolve("kernel.json"), connection);
        final ProcessBuilder builder = new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1", "-Dspanwright.state=" + folder.resolve("state"), "-cp",
            classPath(), KernelProcessMain.class.getName(),
            folder.resolve("kernel.json").toString());
        builder.environment().remove("JPY_PARENT_PID");
        builder.environment().putAll(environment);
        process = builder.redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile()).start();
        return process;
    }

    /** Where the classes of the kernel and its libraries are, however the tests were started. */
    private static String classPath() {
        return Stream.of(KernelProcessMain.class, KernelProcess.class, ZMQ.class, curve25519.class,
                ObjectMapper.class, JsonFactory.class, JsonFormat.class)
            .map(c -> Path.of(URI.create(c.getProtectionDomain().getCodeSource().getLocation().toString())))
            .map(Path::toString).collect(Collectors.joining(File.pathSeparator));
    }

    private RawClient connect() throws IOException, InterruptedException {
        for (int i = 0; i < 200; i++) {
            final ConnectionFile file = ConnectionFile.read(folder.resolve("kernel.json"));
            if (file.ports().shell() != 0) {
                return new RawClient(file).awaitWelcome();
            }
            Thread.sleep(50);
        }
        throw new AssertionError("no ports were written; log: " + log());
    }

    private String log() throws IOException {
        return Files.readString(folder.resolve("log"), StandardCharsets.UTF_8);
    }

    @AfterEach
    void end() {
        process.destroyForcibly();
    }

    @Test
    void picksPortsWritesThemBackAndEndsAtShutdownWhateverThreadsAreLeft() throws Exception {
        launch(Map.of(), "{\"key\":\"k\"}");
        try (RawClient client = connect()) {
            ServerCase.assertAlive(client);
            client.reply(Channel.SHELL, client.execute("linger\nstuck"));
            client.execute("sleep 60000");
            final long begun = System.nanoTime();
            client.reply(Channel.CONTROL, client.send(Channel.CONTROL, "shutdown_request", "{}"));
            assertThat(process.waitFor(5, TimeUnit.SECONDS)).isTrue();
            assertThat(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun)).as("ms").isLessThan(2_500);
            assertThat(process.exitValue()).isZero();
        }
    }

    @Test
    void tellsTheClientWhenACellEndsTheProcess() throws Exception {
        launch(Map.of(), "{\"key\":\"k\"}");
        try (RawClient client = connect()) {
            final String id = client.execute("exit 3");
            final JsonNode reply = client.reply(Channel.SHELL, id).content();
            assertThat(reply.get("status").asText()).isEqualTo("error");
            assertThat(reply.get("evalue").asText()).contains("System.exit");
            assertThat(ServerCase.types(client.published(id)))
                .containsExactly("busy", "execute_input", "error", "idle");
            assertThat(process.waitFor(5, TimeUnit.SECONDS)).isTrue();
            assertThat(process.exitValue()).isEqualTo(3);
        }
    }

    @Test
    void endsWhenTheClientThatStartedItIsGone() throws Exception {
        final Process parent = new ProcessBuilder("sleep", "600").start();
        launch(Map.of("JPY_PARENT_PID", Long.toString(parent.pid())), "{\"key\":\"k\"}");
        try (RawClient client = connect()) {
            client.execute("sleep 60000");
            ServerCase.assertAlive(client);
            assertThat(process.isAlive()).isTrue();
        } finally {
            parent.destroyForcibly().waitFor();
        }
        assertThat(process.waitFor(6, TimeUnit.SECONDS)).as("ended").isTrue();
    }

    @Test
    void historySurvivesARestart() throws Exception {
        final List<String> seen = new ArrayList<>();
        for (int run = 0; run < 2; run++) {
            launch(Map.of(), "{\"key\":\"k\"}");
            try (RawClient client = connect()) {
                client.reply(Channel.SHELL, client.execute("value run" + run));
                final String id = client.send(Channel.SHELL, "history_request",
                    "{\"hist_access_type\":\"tail\",\"n\":5,\"output\":true}");
                seen.add(client.reply(Channel.SHELL, id).content().get("history").toString());
                client.reply(Channel.CONTROL,
                    client.send(Channel.CONTROL, "shutdown_request", "{\"restart\":true}"));
                assertThat(process.waitFor(5, TimeUnit.SECONDS)).isTrue();
            }
        }
        assertThat(seen).containsExactly("[[1,1,[\"value run0\",\"run0\"]]]",
            "[[1,1,[\"value run0\",\"run0\"]],[2,1,[\"value run1\",\"run1\"]]]");
    }

    @Test
    void refusesATransportItDoesNotSpeak() throws Exception {
        launch(Map.of(), "{\"key\":\"k\",\"transport\":\"ipc\"}");
        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isEqualTo(1);
        assertThat(log()).contains("kernel.json: transport is 'ipc', this kernel speaks tcp only");
    }
}
