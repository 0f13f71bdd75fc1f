package spanwright.kernel.jshell;

import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** Documentation comments as plain text. */
final class JavadocText {
    private static final Pattern INLINE = Pattern.compile(
        "\\{@(?:code|literal|value|link|linkplain|summary)\\s+([^{}]*)\\}");
    private static final Pattern OTHER_INLINE = Pattern.compile("\\{@\\w+\\s*([^{}]*)\\}");
    private static final Pattern BLOCK_TAG = Pattern.compile(
        "(?m)^\\s*@(param|return|returns|throws|exception|see|since|author|version|deprecated"
        + "|apiNote|implSpec|implNote|jls|spec)\\b");

    private JavadocText() { }

    /**
     * All of it: inline tags replaced, markup gone, paragraphs, list items and block tags on their own lines.
     */
    static String plain(String javadoc) {
        String text = INLINE.matcher(javadoc).replaceAll(m -> escaped(m.group(1)));
        text = OTHER_INLINE.matcher(text).replaceAll(m -> escaped(m.group(1)));
        text = BLOCK_TAG.matcher(text).replaceAll(m -> "<p>" + m.group(1) + ":");
        final Document page = Jsoup.parseBodyFragment(text);
        for (Element e : page.select("p, li, pre, tr, h1, h2, h3, h4, dt, dd, br, ul")) {
            e.before("\u0001");
        }
        return page.body().text().replaceAll("\\s*(\u0001\\s*)+", "\n").strip();
    }

    private static String escaped(String s) {
        return java.util.regex.Matcher.quoteReplacement(s.replace("&", "&amp;").replace("<", "&lt;")
            .replace(">", "&gt;"));
    }

    /** The first sentence: up to a full stop before white space, or the first line. */
    static String firstSentence(String plain) {
        final String line = plain.split("\n", 2)[0];
        final int stop = line.indexOf(". ");
        return stop < 0 ? line : line.substring(0, stop + 1);
    }
}
