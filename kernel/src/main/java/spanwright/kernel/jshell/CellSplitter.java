package spanwright.kernel.jshell;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Completeness;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;

/**
 * Splits a cell into units. The compiler is asked for it only where more than a look is needed: asking costs
 * a good part of the time of a short cell, and the first time it makes JShell index the whole class path.
 */
final class CellSplitter {
    /** With these, or with braces, a semicolon need not be the end of a unit. */
    private static final Set<String> STRUCTURE = Set.of("if", "else", "for", "while", "do", "try", "catch",
        "finally", "switch", "case", "default", "class", "interface", "enum", "record", "synchronized");
    private static final Pattern WORDS = Pattern.compile("[^\\p{L}\\p{N}_$]+");

    private CellSplitter() { }

    /** The units of a cell in order; none if it holds only comments. The last may be incomplete. */
    static List<Unit> split(Supplier<SourceCodeAnalysis> analysis, String code) {
        return plain(code).orElseGet(() -> parsed(analysis.get(), code));
    }

    /**
     * The units of a cell of plain lines: no braces, no control flow, and every semicolon that is not within
     * brackets at the end of a line, so that each line is one unit. Empty if the cell is not
     * like that.
     */
    static Optional<List<Unit>> plain(String code) {
        final String masked = JavaText.masked(code);
        if (masked.indexOf('{') >= 0 || masked.indexOf('}') >= 0 || masked.indexOf('@') >= 0
            || WORDS.splitAsStream(masked).anyMatch(STRUCTURE::contains)) {
            return Optional.empty();
        }
        final List<Unit> units = new ArrayList<>();
        int start = 0;
        while (start < code.length()) {
            final int lineEnd = masked.indexOf('\n', start);
            final int end = lineEnd < 0 ? code.length() : lineEnd;
            final String line = masked.substring(start, end);
            final String text = line.strip();
            if (!text.isEmpty()) {
                final boolean last = masked.substring(end).isBlank();
                final int first = start + line.indexOf(text);
                if (!isOneUnit(text, last)) {
                    return Optional.empty();
                }
                units.add(Unit.of(first, code.substring(first, last ? code.length() : first
                    + text.length())));
            }
            start = end + 1;
        }
        return Optional.of(units);
    }

    /** Whether brackets are closed in a line, and its one semicolon ends it; the last needs none. */
    private static boolean isOneUnit(String text, boolean last) {
        int depth = 0;
        int semicolons = 0;
        for (int i = 0; i < text.length(); i++) {
            final char c = text.charAt(i);
            if (c == '(' || c == '[') {
                depth++;
            } else if (c == ')' || c == ']') {
                depth--;
            } else if (c == ';') {
                semicolons++;
            }
            if (depth < 0) {
                return false;
            }
        }
        final boolean ended = text.endsWith(";") && text.length() > 1;
        return depth == 0 && (semicolons == 1 && ended || semicolons == 0 && last);
    }

    /** The same by the compiler, for any cell. */
    static List<Unit> parsed(SourceCodeAnalysis analysis, String code) {
        final List<Unit> units = new ArrayList<>();
        int at = 0;
        while (at < code.length()) {
            final String rest = code.substring(at);
            final int blank = leadingBlank(rest);
            if (blank == rest.length()) {
                break;
            }
            at += blank;
            final String from = code.substring(at);
            final CompletionInfo info = analysis.analyzeCompletion(from);
            if (info.completeness() == Completeness.EMPTY) {
                break;
            }
            final boolean more = info.completeness() == Completeness.COMPLETE && !info.remaining().isEmpty();
            final int length = more ? from.length() - info.remaining().length() : from.length();
            units.add(Unit.of(at, from.substring(0, length)));
            at += length;
        }
        return units;
    }

    /** Length of the white space and comments at the beginning. */
    private static int leadingBlank(String text) {
        final String masked = JavaText.masked(text);
        int i = 0;
        while (i < masked.length() && Character.isWhitespace(masked.charAt(i))) {
            i++;
        }
        return i;
    }
}
