package spanwright.kernel.jshell;

import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import jdk.jshell.JShell;
import jdk.jshell.SourceCodeAnalysis.Suggestion;
import spanwright.kernel.interpreter.Completions;
import spanwright.kernel.interpreter.Completions.Item;

/** Suggestions of the JShell analysis with the kind and signature of each, those of a fitting type first. */
final class Completer {
    private static final Set<String> KEYWORDS = Set.of(
        "abstract", "assert", "boolean", "break", "byte", "case", "catch", "char", "class", "const",
        "continue", "default", "do", "double", "else", "enum", "extends", "false", "final", "finally",
        "float", "for", "goto", "if", "implements", "import", "instanceof", "int", "interface", "long",
        "native", "new", "null", "package", "private", "protected", "public", "record", "return",
        "sealed", "short", "static", "strictfp", "super", "switch", "synchronized", "this", "throw",
        "throws", "transient", "true", "try", "var", "void", "volatile", "while", "yield");

    private static final Pattern DECLARED = Pattern.compile(
        "(?<=[\\p{L}\\p{N}_\\]>]\\s)\\s*([\\p{L}_$][\\p{L}\\p{N}_$]*)\\s*([=;:,()])(?!=)");

    private final JShell shell;
    private final TypeNames types;

    Completer(JShell shell, TypeNames types) {
        this.shell = shell;
        this.types = types;
    }

    /** What could stand at the cursor. */
    Completions at(String code, int cursor) {
        final int c = Math.max(0, Math.min(cursor, code.length()));
        final List<Unit> units = CellSplitter.split(shell::sourceCodeAnalysis, code);
        final int begin = SourceSpot.beginOfBody(units, c);
        final int[] anchor = {c - begin};
        final List<Suggestion> found = shell.sourceCodeAnalysis()
            .completionSuggestions(code.substring(begin), c - begin, anchor);
        final int start = begin + Math.max(0, anchor[0]);
        final Map<String, Boolean> texts = new LinkedHashMap<>();
        for (Suggestion s : found) {
            texts.merge(s.continuation(), s.matchesType(), Boolean::logicalOr);
        }
        final String receiver = new SourceSpot(code, start, start).receiver();
        if (receiver.isEmpty()) {
            declaredBefore(code, start, c).forEach(name -> texts.putIfAbsent(name, false));
        }
        final Optional<Class<?>> type = receiver.isEmpty() ? Optional.empty() : typeOf(receiver);
        final Map<String, String> known = type.map(this::members).orElseGet(
            () -> receiver.isEmpty() ? declared() : Map.of());
        final List<Item> items = texts.entrySet().stream()
            .sorted(Comparator.comparing((Map.Entry<String, Boolean> e) -> !e.getValue()))
            .map(e -> item(e.getKey(), known, !receiver.isEmpty())).toList();
        return new Completions(items, start, c);
    }

    /** Names that this cell itself declares before the cursor; the analysis knows only what has run. */
    private static List<String> declaredBefore(String code, int start, int cursor) {
        final String prefix = code.substring(start, cursor);
        return prefix.isEmpty() ? List.of()
            : DECLARED.matcher(JavaText.masked(code.substring(0, start))).results()
            .map(m -> m.group(1) + (m.group(2).equals("(") ? "(" : ""))
            .filter(n -> n.startsWith(prefix) && !n.equals(prefix)).distinct().sorted().toList();
    }

    private Optional<Class<?>> typeOf(String receiver) {
        final String type = shell.sourceCodeAnalysis().analyzeType(receiver, receiver.length());
        return Optional.ofNullable(type).flatMap(types::resolve).or(() -> types.resolve(receiver));
    }

    private static Item item(String text, Map<String, String> known, boolean member) {
        final int paren = text.indexOf('(');
        final String name = paren < 0 ? text : text.substring(0, paren);
        final String signature = known.getOrDefault(paren < 0 ? name : name + "(", "");
        return new Item(text, kind(text, member, signature), signature);
    }

    private static String kind(String text, boolean member, String signature) {
        if (text.indexOf('(') >= 0) {
            return "function";
        }
        if (!member && KEYWORDS.contains(text.strip()) || text.equals("class")) {
            return "keyword";
        }
        if (!signature.isEmpty()) {
            return signature.startsWith("class ") ? "class" : member ? "property" : "instance";
        }
        final boolean upper = Character.isUpperCase(text.charAt(0));
        final boolean constant = upper && text.length() > 1 && text.equals(text.toUpperCase(Locale.ROOT));
        return constant ? "property" : upper ? "class" : member ? "property" : "module";
    }

    /** Signatures of the members of a class, by name, those of methods with an opening parenthesis. */
    private Map<String, String> members(Class<?> type) {
        final Map<String, List<String>> found = new LinkedHashMap<>();
        for (Method m : methods(type)) {
            if (!m.isSynthetic()) {
                found.computeIfAbsent(m.getName() + "(", n -> new ArrayList<>())
                    .add(TypeNames.signature(m, m.getGenericReturnType()));
            }
        }
        for (Field f : type.getFields()) {
            found.computeIfAbsent(f.getName(), n -> new ArrayList<>())
                .add(TypeNames.shortened(f.getGenericType().getTypeName()) + " " + f.getName());
        }
        return found.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey,
            e -> e.getValue().stream().distinct().collect(Collectors.joining("\n"))));
    }

    /** Public methods, and all that a class of a cell declares. */
    private static List<Method> methods(Class<?> type) {
        return Stream.concat(Arrays.stream(type.getMethods()), type.getName().startsWith("REPL.")
            ? Arrays.stream(type.getDeclaredMethods()) : Stream.empty()).toList();
    }

    /** What cells have declared, by name. */
    private Map<String, String> declared() {
        final Map<String, String> found = new LinkedHashMap<>();
        shell.variables().forEach(v -> found.put(v.name(), v.typeName() + " " + v.name()));
        shell.methods().forEach(m -> {
            final int result = m.signature().lastIndexOf(')');
            final String text = m.signature().substring(result + 1) + " " + m.name() + "("
                + m.parameterTypes() + ")";
            found.merge(m.name() + "(", text, (a, b) -> a + "\n" + b);
        });
        shell.types().forEach(t -> found.put(t.name(), "class " + t.name()));
        return found;
    }
}
