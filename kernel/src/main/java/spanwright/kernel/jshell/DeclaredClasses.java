package spanwright.kernel.jshell;

import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import jdk.jshell.spi.ExecutionControl.ClassBytecodes;

/**
 * The classes that hold what cells have declared. JShell puts each variable, method and type into a class of
 * its own, {@code REPL.$JShell$} with a number, and after each new definition letters. Only the latest of a
 * number is kept.
 */
final class DeclaredClasses {
    /** What the names of all classes begin with in which JShell puts code of cells. */
    static final String PREFIX = SessionFiles.PACKAGE + ".$JShell$";
    /** The method of those classes that runs the code. */
    static final String METHOD = "do_it$";

    private final Map<String, Home> homes = new LinkedHashMap<>();
    private long generation;

    private record Home(String outer, Set<String> names, Map<String, byte[]> classes) { }

    /** Takes note of classes that were loaded. */
    synchronized void loaded(ClassBytecodes[] classes, ClassLoader loader) {
        for (ClassBytecodes c : classes) {
            if (c.name().startsWith(PREFIX) && c.name().equals(outer(c.name()))) {
                final Set<String> names = names(c.name(), classes, loader);
                if (!names.isEmpty()) {
                    homes.put(number(c.name()), new Home(c.name(), names, within(c.name(), classes)));
                    generation++;
                }
            }
        }
    }

    /** Lets go of all but these: a name whose new definition failed has its next one under another number. */
    synchronized void keepOnly(Set<String> outers) {
        if (homes.values().removeIf(h -> !outers.contains(h.outer()))) {
            generation++;
        }
    }

    private static Map<String, byte[]> within(String outer, ClassBytecodes[] classes) {
        final Map<String, byte[]> found = new LinkedHashMap<>();
        for (ClassBytecodes c : classes) {
            if (outer(c.name()).equals(outer)) {
                found.put(c.name(), c.bytecodes());
            }
        }
        return found;
    }

    /** The class in which a class of cells lies, itself if in none. */
    static String outer(String className) {
        final int end = className.indexOf('$', Math.min(className.length(), PREFIX.length()));
        return end < 0 ? className : className.substring(0, end);
    }

    private static String number(String outer) {
        int end = PREFIX.length();
        while (end < outer.length() && Character.isDigit(outer.charAt(end))) {
            end++;
        }
        return outer.substring(PREFIX.length(), end);
    }

    private static Set<String> names(String outer, ClassBytecodes[] classes, ClassLoader loader) {
        final Set<String> names = new LinkedHashSet<>();
        try {
            final Class<?> type = Class.forName(outer, false, loader);
            for (Field f : type.getDeclaredFields()) {
                if (Modifier.isPublic(f.getModifiers()) && !f.isSynthetic()) {
                    names.add(f.getName());
                }
            }
            for (Method m : type.getDeclaredMethods()) {
                if (Modifier.isPublic(m.getModifiers()) && !m.getName().equals(METHOD)) {
                    names.add(m.getName());
                }
            }
        } catch (ClassNotFoundException | LinkageError e) {
            // A class it refers to is missing: what it declares can only be used through JShell.
            return Set.of();
        }
        for (ClassBytecodes c : classes) {
            if (c.name().startsWith(outer + "$")
                && Character.isJavaIdentifierStart(c.name().charAt(outer.length() + 1))) {
                names.add(c.name().substring(outer.length() + 1).split("\\$", 2)[0]);
            }
        }
        // What JShell names by itself is dropped as soon as it has run.
        names.removeIf(n -> n.matches("\\$\\d+"));
        return names;
    }

    /** The classes that declare something of one of these names, by it. */
    synchronized Map<String, List<String>> homesOf(Set<String> words) {
        return words.stream().collect(Collectors.toMap(w -> w, w -> homes.values().stream()
            .filter(h -> h.names().contains(w)).map(Home::outer).toList()));
    }

    /** Changes with each class. */
    synchronized long generation() {
        return generation;
    }

    /** All classes by name. */
    synchronized Map<String, byte[]> classes() {
        final Map<String, byte[]> all = new LinkedHashMap<>();
        homes.values().forEach(h -> all.putAll(h.classes()));
        return all;
    }
}
