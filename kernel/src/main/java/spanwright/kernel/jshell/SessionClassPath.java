package spanwright.kernel.jshell;

import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What the compiler must see so that cells can use the kernel itself. */
final class SessionClassPath {
    private SessionClassPath() { }

    /** What the kernel was loaded from beyond the class path of the process, which the compiler sees. */
    static List<String> beyondTheProcess() {
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
        return entries;
    }

    private static String file(URL url) {
        try {
            return Path.of(url.toURI()).toString();
        } catch (URISyntaxException | IllegalArgumentException e) {
            throw new IllegalStateException("the kernel was loaded from " + url + ", which is no file", e);
        }
    }
}
