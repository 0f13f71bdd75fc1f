package spanwright.kernel.document;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.DocumentType;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Entities;
import org.jsoup.select.Elements;

/**
 * An executed notebook as one HTML page that needs no network, no script and no other file, on screens from
 * 360 px, in light and dark, and on paper. The page forbids scripts and fetching to the browser as well
 * (content security policy).
 *
 * <p>Headlines and failures stand on top, each with a link to its cell.
 */
public final class NotebookPage {
    /** Headings from which on a list of contents helps. */
    private static final int LONG = 5;
    private static final String POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

    private final MarkdownHtml markdown;
    private final OutputHtml outputs;

    private NotebookPage(Path folder) {
        markdown = new MarkdownHtml(folder);
        outputs = new OutputHtml(markdown);
    }

    /**
     * The page.
     *
     * @param result what came of the run
     * @param name   of the notebook file, for the title if it has no heading
     * @param folder of the notebook file; pictures of markdown cells are taken from it
     * @param origin one plain sentence at the end: with what and when it was made
     */
    public static String html(RunResult result, String name, Path folder, String origin) {
        Objects.requireNonNull(origin, "origin");
        return new NotebookPage(folder).page(result, name, origin);
    }

    private String page(RunResult result, String name, String origin) {
        final Element main = new Element("main");
        for (NotebookCell cell : result.notebook().cells()) {
            main.appendChild(cell(cell));
        }
        final Element heading = heading(main, name);
        anchors(main);
        final Element header = new Element("header").appendChild(heading);
        summary(header, result);
        contents(header, main);
        final Document page = new Document("");
        page.outputSettings().prettyPrint(false).charset(StandardCharsets.UTF_8);
        page.appendChild(new DocumentType("html", "", ""));
        final Element root = page.appendElement("html").attr("lang", "en");
        head(root.appendElement("head"), heading.text());
        final Element body = root.appendElement("body");
        body.appendChild(header).appendChild(main);
        body.appendElement("footer").appendElement("p").text(origin);
        return page.outerHtml() + "\n";
    }

    private static void head(Element head, String title) {
        head.appendElement("meta").attr("charset", "utf-8");
        head.appendElement("meta").attr("http-equiv", "Content-Security-Policy").attr("content", POLICY);
        head.appendElement("meta").attr("name", "viewport").attr("content",
            "width=device-width, initial-scale=1");
        head.appendElement("meta").attr("name", "color-scheme").attr("content", "light dark");
        head.appendElement("title").text(title);
        head.appendElement("style").append(style());
    }

    private static String style() {
        try (InputStream css = NotebookPage.class.getResourceAsStream("notebook.css")) {
            return new String(css.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Element cell(NotebookCell cell) {
        final Element section = new Element("section").attr("id", anchor(cell.id()))
            .addClass("cell").addClass(cell.kind().formatName());
        switch (cell.kind()) {
            case MARKDOWN -> section.appendChild(markdown.html(cell.source(), cell.attachments()));
            case RAW -> section.appendElement("pre").addClass("text").text(cell.source());
            default -> code(section, cell);
        }
        return section;
    }

    private void code(Element section, NotebookCell cell) {
        final String number = cell.executionCount().isPresent()
            ? Integer.toString(cell.executionCount().getAsInt()) : " ";
        final Element pre = new Element("pre").addClass("source").attr("tabindex", "0");
        pre.appendElement("code").html(JavaHtml.html(cell.source()));
        if (isHidden(cell)) {
            final Element details = section.appendElement("details");
            details.appendElement("summary").text("code [" + number + "]");
            details.appendChild(pre);
        } else if (!cell.source().isBlank()) {
            section.appendElement("span").addClass("count").attr("aria-hidden", "true").text("[" + number
                + "]");
            section.appendChild(pre);
        }
        for (SavedOutput output : cell.outputs()) {
            section.appendChild(outputs.html(output));
        }
    }

    private static boolean isHidden(NotebookCell cell) {
        return cell.metadata().get("jupyter") instanceof Map<?, ?> jupyter
            && Boolean.TRUE.equals(jupyter.get("source_hidden"));
    }

    private static String anchor(String cellId) {
        return "cell." + cellId;
    }

    /** The first heading of the text, taken out of it, or the name of the file. */
    private static Element heading(Element main, String name) {
        final Element first = main.selectFirst("section.markdown h1");
        if (first == null) {
            return new Element("h1").text(name.replaceFirst("\\.ipynb$", ""));
        }
        first.remove();
        return first;
    }

    private static void summary(Element header, RunResult result) {
        if (!result.failures().isEmpty()) {
            final Element box = header.appendElement("div").addClass("failure").attr("role", "note");
            for (RunResult.CellFailure failure : result.failures()) {
                box.appendElement("p").html("<strong>Failed</strong> in <a href=\"#"
                    + Entities.escape(anchor(failure.cellId())) + "\">cell " + failure.cell() + " ["
                    + failure.count() + "]</a>: " + Entities.escape(failure.name()
                    + (failure.message().isBlank() ? "" : ": " + failure.message().strip())));
            }
        }
        if (!result.headlines().isEmpty()) {
            final Element list = header.appendElement("ul").addClass("headlines");
            for (RunResult.CellHeadline headline : result.headlines()) {
                list.appendElement("li").appendElement("a").attr("href", "#" + anchor(headline.cellId()))
                    .text(headline.headline().toString());
            }
        }
    }

    private static void anchors(Element main) {
        final Set<String> taken = new HashSet<>();
        for (Element heading : main.select("section.markdown :is(h1, h2, h3, h4)")) {
            final String slug = heading.text().toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
            String id = slug.isEmpty() ? "section" : slug;
            for (int i = 2; !taken.add(id); i++) {
                id = slug + "-" + i;
            }
            heading.attr("id", id);
        }
    }

    private static void contents(Element header, Element main) {
        final Elements headings = main.select("section.markdown :is(h1, h2, h3)");
        if (headings.size() < LONG) {
            return;
        }
        final Element details = header.appendElement("nav").attr("aria-label",
            "Contents").appendElement("details");
        details.appendElement("summary").text("Contents");
        final Element list = details.appendElement("ol");
        for (Element heading : List.copyOf(headings)) {
            list.appendElement("li").addClass("at-" + heading.normalName()).appendElement("a")
                .attr("href", "#" + heading.id()).text(heading.text());
        }
    }
}
