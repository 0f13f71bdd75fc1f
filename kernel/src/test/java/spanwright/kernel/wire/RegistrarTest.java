package spanwright.kernel.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Json;

/** The client's side of JEP 66: a ROUTER that takes announcements and acknowledges them. */
@Timeout(20)
class RegistrarTest {
    private static final Bytes KEY = Bytes.of("key");

    private final CompletableFuture<Void> done = new CompletableFuture<>();

    /** A client that signs one acknowledgement by each of the keys; returns the content it received. */
    private CompletableFuture<String> client(CompletableFuture<Integer> port, List<Bytes> keys) {
        return CompletableFuture.supplyAsync(() -> {
            final ZMQ.Context context = ZMQ.context(1);
            try (ZMQ.Socket router = context.socket(SocketType.ROUTER)) {
                router.setLinger(0);
                router.setReceiveTimeOut(10_000);
                port.complete(router.bindToRandomPort("tcp://127.0.0.1"));
                final List<byte[]> frames = new ArrayList<>(List.of(router.recv()));
                while (router.hasReceiveMore()) {
                    frames.add(router.recv());
                }
                final Bytes content = Bytes.of(frames.get(3));
                assertThat(new String(frames.get(1))).isEqualTo("<IDS|MSG>");
                assertThat(Signer.of("hmac-sha256", KEY).accepts(Bytes.of(frames.get(2)), List.of(content)))
                    .isTrue();
                for (final Bytes key : keys) {
                    final Bytes receipt = Bytes.of("ACK");
                    router.send(frames.get(0), ZMQ.SNDMORE);
                    router.send("<IDS|MSG>", ZMQ.SNDMORE);
                    router.send(Signer.of("hmac-sha256", key).sign(List.of(receipt)).shared(), ZMQ.SNDMORE);
                    router.send(receipt.shared());
                }
                done.join();
                return content.utf8();
            } finally {
                context.term();
            }
        });
    }

    private static void announce(int port, int millis) throws IOException {
        Registrar.announce(ConnectionFile.local("key").withPorts(new Ports(1, 2, 3, 4, 5)),
            new ConnectionFile.Registration("127.0.0.1", port, "kernel-7"), millis);
    }

    @Test
    void announcesThePortsAndTakesASignedReceiptOnly() throws Exception {
        final CompletableFuture<Integer> port = new CompletableFuture<>();
        final CompletableFuture<String> content = client(port, List.of(Bytes.of("wrong key"), KEY));
        announce(port.get(), 10_000);
        done.complete(null);
        assertThat(Json.readObject("announcement", Bytes.of(content.get())).toString())
            .isEqualTo("{\"kernel_id\":\"kernel-7\",\"shell_port\":\"1\",\"iopub_port\":\"2\","
                + "\"stdin_port\":\"3\",\"control_port\":\"4\",\"hb_port\":\"5\"}");
    }

    @Test
    void givesUpWithoutARightReceipt() throws Exception {
        final CompletableFuture<Integer> port = new CompletableFuture<>();
        final CompletableFuture<String> content = client(port, List.of(Bytes.of("wrong key")));
        final int bound = port.get();
        assertThatThrownBy(() -> announce(bound, 1_500)).isInstanceOf(IOException.class)
            .hasMessageContaining("127.0.0.1:" + bound + " has not acknowledged the ports within 1500 ms");
        done.complete(null);
        assertThat(content.get()).contains("kernel-7");
    }
}
