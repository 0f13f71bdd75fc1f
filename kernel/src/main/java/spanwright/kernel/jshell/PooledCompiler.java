package spanwright.kernel.jshell;

import com.sun.source.util.JavacTask;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.DiagnosticListener;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileManager;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.StandardLocation;
import javax.tools.ToolProvider;
import jdk.jshell.spi.ExecutionControl.ClassBytecodes;

/**
 * The Java compiler, with what it has read of the JDK and the class path kept from one class to the next, as
 * JShell keeps it. The JDK has a pool for this; it is not public, so it is reached by reflection, and there
 * is no such compiler where a JDK does not let us. Not thread safe.
 */
final class PooledCompiler {
    private static final String POOL = "com.sun.tools.javac.api.JavacTaskPool";
    private static final List<String> OPTIONS = List.of("-proc:none", "-parameters", "-Xlint:none");

    private final SessionFiles files;
    private final SessionPackage listing = new SessionPackage();
    private final Class<?> worker;
    private final Object pool;
    private final Method getTask;
    private long generation = -1;

    private PooledCompiler(SessionFiles files) throws ReflectiveOperationException {
        this.files = files;
        final Class<?> type = Class.forName(POOL);
        worker = Class.forName(POOL + "$Worker");
        pool = type.getConstructor(int.class).newInstance(1);
        getTask = type.getMethod("getTask", Writer.class, JavaFileManager.class, DiagnosticListener.class,
            Iterable.class, Iterable.class, Iterable.class, worker);
    }

    /**
     * A compiler; empty if this Java has none to be reached.
     *
     * @param loader  holds the classes of the session
     * @param further class path entries beyond those of the process
     */
    static Optional<PooledCompiler> of(SnippetLoader loader, List<Path> further) {
        final JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        if (compiler == null) {
            return Optional.empty();
        }
        final StandardJavaFileManager standard = compiler.getStandardFileManager(null, null, null);
        try {
            if (!further.isEmpty()) {
                addToClassPath(standard, further);
            }
            return Optional.of(new PooledCompiler(new SessionFiles(standard, loader)));
        } catch (ReflectiveOperationException e) {
            // The pool is not exported to us or is another one: cells are compiled by JShell alone.
            return Optional.empty();
        }
    }

    private static void addToClassPath(StandardJavaFileManager standard, List<Path> further) {
        try {
            final List<File> path = new java.util.ArrayList<>();
            standard.getLocation(StandardLocation.CLASS_PATH).forEach(path::add);
            further.forEach(p -> path.add(p.toFile()));
            standard.setLocation(StandardLocation.CLASS_PATH, path);
        } catch (IOException e) {
            throw new UncheckedIOException("the class path of cells", e);
        }
    }

    /**
     * Compiles a class.
     *
     * @param name   of the class, with its package
     * @param source of the file it stands in
     * @return the class and those within it; empty if there is an error
     */
    Optional<List<ClassBytecodes>> compile(String name, String source) {
        final DiagnosticCollector<JavaFileObject> found = new DiagnosticCollector<>();
        final Object work = Proxy.newProxyInstance(PooledCompiler.class.getClassLoader(),
            new Class<?>[] {worker}, (self, method, arguments) -> generated((JavacTask) arguments[0], found));
        try {
            final Object done = getTask.invoke(pool, Writer.nullWriter(), files, found, OPTIONS, null,
                List.of(SessionFiles.source(name, source)), work);
            return Boolean.TRUE.equals(done) ? Optional.of(files.made()) : Optional.empty();
        } catch (InvocationTargetException e) {
            generation = -1;
            if (e.getCause() instanceof OutOfMemoryError noMemory) {
                throw noMemory;
            }
            // Too deep for the compiler, or an error of the compiler itself: JShell meets it again and says
            // so.
            return Optional.empty();
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(POOL + " was accessible before", e);
        } finally {
            files.forgetMade();
        }
    }

    private boolean generated(JavacTask task, DiagnosticCollector<JavaFileObject> found)
            throws IOException, ReflectiveOperationException {
        if (generation != files.generation()) {
            listing.forget(task);
            generation = files.generation();
        }
        task.analyze();
        if (hasErrors(found)) {
            return false;
        }
        task.generate();
        return !hasErrors(found);
    }

    private static boolean hasErrors(DiagnosticCollector<JavaFileObject> found) {
        return found.getDiagnostics().stream().anyMatch(d -> d.getKind() == Diagnostic.Kind.ERROR);
    }
}
