package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spanwright.kernel.wire.Channel;

@Timeout(20)
class ExecuteTest extends ServerCase {

    private JsonNode reply(String id) {
        return client.reply(Channel.SHELL, id).content();
    }

    @Test
    void publishesInOrderUnderTheHeaderOfTheRequest() {
        final String id = client.execute("out hello\nvalue 42");
        final RawClient.Received reply = client.reply(Channel.SHELL, id);
        assertThat(reply.content().toString()).isEqualTo(
            "{\"status\":\"ok\",\"execution_count\":1,\"payload\":[],\"user_expressions\":{}}");
        assertThat(reply.metadata().get("started").asText()).startsWith("2");
        final List<RawClient.Received> all = client.published(id);
        assertThat(types(all)).containsExactly("busy", "execute_input", "stream", "execute_result", "idle");
        assertThat(all.get(1).content().toString())
            .isEqualTo("{\"code\":\"out hello\\nvalue 42\",\"execution_count\":1}");
        assertThat(all.get(3).content().get("data").toString())
            .isEqualTo("{\"text/plain\":\"42\",\"text/html\":\"<b>42</b>\"}");
        assertThat(all).allSatisfy(m -> assertThat(m.topic()).isEqualTo(m.type()));
        assertThat(all).allSatisfy(m -> assertThat(m.parent().get("session").asText())
            .isEqualTo(client.session));
    }

    @Test
    void countsOnlyWhatIsStored() {
        assertThat(count("value 1", "")).isEqualTo(1);
        assertThat(count("value 1", ",\"store_history\":false")).isEqualTo(1);
        assertThat(count("value 1", ",\"silent\":true")).isEqualTo(1);
        assertThat(count("fail x", "")).isEqualTo(2);
        assertThat(count("", ",\"silent\":true")).isEqualTo(2);
        assertThat(count("label", "")).isEqualTo(3);
    }

    private int count(String code, String more) {
        return reply(client.execute(code, more)).get("execution_count").asInt();
    }

    @Test
    void aSilentCellPublishesNothingButItsStatus() {
        final String id =
            client.execute("out hello\nshow x\nclear\ndisplay a\nupdate a\nvalue 42", ",\"silent\":true");
        assertThat(reply(id).get("status").asText()).isEqualTo("ok");
        assertThat(types(client.published(id))).containsExactly("busy", "idle");
        final String failing = client.execute("fail x", ",\"silent\":true");
        assertThat(reply(failing).get("ename").asText()).isEqualTo("Failed");
        assertThat(types(client.published(failing))).containsExactly("busy", "idle");
    }

    @Test
    void evaluatesUserExpressionsAfterTheCodeEachWithItsOwnStatus() {
        final String id = client.execute("value 1", ",\"user_expressions\":"
            + "{\"good\":\"out unseen\\nvalue 2\",\"bad\":\"fail no\",\"none\":\"out x\"}");
        final JsonNode results = reply(id).get("user_expressions");
        assertThat(results.get("good").toString()).isEqualTo("{\"status\":\"ok\",\"data\":"
            + "{\"text/plain\":\"2\",\"text/html\":\"<b>2</b>\"},\"metadata\":{}}");
        assertThat(results.get("bad").get("status").asText()).isEqualTo("error");
        assertThat(results.get("bad").get("evalue").asText()).isEqualTo("no");
        assertThat(results.get("none").get("data")).isEmpty();
        assertThat(types(client.published(id)))
            .containsExactly("busy", "execute_input", "execute_result", "idle");
    }

    @Test
    void aFailureIsOneErrorMessageAndAnErrorReply() {
        final String id = client.execute("fail 250 ohm is over the limit");
        final JsonNode reply = reply(id);
        assertThat(reply.get("status").asText()).isEqualTo("error");
        assertThat(reply.get("evalue").asText()).isEqualTo("250 ohm is over the limit");
        assertThat(reply.get("traceback").get(0).asText()).isEqualTo("cell [1]");
        final List<RawClient.Received> all = client.published(id);
        assertThat(types(all)).containsExactly("busy", "execute_input", "error", "idle");
        assertThat(all.get(2).content().get("ename").asText()).isEqualTo("Failed");
    }

