package spanwright.kernel.jshell;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.tools.FileObject;
import javax.tools.ForwardingJavaFileManager;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.StandardLocation;
import jdk.jshell.spi.ExecutionControl.ClassBytecodes;

/** What a compiler reads and writes: the JDK, the class path, and the classes of the session in memory. */
final class SessionFiles extends ForwardingJavaFileManager<StandardJavaFileManager> {
    /** The package of all classes of a session. */
    static final String PACKAGE = "REPL";

    private final SnippetLoader loader;
    private final Map<String, ByteArrayOutputStream> made = new LinkedHashMap<>();

    SessionFiles(StandardJavaFileManager standard, SnippetLoader loader) {
        super(standard);
        this.loader = loader;
    }

    /** Source text under the name of its class. */
    static JavaFileObject source(String name, String text) {
        return new SimpleJavaFileObject(uri(name, JavaFileObject.Kind.SOURCE), JavaFileObject.Kind.SOURCE) {
            @Override
            public CharSequence getCharContent(boolean ignoreEncodingErrors) {
                return text;
            }
        };
    }

    private static URI uri(String name, JavaFileObject.Kind kind) {
        return URI.create("cell:///" + name.replace('.', '/') + kind.extension);
    }

    /** A class that a cell has declared. */
    private static final class Kept extends SimpleJavaFileObject {
        private final String name;
        private final byte[] bytes;

        Kept(String name, byte[] bytes) {
            super(uri(name, Kind.CLASS), Kind.CLASS);
            this.name = name;
            this.bytes = bytes;
        }

        @Override
        public InputStream openInputStream() {
            return new ByteArrayInputStream(bytes);
        }
    }

    /** Changes when a cell has declared something. */
    long generation() {
        return loader.declared().generation();
    }

    /** The classes written since the last call of {@link #forgetMade}. */
    List<ClassBytecodes> made() {
        final List<ClassBytecodes> all = new ArrayList<>();
        made.forEach((name, bytes) -> all.add(new ClassBytecodes(name, bytes.toByteArray())));
        return all;
    }

    void forgetMade() {
        made.clear();
    }

    @Override
    public Iterable<JavaFileObject> list(Location location, String packageName,
                                         Set<JavaFileObject.Kind> kinds, boolean recurse) throws IOException {
        if (!packageName.equals(PACKAGE)) {
            return super.list(location, packageName, kinds, recurse);
        }
        final List<JavaFileObject> all = new ArrayList<>();
        if (location == StandardLocation.CLASS_PATH && kinds.contains(JavaFileObject.Kind.CLASS)) {
            loader.declared().classes().forEach((name, bytes) -> all.add(new Kept(name, bytes)));
        }
        return all;
    }

    @Override
    public String inferBinaryName(Location location, JavaFileObject file) {
        return file instanceof Kept kept ? kept.name : super.inferBinaryName(location, file);
    }

    @Override
    public boolean isSameFile(FileObject a, FileObject b) {
        return a == b || !(a instanceof SimpleJavaFileObject) && !(b instanceof SimpleJavaFileObject)
            && super.isSameFile(a, b);
    }

    @Override
    public JavaFileObject getJavaFileForOutput(Location location, String className, JavaFileObject.Kind kind,
                                               FileObject sibling) {
        return new SimpleJavaFileObject(uri(className, kind), kind) {
            @Override
            public OutputStream openOutputStream() {
                final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
                made.put(className, bytes);
                return bytes;
            }
        };
    }
}
