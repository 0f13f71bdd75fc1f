package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Completeness;
import spanwright.kernel.interpreter.Completions;
import spanwright.kernel.interpreter.Completions.Item;

/** A bar in the code stands for the cursor. Members and signatures are those of the JDK's documentation. */
class AnalysisTest {
    private static Cells cells;

    @BeforeAll
    static void open() {
        cells = new Cells("import java.util.*;", "import static spanwright.kernel.display.Display.*;");
        cells.run("List<String> tags = new ArrayList<>(); int gauge = 7; double ratio = 0.5;"
            + " record Span(double low, double high) { double width() { return high - low; } }"
            + " Span span = new Span(4, 20); /** Twice. */ int twice(int n) { return 2 * n; }");
    }

    @AfterAll
    static void close() {
        cells.close();
    }

    private static Completions complete(String code) {
        return cells.session.complete(code.replace("|", ""), code.indexOf('|'));
    }

    private static List<String> texts(String code) {
        return complete(code).items().stream().map(Item::text).toList();
    }

    private static Optional<String> inspect(String code, int detail) {
        return cells.session.inspect(code.replace("|", ""), code.indexOf('|'), detail)
            .map(i -> (String) i.bundle().data().get(MimeBundle.TEXT));
    }

    @Test
    void membersHaveKindAndSignature() {
        final Completions c = complete("tags.add|");
        assertThat(c.start()).isEqualTo(5);
        assertThat(c.end()).isEqualTo(8);
        assertThat(c.items()).extracting(Item::text).startsWith("add(", "addAll(");
        assertThat(c.items().get(0).type()).isEqualTo("function");
        assertThat(c.items().get(0).signature()).contains("boolean add(E)").contains("void add(int, E)");
    }

    @Test
    void membersOfARecordOfTheSession() {
        assertThat(complete("span.|").items()).anySatisfy(i -> {
            assertThat(i.text()).isEqualTo("width()");
            assertThat(i.signature()).isEqualTo("double width()");
        });
    }

    @Test
    void variablesMethodsClassesAndPackages() {
        assertThat(complete("gau|").items()).containsExactly(new Item("gauge", "instance", "int gauge"));
        assertThat(complete("twi|").items()).containsExactly(new Item("twice(", "function",
            "int twice(int)"));
        assertThat(complete("Spa|").items()).anySatisfy(i -> assertThat(i.type()).isEqualTo("class"));
        assertThat(texts("new ArrayL|")).contains("ArrayList(");
        assertThat(texts("java.ut|")).containsExactly("util.");
        assertThat(complete("Math.P|").items()).contains(new Item("PI", "property", "double PI"));
    }

    @Test
    void matchingTypesComeFirst() {
        final List<String> all = texts("int k = |");
        assertThat(all.indexOf("gauge")).isLessThan(all.indexOf("tags"));
        assertThat(all.indexOf("ratio")).isGreaterThan(all.indexOf("gauge"));
    }

    @Test
    void worksInTheMiddleOfACell() {
        assertThat(texts("import java.io.*;\nclass Q { }\ntags.add|;\nint after = 3;")).contains("add(");
        assertThat(texts("int localOne = 3;\nlocal|")).containsExactly("localOne");
        assertThat(texts("for (String tag : tags) {\n    tag.isB|")).contains("isBlank()");
        assertThat(texts("tags.stream().map(t -> t.toUpp|")).contains("toUpperCase(");
        assertThat(texts("// comment with \" quote\ntags.siz|")).containsExactly("size()");
        assertThat(texts("")).isNotNull();
    }

    @Test
    void inspectionGivesSignatureAndValue() {
        assertThat(inspect("gauge|", 0)).hasValueSatisfying(t -> assertThat(t).contains("int gauge")
            .contains("7"));
        assertThat(inspect("sp|an.width()", 0)).hasValueSatisfying(
            t -> assertThat(t).contains("Span span").contains("Span[low=4.0, high=20.0]"));
        assertThat(inspect("Math.max|(1, 2)", 0)).hasValueSatisfying(
            t -> assertThat(t).contains("int Math.max(int a, int b)"));
        assertThat(inspect("tags.add(|", 0)).hasValueSatisfying(t -> assertThat(t).contains("add(E"));
        assertThat(inspect("tags.size()|", 0)).hasValueSatisfying(t -> assertThat(t).contains(
            "int List<E>.size()"));
        assertThat(inspect("twice|", 1)).hasValueSatisfying(
            t -> assertThat(t).contains("int twice(int n)").contains("return 2 * n;"));
        assertThat(inspect("display|(1)", 0)).hasValueSatisfying(
            t -> assertThat(t).contains("DisplayHandle Display.display(Object value)"));
        assertThat(inspect("noSuchThing|", 0)).isEmpty();
        assertThat(inspect("|", 0)).isEmpty();
    }

