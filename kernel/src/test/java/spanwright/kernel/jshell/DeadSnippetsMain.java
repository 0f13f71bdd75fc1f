package spanwright.kernel.jshell;

import java.util.List;
import jdk.jshell.JShell;
import jdk.jshell.Snippet.Status;
import jdk.jshell.SnippetEvent;

/** Runs in a process of its own to which JShell is open, and prints what {@link DeadSnippetsTest} checks. */
final class DeadSnippetsMain {
    private DeadSnippetsMain() { }

    public static void main(String[] args) {
        engine();
        session();
        System.exit(0);
    }

    /** What the engine keeps, and whether what lives still works. */
    private static void engine() {
        final JShell shell = JShell.builder().executionEngine("local").build();
        List.of("import java.util.concurrent.atomic.AtomicInteger;", "int base = 40;",
            "int plus(int x) { return base + x; }", "record Point(double x) { }", "Point p = new Point(3);",
            "int f(int i) { return i; }", "double f(double d) { return d / 2; }").forEach(shell::eval);
        for (int i = 0; i < 50; i++) {
            shell.drop(shell.eval("{ base = 40 + plus(" + i + ") - plus(" + i + "); }").get(0).snippet());
            shell.eval("double again = " + i + ";");
            shell.eval("int wrong = noSuchName" + i + ";");
        }
        final DeadSnippets dead = DeadSnippets.of(shell).orElseThrow();
        System.out.println("before " + dead.known());
        dead.forget();
        System.out.println("after " + dead.known());
        for (String code : List.of("plus(2)", "p.x()", "again", "f(3)", "f(3.0)", "new AtomicInteger(7)")) {
            System.out.println(code + " = " + value(shell, code));
        }
        shell.eval("double again = nonsense;");
        dead.forget();
        shell.eval("double again = 1.5;");
        shell.eval("int base = 1;");
        dead.forget();
        System.out.println("again = " + value(shell, "again"));
        System.out.println("plus(2) = " + value(shell, "plus(2)"));
    }

    private static String value(JShell shell, String code) {
        final SnippetEvent event = shell.eval(code).get(0);
        return event.status() == Status.VALID ? event.value() : event.status() + " " + event.exception();
    }

    /** A handler from a cell whose code the engine does not know any more still fails at its line. */
    private static void session() {
        try (Cells cells = new Cells("import java.util.*;")) {
            cells.shown("List<Runnable> later = new ArrayList<>();");
            cells.shown("// a handler\nlater.add(() ->\n    List.of(1).get(7));");
            for (int i = 0; i < 200; i++) {
                cells.value(i + " + later.size()");
            }
            System.out.println(Cells.plain(cells.error("later.get(0).run();")));
        }
    }
}
