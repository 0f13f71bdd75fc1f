package spanwright.kernel.document;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.safety.Cleaner;
import org.jsoup.safety.Safelist;

/**
 * HTML that comes from markdown or from what a cell shows, made harmless: only elements and attributes of a
 * list stay, so no script, no handler, no frame, no form and nothing that would be fetched. The text inside
 * elements that are not on the list stays, except that of scripts and style sheets.
 *
 * <p>The same rule holds for all outputs, those of our own renderers too: a page that is handed on cannot
 * tell who made a fragment. Drawings inside a fragment become pictures, in which a browser runs nothing.
 */
final class SafeHtml {
    private static final Safelist LIST = list();
    private static final Pattern FETCHING =
        Pattern.compile("url\\s*\\(|@import|expression\\s*\\(|\\\\|position\\s*:"
        + "|behavior|-moz-binding", Pattern.CASE_INSENSITIVE);

    private SafeHtml() { }

    private static Safelist list() {
        return new Safelist()
            .addTags("h1", "h2", "h3", "h4", "h5", "h6", "p", "div", "section", "span", "br", "hr", "pre")
            .addTags("a", "abbr", "b", "cite", "code", "del", "dfn", "em", "i", "ins", "kbd", "mark", "q")
            .addTags("s", "samp", "small", "strong", "sub", "sup", "time", "u", "var", "blockquote")
            .addTags("ul", "ol", "li", "dl", "dt", "dd", "details", "summary", "figure", "figcaption", "img")
            .addTags("table", "caption", "colgroup", "col", "thead", "tbody", "tfoot", "tr", "th", "td")
            .addTags("meter", "progress")
            .addAttributes(":all", "class", "title", "style", "lang", "dir", "role", "aria-label",
                "aria-hidden")
            .preserveRelativeLinks(true)
            .addAttributes("a", "href").addProtocols("a", "href", "http", "https", "mailto", "#")
            .addAttributes("img", "src", "alt", "width", "height").addProtocols("img", "src", "data")
            .addAttributes("td", "colspan", "rowspan", "headers", "align")
            .addAttributes("th", "colspan", "rowspan", "headers", "scope", "abbr", "align")
            .addAttributes("col", "span").addAttributes("colgroup", "span")
            .addAttributes("ol", "start", "type", "reversed").addAttributes("li", "value")
            .addAttributes("details", "open").addAttributes("time", "datetime")
            .addAttributes("meter", "min", "max", "low", "high", "optimum", "value")
            .addAttributes("progress", "max", "value");
    }

    /** The fragment, harmless. */
    static Element cleaned(String html) {
        final Document dirty = Jsoup.parseBodyFragment(html, "https://page.invalid/");
        for (Element svg : dirty.select("svg")) {
            if (svg.parents().stream().noneMatch(p -> p.normalName().equals("svg"))) {
                svg.replaceWith(picture(svg));
            }
        }
        dirty.select("script, style, template, noscript, iframe, object, embed").remove();
        final Document clean = new Cleaner(LIST).clean(dirty);
        clean.outputSettings().prettyPrint(false);
        final Element body = clean.body();
        for (Element styled : body.select("[style]")) {
            if (FETCHING.matcher(styled.attr("style")).find()) {
                styled.removeAttr("style");
            }
        }
        for (Element image : body.select("img")) {
            if (!image.attr("src").toLowerCase(Locale.ROOT).startsWith("data:image/")) {
                image.replaceWith(new Element("span").addClass("missing")
                    .text("[picture left out: " + (image.attr("alt").isEmpty() ? "no text"
                        : image.attr("alt")) + "]"));
            }
        }
        return body;
    }

    private static Element picture(Element svg) {
        final Element title = svg.selectFirst("title");
        final String alt = svg.hasAttr("aria-label") ? svg.attr("aria-label") : title == null ? ""
            : title.text();
        if (!svg.hasAttr("xmlns")) {
            svg.attr("xmlns", "http://www.w3.org/2000/svg");
        }
        final Document xml = new Document("");
        xml.outputSettings().syntax(Document.OutputSettings.Syntax.xml).prettyPrint(false);
        xml.appendChild(svg.clone());
        final Element image = new Element("img").attr("src", dataUri("image/svg+xml",
            xml.html())).attr("alt", alt);
        for (String size : List.of("width", "height", "class", "style")) {
            if (svg.hasAttr(size)) {
                image.attr(size, svg.attr(size));
            }
        }
        return image;
    }

    /** A picture of text as an address that holds it. */
    static String dataUri(String mimeType, String text) {
        return "data:" + mimeType + ";base64,"
            + Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8));
    }
}
