package spanwright.kernel.jshell;

import java.io.File;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import jdk.jshell.execution.LoaderDelegate;
import jdk.jshell.spi.ExecutionControl.ClassBytecodes;
import jdk.jshell.spi.ExecutionControl.ClassInstallException;
import jdk.jshell.spi.ExecutionControl.InternalException;

/** Defines the classes of a session. Its parent sees the kernel and its libraries. */
final class SnippetLoader implements LoaderDelegate {
    private final Definer definer;

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

    ClassLoader classLoader() {
        return definer;
    }

    @Override
    public void load(ClassBytecodes[] classes) throws ClassInstallException {
        final boolean[] loaded = new boolean[classes.length];
        for (ClassBytecodes c : classes) {
            definer.made.put(c.name(), ExitRewriter.rewrite(c.bytecodes()));
        }
        for (int i = 0; i < classes.length; i++) {
            try {
                definer.loadClass(classes[i].name()).getDeclaredMethods();
                loaded[i] = true;
            } catch (ClassNotFoundException | LinkageError e) {
                throw new ClassInstallException("load: " + e, loaded);
            }
        }
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
