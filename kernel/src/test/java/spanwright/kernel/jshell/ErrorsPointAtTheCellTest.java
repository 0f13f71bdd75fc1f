package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import spanwright.kernel.interpreter.Outcome.ErrorReport;

/** Lines and columns are counted by hand in each cell; messages of the compiler are those of javac. */
class ErrorsPointAtTheCellTest {
    private static Cells cells;

    @BeforeAll
    static void open() {
        cells = new Cells("import java.util.*;");
    }

    @AfterAll
    static void close() {
        cells.close();
    }

    @Test
    void compileErrorHasLineColumnSourceAndCaret() {
        final ErrorReport e = cells.error("int price = 3;\n\nint total = price *\n    amount * 2;");
        assertThat(e.name()).isEqualTo("CompileError");
        assertThat(e.message()).isEqualTo("cannot find symbol: variable amount");
        assertThat(e.line()).isEqualTo(4);
        assertThat(e.column()).isEqualTo(5);
        assertThat(Cells.plain(e)).contains("line 4, column 5\n        amount * 2;\n        ^");
        assertThat(cells.value("price")).isEqualTo("3");
    }

    @Test
    void allDiagnosticsOfASnippetAreShown() {
        final ErrorReport e = cells.error("void two() {\n    int a = \"x\";\n    boolean b = 3;\n}");
        assertThat(Cells.plain(e)).contains("line 2").contains("line 3")
            .contains("String cannot be converted to int").contains("int cannot be converted to boolean");
        assertThat(e.line()).isEqualTo(2);
    }

    @Test
    void runtimeErrorNamesTheLinesOfTheCellsItPassed() {
        cells.run("int divide(int a, int b) {\n    // a comment\n    return a / b;\n}");
        final ErrorReport e = cells.error("int a = 4;\n\n// then\ndivide(a, 0);");
        assertThat(e.name()).isEqualTo("ArithmeticException");
        assertThat(e.message()).isEqualTo("/ by zero");
        assertThat(e.line()).isEqualTo(4);
        assertThat(Cells.plain(e)).startsWith("ArithmeticException: / by zero\n")
            .containsPattern("line 3 in divide\\(\\):  return a / b;").containsPattern(
                "line 4:  divide\\(a, 0\\);");
    }

    @Test
    void lineInsideABatchOfStatementsIsThatOfTheCell() {
        final ErrorReport e = cells.error(
            "Object none = null;\nint n1 = 1;\nn1++;\nn1 += 2;\n\nnone.toString();\nn1++;");
        assertThat(e.line()).isEqualTo(6);
        assertThat(cells.value("n1")).isEqualTo("4");
    }

    @Test
    void lastExpressionHasItsLineToo() {
        assertThat(cells.error("int n2 = 0;\n\nInteger.valueOf(1 / n2)").line()).isEqualTo(3);
        assertThat(cells.error("int n3 = 0;\n\n1 / n3").line()).isEqualTo(3);
    }

    @Test
    void nothingGeneratedIsShown() {
        cells.run("class Meter { Meter next; double read() { throw new IllegalStateException(\"no \" + "
            + "this); } }");
        for (String code : new String[] {"new Meter().read()", "new Meter().next.read()",
            "(String) (Object) new Meter()", "Meter m = null; m.next", "(new int[0])[3]",
            "List.of(1).forEach(i -> { throw new RuntimeException(\"x\"); })", "new Meter().missing",
                "Meter m2 = 3;"}) {
            final ErrorReport e = cells.error(code);
            assertThat(e.name() + e.message() + Cells.plain(e)).as(code).doesNotContain("$JShell$")
                .doesNotContain("REPL").doesNotContain("do_it$").doesNotContain("spanwright.kernel.jshell")
                .doesNotContain("LastValue");
        }
    }

    @Test
    void causesAreShownWithTheirLines() {
        final ErrorReport e = cells.error(
            "try {\n    Integer.parseInt(\"4 mA\");\n} catch (NumberFormatException e) {\n"
            + "    throw new java.io.IOException(\"row 3\", e);\n}");
        assertThat(e.name()).isEqualTo("java.io.IOException");
        assertThat(e.message()).isEqualTo("row 3");
        assertThat(e.line()).isEqualTo(4);
        assertThat(Cells.plain(e)).contains("caused by NumberFormatException: For input string: \"4 mA\"")
            .containsPattern("line 2:  Integer.parseInt");
    }

