package spanwright.kernel.document;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.nodes.Entities;

/**
 * Text with ANSI colours as HTML: every character escaped, the colours as classes of the page. Other control
 * sequences are left out.
 *
 * <p>Source: ECMA-48, SGR (8.3.117), parameters 0 to 49; 90 to 107 and 38/48 as terminals commonly read them.
 */
final class AnsiHtml {
    private static final Pattern ESCAPE =
        Pattern.compile("\u001b(?:\\[([0-?]*)[ -/]*([@-~])"
            + "|\\][^\u0007\u001b]*(?:\u0007|\u001b\\\\)|[ -/]*[0-~])");
    private static final String[] COLOURS =
        {"black", "red", "green", "yellow", "blue", "magenta", "cyan", "white"};

    private String ink = "";
    private String ground = "";
    private boolean bold;
    private boolean italic;
    private boolean underlined;

    private AnsiHtml() { }

    static String html(String text) {
        return new AnsiHtml().converted(text);
    }

    private String converted(String text) {
        final StringBuilder html = new StringBuilder();
        final Matcher escape = ESCAPE.matcher(text);
        int start = 0;
        while (escape.find()) {
            append(html, text.substring(start, escape.start()));
            if ("m".equals(escape.group(2))) {
                select(escape.group(1));
            }
            start = escape.end();
        }
        append(html, text.substring(start));
        return html.toString();
    }

    private void append(StringBuilder html, String piece) {
        // What is left of C0 control characters cannot stand in HTML.
        final String text = Entities.escape(piece.replaceAll("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f]", ""));
        final List<String> classes = classes();
        if (classes.isEmpty() || text.isEmpty()) {
            html.append(text);
        } else {
            html.append("<span class=\"").append(String.join(" ", classes)).append("\">").append(text)
                .append("</span>");
        }
    }

    private List<String> classes() {
        final List<String> classes = new ArrayList<>();
        if (!ink.isEmpty()) {
            classes.add("ansi-" + ink);
        }
        if (!ground.isEmpty()) {
            classes.add("ansi-on-" + ground);
        }
        if (bold) {
            classes.add("ansi-bold");
        }
        if (italic) {
            classes.add("ansi-italic");
        }
        if (underlined) {
            classes.add("ansi-underlined");
        }
        return classes;
    }

    private void select(String parameters) {
        final String[] codes = parameters.split("[;:]", -1);
        for (int i = 0; i < codes.length; i++) {
            final int code = codes[i].matches("[0-9]{1,4}") ? Integer.parseInt(codes[i]) : 0;
            if (code == 38 || code == 48) {
                // A colour of a larger palette: the page has eight; its parameters must not be read as codes.
                i += i + 1 < codes.length && codes[i + 1].equals("2") ? 4 : 2;
            } else {
                select(code);
            }
        }
    }

    private void select(int code) {
        if (code == 0) {
            ink = "";
            ground = "";
        }
        if (code >= 30 && code <= 39) {
            ink = colour(code - 30);
        } else if (code >= 90 && code <= 97) {
            ink = colour(code - 90);
        } else if (code >= 40 && code <= 49) {
            ground = colour(code - 40);
        } else if (code >= 100 && code <= 107) {
            ground = colour(code - 100);
        }
        bold = code == 1 || bold && code != 0 && code != 22;
        italic = code == 3 || italic && code != 0 && code != 23;
        underlined = code == 4 || underlined && code != 0 && code != 24;
    }

    private static String colour(int index) {
        return index < COLOURS.length ? COLOURS[index] : "";
    }
}
