package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TerminalTextTest {
    /**
     * Carriage return and backspace as ECMA-48 defines CR (8.3.15) and BS (8.3.5): they move, they
     * erase nothing.
     */
    @ParameterizedTest(name = "{0} shows {1}")
    @CsvSource({
        "plain, plain",
        "abcRx, xbc",
        "abRabcd, abcd",
        "50 %R100 %N, 100 %N",
        "abBx, ax",
        "BBa, a",
        "aRNbRc, aNc",
        "RR, ''",
    })
    void laterCharactersStandOverEarlierOnes(String written, String shown) {
        assertThat(TerminalText.settled(controls(written))).isEqualTo(controls(shown));
    }

    private static String controls(String text) {
        return text.replace('R', '\r').replace('N', '\n').replace('B', '\b');
    }
}
