package spanwright.chart;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the SVG encoder leaves out: a size that shrinks with the page, a text alternative, a font every page
 * has, and the
 * font size of 12 px, which the encoder takes for granted and a page does not.
 */
final class SvgText {
    private static final Pattern PROLOGUE = Pattern.compile("(?s)^.*?(?=<svg)");
    private static final Pattern ROOT = Pattern.compile("(?s)<svg[^>]*>");
    private static final Pattern FONT = Pattern.compile("font-family:(?:&quot;[^&]*&quot;|[^;\"]*);?");

    private SvgText() { }

    static String finish(String svg, String title, String alternative, int width, int height) {
        final String body = PROLOGUE.matcher(svg).replaceFirst("");
        final String root = "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" "
            + "version=\"1.1\" role=\"img\" viewBox=\"0 0 " + width + " " + height + "\" width=\"" + width
            + "\" height=\"" + height
                + "\" style=\"max-width:100%;height:auto;background:#fff;font-size:12px\">"
            + "<title>" + escape(title) + "</title><desc>" + escape(alternative) + "</desc>";
        return FONT.matcher(ROOT.matcher(body).replaceFirst(Matcher.quoteReplacement(root)))
            .replaceAll("font-family:sans-serif;");
    }

    static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
