package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.CellOutput.Stream;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Outcome;

class NotebookPageTest {
    private static final String SVG =
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><title>nine</title>"
        + "<clipPath id=\"c\"><rect width=\"9\" height=\"9\"/></clipPath></svg>";

    private static Document page(BiFunction<String, CellOutput, Outcome> script, String... sources) {
        final List<NotebookCell> cells = new ArrayList<>();
        for (int i = 0; i < sources.length; i++) {
            cells.add(sources[i].startsWith("#") ? NotebookCell.markdown("c" + i, sources[i])
                : NotebookCell.code("c" + i, sources[i]));
        }
        final RunResult result = new NotebookRunner(() -> new ScriptedInterpreter(script))
            .run(new Notebook(cells, Map.of()), "x.ipynb", RunOptions.DEFAULT, RunListener.NONE);
        return Jsoup.parse(NotebookPage.html(result, "x.ipynb", Path.of("."), "Made for a test."));
    }

    private static Document shown(MimeBundle bundle) {
        return page((code, out) -> ScriptedInterpreter.value(bundle), "x");
    }

    @Test
    void dataThatLooksLikeMarkupIsShownAsText() {
        final String data = "<script>alert(1)</script><img src=x onerror=alert(1)>";
        final Document page = page((code, out) -> {
            out.write(Stream.STDOUT, data);
            return ScriptedInterpreter.threw("E" + data, data, 1);
        }, "var s = \"" + data + "\"; // " + data);
        assertThat(page.select("script, img")).isEmpty();
        assertThat(page.select("pre.stdout").text()).isEqualTo(data);
        assertThat(page.select("pre.source").text()).contains(data);
        assertThat(page.select("main .failure p").text()).isEqualTo("E" + data + ": " + data);
        assertThat(page.select("header .failure").text()).contains(data);
    }

    @Test
    void htmlThatACellShowsKeepsItsTablesAndLosesWhatRuns() {
        final Document page = shown(MimeBundle.text("t").with(MimeBundle.HTML,
            "<table style=\"color:red\"><caption>c</caption><tr><th scope=\"col\">a</th></tr></table>"
                + "<script>alert(1)</script><img src=x onerror=alert(1)><b onclick=\"alert(1)\">b</b>"));
        assertThat(page.select("th[scope=col]").text()).isEqualTo("a");
        assertThat(page.select("table").attr("style")).isEqualTo("color:red");
        assertThat(page.select("script, img, [onclick], [onerror]")).isEmpty();
    }

    @Test
    void drawingsAreKeptAsPicturesWhetherAloneOrInsideHtml() {
        for (MimeBundle bundle : List.of(MimeBundle.text("nine by nine").with(MimeBundle.SVG, SVG),
                MimeBundle.text("t").with(MimeBundle.HTML, "<figure>" + SVG + "</figure>"))) {
            final Document page = shown(bundle);
            final String address = page.select("img").attr("src");
            assertThat(address).startsWith("data:image/svg+xml;base64,");
            final String svg = new String(java.util.Base64.getDecoder().decode(
                address.substring(address.indexOf(',') + 1)), java.nio.charset.StandardCharsets.UTF_8);
            assertThat(svg).contains("viewBox=\"0 0 9 9\"").contains("<clipPath").contains("xmlns=");
            assertThat(page.select("img").attr("alt")).startsWith("nine");
        }
    }

    @Test
    void theRichestRepresentationIsShown() {
        final MimeBundle text = MimeBundle.text("plain");
        assertThat(shown(text).select(".shown pre").text()).isEqualTo("plain");
        assertThat(shown(text.with(MimeBundle.PNG, new byte[] {1})).select(".shown img").attr("src"))
            .isEqualTo("data:image/png;base64,AQ==");
        assertThat(shown(text.with(MimeBundle.MARKDOWN, "*m*")).select("em").text()).isEqualTo("m");
        assertThat(shown(text.with(MimeBundle.LATEX,
            "$x^2$")).select("svg").attr("aria-label")).isEqualTo("x^2");
        assertThat(shown(new MimeBundle(Map.of("application/json", Map.of("a", 1)), Map.of())).text())
            .contains("\"a\" : 1");
    }

    @Test
    void headlinesAndFailuresStandOnTopWithLinksToTheirCells() {
        final Document page = page((code, out) -> {
            if (code.equals("bad")) {
                return ScriptedInterpreter.threw("E", "no", 1);
            }
            out.display(new Headline("Meets", "0.07 % of span to spare.").on(MimeBundle.text("t")),
                Optional.empty());
            return ScriptedInterpreter.NOTHING;
        }, "# Title $x$", "good", "bad");
        assertThat(page.select("header h1").text()).isEqualTo("Title x");
        assertThat(page.select("main h1")).isEmpty();
        assertThat(page.select(".headlines a").text()).isEqualTo("Meets: 0.07 % of span to spare.");
        page.select("header a").forEach(a ->
            assertThat(page.getElementById(a.attr("href").substring(1))).as(a.outerHtml()).isNotNull());
        assertThat(page.select("header .failure a").attr("href")).isEqualTo("#cell.c2");
    }

    @Test
    void thePageForbidsScriptsAndFetchingAndNamesNoOtherFile() {
        final Document page = page((code, out) -> ScriptedInterpreter.NOTHING, "# a", "x");
        assertThat(page.select("meta[http-equiv=Content-Security-Policy]").attr("content"))
            .startsWith("default-src 'none'");
        assertThat(page.select("link, script, [src^=http], [href^=http]")).isEmpty();
        assertThat(page.select("footer").text()).isEqualTo("Made for a test.");
    }

    @Test
    void aLongPageHasContentsWhoseLinksLead() {
        final Document page = page((code, out) -> ScriptedInterpreter.NOTHING,
            "# T\n## A\n## B\n## A\n### C\n## \u0394t\n");
        assertThat(page.select("nav a").eachText()).containsExactly("A", "B", "A", "C", "\u0394t");
        page.select("nav a").forEach(a ->
            assertThat(page.getElementById(a.attr("href").substring(1)).text()).isEqualTo(a.text()));
        assertThat(page.select("nav a").eachAttr("href")).doesNotHaveDuplicates();
    }

    @Test
    void codeWhoseSourceIsHiddenIsFolded() {
        final NotebookCell hidden = NotebookCell.code("h", "int x;").withMetadata("jupyter",
            Map.of("source_hidden", true));
        final RunResult result = new NotebookRunner(
            () -> new ScriptedInterpreter((code, out) -> ScriptedInterpreter.NOTHING)).run(
                new Notebook(List.of(hidden), Map.of()), "x", RunOptions.DEFAULT, RunListener.NONE);
        final Document page = Jsoup.parse(NotebookPage.html(result, "x.ipynb", Path.of("."), ""));
        assertThat(page.select("details:not([open]) pre.source").text()).isEqualTo("int x;");
    }
}
