package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MarkdownHtmlTest {
    @TempDir
    Path folder;

    private Element html(String markdown) {
        return new MarkdownHtml(folder).html(markdown, Map.of());
    }

    @Test
    void tablesAndEmphasisAreCommonMark() {
        final Element html = html("# A *b*\n\n| x | y |\n|---|--:|\n| 1 | 2 |\n");
        assertThat(html.select("h1 em").text()).isEqualTo("b");
        assertThat(html.select("td[align=right]").text()).isEqualTo("2");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {
        "<script>alert(1)</script>after", "<img src=x onerror=alert(1)>after",
            "<a href=\"javascript:alert(1)\">after</a>",
        "[after](javascript:alert(1))", "<svg onload=alert(1)><script>1</script></svg>after",
        "<iframe src=\"https://example.invalid\"></iframe>after",
            "<p style=\"background:url(https://x.invalid)\">after</p>",
        "<style>p{}</style>after", "<form action=x><input></form>after", "<object data=x></object>after",
        "<math><mtext><style><img src=x onerror=alert(1)></style></mtext></math>after",
        "<link rel=stylesheet href=https://x.invalid>after", "![after](https://example.invalid/x.png)",
        "<p onclick=alert(1)>after</p>", "<base href=https://x.invalid>after",
            "<meta http-equiv=refresh content=0>after"})
    void nothingThatRunsOrFetchesGetsThrough(String markdown) {
        final Element html = html(markdown);
        assertThat(html.select("script, style, iframe, form, input, object, base, meta, link, math"))
            .isEmpty();
        html.getAllElements().forEach(e -> e.attributes().forEach(a -> {
            assertThat(a.getKey()).doesNotStartWith("on");
            assertThat(a.getValue()).doesNotContain("javascript:").doesNotContain("url(");
        }));
        html.select("img").forEach(i -> assertThat(i.attr("src")).startsWith("data:image/"));
        assertThat(html.text()).contains("after");
    }

    @Test
    void formulasAreDrawnWithTheirSourceAsTextAlternative() {
        final String fraction = "e_i = 100\\,\\frac{y_i - x_i}{S}";
        final String sum = "\\sum_{i=1}^n e_i\n- 1";
        final Element html = html("The error $" + fraction + "$ and\n\n$$\n" + sum + "\n$$\n\nend");
        assertThat(html.select("svg.formula").eachAttr("aria-label")).containsExactly(fraction, sum);
        assertThat(html.select(".display svg.formula")).hasSize(1);
        assertThat(html.select("svg path").attr("d").length()).isGreaterThan(500);
        assertThat(html.select("svg").attr("viewBox")).isNotEmpty();
        assertThat(html.text()).contains("end");
    }

    @Test
    void anEnvironmentIsAFormulaOfItsOwn() {
        final Element html = html("\\begin{align}\na &= b \\\\\nc &= d\n\\end{align}\n\n"
            + "\\begin{equation} x \\end{equation}");
        assertThat(html.select(".display svg.formula")).hasSize(2);
        assertThat(html.select(".formula-error")).isEmpty();
    }

    @Test
    void aFormulaAfterMoneyIsStillAFormula() {
        final Element html = html("between $5 and $6; the error $e = y - x$ and \\$7, $a\\$b$");
        assertThat(html.select("svg.formula").eachAttr("aria-label")).containsExactly("e = y - x", "a\\$b");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"between $5 and $6", "a \\$x\\$ b", "`$x$`", "one $ only", "a $ x $ b"})
    void moneyAndCodeStayText(String markdown) {
        assertThat(html(markdown).select("svg, .formula-error")).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"\\nosuchcommand{x}", "\\includegraphics{/etc/passwd}",
        "\\newcommand{\\a}{b}\\a"})
    void aFormulaThatCannotBeDrawnShowsItsSource(String latex) {
        assertThat(html("$" + latex + "$").select("code.formula-error").text()).isEqualTo(latex);
    }

    @Test
    void picturesComeFromAttachmentsAndFromBesideTheNotebookOnly() throws Exception {
        Files.createDirectories(folder.resolve("in"));
        Files.write(folder.resolve("in/a.png"), new byte[] {1, 2, 3});
        Files.write(folder.resolve("secret.png"), new byte[] {4});
        final Element html = new MarkdownHtml(folder.resolve("in")).html(
            "![one](a.png) ![two](attachment:b) ![three](../secret.png) ![four](none.png)",
            Map.of("b", Map.of("image/png", "QUJD")));
        assertThat(html.select("img").eachAttr("src"))
            .containsExactly("data:image/png;base64,AQID", "data:image/png;base64,QUJD");
        assertThat(html.text()).contains("picture left out: three").contains("picture left out: four");
    }

    @Test
    void linksToOtherNotebooksGoToTheirPages() {
        assertThat(html("[next](02-next.ipynb) [web](https://example.org/a.ipynb) [here](#part)").select("a")
            .eachAttr("href")).containsExactly("02-next.html", "https://example.org/a.ipynb", "#part");
    }
}
