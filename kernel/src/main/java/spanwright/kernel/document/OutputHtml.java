package spanwright.kernel.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Entities;
import spanwright.kernel.display.MimeBundle;

/**
 * What stands under a cell as HTML. Of several representations the richest that a page without scripts can
 * show.
 */
final class OutputHtml {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final List<String> RASTER = List.of(MimeBundle.PNG, "image/jpeg", "image/gif",
        "image/webp");
    /** Lines of a trace that are shown without being asked for. */
    private static final int SHORT_TRACE = 6;

    private final MarkdownHtml markdown;

    OutputHtml(MarkdownHtml markdown) {
        this.markdown = markdown;
    }

    Element html(SavedOutput output) {
        if (output instanceof SavedOutput.Text text) {
            return new Element("pre").addClass("text").addClass(text.stream().protocolName())
                .attr("tabindex", "0").html(AnsiHtml.html(text.text()));
        }
        if (output instanceof SavedOutput.Failure failure) {
            return failure(failure);
        }
        return bundle(output.shownBundle().orElseThrow()).addClass("shown");
    }

    private static Element failure(SavedOutput.Failure failure) {
        final Element box = new Element("div").addClass("failure").attr("role", "note");
        box.appendElement("p").html("<strong>" + Entities.escape(failure.name()) + "</strong>"
            + (failure.message().isBlank() ? "" : ": " + AnsiHtml.html(failure.message().strip())));
        final String trace = String.join("\n", failure.traceback());
        if (!trace.isBlank()) {
            final long lines = trace.lines().count();
            final Element details = box.appendElement("details");
            if (lines <= SHORT_TRACE) {
                details.attr("open", true);
            }
            details.appendElement("summary").text("where, " + lines + (lines == 1 ? " line" : " lines"));
            details.appendElement("pre").attr("tabindex", "0").html(AnsiHtml.html(trace));
        }
        return box;
    }

    private Element bundle(MimeBundle bundle) {
        final Map<String, Object> data = bundle.data();
        final Element div = new Element("div");
        if (data.get(MimeBundle.HTML) instanceof String html) {
            div.addClass("wide").html(SafeHtml.cleaned(html).html());
        } else if (data.get(MimeBundle.SVG) instanceof String svg) {
            picture(div, bundle, SafeHtml.dataUri(MimeBundle.SVG, svg));
        } else if (raster(data) != null) {
            final String type = raster(data);
            picture(div, bundle, "data:" + type + ";base64," + ((String) data.get(type)).replaceAll("\\s",
                ""));
        } else if (data.get(MimeBundle.MARKDOWN) instanceof String text) {
            return markdown.html(text, Map.of());
        } else if (data.get(MimeBundle.LATEX) instanceof String latex) {
            div.addClass("display").html(Formula.html(latex.strip().replaceAll("^\\$+|\\$+$", ""), true));
        } else {
            div.appendElement("pre").addClass("text").attr("tabindex", "0").html(AnsiHtml.html(text(data)));
        }
        return div;
    }

    private static String raster(Map<String, Object> data) {
        return RASTER.stream().filter(type -> data.get(type) instanceof String).findFirst().orElse(null);
    }

    private static void picture(Element div, MimeBundle bundle, String address) {
        final Element image = div.addClass("picture").appendElement("img").attr("src", address);
        image.attr("alt",
            bundle.data().get(MimeBundle.TEXT) instanceof String text ? text.strip() : "picture");
        for (Object metadata : bundle.metadata().values()) {
            for (String side : List.of("width", "height")) {
                if (metadata instanceof Map<?, ?> sizes && sizes.get(side) instanceof Number pixels) {
                    image.attr(side, pixels.toString());
                }
            }
        }
    }

    private static String text(Map<String, Object> data) {
        if (data.get(MimeBundle.TEXT) instanceof String text) {
            return text;
        }
        try {
            return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(data);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("what a cell shows is not JSON: " + e.getOriginalMessage(), e);
        }
    }
}
