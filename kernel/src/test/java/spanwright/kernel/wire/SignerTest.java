package spanwright.kernel.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.kernel.message.Bytes;

class SignerTest {
    private static final Bytes KEY = Bytes.of("Jefe");
    private static final List<Bytes> DATA = List.of(Bytes.of("what do ya want "), Bytes.of("for "),
        Bytes.of(""), Bytes.of("nothing?"));

    /*
     * Typed from memory of the RFCs and regenerated with Python 3.11:
     * import hmac; hmac.new(b"Jefe", b"what do ya want for nothing?", "sha256").hexdigest()
     */
    /** Key "Jefe", data "what do ya want for nothing?": RFC 2202 and RFC 4231, test case 2 of each hash. */
    @ParameterizedTest(name = "{0}  [{2}]")
    @CsvSource(textBlock = """
        hmac-md5,    750c783e6ab0b503eaa86e310a5db738,                                  RFC 2202 2
        hmac-sha1,   effcdf6ae5eb2fa2d27416d5f184df9c259a7c79,                          RFC 2202 3
        hmac-sha224, a30e01098bc6dbbf45690f3a7e9e6d0f8bbea2a39e6148008fd05e44,          RFC 4231 4.3
        hmac-sha256, 5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843,  RFC 4231 4.3
        hmac-sha384, \
            af45d2e376484031617f78d2b58a6b1b9c7ef464f5a01b47e42ec3736322445e\
            8e2240ca5e69e2c78b3239ecfab21649, RFC 4231 4.3
        hmac-sha512, \
            164b7a7bfcf819e2e395fbe73b56e0a387bd64222e831fd610270cd7ea250554\
            9758bf75c05a994a6d034f65f8f0e6fdcaeab1a34d4a6b4b636e070a38bce737, RFC 4231 4.3
        """)
    void signsAsPublished(String scheme, String printed, String source) {
        final String hex = printed.replace(" ", "");
        final Signer signer = Signer.of(scheme, KEY);
        assertThat(signer.sign(DATA).utf8()).isEqualTo(hex);
        assertThat(signer.accepts(Bytes.of(hex), DATA)).isTrue();
        final String last = hex.endsWith("0") ? "1" : "0";
        assertThat(signer.accepts(Bytes.of(hex.substring(0, hex.length() - 1) + last), DATA)).isFalse();
        assertThat(signer.accepts(Bytes.EMPTY, DATA)).isFalse();
    }

    @Test
    void refusesASchemeItDoesNotKnow() {
        assertThatThrownBy(() -> Signer.of("hmac-sha3", KEY)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("hmac-sha3").hasMessageContaining("hmac-sha256");
        assertThatThrownBy(() -> Signer.of("sha256", KEY)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void withoutAKeyNothingIsSignedOrChecked() {
        final Signer none = Signer.of("hmac-sha256", Bytes.EMPTY);
        assertThat(none.sign(DATA)).isEqualTo(Bytes.EMPTY);
        assertThat(none.accepts(Bytes.of("anything"), DATA)).isTrue();
    }

    @Test
    void signsTheSameFromManyThreads() throws Exception {
        final Signer signer = Signer.of("hmac-sha256", KEY);
        final Bytes expected = signer.sign(DATA);
        final ExecutorService pool = Executors.newFixedThreadPool(4);
        try {
            final List<Callable<Boolean>> tasks = IntStream.range(0, 4).<Callable<Boolean>>mapToObj(t ->
                () -> IntStream.range(0, 2_000).allMatch(i -> signer.sign(DATA).equals(expected))).toList();
            for (final var result : pool.invokeAll(tasks)) {
                assertThat(result.get()).isTrue();
            }
        } finally {
            pool.shutdownNow();
        }
    }
}
