package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.ConnectionFile;
import spanwright.kernel.wire.CurveKeys;
import spanwright.kernel.wire.Ports;

/** Who connects, how, and in what state they leave. */
@Timeout(30)
class ClientsTest extends ServerCase {

    @Test
    void twoClientsEachGetTheirOwnRepliesAndSeeWhatIsPublished() {
        try (RawClient other = new RawClient(server.connection()).awaitWelcome()) {
            final String mine = client.execute("out mine");
            final String theirs = other.execute("out theirs");
            assertThat(client.receive(Channel.SHELL, 5_000).parentId()).isEqualTo(mine);
            assertThat(other.receive(Channel.SHELL, 5_000).parentId()).isEqualTo(theirs);
            final List<RawClient.Received> seen = other.published(Set.of(mine, theirs));
            assertThat(text(seen.stream().filter(m -> m.parentId().equals(mine)).toList(), "stdout"))
                .isEqualTo("mine\n");
            assertThat(text(seen.stream().filter(m -> m.parentId().equals(theirs)).toList(), "stdout"))
                .isEqualTo("theirs\n");
            assertThat(client.silentFor(Channel.SHELL, 50)).isTrue();
        }
    }

    @Test
    void welcomesEachSubscriberOfTheSameTopic() {
        try (RawClient second = new RawClient(server.connection());
             RawClient third = new RawClient(server.connection(), "status")) {
            assertThat(second.receive(Channel.IOPUB, 5_000).type()).isEqualTo("iopub_welcome");
            final RawClient.Received welcome = third.receive(Channel.IOPUB, 5_000);
            assertThat(welcome.type()).isEqualTo("iopub_welcome");
            assertThat(welcome.topic()).isEqualTo("status");
            assertThat(welcome.content().toString()).isEqualTo("{\"subscription\":\"status\"}");
            assertThat(welcome.parent().toString()).isEqualTo("{}");
        }
    }

    @Test
    void aClientThatVanishesLeavesTheKernelServing() {
        client.execute("lines 200000\nsleep 200");
        client.close();
        client = new RawClient(server.connection()).awaitWelcome();
        assertAlive(client);
        final String id = client.execute("value 1");
        assertThat(client.reply(Channel.SHELL, id).content().get("status").asText()).isEqualTo("ok");
    }

    /** More requests than are taken from the socket at once: control goes ahead, and none is forgotten. */
    @Test
    void aFloodOfRequestsIsHeldBackAndAnsweredInFull() {
        final int many = Dispatcher.WAITING * 2;
        final String running = client.execute("sleep 60000");
        for (int i = 0; i < many; i++) {
            client.execute("value 1");
        }
        final String stop = client.send(Channel.CONTROL, "interrupt_request", "{}");
        client.reply(Channel.CONTROL, stop);
        assertThat(client.reply(Channel.SHELL, running).content().get("ename").asText())
            .isEqualTo("Interrupted");
        for (int i = 0; i < many; i++) {
            assertThat(client.receive(Channel.SHELL, 10_000).content().get("status").asText())
                .isIn("aborted", "ok");
        }
        assertThat(client.silentFor(Channel.SHELL, 50)).isTrue();
    }

    /** A browser that connects again has its old name, and its old connection may still be half open. */
    @Test
    void aClientThatConnectsAgainUnderItsOldNameTakesItOver() {
        final String running = client.execute("sleep 60000");
        try (RawClient again = new RawClient(server.connection(), "", client.session).awaitWelcome()) {
            // A completion does not wait for the cell: its reply tells that the name has moved over.
            final String asked = again.send(Channel.SHELL, "complete_request",
                "{\"code\":\"va\",\"cursor_pos\":2}");
            again.reply(Channel.SHELL, asked);
            again.reply(Channel.CONTROL, again.send(Channel.CONTROL, "interrupt_request", "{}"));
            assertThat(again.reply(Channel.SHELL, running).content().get("ename").asText())
                .as("the reply to the cell that ran meanwhile").isEqualTo("Interrupted");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"hmac-sha256", "hmac-sha512", "hmac-sha1", "hmac-md5"})
    void signsByTheSchemeThatIsAsked(String scheme) throws IOException {
        final ConnectionFile local = ConnectionFile.local("other key");
        final ConnectionFile asked = new ConnectionFile(local.ip(), Ports.ANY, local.key(), scheme,
            Optional.empty(), Optional.empty(), local.json());
        try (KernelServer other = KernelServer.start(asked, new ScriptedInterpreter(), settings());
             RawClient signing = new RawClient(other.connection()).awaitWelcome()) {
            assertAlive(signing);
        }
    }

    @Test
    void withoutAKeyMessagesAreNotSigned() throws IOException {
        try (KernelServer other =
                 KernelServer.start(ConnectionFile.local(""), new ScriptedInterpreter(), settings());
             RawClient plain = new RawClient(other.connection()).awaitWelcome()) {
            assertAlive(plain);
        }
    }

