package spanwright.kernel.document;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.nodes.Entities;

/** Java source as HTML: every character escaped; comments, text, numbers and keywords told apart by class. */
final class JavaHtml {
    private static final Pattern TOKEN = Pattern.compile(
        "(?<comment>//[^\\n]*|/\\*(?s:.*?)(?:\\*/|\\z))"
        + "|(?<text>\"\"\"(?s:.*?)(?:\"\"\"|\\z)|\"[^\"\\\\\\n]*+(?:\\\\.[^\"\\\\\\n]*+)*+\"?"
        + "|'[^'\\\\\\n]*+(?:\\\\.[^'\\\\\\n]*+)*+'?)"
        + "|(?<number>\\b(?:0[xX][0-9a-fA-F_]+|0[bB][01_]+|"
        + "[0-9][0-9_]*(?:\\.[0-9_]*)?(?:[eE][+-]?[0-9]+)?)[lLfFdD]?)"
        + "|(?<word>[\\p{L}_$][\\p{L}\\p{N}_$]*)");
    private static final Set<String> KEYWORDS = Set.of(
        "abstract", "assert", "boolean", "break", "byte", "case", "catch", "char", "class",
        "continue", "default", "do", "double", "else", "enum", "extends", "false", "final",
        "finally", "float", "for", "if", "implements", "import", "instanceof", "int", "interface",
        "long", "native", "new", "null", "package", "permits", "private", "protected", "public",
        "record", "return", "sealed", "short", "static", "strictfp", "super", "switch",
        "synchronized", "this", "throw", "throws", "transient", "true", "try", "var", "void",
        "volatile", "while", "yield");

    private JavaHtml() { }

    static String html(String source) {
        final StringBuilder html = new StringBuilder();
        final Matcher token = TOKEN.matcher(source);
        int start = 0;
        while (token.find()) {
            html.append(Entities.escape(source.substring(start, token.start())));
            final String kind = token.group("comment") != null ? "comment"
                : token.group("text") != null ? "string"
                : token.group("number") != null ? "number"
                : KEYWORDS.contains(token.group()) ? "keyword" : "";
            final String text = Entities.escape(token.group());
            html.append(kind.isEmpty() ? text : "<span class=\"" + kind + "\">" + text + "</span>");
            start = token.end();
        }
        return html.append(Entities.escape(source.substring(start))).toString();
    }
}
