package spanwright.kernel.jshell;

import java.util.List;
import java.util.stream.Collectors;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.JShell;
import jdk.jshell.MethodSnippet;
import jdk.jshell.Snippet;
import jdk.jshell.TypeDeclSnippet;
import jdk.jshell.VarSnippet;

/** Words for what a cell has declared. */
final class Declared {
    private Declared() { }

    /** Thrown by code that uses something whose parts are not all defined. */
    static final class NotYetDefined extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NotYetDefined(String message) {
            super(message);
        }
    }

    /** For example "method f(int)" or "class A". */
    static String name(Snippet s) {
        if (s instanceof MethodSnippet m) {
            return "method " + m.name() + "(" + m.parameterTypes() + ")";
        }
        if (s instanceof TypeDeclSnippet t) {
            final String kind = switch (t.subKind()) {
                case INTERFACE_SUBKIND -> "interface ";
                case ENUM_SUBKIND -> "enum ";
                case ANNOTATION_TYPE_SUBKIND -> "annotation ";
                case RECORD_SUBKIND -> "record ";
                default -> "class ";
            };
            return kind + t.name();
        }
        return s instanceof VarSnippet v ? "variable " + v.name() : s.source().strip();
    }

    /** What it lacks, for example "method g()". */
    static String needs(JShell shell, DeclarationSnippet s) {
        final List<String> missing = shell.unresolvedDependencies(s).toList();
        return missing.isEmpty() ? "all that it refers to"
            : missing.stream().map(m -> m.endsWith("()") || !m.contains("(") ? m : m)
                .collect(Collectors.joining(" and "));
    }
}
