package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Chars;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a unit looks like, by the grammar of the Java Language Specification, chapters 8, 14 and 15. */
class UnitTest {
    @ParameterizedTest
    @CsvSource(delimiter = '~', value = {
        "x = 3~ASSIGNMENT", "x += 3;~ASSIGNMENT", "a[i] = b == c~ASSIGNMENT", "x >>>= 2~ASSIGNMENT",
        "x <<= 2~ASSIGNMENT", "this.a = 3~ASSIGNMENT",
        "x == 3~EXPRESSION", "x <= 3~EXPRESSION", "x >= 3~EXPRESSION", "x != 3~EXPRESSION", "x~EXPRESSION",
        "f(a = 3)~EXPRESSION", "list.stream().map(i -> i).toList()~EXPRESSION", "new int[] {1}~EXPRESSION",
        "new A() { int z = 1; }~EXPRESSION", "a < b && c > d~EXPRESSION", "o instanceof String s~EXPRESSION",
        "\"int x = 3\"~EXPRESSION", "(int) 3.5~EXPRESSION", "x++~EXPRESSION", "-x~EXPRESSION",
            "record + 1~EXPRESSION",
        "int x~DECLARATION", "int x = 3;~DECLARATION", "int[] a = {1}~DECLARATION",
            "int a[] = {1}~DECLARATION",
        "List<Map<String, int[]>> l = null~DECLARATION", "Map.Entry<K, V>[] e~DECLARATION",
        "java.util.List<?> l;~DECLARATION", "Outer<A>.Inner<B> v = null~DECLARATION", "var v = 1~DECLARATION",
        "final int x = 1~DECLARATION", "double f(int a) { return a; }~DECLARATION",
            "<T> T id(T t) { }~DECLARATION",
        "void f() { }~DECLARATION", "class A { }~DECLARATION", "record P(int x) { }~DECLARATION",
        "record G<T>(T x) { }~DECLARATION", "sealed interface S permits A { }~DECLARATION",
        "non-sealed class B { }~DECLARATION", "@Deprecated int x;~DECLARATION",
            "import java.util.*~DECLARATION",
        "enum E { A }~DECLARATION", "interface I { }~DECLARATION", "static int s;~DECLARATION",
        "if (a) b = 1;~STATEMENT", "for (int i = 0; ; ) { }~STATEMENT", "{ int x = 3; }~STATEMENT",
            ";~STATEMENT",
        "while (true);~STATEMENT", "do { } while (a);~STATEMENT", "try { } finally { }~STATEMENT",
        "throw e;~STATEMENT", "synchronized (a) { }~STATEMENT", "assert a;~STATEMENT",
        "switch (x) { }~OTHER", "yield 3~OTHER", "outer: for (;;) { }~OTHER"})
    void looksLike(String source, Unit.Kind kind) {
        assertThat(Unit.of(0, source).kind()).isEqualTo(kind);
    }

    @Test
    void semicolonIsSeenBehindCommentsOnly() {
        assertThat(Unit.of(0, "f(); // no").semicolon()).isTrue();
        assertThat(Unit.of(0, "f() // ;").semicolon()).isFalse();
        assertThat(Unit.of(0, "\"a;\"").semicolon()).isFalse();
    }

    @Test
    void commentsAndLiteralsAreMasked() {
        assertThat(JavaText.masked("a // b\nc")).isEqualTo("a     \nc");
        assertThat(JavaText.masked("a /* b\nc */ d")).isEqualTo("a     \n     d");
        assertThat(JavaText.masked("\"a\\\"//b\" + '\\''")).isEqualTo("\"______\" + '__'");
        assertThat(JavaText.masked("\"\"\"\n a \"q\" // no\n\"\"\";"))
            .isEqualTo("\"\"\"\n____________\n\"\"\";");
    }

    @Property(tries = 300)
    void maskingKeepsLengthAndLineEnds(
        @ForAll @Chars({'"', '\'', '/', '*', '\\', '\n', 'a', ' ', ';'}) String code) {
        final String masked = JavaText.masked(code);
        assertThat(masked).hasSameSizeAs(code);
        for (int i = 0; i < code.length(); i++) {
            assertThat(masked.charAt(i) == '\n').isEqualTo(code.charAt(i) == '\n');
        }
    }

    @Test
    void linesAndColumnsCountFromOne() {
        final String code = "ab\ncd\n";
        assertThat(JavaText.lineOf(code, 0)).isEqualTo(1);
        assertThat(JavaText.lineOf(code, 3)).isEqualTo(2);
        assertThat(JavaText.columnOf(code, 4)).isEqualTo(2);
        assertThat(JavaText.columnOf(code, 0)).isEqualTo(1);
        assertThat(JavaText.line(code, 2)).isEqualTo("cd");
        assertThat(JavaText.line(code, 9)).isEmpty();
    }

    @Test
    void classesWithoutExitAreLeftAsTheyAre() throws Exception {
        final byte[] own;
        try (var in = UnitTest.class.getResourceAsStream("UnitTest.class")) {
            own = in.readAllBytes();
        }
        assertThat(ExitRewriter.rewrite(own)).isSameAs(own);
        assertThat(Arrays.asList(StopCheck.wovenClass()[0], StopCheck.wovenClass()[1]))
            .isEqualTo(List.of((byte) 0xca, (byte) 0xfe));
    }
}
