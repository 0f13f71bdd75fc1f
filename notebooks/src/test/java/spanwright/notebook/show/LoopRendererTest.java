package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.ServiceLoader;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.api.Test;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.loop.Burden;
import spanwright.loop.Cable;
import spanwright.loop.Corner;
import spanwright.loop.CurrentLoop;
import spanwright.loop.DigitalPath;
import spanwright.loop.DigitalSignal;
import spanwright.loop.GroundLoop;
import spanwright.loop.Isolator;
import spanwright.loop.IsolationRating;
import spanwright.loop.IsolatorModule;
import spanwright.loop.LoopCautions;
import spanwright.loop.Panel;
import spanwright.loop.Supply;
import spanwright.loop.Transmitter;
import spanwright.uncertainty.MonteCarlo;

/** Every answer about a loop is shown, with its sentence first and the cautions beside it. */
class LoopRendererTest {
    private static final Supply MAIN = Supply.volts(24).tolerance(5).rated(500).efficiency(88)
        .named("supply <1>");
    private static final Isolator ISOLATOR = Isolator.inputLoopPowered("isolator", 3.5).clampedAt(12)
        .rated(IsolationRating.ac(250)).isolationOhms(1e9).digital(DigitalPath.BLOCKS)
        .feeding(Burden.receiver("card", 250));
    private static final CurrentLoop LOOP = CurrentLoop.of("LT-101", MAIN,
        Cable.copper(1.0).metres(200).picofaradsPerMetre(150), Transmitter.twoWire("LT-101", 10), ISOLATOR);

    private static MimeBundle bundle(Object value) {
        return ServiceLoader.load(Renderer.class).stream().map(ServiceLoader.Provider::get)
            .flatMap(r -> r.render(value).stream()).findFirst().orElseThrow();
    }

    private static String html(Object value) {
        return bundle(value).data().get(MimeBundle.HTML).toString();
    }

    static Stream<Object> answers() {
        final Panel panel = panel();
        return Stream.of(LOOP, LOOP.answer(), LOOP.at(20), LOOP.at(20, Corner.LEAST_VOLTAGE),
            LOOP.reach(Corner.LEAST_VOLTAGE), LOOP.faults(12), LOOP.inverse(), LOOP.readingOf("card"),
            DigitalSignal.of(LOOP, 5000), GroundLoop.of(IsolationRating.ac(10), 250).isolatedBy(ISOLATOR),
            LOOP.marginDistribution(22.5, MonteCarlo.seeded(3).trials(20_000)), LOOP.checks(),
            LOOP.margins(), panel, panel.at(20), panel.load(), panel.heat(), panel.commonCauses(12).get(0));
    }

    private static Panel panel() {
        return Panel.of("MC-1", IsolatorModule.of("module A", 8).drawing(MAIN, 300)
            .channel(1, CurrentLoop.of("LT-11", MAIN, Transmitter.twoWire("LT", 12),
                Isolator.separatelyPowered("channel", 12).feeding(Burden.receiver("card", 250)))));
    }

    @ParameterizedTest
    @MethodSource("answers")
    void everyAnswerHasItsCautions(Object value) {
        assertThat(html(value)).startsWith("<div><p ").contains("<strong>", "<b>Before field work.</b>");
        for (String caution : LoopCautions.all()) {
            assertThat(html(value)).contains(caution.replace("'", "&#39;"));
            assertThat(bundle(value).data().get(MimeBundle.TEXT).toString()).contains(caution);
        }
        assertThat(html(value)).doesNotContain("supply <1>");
    }

    @Test
    void aLoopIsDrawnAndALoopWithoutSolutionSaysWhy() {
        // By hand: 3.5 V and 20 mA x 250 ohm.
        assertThat(html(LOOP)).contains("<svg", ">cable, out<", ">8.50 V<");
        final CurrentLoop dead = LOOP.on(Supply.volts(5));
        assertThat(html(dead)).contains("No solution").doesNotContain("<svg");
        assertThat(html(dead.at(20))).contains("No solution");
    }

    @Test
    void aPanelShowsItsHeatAndItsLoad() {
        assertThat(html(panel().at(20))).contains("in the cabinet, supplies included", "<svg");
        // By hand: one loop of 20 mA and the module's 300 mA.
        assertThat(html(panel().load())).contains(">320<");
        assertThat(List.of(html(panel()))).allMatch(h -> h.contains("7 places spare"));
    }
}
