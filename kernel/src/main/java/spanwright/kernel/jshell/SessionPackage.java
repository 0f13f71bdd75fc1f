package spanwright.kernel.jshell;

import com.sun.source.util.JavacTask;
import java.lang.reflect.Field;
import java.lang.reflect.Method;

/**
 * What a compiler remembers of the package in which the classes of a session lie. It takes a package for
 * complete once it has listed it; after a cell has declared something, it has to be listed anew.
 */
final class SessionPackage {
    private static final String COMPILER = "com.sun.tools.javac.";

    private final Method context;
    private final Method symbols;
    private final Method names;
    private final Method finder;
    private final Method nameOf;
    private final Field module;
    private final Method packageOf;
    private final Field members;
    private final Field completer;
    private final Method freshCompleter;

    /** Finds what it needs in the compiler of this Java; throws if that is another one or is not exported. */
    SessionPackage() throws ReflectiveOperationException {
        final Class<?> contextType = Class.forName(COMPILER + "util.Context");
        final Class<?> symbolsType = Class.forName(COMPILER + "code.Symtab");
        final Class<?> namesType = Class.forName(COMPILER + "util.Names");
        final Class<?> finderType = Class.forName(COMPILER + "code.ClassFinder");
        final Class<?> packageType = Class.forName(COMPILER + "code.Symbol$PackageSymbol");
        context = Class.forName(COMPILER + "api.BasicJavacTask").getMethod("getContext");
        symbols = symbolsType.getMethod("instance", contextType);
        names = namesType.getMethod("instance", contextType);
        finder = finderType.getMethod("instance", contextType);
        nameOf = namesType.getMethod("fromString", String.class);
        module = symbolsType.getField("unnamedModule");
        packageOf = symbolsType.getMethod("getPackage", Class.forName(COMPILER + "code.Symbol$ModuleSymbol"),
            Class.forName(COMPILER + "util.Name"));
        members = packageType.getField("members_field");
        completer = packageType.getField("completer");
        freshCompleter = finderType.getMethod("getCompleter");
    }

    /** Has the compiler list the package again when it next looks for a name in it. */
    void forget(JavacTask task) throws ReflectiveOperationException {
        final Object in = context.invoke(task);
        final Object table = symbols.invoke(null, in);
        final Object found = packageOf.invoke(table, module.get(table),
            nameOf.invoke(names.invoke(null, in), SessionFiles.PACKAGE));
        if (found != null) {
            members.set(found, null);
            completer.set(found, freshCompleter.invoke(finder.invoke(null, in)));
        }
    }
}
