package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Chars;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;

class JavaHtmlTest {
    /** Quotes as themselves: escaping them is right too, but hard to read here. */
    private static String html(String source) {
        return JavaHtml.html(source).replace("&quot;", "\"").replace("&apos;", "'");
    }

    @Test
    void keywordsTextNumbersAndCommentsAreToldApart() {
        assertThat(html("var n = 0.5e-3; // <b>\nf(\"a\\\"b\", 'c', x1)")).isEqualTo(
            "<span class=\"keyword\">var</span> n = <span class=\"number\">0.5e-3</span>; "
                + "<span class=\"comment\">// &lt;b&gt;</span>\n"
                + "f(<span class=\"string\">\"a\\\"b\"</span>, <span class=\"string\">'c'</span>, x1)");
    }

    @Test
    void aTextBlockIsOneText() {
        assertThat(html("\"\"\"\nint \"x\"\n\"\"\".strip()"))
            .isEqualTo("<span class=\"string\">\"\"\"\nint \"x\"\n\"\"\"</span>.strip()");
    }

    @Test
    void aVeryLongLiteralDoesNotOverflowTheStack() {
        final String source = "\"" + "ab".repeat(200_000) + "\"";
        assertThat(html(source)).isEqualTo("<span class=\"string\">" + source + "</span>");
    }

    @Property
    void theTextIsTheSourceWhateverItIs(
            @ForAll @Chars({'<', '>', '&',
                '"', '\'', '\\', '/', '*', '\n', 'a', '1', '.', 'e', ' '}) String source) {
        final var body = Jsoup.parseBodyFragment("<pre>x" + JavaHtml.html(source)
            + "</pre>").selectFirst("pre");
        assertThat(body.wholeText()).isEqualTo("x" + source);
    }
}
