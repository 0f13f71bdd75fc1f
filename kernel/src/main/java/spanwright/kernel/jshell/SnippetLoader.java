package spanwright.kernel.jshell;

import java.io.File;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import jdk.jshell.execution.LoaderDelegate;
import jdk.jshell.spi.ExecutionControl.ClassBytecodes;
import jdk.jshell.spi.ExecutionControl.ClassInstallException;
import jdk.jshell.spi.ExecutionControl.InternalException;
import spanwright.kernel.display.GeneratedNames;

/** Defines the classes of a session. Its parent sees the kernel and its libraries. */
final class SnippetLoader implements LoaderDelegate {
    private final Definer definer;
    private final DeclaredClasses declared = new DeclaredClasses();
    private final Map<String, String> latest = new ConcurrentHashMap<>();

    SnippetLoader(ClassLoader parent) {
        this.definer = new Definer(parent);
        definer.made.put(StopCheck.WOVEN_CLASS, StopCheck.wovenClass());
    }

    /** The loader of the session's classes and of jars that were added to it. */
    private static final class Definer extends URLClassLoader {
        private final Map<String, byte[]> made = new ConcurrentHashMap<>();

        Definer(ClassLoader parent) {
            super(new URL[0], parent);
        }

        @Override
        protected Class<?> findClass(String name) throws ClassNotFoundException {
            final byte[] bytes = made.remove(name);
            return bytes == null ? super.findClass(name) : defineClass(name, bytes, 0, bytes.length);
        }

        @Override
        protected void addURL(URL url) {
            super.addURL(url);
        }
    }

    /** The latest class that cells declared under a name. */
    Optional<Class<?>> classOfCell(String name) {
        return Optional.ofNullable(latest.get(name)).map(made -> {
            try {
                return definer.loadClass(made);
            } catch (ClassNotFoundException e) {
                throw new IllegalStateException("class " + made + " was loaded before", e);
            }
        });
    }

    /** The classes that code of later cells can refer to. */
    DeclaredClasses declared() {
        return declared;
    }

    ClassLoader classLoader() {
        return definer;
    }

    @Override
    public void load(ClassBytecodes[] classes) throws ClassInstallException {
        final boolean[] loaded = new boolean[classes.length];
        for (ClassBytecodes c : classes) {
            definer.made.put(c.name(), ExitRewriter.rewrite(c.bytecodes()));
            if (c.name().indexOf('$', "REPL.$JShell$".length()) > 0) {
                latest.put(GeneratedNames.strip(c.name()).replace('$', '.'), c.name());
            }
        }
        for (int i = 0; i < classes.length; i++) {
            try {
                definer.loadClass(classes[i].name()).getDeclaredMethods();
                loaded[i] = true;
            } catch (ClassNotFoundException | LinkageError e) {
                throw new ClassInstallException("load: " + e, loaded);
            }
        }
        declared.loaded(classes, definer);
    }

    @Override
    public void classesRedefined(ClassBytecodes[] classes) {
        throw new UnsupportedOperationException("classes of cells are replaced, not redefined");
    }

    @Override
    public void addToClasspath(String path) throws InternalException {
        try {
            for (String part : path.split(File.pathSeparator)) {
                definer.addURL(new File(part).toURI().toURL());
            }
        } catch (MalformedURLException e) {
            throw new InternalException("class path entry " + path + ": " + e.getMessage());
        }
    }

    @Override
    public Class<?> findClass(String name) throws ClassNotFoundException {
        return definer.loadClass(name);
    }
}
