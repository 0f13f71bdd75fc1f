package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import spanwright.kernel.jshell.JShellInterpreter;
import spanwright.kernel.jshell.Prelude;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.ConnectionFile;

/** The protocol and the real engine together: what crosses from one to the other. */
@Timeout(60)
class LiveKernelTest {
    @TempDir
    static Path state;
    private static JShellInterpreter interpreter;
    private static KernelServer server;
    private static RawClient client;

    @BeforeAll
    static void start() throws IOException {
        interpreter = new JShellInterpreter(Prelude.ofImports(
            List.of("import java.util.*;", "import spanwright.kernel.display.*;"), "0.1.0"));
        server = KernelServer.start(ConnectionFile.local("a key"), interpreter,
            new KernelSettings(state, new PrintStream(OutputStream.nullOutputStream())));
        client = new RawClient(server.connection()).awaitWelcome();
    }

    @AfterAll
    static void stop() {
        client.close();
        server.close();
        interpreter.close();
    }

    private static List<RawClient.Received> run(String code) {
        final String id = client.execute(code);
        assertThat(client.reply(Channel.SHELL, id).content().get("status").asText()).as(code).isEqualTo("ok");
        return client.published(id);
    }

    @Test
    void runsJava() {
        final List<RawClient.Received> all = run("int volts = 24;\nSystem.out.println(volts);\nvolts + 1");
        assertThat(ServerCase.text(all, "stdout")).isEqualTo("24\n");
        assertThat(all.get(all.size() - 2).content().get("data").get("text/plain").asText()).isEqualTo("25");
    }

    @Test
    void stopsAnEndlessLoopWithinHalfASecondAndKeepsVariables() throws InterruptedException {
        run("int kept = 7;");
        final String id = client.execute("while (true);");
        Thread.sleep(300);
        final long begun = System.nanoTime();
        client.send(Channel.CONTROL, "interrupt_request", "{}");
        assertThat(client.reply(Channel.SHELL, id).content().get("ename").asText()).isEqualTo("Interrupted");
        assertThat(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun)).as("ms").isLessThan(500);
        final List<RawClient.Received> all = run("kept");
        assertThat(all.get(2).content().get("data").get("text/plain").asText()).isEqualTo("7");
    }

    @Test
    void asksForALine() {
        final String id = client.execute("System.out.println(Display.input(\"ohm? \") + \"!\");");
        assertThat(client.receive(Channel.STDIN, 10_000).content().get("prompt").asText()).isEqualTo("ohm? ");
        client.send(Channel.STDIN, "input_reply", "{\"value\":\"250\"}");
        client.reply(Channel.SHELL, id);
        assertThat(ServerCase.text(client.published(id), "stdout")).isEqualTo("250!\n");
    }

    @Test
    void aWaitForALineCanBeInterrupted() {
        final String id = client.execute("Display.input(\"ohm? \")");
        client.receive(Channel.STDIN, 10_000);
        client.send(Channel.CONTROL, "interrupt_request", "{}");
        assertThat(client.reply(Channel.SHELL, id).content().get("ename").asText()).isEqualTo("Interrupted");
        run("1");
    }

    @Test
    void whatACommHandlerPrintsGoesToTheMessageItHandles() {
        run("""
            Comms.ofSession().register("gauge", (comm, first) -> comm.onMessage(m -> {
                System.out.println("got " + m.data().get("v"));
                comm.send(Map.of("ok", true));
            }));""");
        client.published(client.send(Channel.SHELL, "comm_open",
            "{\"comm_id\":\"g1\",\"target_name\":\"gauge\",\"data\":{}}"));
        final List<RawClient.Received> all = client.published(
            client.send(Channel.SHELL, "comm_msg", "{\"comm_id\":\"g1\",\"data\":{\"v\":4.2}}"));
        assertThat(ServerCase.types(all)).containsExactlyInAnyOrder("busy", "comm_msg", "stream", "idle");
        assertThat(ServerCase.text(all, "stdout")).isEqualTo("got 4.2\n");
    }

    @Test
    void aThreadKeepsTheHeaderOfTheCellThatStartedIt() {
        final String first = client.execute("""
            new Thread(() -> {
                try { Thread.sleep(400); } catch (InterruptedException e) { }
                System.out.println("late");
            }).start();""");
        client.reply(Channel.SHELL, first);
        client.published(first);
        final String second = client.execute("Thread.sleep(800);");
        RawClient.Received r = client.receive(Channel.IOPUB, 5_000);
        while (!r.type().equals("stream")) {
            r = client.receive(Channel.IOPUB, 5_000);
        }
        assertThat(r.parentId()).isEqualTo(first);
        client.reply(Channel.SHELL, second);
    }

    @Test
    void aHundredThousandLinesTakeFewMessages() {
        final List<RawClient.Received> all =
            run("for (int i = 0; i < 100_000; i++) System.out.println(\"line \" + i);");
        assertThat(ServerCase.text(all, "stdout").lines()).hasSize(100_000);
        assertThat(all.size()).isLessThan(60);
    }
}
