package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.kernel.wire.Channel;

@Timeout(20)
class StdinTest extends ServerCase {

    private RawClient.Received question() {
        return client.receive(Channel.STDIN, 5_000);
    }

    private void answer(String value) {
        client.send(Channel.STDIN, "input_reply", "{\"value\":" + RawClient.JSON.valueToTree(value) + "}");
    }

    @ParameterizedTest
    @CsvSource({"ask, false", "secret, true"})
    void asksTheClientThatSentTheRequest(String verb, boolean password) {
        final String id = client.execute(verb + " how many ohms?");
        final RawClient.Received asked = question();
        assertThat(asked.type()).isEqualTo("input_request");
        assertThat(asked.parentId()).isEqualTo(id);
        assertThat(asked.content().toString())
            .isEqualTo("{\"prompt\":\"how many ohms?\",\"password\":" + password + "}");
        answer("250");
        client.reply(Channel.SHELL, id);
        assertThat(text(client.published(id), "stdout")).isEqualTo("answer 250\n");
    }

    @Test
    void endOfInputIsNoLine() {
        final String id = client.execute("ask x");
        question();
        answer("\u0004");
        client.reply(Channel.SHELL, id);
        assertThat(text(client.published(id), "stdout")).isEqualTo("answer END\n");
    }

    @Test
    void ignoresAnAnswerThatCameBeforeTheQuestion() throws InterruptedException {
        answer("stale");
        Thread.sleep(100);
        final String id = client.execute("ask x");
        question();
        answer("fresh");
        client.reply(Channel.SHELL, id);
        assertThat(text(client.published(id), "stdout")).isEqualTo("answer fresh\n");
    }

    @Test
    void ignoresAnAnswerOfAnotherClient() throws InterruptedException {
        try (RawClient other = new RawClient(server.connection()).awaitWelcome()) {
            final String id = client.execute("ask x");
            question();
            other.send(Channel.STDIN, "input_reply", "{\"value\":\"theirs\"}");
            Thread.sleep(100);
            answer("mine");
            client.reply(Channel.SHELL, id);
            assertThat(text(client.published(id), "stdout")).isEqualTo("answer mine\n");
        }
    }

    @Test
    void isRefusedWhereTheRequestDoesNotAllowIt() {
        final String id = client.execute("ask x", ",\"allow_stdin\":false");
        assertThat(client.reply(Channel.SHELL, id).content().get("evalue").asText())
            .isEqualTo("this front end does not allow a cell to ask for input");
        assertThat(client.silentFor(Channel.STDIN, 50)).isTrue();
    }

    @Test
    void anInterruptEndsTheQuestion() {
        final String id = client.execute("ask x");
        question();
        client.send(Channel.CONTROL, "interrupt_request", "{}");
        assertThat(client.reply(Channel.SHELL, id).content().get("ename").asText()).isEqualTo("Interrupted");
        final String next = client.execute("ask y");
        question();
        answer("again");
        client.reply(Channel.SHELL, next);
        assertThat(text(client.published(next), "stdout")).isEqualTo("answer again\n");
    }

    @Test
    void textBeforeTheQuestionIsSentBeforeIt() {
        client.execute("out before\nask x");
        RawClient.Received r = client.receive(Channel.IOPUB, 2_000);
        while (!r.type().equals("stream")) {
            r = client.receive(Channel.IOPUB, 2_000);
        }
        assertThat(r.content().get("text").asText()).isEqualTo("before\n");
        question();
        server.interrupt();
    }
}
