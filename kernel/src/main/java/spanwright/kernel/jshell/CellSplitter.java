package spanwright.kernel.jshell;

import java.util.ArrayList;
import java.util.List;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Completeness;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;

/** Splits a cell into units. */
final class CellSplitter {
    private CellSplitter() { }

    /** The units of a cell in order; none if it holds only comments. The last may be incomplete. */
    static List<Unit> split(SourceCodeAnalysis analysis, String code) {
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
