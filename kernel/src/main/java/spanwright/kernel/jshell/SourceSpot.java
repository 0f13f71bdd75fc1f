package spanwright.kernel.jshell;

import java.util.List;

/**
 * A place in the source of a cell, with what stands before it.
 *
 * @param code  of the cell
 * @param start where the identifier at the place begins
 * @param end   where it ends; equal to start if there is none
 */
record SourceSpot(String code, int start, int end) {
    /** The identifier that touches the cursor, or the one before an opening parenthesis there. */
    static SourceSpot at(String code, int cursor) {
        int c = Math.max(0, Math.min(cursor, code.length()));
        final String masked = JavaText.masked(code);
        if (!touches(masked, c) && c > 0 && masked.charAt(c - 1) == ')') {
            c = opening(masked, c - 1);
        } else if (!touches(masked, c) && c > 0 && masked.charAt(c - 1) == '(') {
            c--;
        }
        int s = c;
        while (s > 0 && Character.isJavaIdentifierPart(masked.charAt(s - 1))) {
            s--;
        }
        int e = c;
        while (e < masked.length() && Character.isJavaIdentifierPart(masked.charAt(e))) {
            e++;
        }
        return new SourceSpot(code, s, e);
    }

    private static boolean touches(String masked, int c) {
        return c < masked.length() && Character.isJavaIdentifierPart(masked.charAt(c))
            || c > 0 && Character.isJavaIdentifierPart(masked.charAt(c - 1));
    }

    /** The identifier, empty text if there is none. */
    String identifier() {
        return code.substring(start, end);
    }

    /** The expression before the dot before the identifier, empty text if there is none. */
    String receiver() {
        final String masked = JavaText.masked(code.substring(0, start));
        final int dot = masked.stripTrailing().length() - 1;
        if (dot < 0 || masked.charAt(dot) != '.') {
            return "";
        }
        return code.substring(beginOfChain(masked, dot), dot).strip();
    }

    /** The beginning of the chain of names, calls and indices that ends before a dot. */
    private static int beginOfChain(String masked, int dot) {
        int i = dot;
        while (i > 0) {
            final char c = masked.charAt(i - 1);
            if (Character.isJavaIdentifierPart(c) || c == '.') {
                i--;
            } else if (c == ')' || c == ']') {
                i = opening(masked, i - 1);
            } else if (c == '"') {
                i = Math.max(0, masked.lastIndexOf('"', i - 2));
            } else if (Character.isWhitespace(c) && isBetweenLinks(masked, i)) {
                i--;
            } else {
                break;
            }
        }
        final String before = masked.substring(0, i).stripTrailing();
        return before.endsWith("new") ? before.length() - 3 : i;
    }

    /** White space inside a chain stands beside a dot. */
    private static boolean isBetweenLinks(String masked, int i) {
        final String after = masked.substring(i).stripLeading();
        return after.startsWith(".") || masked.substring(0, i).stripTrailing().endsWith(".");
    }

    private static int opening(String masked, int close) {
        int depth = 0;
        for (int i = close; i >= 0; i--) {
            if (")]}".indexOf(masked.charAt(i)) >= 0) {
                depth++;
            } else if ("([{".indexOf(masked.charAt(i)) >= 0) {
                depth--;
                if (depth == 0) {
                    return i;
                }
            }
        }
        return 0;
    }

    /**
     * Where the part of the cell begins that the analysis can take as one body: after the last import, type
     * or method that is complete before the offset.
     */
    static int beginOfBody(List<Unit> units, int offset) {
        int begin = 0;
        for (Unit u : units) {
            final int end = u.start() + u.source().length();
            final boolean variable = u.kind() == Unit.Kind.DECLARATION && u.semicolon()
                && !u.source().startsWith("import");
            if (end < offset && u.kind() == Unit.Kind.DECLARATION && !variable) {
                begin = end;
            }
        }
        return begin;
    }
}
