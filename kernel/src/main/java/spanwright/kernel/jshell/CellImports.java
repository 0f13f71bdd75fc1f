package spanwright.kernel.jshell;

import java.lang.reflect.Member;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.lang.model.SourceVersion;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.JShell;
import jdk.jshell.MethodSnippet;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;

/**
 * The imports that a piece of code needs: of those that hold in the session only the ones that can give one
 * of its words a meaning. JShell writes them all before each snippet, and each costs the compiler time.
 */
final class CellImports {
    private static final Pattern IMPORT =
        Pattern.compile("import\\s+(static\\s+)?([\\p{L}\\p{N}_$.]+)\\.([\\p{L}\\p{N}_$]+|\\*)\\s*;");

    private final SnippetLoader loader;
    private final List<Import> ofPrelude;
    private final Map<String, List<Import>> byWord = new HashMap<>();
    private final Map<String, Optional<Set<String>>> members = new HashMap<>();
    private List<Import> current;
    private Set<String> declared = Set.of();
    private boolean settled = true;
    private boolean stale;

    private record Import(String owner, String name, boolean ofMembers) {
        static Import of(boolean ofMembers, String full) {
            final int dot = full.lastIndexOf('.');
            return new Import(full.substring(0, dot), full.substring(dot + 1), ofMembers);
        }

        String line() {
            return "import " + (ofMembers ? "static " : "") + owner + "." + name + ";";
        }
    }

    CellImports(SnippetLoader loader, List<String> ofPrelude) {
        this.loader = loader;
        this.ofPrelude = ofPrelude.stream().map(IMPORT::matcher).filter(Matcher::matches)
            .map(m -> new Import(m.group(2), m.group(3), m.group(1) != null)).toList();
        // One that cannot be read here is left to JShell, and so is all code.
        this.settled = this.ofPrelude.size() == ofPrelude.size();
        this.current = this.ofPrelude;
    }

    /** The session may have changed: an import, a declaration, a jar. */
    void changed() {
        stale = true;
    }

    /**
     * The import lines for code with these words; empty if the session holds something that only JShell can
     * deal with.
     *
     * @param shell the engine, if it has been started
     */
    Optional<String> linesFor(Set<String> words, Optional<JShell> shell) {
        shell.filter(s -> stale).ifPresent(this::refresh);
        if (!settled) {
            return Optional.empty();
        }
        final Set<String> lines = new LinkedHashSet<>();
        for (String word : words) {
            byWord.computeIfAbsent(word, this::importsOf).forEach(i -> lines.add(i.line()));
        }
        final Set<String> own = new TreeSet<>(words);
        own.retainAll(declared);
        for (Map.Entry<String, List<String>> home : loader.declared().homesOf(own).entrySet()) {
            if (home.getValue().isEmpty()) {
                return Optional.empty();
            }
            home.getValue().forEach(h -> lines.add("import static " + h + "." + home.getKey() + ";"));
        }
        return Optional.of(String.join(" ", lines));
    }

    private void refresh(JShell shell) {
        stale = false;
        final List<Snippet> active = shell.snippets().filter(s -> shell.status(s).isActive()).toList();
        settled = active.stream().allMatch(s -> shell.status(s) == Status.VALID);
        declared = active.stream().filter(DeclarationSnippet.class::isInstance)
            .map(CellImports::nameOf).collect(Collectors.toSet());
        final List<Import> now = shell.imports().map(i -> Import.of(i.isStatic(), i.fullname())).toList();
        if (!now.equals(current)) {
            current = now;
            byWord.clear();
        }
    }

    private static String nameOf(Snippet s) {
        return s instanceof MethodSnippet m ? m.name() : ((DeclarationSnippet) s).name();
    }

    /** The class path has grown: what had no meaning may have one now. */
    void classPathChanged() {
        byWord.clear();
        members.clear();
    }

    /** The words of code that may be names, outside literals and comments. */
    static Set<String> wordsOf(String code) {
        final String masked = JavaText.masked(code);
        final Set<String> words = new LinkedHashSet<>();
        int i = 0;
        while (i < masked.length()) {
            final int begin = i;
            while (i < masked.length() && Character.isJavaIdentifierPart(masked.charAt(i))) {
                i++;
            }
            if (i > begin && Character.isJavaIdentifierStart(masked.charAt(begin))) {
                words.add(masked.substring(begin, i));
            }
            i = Math.max(i, begin + 1);
        }
        words.removeIf(SourceVersion::isKeyword);
        return words;
    }

    private List<Import> importsOf(String word) {
        return current.stream().filter(i -> canMean(i, word)).toList();
    }

    private boolean canMean(Import i, String word) {
        if (!i.name().equals("*")) {
            return i.name().equals(word);
        }
        if (i.ofMembers()) {
            return membersOf(i.owner()).map(m -> m.contains(word)).orElse(true);
        }
        // The member types of a class can be imported on demand too; by custom its name tells it.
        return Character.isUpperCase(i.owner().charAt(i.owner().lastIndexOf('.') + 1))
            || loader.classLoader().getResource(i.owner().replace('.', '/') + "/" + word + ".class") != null;
    }

    /** Empty if the class cannot be found by that name. */
    private Optional<Set<String>> membersOf(String className) {
        return members.computeIfAbsent(className, n -> {
            try {
                final Class<?> c = Class.forName(n, false, loader.classLoader());
                return Optional.of(Stream.concat(Stream.<Member>concat(Arrays.stream(c.getFields()),
                    Arrays.stream(c.getMethods())).map(Member::getName),
                    Arrays.stream(c.getClasses()).map(Class::getSimpleName)).collect(Collectors.toSet()));
            } catch (ClassNotFoundException | LinkageError e) {
                return Optional.empty();
            }
        });
    }
}
