package spanwright.chart;

import java.awt.Font;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the SVG encoder leaves out: a size that shrinks with the page, a text alternative, a font every page
 * has, and the font size of 12 px, which the encoder takes for granted and a page does not.
 */
final class SvgText {
    private static final Pattern PROLOGUE = Pattern.compile("(?s)^.*?(?=<svg)");
    private static final Pattern ROOT = Pattern.compile("(?s)<svg[^>]*>");
    private static final Pattern FONT = Pattern.compile("font-family:(?:&quot;[^&]*&quot;|[^;\"]*);?");

    private static final Pattern TEXT =
        Pattern.compile("<text (style=\"[^\"]*\") x=\"([^\"]*)\" y=\"([^\"]*)\">([^<]*)</text>");
    private static final Pattern SIZE = Pattern.compile("font-size:(\\d+)px");

    private SvgText() { }

    static String finish(String svg, String title, String alternative, int width, int height) {
        final String body = PROLOGUE.matcher(svg).replaceFirst("");
        final String root = "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" "
            + "version=\"1.1\" role=\"img\" viewBox=\"0 0 " + width + " " + height + "\" width=\"" + width
            + "\" height=\"" + height
                + "\" style=\"max-width:100%;height:auto;background:#fff;font-size:12px\">"
            + "<title>" + escape(title) + "</title><desc>" + escape(alternative) + "</desc>";
        final String named = FONT.matcher(ROOT.matcher(body).replaceFirst(Matcher.quoteReplacement(root)))
            .replaceAll("font-family:sans-serif;");
        return TEXT.matcher(named).replaceAll(m -> Matcher.quoteReplacement(withLength(m)));
    }

    /**
     * The text with the width it was laid out for: the page's font may be wider or narrower than ours, and
     * would push labels into each other.
     */
    private static String withLength(MatchResult text) {
        final Matcher size = SIZE.matcher(text.group(1));
        final Font font = new Font(Font.SANS_SERIF, text.group(1).contains("bold") ? Font.BOLD : Font.PLAIN,
            size.find() ? Integer.parseInt(size.group(1)) : 12);
        final double width = TextSize.width(unescape(text.group(4)), font);
        return "<text " + text.group(1) + " x=\"" + text.group(2) + "\" y=\"" + text.group(3) + "\""
            + (width > 0 ? String.format(Locale.ROOT,
                " textLength=\"%.1f\" lengthAdjust=\"spacingAndGlyphs\"", width)
            : "") + ">" + text.group(4) + "</text>";
    }

    private static String unescape(String text) {
        return text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&apos;", "'")
            .replace("&amp;", "&");
    }

    static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
