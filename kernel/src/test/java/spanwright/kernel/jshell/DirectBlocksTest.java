package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("Plain statements that are compiled past JShell")
class DirectBlocksTest {
    private final Cells cells =
        new Cells("import java.util.*;", "import static java.lang.Math.*;", "import java.time.Duration;");

    @AfterEach
    void close() {
        cells.close();
    }

    @Test
    @DisplayName("a plain first cell does not start JShell, where this Java lets us reach its compilers")
    void plainCellNeedsNoShell() {
        final boolean reachable = PooledCompiler.of(
            new SnippetLoader(DirectBlocksTest.class.getClassLoader()), List.of()).isPresent();
        assertThat(cells.value("max(20, 3) + List.of(1).size()")).isEqualTo("21");
        assertThat(cells.session.isToStart()).isEqualTo(reachable);
        cells.run("int n = 1;");
        assertThat(cells.session.isToStart()).isFalse();
    }

    @Test
    @DisplayName("they see what cells have declared and imported since, and its latest definition")
    void seesTheSession() {
        assertThat(cells.value("1 + 1")).isEqualTo("2");
        cells.run("class Count { int n; }\nvar count = new Count();\nint twice(int x) { return 2 * x; }");
        assertThat(cells.value("count.n++;\ncount.n += 2;\ntwice(count.n)")).isEqualTo("6");
        cells.run("import java.util.concurrent.TimeUnit;");
        assertThat(cells.value("TimeUnit.SECONDS.toMillis(2)")).isEqualTo("2000");
        cells.run("int twice(int x) { return 20 * x; }\ndouble count = 1.5;");
        assertThat(cells.value("twice(1) + count")).isEqualTo("21.5");
        cells.run("long twice(long x) { return -x; }");
        assertThat(cells.value("twice(1) + twice(1L)")).isEqualTo("19");
    }

    @Test
    @DisplayName("what a cell declares hides what an import on demand gives, also one used before")
    void declarationHidesImport() {
        assertThat(cells.value("new Random(1).getClass().getName()")).isEqualTo("java.util.Random");
        cells.run("class Random { Random(int seed) { } }");
        assertThat(cells.value("new Random(1).getClass().getSuperclass().getName()"))
            .isEqualTo("java.lang.Object");
    }

    @Test
    @DisplayName("an error names the lines of the statement and of the method of another cell, and the cause")
    void errorLines() {
        cells.run("int checked(int x) {\n    if (x < 0) {\n"
            + "        throw new IllegalArgumentException(\"negative\", new RuntimeException(\"why\"));\n"
            + "    }\n"
            + "    return x;\n}");
        final String trace = Cells.plain(cells.error("var unused = 1;\nint a = 5;\n\na++;\nchecked(-a)"));
        assertThat(trace).contains("IllegalArgumentException: negative")
            .contains("at cell [1], line 3 in checked():").contains("at cell [2], line 5:")
            .contains("caused by RuntimeException: why").doesNotContain("$JShell$");
    }

    @Test
    @DisplayName("while a method lacks something, its call says so as before")
    void unresolved() {
        cells.run("int needy() { return missing(); }");
        assertThat(cells.error("1 + needy()").message()).contains("cannot be used before");
        cells.run("int missing() { return 7; }");
        assertThat(cells.value("1 + needy()")).isEqualTo("8");
    }

    @Test
    @DisplayName("a return of a value is no way to show one, and an endless loop may end a block")
    void jumps() {
        assertThat(cells.shown("if (1 > 0) { return 5; }\n6")).isEqualTo(Optional.empty());
        assertThat(cells.error("int i = 0;\nwhile (true) { i++; if (i > 3) { throw new Error(\"\" + i); } }")
            .message()).isEqualTo("4");
    }

    @Test
    @DisplayName("a void call and a print show nothing, a call with a value shows it")
    void calls() {
        assertThat(cells.shown("System.out.println(7)")).isEqualTo(Optional.empty());
        assertThat(cells.output.out.toString()).contains("7");
        assertThat(cells.shown("Collections.shuffle(new ArrayList<>())")).isEqualTo(Optional.empty());
        assertThat(cells.value("Duration.ofSeconds(3).toMillis()")).isEqualTo("3000");
    }

    @Test
    @DisplayName("words are the names of code, without literals, comments and keywords")
    void words() {
        assertThat(CellImports.wordsOf("int x1 = f(\"no name\", 'c') /* not*/ + List.of(2e3).get(0); // nor"))
            .contains("x1", "f", "List", "of", "get").doesNotContain("int", "name", "not", "nor", "c");
        assertThat(CellImports.wordsOf("1 + 1")).isEqualTo(Set.of());
    }
}
