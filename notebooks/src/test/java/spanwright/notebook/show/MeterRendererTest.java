package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.notebook.show.InventedChannel.html;

import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.error.DiodeTerminal;
import spanwright.error.MeterComparison;
import spanwright.error.MeterRange;
import spanwright.error.MilliammeterInLoop;
import spanwright.error.SenseResistor;
import spanwright.error.VoltmeterAcrossResistor;
import spanwright.quantity.Celsius;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;

class MeterRendererTest {
    private static final VoltmeterAcrossResistor HANDHELD = VoltmeterAcrossResistor.of("handheld",
        MeterRange.of(0.4, 0.5, 2, 1e-4), SenseResistor.ofTolerance(10, 0.1, 50), 0);

    @Test
    void setUpsStandSideBySideWithTheRatioAtEachPoint() {
        final String shown = html("meters", MeterComparison.of(List.of(HANDHELD,
            new MilliammeterInLoop("mA range", MeterRange.of(30, 0.02, 2, 0.001), 10),
            new MilliammeterInLoop("small", MeterRange.of(10, 0.02, 2, 0.001), 10)), Span.milliamps4to20(),
            new Celsius(23), new PercentOfSpan(0.25), 4));
        assertThat(shown).contains("mA range will do, at 23", "\u2713 yes", "\u2717 no", "\u25b6 mA range",
            "small: at 12 mA a reading of 12 is beyond the range, which ends at 10", "<svg");
    }

    /** 0.3 V at 25 degC leaves 0.065 % of span in the diode (worked independently). */
    @Test
    void metersReadingsResistorsAndTerminalsAreShown() {
        assertThat(html("meter", HANDHELD)).contains("handheld at 20 mA: U ", "the resistor is taken at its",
            "<svg");
        assertThat(html("reading", HANDHELD.at(12, new Celsius(23), Span.milliamps4to20())))
            .contains("Terms of the reading", "meter accuracy");
        assertThat(html("resistor", HANDHELD.resistor())).contains("10 ohm, by its tolerance", "<svg");
        assertThat(html("diode", DiodeTerminal.usual())).containsPattern("\u22120\\.06[456]<")
            .contains("<svg");
    }
}