    @Test
    void stackOverflowIsCutAndTheSessionGoesOn() {
        final ErrorReport e = cells.error("int down(int n) { return down(n + 1) + 1; }\ndown(0)");
        assertThat(e.name()).isEqualTo("StackOverflowError");
        assertThat(e.traceback().size()).isLessThan(40);
        assertThat(Cells.plain(e)).containsPattern("\\.\\.\\. \\d+ more");
        assertThat(cells.value("1 + 1")).isEqualTo("2");
    }

    @Test
    void outOfMemoryIsAnErrorAndTheSessionGoesOn() {
        final ErrorReport e = cells.error(
            "List<long[]> hog = new ArrayList<>();\nwhile (true) hog.add(new long[150_000_000]);");
        assertThat(e.name()).isEqualTo("OutOfMemoryError");
        assertThat(cells.shown("hog = null; System.gc();")).isEmpty();
        assertThat(cells.value("1 + 1")).isEqualTo("2");
    }

    @Test
    void systemExitEndsTheCellOnly() {
        final ErrorReport e = cells.error("System.out.println(\"before\");\nSystem.exit(3);");
        assertThat(e.message()).contains("System.exit(3)").contains("session goes on");
        assertThat(e.line()).isEqualTo(2);
        assertThat(cells.output.out).hasToString("before\n");
        assertThat(cells.error("Runnable bye = () -> System.exit(1); bye.run()").message()).contains(
            "exit(1)");
        assertThat(cells.error("java.util.function.IntConsumer ex = System::exit; ex.accept(7)").message())
            .contains("exit(7)");
    }

    @Test
    void methodThatCallsALaterOneIsNotedAndThenWorks() {
        assertThat(cells.shown("int first() { return second() + 1; }")).isEmpty();
        assertThat(cells.output.err.toString()).contains("method first()").contains("method second()");
        final ErrorReport e = cells.error("first()");
        assertThat(e.message()).contains("method first() cannot be used before method second()");
        assertThat(cells.value("int second() { return 1; }\nfirst()")).isEqualTo("2");
        assertThat(cells.output.err).isEmpty();
    }

    @Test
    void typeThatCannotBeResolvedIsAnError() {
        assertThat(cells.error("NoSuchType t1 = null;").message()).contains(
            "cannot find symbol: class NoSuchType");
        assertThat(cells.error("class Holder { NoSuchPart part; }").message()).contains("NoSuchPart");
        assertThat(cells.error("int i = 1;\nclass Sub extends NoSuchBase { }").line()).isEqualTo(2);
    }

    @Test
    void redefinitionTellsWhichVariablesItReset() {
        cells.run("class Cal { int v = 1; }\nCal cal = new Cal();\nint untouched = 5;");
        assertThat(cells.shown("class Cal { int v = 2; }")).isEmpty();
        assertThat(cells.output.err.toString()).contains("class Cal").contains("reset: cal.");
        assertThat(cells.value("cal == null")).isEqualTo("true");
        assertThat(cells.value("untouched")).isEqualTo("5");
    }

    @Test
    void theSameDefinitionAgainResetsNothing() {
        final String types = "record Tag(String name) { }\nString shout(Tag t) { return t.name() + \"!\"; }";
        cells.run(types + "\nTag tag = new Tag(\"LT\");");
        assertThat(cells.shown(types)).isEmpty();
        assertThat(cells.output.err).isEmpty();
        assertThat(cells.value("shout(tag)")).isEqualTo("LT!");
        cells.run("class Count { static int n = 0; }\nCount.n = 5;");
        assertThat(cells.value("class Count { static int n = 0; }\nCount.n")).isEqualTo("5");
    }

    @Test
    void codeThatIsTooDeepForTheCompilerIsAnErrorOfTheCell() {
        assertThat(cells.error("int deep = " + "1 + ".repeat(60_000) + "1;").message())
            .contains("too deeply");
        assertThat(cells.value("1 + 1")).isEqualTo("2");
    }

    @Test
    void variableWhoseInitialiserFailsIsToldByTheError() {
        assertThat(cells.error("int z1 = 1 / 0;").line()).isEqualTo(1);
        assertThat(cells.error("\"unclosed").message()).isEqualTo("unclosed string literal");
        assertThat(cells.error("int x9 = (3;").name()).isEqualTo("CompileError");
        assertThat(cells.error("package p;").name()).isEqualTo("CompileError");
        assertThat(cells.error("for (;;) {").message()).isEqualTo("reached end of file while parsing");
    }

    @Test
    void exceptionInAStartedThreadIsToldOnStandardError() {
        assertThat(cells.shown(
            "Thread th = new Thread(() -> { throw new IllegalStateException(\"alone\"); }, \"helper\");\n"
            + "th.start(); th.join();")).isEmpty();
        assertThat(cells.output.err.toString()).contains("'helper'").contains("IllegalStateException: alone");
    }
}