    @Test
    void refusesASchemeItDoesNotKnow() {
        final ConnectionFile local = ConnectionFile.local("k");
        final ConnectionFile odd = new ConnectionFile(local.ip(), Ports.ANY, local.key(), "rot13",
            Optional.empty(), Optional.empty(), local.json());
        assertThatThrownBy(() -> KernelServer.start(odd, new ScriptedInterpreter(), settings()))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("rot13");
    }

    @Test
    void namesTheAddressItCannotBind() {
        final ConnectionFile taken = ConnectionFile.local("k").withPorts(server.connection().ports());
        assertThatThrownBy(() -> KernelServer.start(taken, new ScriptedInterpreter(), settings()))
            .isInstanceOf(IOException.class)
            .hasMessageContaining("tcp://127.0.0.1:" + server.connection().ports().shell());
    }

    @Test
    void encryptsWithCurveAndTurnsAwayThoseWithoutTheKey() throws IOException {
        final ZMQ.Curve.KeyPair pair = ZMQ.Curve.generateKeyPair();
        final ConnectionFile local = ConnectionFile.local("k");
        final Path path = state.resolve("kernel.json");
        Files.writeString(path, local.json().put("curve_publickey", pair.publicKey)
            .put("curve_secretkey", pair.secretKey).toString());
        try (KernelServer secret =
                 KernelServer.start(ConnectionFile.read(path), new ScriptedInterpreter(), settings());
             RawClient knows = new RawClient(secret.connection()).awaitWelcome()) {
            final String id = knows.execute("out secret");
            assertThat(text(knows.published(id), "stdout")).isEqualTo("secret\n");
            final ConnectionFile plain = local.withPorts(secret.connection().ports());
            try (RawClient without = new RawClient(plain)) {
                without.send(Channel.SHELL, "kernel_info_request", "{}");
                assertThat(without.silentFor(Channel.SHELL, 300)).isTrue();
            }
            final String other = ZMQ.Curve.generateKeyPair().publicKey;
            final ConnectionFile wrong = new ConnectionFile(local.ip(), plain.ports(), local.key(),
                local.signatureScheme(), Optional.of(new CurveKeys(other, pair.secretKey)), Optional.empty(),
                local.json());
            try (RawClient guesses = new RawClient(wrong)) {
                guesses.send(Channel.SHELL, "kernel_info_request", "{}");
                assertThat(guesses.silentFor(Channel.SHELL, 300)).isTrue();
            }
            assertAlive(knows);
        }
    }

    @Test
    void echoesHeartbeatsAlsoWhileACellRuns() {
        client.execute("sleep 2000");
        final ZMQ.Context context = ZMQ.context(1);
        try (ZMQ.Socket heart = context.socket(SocketType.REQ)) {
            heart.setLinger(0);
            heart.setReceiveTimeOut(10_000);
            heart.setHandshakeIvl(1_000);
            heart.connect("tcp://127.0.0.1:" + server.connection().ports().heartbeat());
            for (final byte[] beat : List.of("ping".getBytes(), new byte[0], new byte[70_000])) {
                heart.send(beat);
                assertThat(heart.recv()).isEqualTo(beat);
            }
        }
        context.term();
        server.interrupt();
    }

    /** ZMTP 3.0 greeting, then a frame that announces 1 GiB: the connection goes, the kernel stays. */
    @Test
    void aPeerThatAnnouncesAHugeFrameIsTurnedAway() throws IOException {
        try (Socket raw = new Socket(InetAddress.getLoopbackAddress(), server.connection().ports().shell())) {
            final ByteBuffer greeting = ByteBuffer.allocate(64);
            greeting.put((byte) 0xff).putLong(1).put((byte) 0x7f).put((byte) 3).put((byte) 0)
                .put("NULL".getBytes());
            final OutputStream out = raw.getOutputStream();
            out.write(greeting.array());
            final byte[] ready = "\u0005READY\u000bSocket-Type\0\0\0\u0006DEALER".getBytes();
            out.write(new byte[] {4, (byte) ready.length});
            out.write(ready);
            out.write(ByteBuffer.allocate(9).put((byte) 2).putLong(1L << 30).array());
            out.flush();
            raw.setSoTimeout(5_000);
            int read = 0;
            while (read >= 0) {
                read = raw.getInputStream().read(new byte[1_024]);
            }
            assertThat(read).as("closed by the kernel").isEqualTo(-1);
        }
        assertAlive(client);
    }

    @Test
    void whatIsNoZeroMqAtAllDoesNoHarm() throws IOException {
        final List<String> texts =
            List.of("GET / HTTP/1.1\r\nHost: x\r\n\r\n", "\0\0\0\0", "x".repeat(100_000));
        for (final String text : texts) {
            for (final int port : server.connection().ports().byName().values()) {
                try (Socket raw = new Socket(InetAddress.getLoopbackAddress(), port)) {
                    raw.getOutputStream().write(text.getBytes());
                } catch (java.net.SocketException e) {
                    assertThat(e).as("the kernel hung up while we wrote").isNotNull();
                }
            }
        }
        assertAlive(client);
    }
}
