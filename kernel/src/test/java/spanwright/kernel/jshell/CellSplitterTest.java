package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import jdk.jshell.JShell;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Splitting by a look gives what the compiler's own analysis gives, or says that it cannot tell. */
class CellSplitterTest {
    private static final JShell SHELL = JShell.builder().executionEngine(new SnippetControl(
        new SnippetLoader(CellSplitterTest.class.getClassLoader()), new ReentrantLock()).provider(),
        Map.of()).build();

    @ParameterizedTest
    @ValueSource(strings = {"1 + 1", "1 + 1;", "x = 1; // one\ny = 2;\n", "\n\n  var a = \"b;{\";\n  a  \n",
        "import java.util.*;\nimport static java.lang.Math.*;\nList.of(1)", "int a = 1, b = 2;\na + b // sum",
        "f(g(1), h[2]);\nnew int[3]", "list.stream().map(v -> v + 1).toList()", "boolean c = a < b == d > e;",
        "// nothing\n", "", "a.b();\n/* c */ d.e();\n/* end */", "T<U, V<W>> t = null;", "x -> x", "int x",
        "total = total * 0.5 + 1;\r\ntotal = total + 2;\r\ntotal"})
    void plainCellsAreSplitWithoutTheCompiler(String code) {
        assertThat(CellSplitter.plain(code)).isEqualTo(
            Optional.of(CellSplitter.parsed(SHELL.sourceCodeAnalysis(), code)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"if (a) b = 1; else c = 2;", "for (int i = 0; i < 3; i++) f(i);", "a = 1; b = 2;",
        "f(1)\ng(2)", "var x =\n    1;", "new int[] {1}", "do f(); while (g());", "@Deprecated int x;", "f(",
        "var s = \"\"\"\n    a;\n    \"\"\";", "list\n    .size();", ";", "a;;", "record P(int x)",
            "f);\n(a"})
    void otherCellsAreLeftToTheCompiler(String code) {
        assertThat(CellSplitter.plain(code)).isEmpty();
    }

    @Property(tries = 300)
    void neverContradictsTheCompiler(@ForAll @From("cells") String code) {
        CellSplitter.plain(code).ifPresent(units ->
            assertThat(units).isEqualTo(CellSplitter.parsed(SHELL.sourceCodeAnalysis(), code)));
    }

    @Provide
    Arbitrary<String> cells() {
        final List<String> starts = List.of("x = ", "var y = ", "int z = ", "f(", "", "Map<K, V> m = ",
            "i++");
        final List<String> middles = List.of("1", "a.b(c)", "\"t;\"", "v -> v + 1", "(int) 2.5", "k[3]",
            "new T(1)", "b ? c : d", "-e", "List.of(1)");
        final List<String> ends = List.of(";", ";\n", ");\n", "", "\n", " // n\n", "; // n\n", ";;",
            " ;\n\n");
        return Arbitraries.of(starts).flatMap(s -> Arbitraries.of(middles).flatMap(m ->
            Arbitraries.of(ends).map(e -> s + m + e))).list().ofMinSize(1).ofMaxSize(4)
            .map(lines -> String.join("", lines));
    }
}
