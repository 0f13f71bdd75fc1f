package spanwright.kernel.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class RenderersTest {
    private static final Renderers PLAIN = Renderers.of(List.of());

    /** A renderer for one type of value. */
    private record For(int precedence, String type, String html) implements Renderer {
        @Override
        public Optional<MimeBundle> render(Object value) {
            if (html.isEmpty()) {
                throw new IllegalStateException("broken");
            }
            return value.getClass().getSimpleName().equals(type)
                ? Optional.of(new MimeBundle(Map.of(MimeBundle.HTML, html), Map.of())) : Optional.empty();
        }
    }

    private record Reading(String tag, double[] values) { }

    private record Own(int a) {
        @Override
        public String toString() {
            return "own " + a;
        }
    }

    private static String text(Object value) {
        return (String) PLAIN.render(value).data().get(MimeBundle.TEXT);
    }

    @Test
    void theHighestPrecedenceThatAnswersWins() {
        final Renderers r = Renderers.of(List.of(new For(0, "Integer", "low"), new For(5, "Integer", "high"),
            new For(9, "String", "text")));
        assertThat(r.render(3).data()).containsEntry(MimeBundle.HTML, "high").containsEntry(MimeBundle.TEXT,
            "3");
        assertThat(r.render("s").data()).containsEntry(MimeBundle.HTML, "text");
        assertThat(r.render(2.5).data()).containsOnlyKeys(MimeBundle.TEXT);
    }

    @Test
    void aRendererThatFailsIsNamedAndTheValueShownAsText() {
        final MimeBundle b = Renderers.of(List.of(new For(1, "Integer", ""))).render(3);
        assertThat((String) b.data().get(MimeBundle.TEXT)).startsWith("3\n").contains("For failed")
            .contains("broken");
    }

    @Test
    void aBundleIsShownAsItIs() {
        final MimeBundle b = MimeBundle.text("t").with(MimeBundle.SVG, "<svg/>");
        assertThat(PLAIN.render(b)).isSameAs(b);
    }

    @Test
    void containersShowTheirContents() {
        assertThat(text(new int[] {1, 2})).isEqualTo("[1, 2]");
        assertThat(text(new double[][] {{1.5}, {}})).isEqualTo("[[1.5], []]");
        assertThat(text(new Object[] {"a", null, 'c'})).isEqualTo("[a, null, c]");
        assertThat(text(Arrays.asList(new int[] {1}, null))).isEqualTo("[[1], null]");
        final Map<String, Object> m = new LinkedHashMap<>();
        m.put("k", new int[] {1});
        m.put("n", null);
        assertThat(text(m)).isEqualTo("{k=[1], n=null}");
        assertThat(text(new Reading("LT-1", new double[] {4, 20}))).isEqualTo(
            "Reading[tag=LT-1, values=[4.0, 20.0]]");
        assertThat(text(new Own(1))).isEqualTo("own 1");
        assertThat(text(null)).isEqualTo("null");
        assertThat(text("")).isEmpty();
    }

    @Test
    void longOnesAreCutWithTheCount() {
        final List<Integer> many = IntStream.range(0, 1_000_000).boxed().toList();
        assertThat(text(many)).startsWith("[0, 1, ").endsWith(", ... 1000000 in all]")
            .hasSizeLessThan(100_200);
        assertThat(text("x".repeat(200_000))).endsWith("... [200000 characters]");
        final List<Object> loop = new ArrayList<>();
        loop.add(Map.of("in", loop));
        assertThat(text(loop)).isEqualTo("[{in=(this again)}]");
    }

    @Test
    void generatedNamesAreLeftOut() {
        assertThat(GeneratedNames.strip("REPL.$JShell$9$Loop@1f")).isEqualTo("Loop@1f");
        assertThat(GeneratedNames.strip("at REPL.$JShell$10B.f(x)")).isEqualTo("at f(x)");
        assertThat(GeneratedNames.strip("because \"REPL.$JShell$3.a\" is null")).isEqualTo(
            "because \"a\" is null");
        assertThat(GeneratedNames.strip("$JShell$ of the user")).isEqualTo("$JShell$ of the user");
    }
}
