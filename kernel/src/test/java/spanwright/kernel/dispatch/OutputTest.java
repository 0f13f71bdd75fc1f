package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import spanwright.kernel.wire.Channel;

@Timeout(30)
class OutputTest extends ServerCase {

    private List<RawClient.Received> run(String code) {
        final String id = client.execute(code);
        assertThat(client.reply(Channel.SHELL, id).content().get("status").asText()).isEqualTo("ok");
        return client.published(id);
    }

    @Test
    void keepsTheOrderOfStreamsAndDisplays() {
        final List<RawClient.Received> all = run("out a\nout b\nerr c\nout d\nshow e\nout f\nvalue g");
        assertThat(text(all, "stdout")).isEqualTo("a\nb\nd\nf\n");
        assertThat(text(all, "stderr")).isEqualTo("c\n");
        assertThat(all.stream().filter(m -> !m.type().equals("status") && !m.type().equals("execute_input"))
            .map(m -> m.type().equals("stream") ? m.content().get("name").asText() : m.type())
            .collect(Collectors.joining(" ")).replaceAll("(stdout )+", "stdout "))
            .isEqualTo("stdout stderr stdout display_data stdout execute_result");
    }

    /**
     * Measured on the reference kernel: 3 messages for 100 000 lines; here at most 20, and every line once.
     */
    @Test
    void gathersAHundredThousandLinesIntoFewMessages() {
        final List<RawClient.Received> all = run("lines 100000");
        assertThat(text(all, "stdout"))
            .isEqualTo(IntStream.range(0, 100_000).mapToObj(i -> i + "\n").collect(Collectors.joining()));
        assertThat(all.size()).as("messages").isLessThanOrEqualTo(23);
    }

    @Test
    void sendsTextWhileTheCellRuns() {
        final String id = client.execute("out early\nsleep 60000");
        RawClient.Received r = client.receive(Channel.IOPUB, 2_000);
        while (!r.type().equals("stream")) {
            r = client.receive(Channel.IOPUB, 2_000);
        }
        assertThat(r.content().get("text").asText()).isEqualTo("early\n");
        server.interrupt();
        client.reply(Channel.SHELL, id);
    }

    @Test
    void carriesTenMegabytesInOnePiece() {
        assertThat(text(run("big 10000000"), "stdout")).hasSize(10_000_000);
    }

    @Test
    void cutsAnEndlessStreamAndSaysSoOnce() {
        final StringBuilder code = new StringBuilder();
        for (int i = 0; i < 20; i++) {
            code.append("big 1000000\n");
        }
        final List<RawClient.Received> all = run(code + "err not seen\nvalue seen");
        assertThat(text(all, "stdout")).hasSize(16 << 20);
        assertThat(text(all, "stderr")).isEqualTo("\n[more than 16777216 characters of text from one cell:"
            + " the rest is not sent; write it to a file instead]\n");
        assertThat(types(all)).contains("execute_result");
        assertThat(text(run("out next"), "stdout")).as("the next cell begins anew").isEqualTo("next\n");
    }

    /** Past the usual limit of 1 000 messages for one that does not read. */
    @Test
    void aSlowReaderLosesNothing() {
        final String id = client.execute("out a\nerr b\n".repeat(6_000));
        client.reply(Channel.SHELL, id);
        final List<RawClient.Received> all = client.published(id);
        assertThat(text(all, "stdout")).isEqualTo("a\n".repeat(6_000));
        assertThat(text(all, "stderr")).isEqualTo("b\n".repeat(6_000));
    }

    @Test
    void showsAndUpdatesUnderAnId() {
        final List<RawClient.Received> all = run("display bar\nupdate bar\nout x");
        assertThat(types(all)).containsExactly("busy", "execute_input", "display_data", "update_display_data",
            "stream", "idle");
        assertThat(all.get(2).content().get("transient").get("display_id").asText()).isEqualTo("bar");
        assertThat(all.get(3).content().get("transient").get("display_id").asText()).isEqualTo("bar");
        assertThat(all.get(3).content().get("data").get("text/plain").asText()).isEqualTo("new bar");
    }

    @Test
    void ofUpdatesFasterThanTheyAreSentTheLatestCounts() {
        final StringBuilder code = new StringBuilder("display bar\n");
        for (int i = 0; i < 2_000; i++) {
            code.append("update bar\n");
        }
        final List<RawClient.Received> all = run(code.toString());
        assertThat(types(all)).contains("update_display_data");
        assertThat(all.size()).as("messages").isLessThan(100);
        assertThat(all.get(all.size() - 2).type()).as("the last state arrives")
            .isEqualTo("update_display_data");
    }

    @Test
    void clearsInTheOrderItWasAsked() {
        final List<RawClient.Received> all = run("out a\nclear wait\nout b\nclear\nshow c");
        assertThat(types(all)).containsExactly("busy", "execute_input", "stream", "clear_output", "stream",
            "clear_output", "display_data", "idle");
        assertThat(all.get(3).content().get("wait").asBoolean()).isTrue();
        assertThat(all.get(5).content().get("wait").asBoolean()).isFalse();
    }

    @Test
    void aThreadThatOutlivesItsCellKeepsItsHeader() {
        final String first = client.execute("late after the end");
        client.reply(Channel.SHELL, first);
        client.published(first);
        final String second = client.execute("sleep 400\nout mine");
        RawClient.Received r = client.receive(Channel.IOPUB, 2_000);
        while (!r.type().equals("stream")) {
            r = client.receive(Channel.IOPUB, 2_000);
        }
        assertThat(r.content().get("text").asText()).isEqualTo("after the end\n");
        assertThat(r.parentId()).isEqualTo(first);
        assertThat(text(client.published(second), "stdout")).isEqualTo("mine\n");
    }
}
