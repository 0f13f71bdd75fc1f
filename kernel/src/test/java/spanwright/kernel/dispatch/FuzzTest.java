package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import spanwright.kernel.wire.Channel;

/**
 * Broken messages through the sockets of a running kernel, in number: no delimiter, frames missing, bad
 * signature, sent again, signed but not JSON, of the wrong types, huge, behind 0 to 5 idents of their own.
 * What is owed: no reply, nothing published, the kernel alive, its memory bounded.
 */
class FuzzTest extends ServerCase {
    private static final int MESSAGES = 50_000;
    private static final int HUGE = 1;
    private final Random random = new Random(20_240_502);
    private List<byte[]> valid;

    private byte[] noise(int most) {
        final byte[] bytes = new byte[random.nextInt(most + 1)];
        random.nextBytes(bytes);
        return bytes;
    }

    private List<byte[]> request() {
        return client.frames(header("execute_request"), "{}", "{}", "{\"code\":\"value 1\"}");
    }

    private String header(String type) {
        return client.header(type).toString();
    }

    /** Ways to break a message; each gives one that must be refused. */
    private final List<Function<List<byte[]>, List<byte[]>>> faults = List.of(
        m -> m.subList(1, m.size()),
        m -> m.subList(0, 1 + random.nextInt(m.size() - 1)),
        m -> with(m, 1, "0".repeat(64).getBytes(StandardCharsets.US_ASCII)),
        m -> with(m, 1, noise(64)),
        m -> with(m, 2 + random.nextInt(4), noise(200)),
        m -> with(m, 2, flipped(m.get(2))),
        m -> valid,
        m -> List.of(noise(30)),
        m -> List.of(new byte[0]),
        m -> client.frames(header("execute_request"), "{}", "{}", "{\"code\":"),
        m -> client.frames(header("execute_request"), "{}", "{}", "{\"code\":NaN}"),
        m -> client.frames(header("execute_request"), "{}", "{}", "[]"),
        m -> client.frames(header("execute_request"), "{}", "{}", "{\"code\":" + random.nextInt() + "}"),
        m -> client.frames(header("execute_request"), "{}", "{}", "{\"code\":\"1\",\"silent\":\"x\"}"),
        m -> client.frames(header("execute_request"), "null", "{}", "{\"code\":\"1\"}"),
        m -> client.frames(header("complete_request"), "{}", "{}", "{\"code\":\"1\",\"cursor_pos\":1e99}"),
        m -> client.frames(header("history_request"), "{}", "{}", "{\"hist_access_type\":[]}"),
        m -> client.frames(header("comm_msg"), "{}", "{}", "{\"comm_id\":{}}"),
        m -> client.frames(header("input_reply"), "{}", "{}", "{\"value\":\"x\"}"),
        m -> client.frames("[]", "{}", "{}", "{}"),
        m -> client.frames("{\"msg_type\":\"kernel_info_request\",\"n\":" + random.nextLong() + "}",
            "{}", "{}", "{}"),
        m -> client.frames("{\"msg_id\":" + random.nextInt() + ",\"msg_type\":\"kernel_info_request\"}", "{}",
            "{}", "{}"),
        m -> client.frames(header("kernel_info_request"), "{}", "[" + random.nextLong() + "]", "{}"),
        m -> client.frames(header("execute_request"), "{}", "{}", "{\"code\":" + "[".repeat(2_000) + "}"));

    private static List<byte[]> with(List<byte[]> message, int at, byte[] frame) {
        final List<byte[]> changed = new ArrayList<>(message);
        changed.set(at, frame);
        return changed;
    }

    private byte[] flipped(byte[] frame) {
        final byte[] changed = frame.clone();
        changed[random.nextInt(changed.length)] ^= (byte) (1 << random.nextInt(8));
        return changed;
    }

    @Test
    @Timeout(60)
    void fiftyThousandBrokenMessagesGetNoAnswerAndDoNoHarm() throws InterruptedException {
        valid = request();
        client.sendFrames(Channel.SHELL, valid);
        client.receive(Channel.SHELL, 5_000);
        final long before = usedAfterCollection();
        for (int i = 0; i < MESSAGES; i++) {
            final List<byte[]> message = new ArrayList<>();
            for (int idents = random.nextInt(6); idents > 0; idents--) {
                message.add(noise(20));
            }
            message.addAll(faults.get(i % faults.size()).apply(request()));
            client.sendFrames(i % 3 == 0 ? Channel.CONTROL : Channel.SHELL, message);
            if (i % 10_000 == 9_999) {
                assertAlive(client);
            }
        }
        for (int i = 0; i < HUGE; i++) {
            client.sendFrames(Channel.SHELL,
                with(request(), 5, "x".repeat(50_000_000).getBytes(StandardCharsets.US_ASCII)));
        }
        awaitDrops(MESSAGES + HUGE);
        assertAlive(client);
        final String id = client.execute("value 1");
        assertThat(client.reply(Channel.SHELL, id).content().get("execution_count").asInt())
            .as("no broken message was run").isEqualTo(2);
        assertThat(client.silentFor(Channel.SHELL, 100)).as("no reply").isTrue();
        assertThat(client.silentFor(Channel.CONTROL, 10)).as("no reply").isTrue();
        assertThat(published()).as("status messages of the 1 + 5 + 1 + 1 good requests")
            .isEqualTo(2 * 8 + 2 * 2);
        assertThat(usedAfterCollection() - before).as("growth in bytes").isLessThan(40 << 20);
        assertThat(log.size()).as("bytes of log").isLessThan(20_000);
    }

    private void awaitDrops(int expected) throws InterruptedException {
        for (int i = 0; i < 300 && server.dropped() < expected; i++) {
            Thread.sleep(100);
        }
        assertThat(server.dropped()).as("messages dropped").isEqualTo(expected);
    }

    /** Everything that was published until now, but welcomes. */
    private int published() {
        int n = 0;
        while (!client.silentFor(Channel.IOPUB, 200)) {
            n++;
        }
        return n;
    }

    private static long usedAfterCollection() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
