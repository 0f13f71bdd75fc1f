package spanwright.kernel.jshell;

import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.util.Collection;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Kind;

/**
 * Lets go of what JShell keeps of code that no cell can reach any more: statements that have run, definitions
 * that were replaced, code that did not compile. JShell itself keeps all of it for ever, offers the compiler
 * all classes it has ever made with each new piece of code, and so becomes slower and larger with each cell.
 *
 * <p>There is no public way to make it forget, so this reaches into its tables. That needs the package
 * {@code jdk.jshell} to be open to us, as the manifest of our jar asks for. Where it is not, or where a JDK
 * has other tables, all is kept and nothing else changes.
 *
 * <p>Not thread safe; used while JShell does nothing else.
 */
final class DeadSnippets {
    private static final String PREFIX = "REPL.";
    /** So many of the latest wraps are kept: of traces through them JShell itself then knows the lines. */
    private static final int KEPT_WRAPS = 64;
    /**
     * After so many dead snippets the compiler starts afresh, as it keeps names and types of all it has seen.
     */
    private static final int RENEWED_AFTER = 3000;

    private final JShell shell;
    private final Collection<Snippet> all;
    private final List<Snippet> byIndex;
    private final Map<String, Set<Integer>> dependents;
    private final List<Map<String, ?>> keys;
    private final Field keyIndex;
    private final Map<String, ?> wraps;
    private final Map<String, ?> loaded;
    private final Map<String, ?> compiled;
    private final Object compilers;
    private final Method renew;
    private final Set<String> keptWraps = new LinkedHashSet<>();
    private int forgotten;

    private DeadSnippets(JShell shell) throws ReflectiveOperationException {
        this.shell = shell;
        final Object maps = value(shell, "maps");
        final Object keyMap = value(shell, "keyMap");
        all = table(maps, "snippets");
        byIndex = table(maps, "keyIndexToSnippet");
        dependents = table(maps, "dependencies");
        keys = List.of(table(keyMap, "varMap"), table(keyMap, "methodMap"), table(keyMap, "classMap"));
        keyIndex = field(Class.forName("jdk.jshell.Key"), "index");
        wraps = table(value(shell, "outerMap"), "classOuters");
        loaded = table(value(shell, "classTracker"), "map");
        compilers = value(shell, "taskFactory");
        compiled = table(value(compilers, "fileManager"), "classObjects");
        renew = compilers.getClass().getDeclaredMethod("initTaskPool");
        renew.setAccessible(true);
    }

    /** Those of a session; empty if its tables cannot be reached. */
    static Optional<DeadSnippets> of(JShell shell) {
        try {
            return Optional.of(new DeadSnippets(shell));
        } catch (ReflectiveOperationException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private static Field field(Class<?> type, String name) throws ReflectiveOperationException {
        final Field field = type.getDeclaredField(name);
        field.setAccessible(true);
        return field;
    }

    private static Object value(Object owner, String name) throws ReflectiveOperationException {
        return field(owner.getClass(), name).get(owner);
    }

    @SuppressWarnings("unchecked")
    private static <T> T table(Object owner, String name) throws ReflectiveOperationException {
        return (T) value(owner, name);
    }

    /** How many snippets the session knows, dead or alive. */
    int known() {
        return all.size();
    }

    /**
     * Lets go of all that is dead.
     *
     * @return the classes around what lives
     */
    Set<String> forget() {
        final Predicate<Snippet> dead = s -> !shell.status(s).isActive();
        final int before = all.size();
        all.removeIf(dead);
        forgotten += before - all.size();
        byIndex.replaceAll(s -> s == null || dead.test(s) ? null : s);
        for (Map<String, ?> map : keys) {
            map.values().removeIf(key -> isGone(index(key)));
        }
        dependents.values().removeIf(indices -> indices.removeIf(this::isGone) && indices.isEmpty());
        final Set<String> live = byIndex.stream()
            .filter(s -> s != null && s.kind().isPersistent() && s.kind() != Kind.IMPORT)
            .map(s -> shell.sourceCodeAnalysis().wrapper(s).fullClassName()).collect(Collectors.toSet());
        final Predicate<String> deadClass = name -> !live.contains(wrapper(name));
        loaded.keySet().removeIf(deadClass);
        compiled.keySet().removeIf(deadClass);
        forgetWraps(live);
        if (forgotten >= RENEWED_AFTER) {
            forgotten = 0;
            renewCompilers();
        }
        return live;
    }

    private void renewCompilers() {
        try {
            renew.invoke(compilers);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private void forgetWraps(Set<String> live) {
        keptWraps.removeIf(name -> live.contains(PREFIX + name));
        wraps.keySet().stream().filter(name -> !live.contains(PREFIX + name)).forEach(keptWraps::add);
        final Iterator<String> oldest = keptWraps.iterator();
        for (int i = keptWraps.size(); i > KEPT_WRAPS; i--) {
            wraps.remove(oldest.next());
            oldest.remove();
        }
    }

    private boolean isGone(int index) {
        return index >= byIndex.size() || byIndex.get(index) == null;
    }

    private int index(Object key) {
        try {
            return (int) keyIndex.get(key);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The class that JShell puts around a snippet, for one nested in it. */
    private static String wrapper(String className) {
        final int nested = className.indexOf('$', PREFIX.length() + "$JShell$".length());
        return nested < 0 ? className : className.substring(0, nested);
    }
}
