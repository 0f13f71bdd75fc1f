package spanwright.kernel.jshell;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A piece of a cell that JShell takes at once: a statement, an expression or a declaration.
 *
 * @param start     where it begins in the cell
 * @param source    its text, from there
 * @param kind      what it looks like; only a guess, the compiler decides
 * @param semicolon whether it ends with a semicolon or a closing brace, which suppresses the display
 */
record Unit(int start, String source, Kind kind, boolean semicolon) {
    /** What a unit looks like. */
    enum Kind {
        /** No value: control flow, a block, an empty statement. */
        STATEMENT,
        /** Sets a variable. */
        ASSIGNMENT,
        /** Has a value, or is a call. */
        EXPRESSION,
        /** Type, method, variable or import. */
        DECLARATION,
        /** Cannot tell without the compiler. */
        OTHER
    }

    private static final Set<String> CONTROL = Set.of(
        "if", "for", "while", "do", "try", "synchronized", "throw", "assert");
    private static final Set<String> DECLARING = Set.of("import", "package", "class", "interface", "enum",
        "var", "public", "protected", "private", "static", "final", "abstract", "native", "transient",
        "volatile", "strictfp", "default", "sealed", "void");
    private static final Pattern WORD = Pattern.compile("[\\p{L}_$][\\p{L}\\p{N}_$]*");
    private static final Pattern DOTTED = Pattern.compile(
        "[\\p{L}_$][\\p{L}\\p{N}_$]*(?:\\s*\\.\\s*[\\p{L}_$][\\p{L}\\p{N}_$]*)*");

    /** A unit of a cell, by its look. */
    static Unit of(int start, String source) {
        final String masked = JavaText.masked(source);
        final String text = masked.strip();
        final boolean closed = text.endsWith(";") || text.endsWith("}");
        return new Unit(start, source, kind(text), closed && text.endsWith(";"));
    }

    /** Whether it ends in a call, whose type may be void. */
    boolean endsInCall() {
        return JavaText.masked(source).strip().endsWith(")");
    }

    /** Whether it needs no more semicolon to be a statement; one more could be one too many. */
    boolean isClosed() {
        return semicolon || kind == Kind.STATEMENT && JavaText.masked(source).strip().endsWith("}");
    }

    private static Kind kind(String text) {
        if (text.isEmpty() || text.charAt(0) == '{' || text.charAt(0) == ';') {
            return Kind.STATEMENT;
        }
        if (text.charAt(0) == '@' || text.charAt(0) == '<') {
            return Kind.DECLARATION;
        }
        final Matcher word = WORD.matcher(text);
        if (word.lookingAt()) {
            final String first = word.group();
            if (CONTROL.contains(first)) {
                return Kind.STATEMENT;
            }
            if (DECLARING.contains(first) || isContextual(first, text.substring(word.end()))) {
                return Kind.DECLARATION;
            }
            if (Set.of("switch", "return", "yield", "break", "continue").contains(first)
                || text.substring(word.end()).stripLeading().startsWith(":")) {
                return Kind.OTHER;
            }
            if (!first.equals("new") && looksDeclared(text)) {
                return Kind.DECLARATION;
            }
        }
        return isAssignment(text) ? Kind.ASSIGNMENT : Kind.EXPRESSION;
    }

    private static boolean isContextual(String first, String rest) {
        return first.equals("record") && rest.matches("(?s)\\s+[\\p{L}_$][\\p{L}\\p{N}_$]*\\s*[(<].*")
            || first.equals("non") && rest.startsWith("-sealed");
    }

    /** A type followed by a name: a variable or a method. */
    private static boolean looksDeclared(String text) {
        final Matcher type = DOTTED.matcher(text);
        if (!type.lookingAt()) {
            return false;
        }
        int i = type.end();
        while (i < text.length()) {
            final char c = text.charAt(i);
            if (c == '<') {
                i = closing(text, i, '<', '>');
            } else if (c == '[' && text.substring(i + 1).stripLeading().startsWith("]")) {
                i = closing(text, i, '[', ']');
            } else if (c == '.' || c == '@') {
                final Matcher more = DOTTED.matcher(text);
                i++;
                i = more.region(i, text.length()).lookingAt() ? more.end() : text.length();
            } else if (Character.isWhitespace(c)) {
                i++;
            } else {
                break;
            }
            if (i < 0) {
                return false;
            }
        }
        final Matcher name = WORD.matcher(text).region(Math.min(i, text.length()), text.length());
        return i > type.end() && name.lookingAt() && !name.group().equals("instanceof");
    }

    private static int closing(String text, int open, char opening, char closing) {
        int depth = 0;
        for (int i = open; i < text.length(); i++) {
            final char c = text.charAt(i);
            if (c == opening) {
                depth++;
            } else if (c == closing) {
                depth--;
                if (depth == 0) {
                    return i + 1;
                }
            } else if (!Character.isJavaIdentifierPart(c) && !Character.isWhitespace(c)
                && ",.?@[]".indexOf(c) < 0) {
                return -1;
            }
        }
        return -1;
    }

    private static boolean isAssignment(String text) {
        int depth = 0;
        for (int i = 0; i < text.length(); i++) {
            final char c = text.charAt(i);
            if ("([{".indexOf(c) >= 0) {
                depth++;
            } else if (")]}".indexOf(c) >= 0) {
                depth--;
            } else if (c == '=' && depth == 0 && isAssigning(text, i)) {
                return true;
            }
        }
        return false;
    }

    private static boolean isAssigning(String text, int i) {
        final char before = i > 0 ? text.charAt(i - 1) : ' ';
        final char after = i + 1 < text.length() ? text.charAt(i + 1) : ' ';
        final boolean shift = i > 1 && (text.startsWith("<<", i - 2) || text.startsWith(">>", i - 2));
        return after != '=' && before != '=' && before != '!' && (before != '<' && before != '>' || shift);
    }
}
