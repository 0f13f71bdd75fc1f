package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import spanwright.kernel.display.Comm;
import spanwright.kernel.display.CommMessage;
import spanwright.kernel.wire.Channel;

@Timeout(20)
class CommTest extends ServerCase {

    private List<RawClient.Received> tell(String type, String content) {
        return client.published(client.send(Channel.SHELL, type, content));
    }

    private String open(String target) {
        final String id = client.send(Channel.SHELL, "comm_info_request",
            target.isEmpty() ? "{}" : "{\"target_name\":\"" + target + "\"}");
        return client.reply(Channel.SHELL, id).content().get("comms").toString();
    }

    @Test
    void aFrontEndOpensSendsAndCloses() {
        client.published(client.execute("comm gauge"));
        final String opening = "{\"comm_id\":\"c1\",\"target_name\":\"gauge\",\"data\":{\"a\":1}}";
        assertThat(types(tell("comm_open", opening))).containsExactly("busy", "idle");
        assertThat(open("")).isEqualTo("{\"c1\":{\"target_name\":\"gauge\"}}");
        assertThat(open("other")).isEqualTo("{}");
        final List<RawClient.Received> all = tell("comm_msg", "{\"comm_id\":\"c1\",\"data\":{\"v\":[1,2]}}");
        assertThat(types(all)).containsExactly("busy", "comm_msg", "idle");
        assertThat(all.get(1).content().get("comm_id").asText()).isEqualTo("c1");
        assertThat(all.get(1).content().get("data").get("echo").toString()).isEqualTo("{\"v\":[1,2]}");
        assertThat(types(tell("comm_close", "{\"comm_id\":\"c1\",\"data\":{}}")))
            .containsExactly("busy", "idle");
        assertThat(open("gauge")).isEqualTo("{}");
        assertThat(types(tell("comm_msg", "{\"comm_id\":\"c1\",\"data\":{}}")))
            .containsExactly("busy", "idle");
    }

    @Test
    void refusesATargetThatNobodyRegistered() {
        final List<RawClient.Received> all =
            tell("comm_open", "{\"comm_id\":\"c9\",\"target_name\":\"nobody\",\"data\":{}}");
        assertThat(types(all)).containsExactly("busy", "comm_close", "idle");
        assertThat(all.get(1).content().get("comm_id").asText()).isEqualTo("c9");
        assertThat(open("")).isEqualTo("{}");
    }

    @Test
    void theKernelOpensSendsBuffersAndCloses() {
        final Comm comm = server.comms().open("gauge",
            new CommMessage(Map.of("state", Map.of()), Map.of("version", "2.1.0"), List.of()));
        final RawClient.Received opened = next("comm_open");
        assertThat(opened.content().get("target_name").asText()).isEqualTo("gauge");
        assertThat(opened.metadata().get("version").asText()).isEqualTo("2.1.0");
        comm.send(new CommMessage(Map.of("x", 1), Map.of(),
            List.of(ByteBuffer.wrap(new byte[] {7, 8}), ByteBuffer.wrap(new byte[0]))));
        final RawClient.Received sent = next("comm_msg");
        assertThat(sent.buffers()).hasSize(2);
        assertThat(sent.buffers().get(0)).containsExactly(7, 8);
        comm.close();
        comm.close();
        assertThat(next("comm_close").content().get("comm_id").asText()).isEqualTo(comm.id());
        assertThat(client.silentFor(Channel.IOPUB, 100)).as("closed once").isTrue();
    }

    private RawClient.Received next(String type) {
        RawClient.Received r = client.receive(Channel.IOPUB, 2_000);
        while (!r.type().equals(type)) {
            r = client.receive(Channel.IOPUB, 2_000);
        }
        return r;
    }

    @Test
    void whatAHandlerThrowsIsShown() {
        client.published(client.execute("badcomm gauge"));
        tell("comm_open", "{\"comm_id\":\"c1\",\"target_name\":\"gauge\",\"data\":{}}");
        final List<RawClient.Received> all = tell("comm_msg", "{\"comm_id\":\"c1\",\"data\":{}}");
        assertThat(text(all, "stderr")).contains("handler broke");
        assertAlive(client);
    }

    @Test
    void messagesOfAFrontEndWaitForTheRunningCell() {
        client.published(client.execute("comm gauge"));
        tell("comm_open", "{\"comm_id\":\"c1\",\"target_name\":\"gauge\",\"data\":{}}");
        final String cell = client.execute("sleep 100\nout done");
        final String message =
            client.send(Channel.SHELL, "comm_msg", "{\"comm_id\":\"c1\",\"data\":{\"v\":1}}");
        assertThat(types(client.published(cell))).contains("stream");
        assertThat(types(client.published(message))).containsExactly("busy", "comm_msg", "idle");
    }
}
