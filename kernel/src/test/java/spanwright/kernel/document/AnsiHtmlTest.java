package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Chars;
import org.jsoup.Jsoup;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AnsiHtmlTest {
    /** Parameters of SGR as ECMA-48, 8.3.117, lists them; E stands for the escape character. */
    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = '|', textBlock = """
        a < b & c              | a &lt; b &amp; c
        E[31mredE[0m plain     | {ansi-red:red} plain
        E[1;32mxE[22myE[39mz   | {ansi-green ansi-bold:x}{ansi-green:y}z
        E[94mblueE[m.          | {ansi-blue:blue}.
        E[37;41mxE[49my        | {ansi-white ansi-on-red:x}{ansi-white:y}
        E[38;5;1mx             | x
        E[38;2;4;1;31mx        | x
        E[3mxE[4myE[23mz       | {ansi-italic:x}{ansi-italic ansi-underlined:y}{ansi-underlined:z}
        aE[2Kb                 | ab
        aE]0;titleGb           | ab
        E[31m<script>          | {ansi-red:&lt;script&gt;}
        """)
    void coloursBecomeClassesAndTextIsEscaped(String ansi, String html) {
        final String text = ansi.replace("E[", "\u001b[").replace("E]", "\u001b]").replace('G', '\u0007');
        assertThat(AnsiHtml.html(text))
            .isEqualTo(html.replaceAll("\\{([^:]*):([^}]*)}", "<span class=\"$1\">$2</span>"));
    }

    @Property
    void noTextBecomesAnElementOtherThanSpan(
            @ForAll @Chars({'<', '>', '&',
                '"', '\'', 'a', '\u001b', '[', 'm', '3', '1', ';', ']', '\u0007', '\n'})
            String text) {
        final var body = Jsoup.parseBodyFragment(AnsiHtml.html(text)).body();
        assertThat(body.select("*:not(body):not(span)")).isEmpty();
    }
}
