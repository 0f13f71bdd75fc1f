package spanwright.kernel.jshell;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Optional;
import java.util.Properties;

/**
 * Documentation that libraries bring along: resources {@value #RESOURCE} on the class path, in UTF-8. A key
 * is the full name of a class ({@code spanwright.readings.Readings}) or of its members by name ({@code
 * spanwright.readings.Readings#read}); the value is the documentation comment as
 * written, the first sentence first. Given out as plain text.
 */
final class DocIndex {
    /** Where libraries put their documentation. */
    static final String RESOURCE = "META-INF/spanwright/docs.properties";

    private final Properties docs = new Properties();

    /** Reads all indexes that a class loader sees. */
    DocIndex(ClassLoader loader) {
        try {
            for (URL url : Collections.list(loader.getResources(RESOURCE))) {
                try (Reader in = new InputStreamReader(url.openStream(), StandardCharsets.UTF_8)) {
                    docs.load(in);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + RESOURCE, e);
        }
    }

    /** Documentation of a class. */
    Optional<String> of(Class<?> type) {
        return plain(type.getName().replace('$', '.'));
    }

    /** Documentation of the members of that name, also those a class inherits. */
    Optional<String> of(Class<?> type, String member) {
        Class<?> c = type;
        while (c != null) {
            final Optional<String> own = declared(c, member);
            if (own.isPresent()) {
                return own;
            }
            for (Class<?> i : c.getInterfaces()) {
                final Optional<String> inherited = of(i, member);
                if (inherited.isPresent()) {
                    return inherited;
                }
            }
            c = c.getSuperclass();
        }
        return Optional.empty();
    }

    private Optional<String> declared(Class<?> type, String member) {
        return plain(type.getName().replace('$', '.') + "#" + member);
    }

    private Optional<String> plain(String key) {
        return Optional.ofNullable(docs.getProperty(key)).map(JavadocText::plain);
    }
}
