package spanwright.kernel.jshell;

import java.lang.reflect.Executable;
import java.lang.reflect.Parameter;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import jdk.jshell.ImportSnippet;
import jdk.jshell.JShell;
import spanwright.kernel.display.GeneratedNames;

/** Finds the class that a name in a cell means, and writes members as a person would declare them. */
final class TypeNames {
    private static final Pattern PACKAGES = Pattern.compile("\\b[a-z][\\w]*\\.(?=[\\w.]*[A-Z])");

    private final JShell shell;
    private final SnippetLoader loader;

    TypeNames(JShell shell, SnippetLoader loader) {
        this.shell = shell;
        this.loader = loader;
    }

    /** The class of a type name as the compiler writes it, or of a simple name that a cell can use. */
    Optional<Class<?>> resolve(String typeName) {
        final int generic = typeName.indexOf('<');
        final String name = (generic < 0 ? typeName : typeName.substring(0, generic)).strip();
        if (!name.matches("[\\p{L}_$][\\p{L}\\p{N}_$.]*")) {
            return Optional.empty();
        }
        return loader.classOfCell(name).or(() -> load(name)).or(() -> load("java.lang." + name))
            .or(() -> imported(name));
    }

    private Optional<Class<?>> imported(String name) {
        return shell.imports().filter(i -> !i.isStatic())
            .map(i -> candidate(i, name)).flatMap(Optional::stream)
            .map(this::load).flatMap(Optional::stream).findFirst();
    }

    private static Optional<String> candidate(ImportSnippet i, String name) {
        final String full = i.fullname();
        if (full.endsWith(".*")) {
            return Optional.of(full.substring(0, full.length() - 1) + name);
        }
        return full.endsWith("." + name) ? Optional.of(full) : Optional.empty();
    }

    /** The classes that a static import could bring a member of that name from. */
    Stream<Class<?>> staticImportsOf(String member) {
        return shell.imports().filter(ImportSnippet::isStatic).map(ImportSnippet::fullname)
            .filter(i -> i.endsWith(".*") || i.endsWith("." + member))
            .map(i -> load(i.substring(0, i.lastIndexOf('.')))).flatMap(Optional::stream);
    }

    /** A class by its name; the dots of nested classes are tried as dollar signs, from the right. */
    private Optional<Class<?>> load(String name) {
        String n = name;
        while (true) {
            try {
                return Optional.of(Class.forName(n, false, loader.classLoader()));
            } catch (ClassNotFoundException | LinkageError e) {
                final int dot = n.lastIndexOf('.');
                if (dot < 0 || !Character.isUpperCase(n.charAt(dot + 1))) {
                    return Optional.empty();
                }
                n = n.substring(0, dot) + "$" + n.substring(dot + 1);
            }
        }
    }

    /** For example {@code boolean add(E)}; with the names of parameters where the class file keeps them. */
    static String signature(Executable member, Type result) {
        final String parameters = Arrays.stream(member.getParameters()).map(TypeNames::parameter)
            .collect(Collectors.joining(", ", "(", ")"));
        return shortened(result.getTypeName()) + " " + member.getName() + parameters;
    }

    private static String parameter(Parameter p) {
        final String type = shortened(p.getParameterizedType().getTypeName());
        final String shown = p.isVarArgs() && type.endsWith("[]")
            ? type.substring(0, type.length() - 2) + "..." : type;
        return p.isNamePresent() ? shown + " " + p.getName() : shown;
    }

    /** A type without packages and generated names. */
    static String shortened(String typeName) {
        return PACKAGES.matcher(GeneratedNames.strip(typeName)).replaceAll("").replace('$', '.');
    }
}
