import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;

/**
 * Gathers the documentation comments of public types and members into the index that the kernel shows on
 * inspection. Run by the build: {@code java ApiDocs.java OUTPUT SOURCE_FOLDER...}
 *
 * <p>Keys are full names of classes, with a dot before nested ones, and of members as {@code Class#member};
 * values are the comments as written. Comments of overloads stand under one key, each after the first with
 * the types it takes. A component of a record is documented by the {@code @param} of its record.
 */
public final class ApiDocs {
    private static final String INHERITED = "{@inheritDoc}";

    private final Map<String, String> docs = new TreeMap<>();

    private ApiDocs() { }

    /** Writes the index. */
    public static void main(String[] args) throws IOException {
        final List<Path> sources = new ArrayList<>();
        for (int i = 1; i < args.length; i++) {
            try (Stream<Path> files = Files.walk(Path.of(args[i]))) {
                files.filter(f -> f.toString().endsWith(".java")).sorted().forEach(sources::add);
            }
        }
        if (sources.isEmpty()) {
            throw new IllegalArgumentException("no sources in " + List.of(args));
        }
        final ApiDocs index = new ApiDocs();
        index.read(sources);
        index.write(Path.of(args[0]));
    }

    private void read(List<Path> sources) throws IOException {
        final JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (var files = compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            final JavacTask task = (JavacTask) compiler.getTask(null, files, null, List.of("-proc:none"),
                null, files.getJavaFileObjectsFromPaths(sources));
            final DocTrees trees = DocTrees.instance(task);
            for (final CompilationUnitTree unit : task.parse()) {
                new Reader(trees).scan(unit, null);
            }
        }
    }

    private void write(Path output) throws IOException {
        final Properties properties = new Properties();
        properties.putAll(docs);
        final StringWriter text = new StringWriter();
        properties.store(text, null);
        // The date of the build is left out, and the order fixed: the same sources make the same file.
        final String lines = text.toString().lines().filter(l -> !l.startsWith("#")).sorted()
            .collect(Collectors.joining("\n", "", "\n"));
        Files.createDirectories(output.getParent());
        Files.writeString(output, lines);
    }

    /** Goes through public types and their public members. */
    private final class Reader extends TreePathScanner<Void, Void> {
        private final DocTrees trees;
        private final List<String> enclosing = new ArrayList<>();
        private final List<Tree.Kind> kinds = new ArrayList<>();

        Reader(DocTrees trees) {
            this.trees = trees;
        }

        @Override
        public Void visitClass(ClassTree type, Void unused) {
            if (!seen(type.getModifiers().getFlags())) {
                return null;
            }
            enclosing.add(type.getSimpleName().toString());
            kinds.add(type.getKind());
            comment().ifPresent(doc -> {
                docs.put(name(), doc);
                if (type.getKind() == Tree.Kind.RECORD) {
                    components(doc);
                }
            });
            super.visitClass(type, unused);
            enclosing.remove(enclosing.size() - 1);
            kinds.remove(kinds.size() - 1);
            return null;
        }

        @Override
        public Void visitMethod(MethodTree method, Void unused) {
            final String simple = method.getName().toString();
            if (seen(method.getModifiers().getFlags()) && !simple.equals("<init>")) {
                final String types = method.getParameters().stream().map(p -> p.getType().toString())
                    .collect(Collectors.joining(", "));
                comment().ifPresent(doc -> docs.merge(name() + "#" + simple, doc,
                    (first, next) -> first + "\n<p>{@code " + simple + "(" + types + ")}\n<p>" + next));
            }
            return null;
        }

        @Override
        public Void visitVariable(VariableTree field, Void unused) {
            final boolean inType = getCurrentPath().getParentPath().getLeaf() instanceof ClassTree;
            if (inType && seen(field.getModifiers().getFlags())) {
                comment().ifPresent(doc -> docs.put(name() + "#" + field.getName(), doc));
            }
            return null;
        }

        /** Public, or so by standing in an interface. */
        private boolean seen(Set<Modifier> flags) {
            final Tree.Kind outer = kinds.isEmpty() ? Tree.Kind.CLASS : kinds.get(kinds.size() - 1);
            final boolean inInterface = outer == Tree.Kind.INTERFACE || outer == Tree.Kind.ANNOTATION_TYPE;
            return flags.contains(Modifier.PUBLIC) || inInterface && !flags.contains(Modifier.PRIVATE);
        }

        private String name() {
            final var unit = getCurrentPath().getCompilationUnit().getPackage();
            return (unit == null ? "" : unit.getPackageName() + ".") + String.join(".", enclosing);
        }

        private Optional<String> comment() {
            final TreePath path = getCurrentPath();
            return Optional.ofNullable(trees.getDocComment(path)).map(String::strip)
                .filter(doc -> !doc.isEmpty() && !doc.equals(INHERITED));
        }

        private void components(String doc) {
            final Matcher m = Pattern.compile("(?s)@param\\s+(\\w+)\\s+(.*?)(?=\\n\\s*@\\w|$)").matcher(doc);
            while (m.find()) {
                docs.putIfAbsent(name() + "#" + m.group(1), sentence(m.group(2).strip().replaceAll("\\s+",
                    " ")));
            }
        }

        private static String sentence(String words) {
            // A symbol, such as y, keeps its case.
            final String begun = words.matches("[a-z]{2}.*")
                ? Character.toUpperCase(words.charAt(0)) + words.substring(1) : words;
            return begun.isEmpty() || begun.endsWith(".") ? begun : begun + ".";
        }
    }
}
