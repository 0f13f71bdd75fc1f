package spanwright.kernel.jshell;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SourceCodeAnalysis.SnippetWrapper;

/**
 * The frames of what a block threw that ran without JShell, written as JShell writes them: the file is "#"
 * with the id of the snippet, the line one of the snippet, and what lies below the cell is left out.
 */
final class CellFrames {
    private static final int MAX_CAUSES = 10;

    private final Optional<JShell> shell;
    private final Map<String, Optional<Snippet>> snippets = new HashMap<>();

    private CellFrames(Optional<JShell> shell) {
        this.shell = shell;
    }

    /** Stands for a throwable, with frames of cells. */
    private static final class Mapped extends Throwable {
        private static final long serialVersionUID = 1L;

        Mapped(StackTraceElement[] frames, Throwable cause) {
            super(null, cause, false, true);
            setStackTrace(frames);
        }
    }

    /**
     * What was thrown, and its causes, with frames of cells.
     *
     * @param shell the engine, if it has been started
     */
    static Throwable mapped(Throwable thrown, Optional<JShell> shell) {
        return new CellFrames(shell).mapped(thrown, MAX_CAUSES);
    }

    private Throwable mapped(Throwable thrown, int depth) {
        final Throwable cause = thrown.getCause();
        return new Mapped(frames(thrown.getStackTrace()),
            cause == null || cause == thrown || depth == 0 ? null : mapped(cause, depth - 1));
    }

    private StackTraceElement[] frames(StackTraceElement[] raw) {
        int last = raw.length - 1;
        while (last >= 0 && !isOfCell(raw[last])) {
            last--;
        }
        final List<StackTraceElement> found = new ArrayList<>();
        for (int i = 0; i <= (last < 0 ? raw.length - 1 : last); i++) {
            found.add(isOfCell(raw[i]) ? frame(raw[i]) : raw[i]);
        }
        return found.toArray(StackTraceElement[]::new);
    }

    private static boolean isOfCell(StackTraceElement e) {
        return e.getClassName().startsWith(DeclaredClasses.PREFIX);
    }

    private StackTraceElement frame(StackTraceElement e) {
        final String outer = DeclaredClasses.outer(e.getClassName());
        final String method = e.getMethodName().equals(DeclaredClasses.METHOD) ? "" : e.getMethodName();
        final String id = outer.substring(DeclaredClasses.PREFIX.length());
        if (id.startsWith("0")) {
            return new StackTraceElement(e.getClassName(), method, "#" + id, e.getLineNumber());
        }
        return snippets.computeIfAbsent(outer, this::snippet).map(s -> new StackTraceElement(
            e.getClassName(), method, "#" + s.id(), line(s, e.getLineNumber()))).orElse(e);
    }

    private Optional<Snippet> snippet(String className) {
        return shell.flatMap(s -> s.snippets()
            .filter(snippet -> s.status(snippet).isActive())
            .filter(snippet -> wrapper(snippet).fullClassName().equals(className)).findFirst());
    }

    private SnippetWrapper wrapper(Snippet s) {
        return shell.orElseThrow().sourceCodeAnalysis().wrapper(s);
    }

    /** Line of a snippet for a line of the class that JShell has put it in, both from 1. */
    private int line(Snippet s, int lineOfClass) {
        final SnippetWrapper wrapper = wrapper(s);
        final String text = JavaText.line(wrapper.wrapped(), lineOfClass);
        int at = 0;
        for (int i = 1; i < lineOfClass; i++) {
            at = wrapper.wrapped().indexOf('\n', at) + 1;
        }
        final int inSource = wrapper.wrappedToSourcePosition(at + text.length() - text.stripLeading()
            .length());
        return JavaText.lineOf(s.source(), Math.max(0, inSource));
    }
}
