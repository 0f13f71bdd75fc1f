package spanwright.kernel.document;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.CustomNode;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.jsoup.nodes.Element;

/**
 * Markdown cells as HTML: CommonMark with tables and formulas. HTML written in the cell passes through
 * {@link SafeHtml}; pictures are taken into the page from the cell's attachments or from files beside the
 * notebook, never from the network.
 */
final class MarkdownHtml {
    private static final List<Extension> TABLES = List.of(TablesExtension.create());
    private static final Parser PARSER = FormulaSyntax.addTo(Parser.builder().extensions(TABLES)).build();
    private static final HtmlRenderer RENDERER = HtmlRenderer.builder().extensions(TABLES).build();
    /**
     * Stand for a formula until the HTML around it is cleaned; private use characters, taken out of the
     * source.
     */
    private static final char OPEN = '\uE000';
    private static final char CLOSE = '\uE001';
    private static final Pattern MARK = Pattern.compile(OPEN + "([0-9]+)" + CLOSE);
    private static final long PICTURE_LIMIT = 10 << 20;
    private static final Map<String, String> PICTURES = Map.of("png", "image/png", "jpg", "image/jpeg",
        "jpeg", "image/jpeg", "gif", "image/gif", "svg", "image/svg+xml", "webp", "image/webp");

    private final Path folder;

    /** With the folder that relative pictures lie in. */
    MarkdownHtml(Path folder) {
        this.folder = folder;
    }

    /**
     * The cell's HTML, in a div.
     *
     * @param source      markdown
     * @param attachments of the cell
     */
    Element html(String source, Map<String, Object> attachments) {
        final Node document = PARSER.parse(source.replace(OPEN, ' ').replace(CLOSE, ' '));
        final List<String> formulas = new ArrayList<>();
        document.accept(new Preparation(attachments, formulas));
        final Element clean = SafeHtml.cleaned(RENDERER.render(document));
        final Matcher mark = MARK.matcher(clean.html());
        final String whole = mark.replaceAll(m -> {
            final int index = Integer.parseInt(m.group(1));
            return Matcher.quoteReplacement(index < formulas.size() ? formulas.get(index) : "");
        });
        final Element div = new Element("div").addClass("markdown").html(whole);
        for (Element table : div.select("table")) {
            table.wrap("<div class=\"wide\"></div>");
        }
        return div;
    }

    /** Replaces formulas by marks, and addresses of pictures by the pictures. */
    private final class Preparation extends AbstractVisitor {
        private final Map<String, Object> attachments;
        private final List<String> formulas;

        Preparation(Map<String, Object> attachments, List<String> formulas) {
            this.attachments = attachments;
            this.formulas = formulas;
        }

        @Override
        public void visit(CustomNode node) {
            if (node instanceof FormulaSyntax.Inline formula) {
                replace(node, Formula.html(formula.latex, formula.display), formula.display);
            } else {
                visitChildren(node);
            }
        }

        @Override
        public void visit(CustomBlock node) {
            if (node instanceof FormulaSyntax.Displayed formula) {
                replace(node, Formula.html(formula.latex, true), true);
            } else {
                visitChildren(node);
            }
        }

        private void replace(Node node, String html, boolean display) {
            final Text text = new Text("" + OPEN + formulas.size() + CLOSE);
            formulas.add(display ? "<span class=\"display\">" + html + "</span>" : html);
            node.insertBefore(text);
            node.unlink();
        }

        @Override
        public void visit(Image image) {
            final String to = image.getDestination();
            final Optional<String> data = to.startsWith("attachment:")
                ? attached(to.substring("attachment:".length())) : beside(to);
            data.ifPresent(image::setDestination);
            visitChildren(image);
        }

        @Override
        public void visit(Link link) {
            final String to = link.getDestination();
            if (to.endsWith(".ipynb") && !to.contains(":")) {
                link.setDestination(to.substring(0, to.length() - "ipynb".length()) + "html");
            }
            visitChildren(link);
        }

        private Optional<String> attached(String name) {
            if (attachments.get(name) instanceof Map<?, ?> bundle) {
                for (var entry : bundle.entrySet()) {
                    if (String.valueOf(entry.getKey()).startsWith("image/")
                        && entry.getValue() instanceof String s) {
                        return Optional.of("data:" + entry.getKey() + ";base64," + s.replaceAll("\\s", ""));
                    }
                }
            }
            return Optional.empty();
        }
    }

    private Optional<String> beside(String address) {
        final String extension = address.substring(address.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        if (address.contains(":") || !PICTURES.containsKey(extension)) {
            return Optional.empty();
        }
        try {
            final Path top = folder.toRealPath();
            final Path file = top.resolve(address).toRealPath();
            if (!file.startsWith(top) || Files.size(file) > PICTURE_LIMIT) {
                return Optional.empty();
            }
            return Optional.of("data:" + PICTURES.get(extension) + ";base64,"
                + Base64.getEncoder().encodeToString(Files.readAllBytes(file)));
        } catch (IOException | InvalidPathException e) {
            // The page then says that the picture was left out, and keeps its text.
            return Optional.empty();
        }
    }
}
