package spanwright.kernel.jshell;

import java.io.File;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The class path that the compiler must see: what the kernel itself was loaded from. */
final class SessionClassPath {
    private SessionClassPath() { }

    /** Options for the compiler; none if the kernel was loaded from the class path of the process. */
    static List<String> compilerOptions() {
        final List<String> entries = new ArrayList<>();
        ClassLoader loader = SessionClassPath.class.getClassLoader();
        while (loader != null) {
            if (loader instanceof URLClassLoader urls) {
                for (URL url : urls.getURLs()) {
                    entries.add(file(url));
                }
            }
            loader = loader.getParent();
        }
        if (entries.isEmpty()) {
            return List.of();
        }
        entries.add(System.getProperty("java.class.path"));
        return List.of("-classpath", String.join(File.pathSeparator, entries));
    }

    private static String file(URL url) {
        try {
            return Path.of(url.toURI()).toString();
        } catch (URISyntaxException | IllegalArgumentException e) {
            throw new IllegalStateException("the kernel was loaded from " + url + ", which is no file", e);
        }
    }
}
