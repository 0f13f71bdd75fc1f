package spanwright.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Outcome;
import spanwright.kernel.jshell.JShellInterpreter;

class CellPreludeTest {
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

    @ParameterizedTest(name = "{0} shows {1}")
    @CsvSource(delimiter = '|', textBlock = """
        percentOfSpan(0.5)                            | 0.5 % of span
        degC(45).minus(degC(-10))                     | 55 K
        Span.milliamps4to20().toPercentOfSpan(percentOfReading(1), 20) | 1.25 % of span
        Span.of(0, 8, "m").percentAt(2)               | 25.0
        IntStream.rangeClosed(1, 4).sum()             | 10
        Estimate.of(15, 8.7)                          | 15.0 \u00b1 8.7 (k = 1)
        new Rectangular(-1, 1).getClass().getSimpleName() | Rectangular
        """)
    void aCellSeesTheWordsOfTheTrade(String code, String shown) {
        final Outcome outcome = interpreter.evaluate(new Cell(code, "cell [1]"), new Nowhere());
        assertThat(outcome).isInstanceOfSatisfying(Outcome.Value.class, v ->
            assertThat(v.shown().orElseThrow().data().get(MimeBundle.TEXT)).isEqualTo(shown));
    }

    private static Map<String, Object> shown(String code) {
        final Outcome outcome = interpreter.evaluate(new Cell(code, "cell [2]"), new Nowhere());
        assertThat(outcome).isInstanceOf(Outcome.Value.class);
        return ((Outcome.Value) outcome).shown().orElseThrow().data();
    }

    @Test
    void aTableIsShownAsHtmlWithEveryValueEscaped() {
        final Map<String, Object> data = shown("Table.create(\"<i>t</i>\", StringColumn.create(\"<b>\", "
            + "\"<script>alert(1)</script>\", \"<img src=x onerror=alert(1)>\"), "
            + "DoubleColumn.create(\"x\", 1.5, 2))");
        assertThat((String) data.get(MimeBundle.HTML))
            .contains("&lt;script&gt;", "&lt;img src=x onerror", "&lt;b&gt;", "&lt;i&gt;t", ">1.5<")
            .doesNotContain("<script", "<img", "<b>", "<i>");
        assertThat((String) data.get(MimeBundle.TEXT)).contains("2 rows, 2 columns");
    }

    @Test
    void aChartMadeInACellIsShownAsSvgWithPngBesideIt() {
        final Map<String, Object> data = shown("var mine = new XYChartBuilder().title(\"Mine\").build(); "
            + "mine.addSeries(\"y\", new double[] {1, 2, 3}, new double[] {1, 4, 9}); mine");
        assertThat((String) data.get(MimeBundle.SVG)).startsWith("<svg ").contains("<title>Mine</title>");
        assertThat(Base64.getDecoder().decode((String) data.get(MimeBundle.PNG)))
            .startsWith(0x89, 'P', 'N', 'G');
        assertThat(data.get(MimeBundle.TEXT)).isEqualTo("Mine\nMine");
    }

    /** Takes what a cell writes and keeps nothing. */
    private static final class Nowhere implements CellOutput {
        @Override
        public void write(Stream stream, String text) {
            throw new AssertionError(stream + ": " + text);
        }

        @Override
        public void display(MimeBundle bundle, Optional<String> displayId) {
            throw new AssertionError(bundle);
        }

        @Override
        public void updateDisplay(MimeBundle bundle, String displayId) {
            throw new AssertionError(bundle);
        }

        @Override
        public void clear(boolean wait) {
            throw new AssertionError("clear");
        }

        @Override
        public void page(MimeBundle bundle) {
            throw new AssertionError(bundle);
        }

        @Override
        public Optional<String> readLine(String prompt, boolean password) throws IOException {
            throw new IOException("nobody to ask");
        }
    }
}
