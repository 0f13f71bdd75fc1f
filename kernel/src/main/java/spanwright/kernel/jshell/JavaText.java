package spanwright.kernel.jshell;

import java.util.Objects;

/** Java source with comments blanked and the contents of literals replaced, at the same offsets. */
final class JavaText {
    private final char[] text;
    private int at;

    private JavaText(String code) {
        this.text = code.toCharArray();
    }

    /**
     * Comments become blanks, characters inside literals underscores; line ends stay. What is not closed runs
     * to the end.
     */
    static String masked(String code) {
        final JavaText t = new JavaText(Objects.requireNonNull(code, "code"));
        while (t.at < t.text.length) {
            t.step();
        }
        return new String(t.text);
    }

    private void step() {
        if (startsWith("//")) {
            blankUntil("\n", false);
        } else if (startsWith("/*")) {
            blankUntil("*/", true);
        } else if (startsWith("\"\"\"")) {
            at += 3;
            literal("\"\"\"", true);
        } else if (text[at] == '"' || text[at] == '\'') {
            final String quote = String.valueOf(text[at]);
            at++;
            literal(quote, false);
        } else {
            at++;
        }
    }

    private boolean startsWith(String s) {
        if (at + s.length() > text.length) {
            return false;
        }
        for (int i = 0; i < s.length(); i++) {
            if (text[at + i] != s.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    private void blankUntil(String end, boolean including) {
        final int begin = at;
        at += including ? 2 : 0;
        while (at < text.length && !startsWith(end)) {
            at++;
        }
        at = including ? Math.min(text.length, at + end.length()) : at;
        for (int i = begin; i < at; i++) {
            if (text[i] != '\n' && text[i] != '\r') {
                text[i] = ' ';
            }
        }
    }

    private void literal(String end, boolean severalLines) {
        while (at < text.length && !startsWith(end) && (severalLines || text[at] != '\n')) {
            final boolean escape = text[at] == '\\' && at + 1 < text.length && text[at + 1] != '\n';
            replace();
            if (escape) {
                replace();
            }
        }
        if (startsWith(end)) {
            at += end.length();
        }
    }

    private void replace() {
        if (text[at] != '\n' && text[at] != '\r') {
            text[at] = '_';
        }
        at++;
    }

    /** Line of an offset, from 1. */
    static int lineOf(String code, int offset) {
        int line = 1;
        for (int i = 0; i < Math.min(offset, code.length()); i++) {
            if (code.charAt(i) == '\n') {
                line++;
            }
        }
        return line;
    }

    /** Column of an offset, from 1. */
    static int columnOf(String code, int offset) {
        return Math.min(offset, code.length()) - code.lastIndexOf('\n', Math.min(offset, code.length()) - 1);
    }

    /** A line, from 1, without its end; empty text if there is no such line. */
    static String line(String code, int line) {
        final String[] lines = code.split("\n", -1);
        return line >= 1 && line <= lines.length ? lines[line - 1].replace("\r", "") : "";
    }
}
