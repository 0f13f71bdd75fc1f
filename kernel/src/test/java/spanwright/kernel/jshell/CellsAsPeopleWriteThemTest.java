package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected values follow from the Java Language Specification; each cell is as somebody would type it. */
class CellsAsPeopleWriteThemTest {
    private static Cells cells;

    @BeforeAll
    static void open() {
        cells = new Cells("import java.util.*;", "import java.util.function.*;",
                "import java.util.stream.*;");
    }

    @AfterAll
    static void close() {
        cells.close();
    }

    private static Arguments cell(String code, String shown) {
        return Arguments.of(code, shown);
    }

    static Stream<Arguments> valued() {
        return Stream.of(
            cell("1+1", "2"),
            cell("1+1 // sum", "2"),
            cell("1+1 /* sum */", "2"),
            cell("// first\n\n1+1\n\n// last", "2"),
            cell("var v1 = 5; v1", "5"),
            cell("int v2 = 5;\n\nv2 += 2;\nv2 * 2", "14"),
            cell("int v3 = 5\nv3".replace("5", "5;"), "5"),
            cell("String t = \"\"\"\n    a \"b\"\n      c\n    \"\"\";\nt", "a \"b\"\n  c\n"),
            cell("List<Map<String, Integer>> lm = new ArrayList<>(); lm.add(Map.of(\"a\", 1)); lm",
                "[{a=1}]"),
            cell("Map.Entry<String, Integer>[] es = null; es == null", "true"),
            cell("record Point(double x, double y) { double r() { return Math.hypot(x, y); } }\n"
                + "new Point(3, 4).r()", "5.0"),
            cell("enum Dir { UP, DOWN; Dir other() { return this == UP ? DOWN : UP; } }\nDir.UP.other()",
                "DOWN"),
            cell("sealed interface Shape permits Disc, Box {}\n"
                + "record Disc(double r) implements Shape {}\nrecord Box(double a) implements Shape {}\n"
                + "double area(Shape s) {\n  if (s instanceof Box b) return b.a() * b.a();\n  return -1;\n}\n"
                + "area(new Box(3))", "9.0"),
            cell("int even(int n) { return n == 0 ? 1 : odd(n - 1); }\n"
                + "int odd(int n) { return n == 0 ? 0 : even(n - 1); }\neven(10)", "1"),
            cell("<T extends Comparable<T>> T top(List<T> l) { return Collections.max(l); }\n"
                + "top(List.of(3, 9, 2))", "9"),
            cell("@FunctionalInterface interface Op { int go(int a); }\nOp inc = a -> a + 1;\ninc.go(1)",
                "2"),
            cell("@Deprecated\nint old() { return 1; }\nold()", "1"),
            cell("import static java.lang.Math.max;\nmax(2, 3)", "3"),
            cell("import static java.lang.Math.*; floorMod(-1, 5)", "4"),
            cell("Function<Integer, Integer> twice = n -> n * 2;\ntwice.andThen(n -> n + 1).apply(4)", "9"),
            cell("IntStream.rangeClosed(1, 4).mapToObj(i -> \"#\".repeat(i)).collect("
                + "Collectors.joining(\" \"))",
                "# ## ### ####"),
            cell("int sum = 0;\nfor (int i = 1; i <= 10; i++) {\n    sum += i;\n}\nsum", "55"),
            cell("int[] counter = {0}; Runnable r = () -> counter[0]++; r.run(); r.run(); counter[0]", "2"),
            cell("int[][] m = {{1, 2}, {3}}; m", "[[1, 2], [3]]"),
            cell("int big[] = new int[3]; big.length", "3"),
            cell("double d1 = 1, d2 = 2; d1 / d2", "0.5"),
            cell("(Object) \"cast\"", "cast"),
            cell("new StringBuilder(\"ab\").reverse()", "ba"),
            cell("true ? 1 : 2.0", "1.0"),
            cell("switch (3) { case 3 -> \"three\"; default -> \"other\"; }", "three"),
            cell("var list = new ArrayList<String>(); list.add(\"x\"); list.add(\"y\"); list.size()", "2"),
            cell("abstract class Animal { abstract String says(); }\n"
                + "class Cat extends Animal { String says() { return \"meow\"; } }\nnew Cat().says()",
                "meow"),
            cell("final int FIXED = 3; FIXED", "3"),
            cell("Object o = 3; o instanceof Integer n && n > 2", "true"),
            cell("int a1 = 1, b1 = 2; a1 < b1", "true"),
            cell("int p1 = 1, p2 = 2; p1 < p2 && p2 > p1", "true"),
            cell("p1 < p2 ? p2 > p1 : p2 < p1", "true"),
            cell("int shift = 1; shift <<= 3; shift", "8"),
            cell("label: for (int i = 0; ; i++) { if (i > 2) break label; }\n7", "7"),
            cell("String[] words = \"a b c\".split(\" \"); words", "[a, b, c]"),
            cell("char c = ';'; c", ";"),
            cell("String url = \"http://x/*y*/\"; url", "http://x/*y*/"),
            cell("new Object() { int z = 4; }.z", "4"),
            cell("try { throw new Exception(\"x\"); } catch (Exception e) { } finally { }\n1", "1"));
    }

    @ParameterizedTest
    @MethodSource("valued")
    void showsTheLastExpression(String code, String expected) {
        assertThat(cells.value(code)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "   \n", "// nothing", "/* nothing */\n// more",
        "1+1;", "1+1; // hidden", "int h1 = 3;", "int h2 = 3", "var h3 = List.of(1); h3 = List.of(2)",
        "System.out.print(\"\")", "Collections.sort(new ArrayList<Integer>())", "import java.io.*;",
                "import java.net.*",
        "class Hidden { }", "int hidden() { return 1; }", "for (int i = 0; i < 2; i++) { }", "null",
        "int h4 = 0; h4 += 2", "h4 = 3"})
    void showsNothing(String code) {
        assertThat(cells.shown(code)).isEmpty();
    }

    @Test
    void keepsTheOrderOfStatementsWhenALaterOneDoesNotCompile() {
        final var error = cells.error("System.out.println(\"ran\");\nnoSuch.thing();");
        assertThat(cells.output.out).hasToString("ran\n");
        assertThat(error.name()).isEqualTo("CompileError");
        assertThat(error.line()).isEqualTo(2);
    }
}
