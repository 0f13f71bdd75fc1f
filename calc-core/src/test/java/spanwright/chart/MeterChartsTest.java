package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.error.CurrentMeter;
import spanwright.error.DiodeTerminal;
import spanwright.error.MeterComparison;
import spanwright.error.MeterRange;
import spanwright.error.MilliammeterAtTerminal;
import spanwright.error.MilliammeterInLoop;
import spanwright.error.SenseResistor;
import spanwright.error.VoltmeterAcrossResistor;
import spanwright.quantity.Celsius;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;

class MeterChartsTest {
    private static final Span LOOP = Span.milliamps4to20();
    private static final Celsius ROOM = new Celsius(23);
    private static final SenseResistor TEN = SenseResistor.ofTolerance(10, 0.1, 50);

    private static VoltmeterAcrossResistor across(String name, double percent, double counts, double step,
                                                  SenseResistor resistor) {
        return VoltmeterAcrossResistor.of(name, MeterRange.of(0.4, percent, counts, step), resistor, 20e-6);
    }

    private static List<CurrentMeter> meters() {
        return List.of(across("handheld, 0.5 %", 0.5, 2, 1e-4, TEN), across("handheld, 0.05 %", 0.05, 3, 1e-5,
            TEN), across("bench, certified resistor", 0.005, 2, 1e-6,
            SenseResistor.certified(10.0023, 0.0005, 2, 5, new Celsius(20))),
            new MilliammeterInLoop("mA range, 0.02 %", MeterRange.of(30, 0.02, 2, 0.001), 10));
    }

    @Test
    void theTermsAreStackedTheLargestAtTheBottom() {
        final Picture picture = Sight.of("meter-terms",
            MeterCharts.terms(meters().get(1), new Celsius(35), LOOP));
        assertThat(picture.title()).startsWith("handheld, 0.05 % at 35 \u00b0C: U is ")
            .contains("meter accuracy is the largest term at the top");
        // 0.05 % and 3 counts, grown by 0.7 outside the band: 1.7 times 0.08125 % of span.
        assertThat(picture.svg()).contains("meter accuracy 0.14", "resistor value 0.12", "U (95 %) 0.",
            "too small to draw: meter loading");
    }

    @Test
    void setUpsStandSideBySideAgainstWhatTheRatioAllows() {
        final MeterComparison c = MeterComparison.of(meters(), LOOP, ROOM, new PercentOfSpan(0.2), 4);
        final Picture picture = Sight.of("meter-comparison", MeterCharts.comparison(c));
        assertThat(picture.title()).startsWith("For a tolerance of \u00b10.2 % of span and a ratio of 4: ")
            .endsWith(": bench, certified resistor; mA range, 0.02 % will do.");
        assertThat(picture.svg()).contains("tolerance 0.2", "tolerance / 4 = 0.05", "\u2717 handheld, 0.5 %",
            "\u2713 bench, certified resistor");
    }

    @Test
    void ofManySetUpsTheBestAreDrawnAndTheTitleSaysSo() {
        final List<CurrentMeter> many = new ArrayList<>(meters());
        for (int i = 1; i < 5; i++) {
            many.add(across("number " + i, 0.1 * i, 2, 1e-4, TEN));
        }
        assertThat(Sight.of("meter-many", MeterCharts.comparison(MeterComparison.of(many, LOOP, ROOM,
            new PercentOfSpan(0.2), 4))).title()).endsWith("(the best 6 drawn).");
        assertThatThrownBy(() -> MeterCharts.comparison(MeterComparison.of(
            List.of(new MilliammeterInLoop("small", MeterRange.of(10, 0.02, 2, 0.001), 10)), LOOP, ROOM,
            new PercentOfSpan(0.2), 4))).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("no set-up can read all the points");
    }

    @Test
    void aMeterAtATerminalShowsTheLeakage() {
        assertThat(Sight.of("meter-terminal", MeterCharts.terms(new MilliammeterAtTerminal("at the terminal",
            MeterRange.of(30, 0.05, 2, 0.001), 15, DiodeTerminal.usual()), new Celsius(45), LOOP)).svg())
            .contains("leakage of the diode 0.");
    }

    @Test
    void aResistorDependsOnItsTemperature() {
        final Picture picture = Sight.of("meter-resistor", MeterCharts.resistor(TEN, LOOP));
        // 0.1 % of 20 mA is 0.125 % of span; 50 ppm/K over 45 K add 0.28 %.
        assertThat(picture.svg()).contains("tolerance 0.12", "with 50 ppm/K: 0.41");
        assertThat(MeterCharts.resistor(SenseResistor.certified(10.0023, 0.0005, 2, 5, new Celsius(20)), LOOP)
            .svg()).contains("certificate (k = 2) 0.0062");
    }

    /** 0.01 % of span is 1.6 uA; the figures follow from the diode equation (MeterTest). */
    @Test
    void aDiodeLeaksMoreWhenItIsWarm() {
        final Picture picture = Sight.of("meter-diode", MeterCharts.diode(DiodeTerminal.usual(), LOOP));
        assertThat(picture.title())
            .startsWith("Test terminal: a meter that leaves up to 0.21 V at 25 \u00b0C, ");
        assertThat(picture.svg()).contains("diode at 25 \u00b0C", "diode at 70 \u00b0C",
            "diode at \u221210 \u00b0C");
    }
}