    @Test
    void aFailureAbortsWhatIsQueuedBehindIt() {
        final List<String> ids = new ArrayList<>();
        ids.add(client.execute("sleep 50\nfail x"));
        ids.add(client.execute("value 1"));
        final String question = client.send(Channel.SHELL, "comm_info_request", "{}");
        ids.add(client.execute("value 2"));
        ids.add(client.execute("value 3", ",\"stop_on_error\":false"));
        final List<String> statuses = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            final RawClient.Received r = client.receive(Channel.SHELL, 5_000);
            statuses.add(r.content().get("status").asText());
            assertThat(r.parentId().equals(question)).isEqualTo(r.type().equals("comm_info_reply"));
        }
        assertThat(statuses).containsExactly("error", "aborted", "ok", "aborted", "aborted");
        for (final String id : ids.subList(1, 4)) {
            assertThat(types(client.published(id))).containsExactly("busy", "idle");
        }
        assertThat(reply(client.execute("value 4")).get("status").asText()).isEqualTo("ok");
    }

    @Test
    void aRequestSentAfterTheErrorReplyIsNeverAborted() {
        for (int i = 0; i < 50; i++) {
            assertThat(reply(client.execute("fail x")).get("status").asText()).isEqualTo("error");
            assertThat(reply(client.execute("value 1")).get("status").asText()).isEqualTo("ok");
        }
    }

    @Test
    void withoutStopOnErrorTheQueueGoesOn() {
        final String failing = client.execute("sleep 30\nfail x", ",\"stop_on_error\":false");
        final String next = client.execute("value 1");
        assertThat(reply(failing).get("status").asText()).isEqualTo("error");
        assertThat(reply(next).get("status").asText()).isEqualTo("ok");
    }

    @Test
    void anInterruptedCellAbortsWhatIsQueuedBehindIt() throws InterruptedException {
        final String running = client.execute("sleep 60000");
        final String next = client.execute("value 1");
        Thread.sleep(100);
        client.send(Channel.CONTROL, "interrupt_request", "{}");
        assertThat(reply(running).get("ename").asText()).isEqualTo("Interrupted");
        assertThat(reply(next).get("status").asText()).isEqualTo("aborted");
    }

    @ParameterizedTest
    @ValueSource(strings = {"boom", "stackoverflow"})
    void aBugOfTheEngineIsAnswered(String verb) {
        final String id = client.execute(verb);
        assertThat(reply(id).get("status").asText()).isEqualTo("error");
        assertThat(types(client.published(id))).startsWith("busy").endsWith("idle");
        assertThat(reply(client.execute("value 1")).get("status").asText()).isEqualTo("ok");
    }

    @Test
    void pagesComeAsPayload() {
        assertThat(reply(client.execute("page long text")).get("payload").toString())
            .isEqualTo("[{\"source\":\"page\",\"start\":0,\"data\":{\"text/plain\":\"long text\"}}]");
    }

    @Test
    void numbersThatAreNoJsonArriveAsNull() {
        final String id = client.execute("json x");
        reply(id);
        final JsonNode json = client.published(id).get(2).content().get("data").get("application/json");
        assertThat(json.get("nan").isNull()).isTrue();
        assertThat(json.get("inf").isNull()).isTrue();
        assertThat(json.get("list").toString()).isEqualTo("[1,\"two\"]");
    }

    @Test
    void runsOnControlToo() {
        final String id = client.send(Channel.CONTROL, "execute_request", "{\"code\":\"value 7\"}");
        assertThat(client.reply(Channel.CONTROL, id).content().get("status").asText()).isEqualTo("ok");
        assertThat(types(client.published(id)))
            .containsExactly("busy", "execute_input", "execute_result", "idle");
    }
}
