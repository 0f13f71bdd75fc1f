package spanwright.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.jshell.JShellInterpreter;

/** What a person sees who asks about a name of ours. The sources themselves say what that should be. */
class DocumentationIndexTest {
    private static JShellInterpreter interpreter;

    @BeforeAll
    static void start() {
        interpreter = new JShellInterpreter(CellPrelude.of("test"));
        interpreter.warmUp();
    }

    @AfterAll
    static void stop() {
        interpreter.close();
    }

    private static String inspect(String code, int detail) {
        return (String) interpreter.inspect(code, code.length(), detail)
            .orElseThrow(() -> new AssertionError("nothing known of " + code)).bundle().data()
            .get(MimeBundle.TEXT);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
        CalibrationLine.fit( | calc-core | fit/CalibrationLine        | CalibrationLine fit(
        CalibrationLine      | calc-core | fit/CalibrationLine        | record CalibrationLine(
        percentOfSpan(       | calc-core | quantity/PercentOfSpan     | PercentOfSpan percentOfSpan(
        MeasuringChain       | calc-core | chain/MeasuringChain       | record MeasuringChain(
        Readings.read        | calc-core | readings/Readings          | CalibrationRecord read(
        updateDisplay(       | kernel    | kernel/display/Display     | void updateDisplay(
        """)
    void showsTheFirstSentenceOfTheSource(String code, String module, String type, String declaration)
        throws Exception {
        final Path source = Path.of("..", module, "src/main/java/spanwright", type + ".java");
        final String sentence = firstSentenceAbove(source, declaration);
        assertThat(inspect(code, 0)).contains(sentence);
    }

    @Test
    void showsParametersAtFullDetailOnly() {
        assertThat(inspect("CalibrationLine.fit(", 1)).contains("param: x stimulus, n values");
        assertThat(inspect("CalibrationLine.fit(", 0)).doesNotContain("stimulus, n values");
    }

    @Test
    void documentsTheComponentsOfRecords() {
        assertThat(inspect("CalibrationLine.fit(new double[3], new double[3]).slope", 0))
            .contains("Change of y per unit of x.");
    }

    /** The first sentence of the comment that stands last above a declaration, without tags and line ends. */
    private static String firstSentenceAbove(Path source, String declaration) throws Exception {
        final String text = Files.readString(source);
        final int end = text.indexOf(declaration);
        assertThat(end).as("%s in %s", declaration, source).isPositive();
        final int begin = text.lastIndexOf("/**", end);
        final Matcher m = Pattern.compile("(?s)/\\*\\*(.*?)(?:\\.\\s|\\*/)").matcher(text);
        assertThat(m.find(begin)).isTrue();
        return m.group(1).replaceAll("\\n\\s*\\*", " ").replaceAll("\\{@\\w+ ([^}]*)\\}", "$1")
            .replaceAll("\\s+", " ").strip();
    }
}