    @Test
    void inspectionReadsTheDocumentationIndexOfLibraries() {
        assertThat(inspect("spanwright.kernel.jshell.Documented.measure|(1)", 0))
            .hasValueSatisfying(t -> assertThat(t)
            .contains("measure(double value)").contains("Measures at one point.").doesNotContain(
                "More of it"));
        assertThat(inspect("spanwright.kernel.jshell.Documented.measure|(1)", 1))
            .hasValueSatisfying(t -> assertThat(t).contains("More of it").contains("param: value in <mm>"));
    }

    @Test
    void inspectionFindsTheDocumentationOfAStaticImport() {
        cells.run("import static spanwright.kernel.jshell.Documented.*;");
        assertThat(inspect("measure|(1)", 0)).hasValueSatisfying(t -> assertThat(t)
            .contains("Measures at one point.").doesNotContain("It is not averaged"));
    }

    @Test
    void javadocBecomesPlainText() {
        assertThat(JavadocText.plain(
            "Adds {@code a < b} to {@link java.util.List the list}.<p>More\n @param x the <b>x</b>\n"
            + " @return {@code true}\n")).isEqualTo(
                "Adds a < b to java.util.List the list.\nMore\nparam: x the x\n"
            + "return: true");
        assertThat(JavadocText.firstSentence("One. Two.\nThree")).isEqualTo("One.");
    }

    @Test
    @Timeout(20)
    void answersWhileACellRuns() throws InterruptedException {
        final Thread runner = new Thread(() -> cells.run(
            "System.out.println(\"on\"); Thread.sleep(20_000);"));
        cells.output = new RecordedOutput();
        runner.start();
        while (!cells.output.out.toString().contains("on")) {
            Thread.sleep(5);
        }
        assertThat(texts("gau|")).containsExactly("gauge");
        assertThat(inspect("gauge|", 0)).isPresent();
        assertThat(cells.session.completeness("1 +").status()).isEqualTo(Completeness.Status.INCOMPLETE);
        assertThat(runner.isAlive()).isTrue();
        cells.session.interrupt();
        runner.join();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '!', ignoreLeadingAndTrailingWhitespace = false, value = {
        "1 + 1!COMPLETE!", "int x = 3!COMPLETE!", "import java.util.*!COMPLETE!", "// c!COMPLETE!",
        "int a = 1;~int b = 2;!COMPLETE!", "x -> x!COMPLETE!", "int f() { return 1; }~f()!COMPLETE!",
        "for (int i = 0; i < 3; i++) {!INCOMPLETE!    ", "int f() {~    if (true) {!INCOMPLETE!        ",
        "int f() {~    return 1;!INCOMPLETE!    ", "foo(!INCOMPLETE!    ", "1 +!INCOMPLETE!",
        "int a = 1;~class A {!INCOMPLETE!    ", "if (true) a = 1; else!INCOMPLETE!",
        "String s = \"\"\"~  abc!INCOMPLETE!  ", "@Override!INCOMPLETE!",
            "@SuppressWarnings(\"x\")!INCOMPLETE!",
        "tags.stream()~    .map(t ->!INCOMPLETE!        ", "try { }!INCOMPLETE!", "/* open!INCOMPLETE!",
        "\"abc!INVALID!", "}!INVALID!", "int x = 3; }!INVALID!"})
    void judgesCompleteness(String code, String status, String indent) {
        final Completeness c = cells.session.completeness(code.replace('~', '\n'));
        assertThat(c.status()).hasToString(status);
        assertThat(c.indent()).isEqualTo(indent == null ? "" : indent);
    }
}
