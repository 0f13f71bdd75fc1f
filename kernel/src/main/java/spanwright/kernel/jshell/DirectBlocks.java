package spanwright.kernel.jshell;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import jdk.jshell.JShell;
import jdk.jshell.spi.ExecutionControl.ClassBytecodes;

/**
 * Runs statements without JShell. JShell has each snippet read by the compiler up to four times, with all
 * imports and all names of the session before it; statements declare nothing that JShell must know of, so
 * one reading is enough. What does not compile here is left to JShell, which finds the words for it.
 */
final class DirectBlocks {
    /** What became of statements. */
    enum Result {
        /** Nothing was tried, JShell must do it. */
        UNTRIED,
        /** They do not compile as one block. Nothing ran. */
        REFUSED,
        /** They ran, if not to their end; the run of the cell knows what they threw. */
        RAN
    }

    /**
     * Statements of a cell.
     *
     * @param before all but the last, with what stands between them
     * @param last   the last one
     * @param valued whether the last one is an expression whose value is wanted
     */
    record Block(String before, Unit last, boolean valued) {
        /** As the body of a method that returns the value, or nothing. */
        String body(boolean returning) {
            return before + (returning ? "return " : "") + last.source() + (last.isClosed() ? "\n" : "\n;");
        }
    }

    private static final String OBJECT = "java.lang.Object";
    private static final int RENEWED_AFTER = 3000;
    private static final Pattern RETURN = Pattern.compile("\\breturn\\b");
    private static final Pattern PRINTS =
        Pattern.compile("System\\s*\\.\\s*(?:out|err)\\s*\\.\\s*print(?:ln)?\\b");

    private final SnippetLoader loader;
    private final SnippetControl control;
    private final CellImports imports;
    private final List<Path> further;
    private Optional<PooledCompiler> compiler = Optional.empty();
    private boolean looked;
    private long count;

    /**
     * A way past JShell.
     *
     * @param further class path entries beyond those of the process
     */
    DirectBlocks(SnippetLoader loader, SnippetControl control, List<String> imports, List<Path> further) {
        this.loader = loader;
        this.control = control;
        this.imports = new CellImports(loader, imports);
        this.further = new ArrayList<>(further);
    }

    /** Has the compiler loaded, and do once what is slow the first time. */
    void warmUp() {
        compiler().ifPresent(c -> c.compile(DeclaredClasses.PREFIX + "00",
            source(DeclaredClasses.PREFIX + "00", "", OBJECT, "return 1 + 1;")));
    }

    private Optional<PooledCompiler> compiler() {
        // A compiler keeps the names of all it has seen.
        if (!looked || count % RENEWED_AFTER == RENEWED_AFTER - 1) {
            looked = true;
            compiler = PooledCompiler.of(loader, further);
        }
        return compiler;
    }

    /** JShell has taken a snippet or dropped one. */
    void sessionChanged() {
        imports.changed();
    }

    /** Jars were added to the session. */
    void addToClassPath(List<Path> paths) {
        further.addAll(paths);
        looked = false;
        imports.classPathChanged();
    }

    /** The id that the next block will have in traces; JShell's ids never begin with a zero. */
    String nextId() {
        return "0" + (count + 1);
    }

    /**
     * Compiles a block and runs it.
     *
     * @param shell the engine, if it has been started
     */
    Result run(Block block, CellRun run, Optional<JShell> shell) {
        final String masked = JavaText.masked(block.before() + block.last().source());
        if (block.valued() && RETURN.matcher(masked).find() || compiler().isEmpty()) {
            return Result.UNTRIED;
        }
        final Set<String> words = CellImports.wordsOf(masked);
        final Optional<String> header = imports.linesFor(words, shell);
        if (header.isEmpty()) {
            return Result.UNTRIED;
        }
        count++;
        final String name = DeclaredClasses.PREFIX + "0" + count;
        final boolean printing = PRINTS.matcher(block.last().source()).lookingAt();
        Optional<List<ClassBytecodes>> made = Optional.empty();
        boolean returning = false;
        if (block.valued() && !printing) {
            returning = true;
            made = compiled(name, header.get(), block, true);
        }
        if (made.isEmpty() && (!block.valued() || block.last().endsInCall())) {
            returning = false;
            made = compiled(name, header.get(), block, false);
        }
        if (made.isEmpty()) {
            return Result.REFUSED;
        }
        run.wantValue(returning);
        return control.ran(made.get().toArray(ClassBytecodes[]::new), name) ? Result.RAN : Result.REFUSED;
    }

    private Optional<List<ClassBytecodes>> compiled(String name, String header, Block block,
                                                    boolean returning) {
        return compiler.orElseThrow().compile(name,
            source(name, header, returning ? OBJECT : "void", block.body(returning)));
    }

    /** All before the body stands in its first line, so that the lines of the class are those of the body. */
    private static String source(String name, String header, String type, String body) {
        return "package " + SessionFiles.PACKAGE + "; " + header + " public class "
            + name.substring(SessionFiles.PACKAGE.length() + 1) + " { public static " + type
            + " " + DeclaredClasses.METHOD + "() throws java.lang.Throwable { " + body + "} }";
    }
}
