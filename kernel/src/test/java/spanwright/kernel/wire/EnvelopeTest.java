package spanwright.kernel.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Event;
import spanwright.kernel.message.Json;
import spanwright.kernel.message.MalformedMessageException;
import spanwright.kernel.message.Message;
import spanwright.kernel.message.Request;

/** Framing as in "Messaging in Jupyter", The Wire Protocol. */
class EnvelopeTest {
    private static final Bytes DELIMITER = Bytes.of("<IDS|MSG>");
    private static final String HEADER =
        "{\"msg_id\":\"1\", \"msg_type\":\"kernel_info_request\",  \"session\":\"s\", \"version\":\"5.3\"}";
    private final Signer signer = Signer.of("hmac-sha256", Bytes.of("key"));

    private List<Bytes> message(int idents, String header, String content, int buffers) {
        final List<Bytes> signed =
            List.of(Bytes.of(header), Bytes.of("{}"), Bytes.of("{}"), Bytes.of(content));
        final List<Bytes> frames = new ArrayList<>();
        for (int i = 0; i < idents; i++) {
            frames.add(Bytes.of("ident" + i));
        }
        frames.add(DELIMITER);
        frames.add(signer.sign(signed));
        frames.addAll(signed);
        for (int i = 0; i < buffers; i++) {
            frames.add(Bytes.of(new byte[] {(byte) i}));
        }
        return frames;
    }

    private Message open(List<Bytes> frames) throws MalformedMessageException {
        return Envelope.open(frames, signer, new ReplayGuard());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 5})
    void findsTheDelimiterBehindAnyNumberOfIdents(int idents) throws MalformedMessageException {
        final Message message = open(message(idents, HEADER, "{}", 2));
        assertThat(message.idents()).hasSize(idents);
        assertThat(message.headerOctets().utf8()).as("the header, byte for byte").isEqualTo(HEADER);
        assertThat(message.buffers()).containsExactly(Bytes.of(new byte[] {0}), Bytes.of(new byte[] {1}));
        assertThat(Request.of(message)).isEqualTo(new Request.KernelInfo());
    }

    @Test
    void signsTheFourPartsAndNotTheBuffers() throws MalformedMessageException {
        final List<Bytes> frames = message(1, HEADER, "{}", 1);
        frames.set(frames.size() - 1, Bytes.of("another buffer"));
        assertThat(open(frames).buffers()).containsExactly(Bytes.of("another buffer"));
        frames.set(5, Bytes.of("{ }"));
        assertThatThrownBy(() -> open(frames)).isInstanceOf(MalformedMessageException.class)
            .hasMessage("wrong signature");
    }

    @Test
    void refusesAMessageThatIsSentAgain() throws MalformedMessageException {
        final ReplayGuard guard = new ReplayGuard();
        final List<Bytes> frames = message(1, HEADER, "{}", 0);
        Envelope.open(frames, signer, guard);
        assertThatThrownBy(() -> Envelope.open(frames, signer, guard))
            .isInstanceOf(MalformedMessageException.class).hasMessageContaining("sent again");
    }

    @Test
    void closesWithParentAsItCame() throws MalformedMessageException {
        final List<Bytes> frames = Envelope.close(List.of(Bytes.of("topic")), Bytes.of(HEADER), "session",
            new Event.Stream("stdout", "20 \u00b0C"), Json.object(), List.of(Bytes.of("b")), signer);
        assertThat(frames.get(0).utf8()).isEqualTo("topic");
        assertThat(frames.get(4).utf8()).isEqualTo(HEADER);
        assertThat(frames.get(6).utf8()).isEqualTo("{\"name\":\"stdout\",\"text\":\"20 \u00b0C\"}");
        assertThat(open(frames).header().type()).isEqualTo("stream");
    }

    /**
     * 100 000 messages spoiled in every way that can be told apart: a frame dropped, cut, doubled, replaced,
     * swapped, a bit turned, the delimiter moved. Whatever comes of one, it is a clear refusal or a message
     * whose signature is right; nothing else is thrown.
     */
    @Test
    void refusesEveryMessageThatWasSpoiled() {
        final Random random = new Random(20_240_501);
        final ReplayGuard guard = new ReplayGuard();
        final String content = "{\"code\":\"1+1\",\"user_expressions\":{\"a\":\"b\"}}";
        final List<Bytes> whole = message(2, HEADER, content, 1);
        int refused = 0;
        for (int i = 0; i < 100_000; i++) {
            final List<Bytes> spoiled = new ArrayList<>(whole);
            spoil(spoiled, random);
            try {
                Envelope.open(spoiled, signer, guard);
                final int d = spoiled.indexOf(DELIMITER);
                assertThat(signer.sign(spoiled.subList(d + 2, d + 6))).isEqualTo(spoiled.get(d + 1));
            } catch (MalformedMessageException e) {
                assertThat(e.getMessage()).isNotBlank();
                refused++;
            }
        }
        assertThat(refused).as("refused of 100 000, the one whole message passes once").isGreaterThan(99_990);
        assertThat(guard.size()).isLessThanOrEqualTo(1);
    }

    private static void spoil(List<Bytes> frames, Random random) {
        final int at = random.nextInt(frames.size());
        final byte[] bytes = frames.get(at).shared().clone();
        switch (random.nextInt(7)) {
            case 0 -> frames.remove(at);
            case 1 -> frames.subList(at, frames.size()).clear();
            case 2 -> frames.add(at, frames.get(random.nextInt(frames.size())));
            case 3 -> {
                random.nextBytes(bytes);
                frames.set(at, Bytes.of(bytes));
            }
            case 4 -> java.util.Collections.swap(frames, at, random.nextInt(frames.size()));
            case 5 -> {
                if (bytes.length > 0) {
                    bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
                }
                frames.set(at, Bytes.of(bytes));
            }
            default -> frames.set(at,
                Bytes.of(java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length + 1))));
        }
    }
}
