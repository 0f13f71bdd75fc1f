package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.notebook.show.InventedChannel.html;
import static spanwright.notebook.show.InventedChannel.text;

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

/** The figures are worked by hand from half width / sqrt(3) (JCGM 100:2008, 4.3.7) and the 16 mA span. */
class MeterRendererTest {
    private static final Span LOOP = Span.milliamps4to20();
    private static final Celsius ROOM = new Celsius(23);
    private static final SenseResistor TEN = SenseResistor.ofTolerance(10, 0.1, 50);
    private static final MilliammeterInLoop DIRECT = new MilliammeterInLoop("mA range",
        MeterRange.of(30, 0.02, 2, 0.001), 10);
    private static final VoltmeterAcrossResistor ACROSS = VoltmeterAcrossResistor.of("handheld",
        MeterRange.of(0.4, 0.5, 2, 1e-4), TEN, 20e-6);

    @Test
    void cautionsStandBeforeEveryWayToTouchALoop() {
        final List<Object> all = List.of(TEN, ACROSS, DIRECT, DIRECT.at(12, ROOM, LOOP),
            DiodeTerminal.usual(), compared(0.2), new MilliammeterAtTerminal("at the terminal",
                MeterRange.of(30, 0.05, 2, 0.001), 15, DiodeTerminal.usual()));
        for (Object o : all) {
            final String shown = html("meter-" + all.indexOf(o), o);
            assertThat(shown).contains("Before field work.", "Opening a loop drives it to 0 mA",
                "nearly a short circuit", "<svg", "<table");
            assertThat(shown.indexOf("Before field work.")).isLessThan(shown.indexOf("<table"));
        }
    }

    /**
     * Only the rectangle of 0.02 % of 20 mA and 2 counts: 6 uA, 0.0375 % of span; 95 % of it is U. At 4 mA it
     * is 2.8 uA, 0.0175 %, which may be written either way.
     */
    @Test
    void aMilliammeterIsShownInMilliampereAndPercentOfSpanAtEachPoint() {
        assertThat(text(DIRECT)).startsWith("mA range reads 20 mA to \u00b10.0057 mA = \u00b10.036 % of span")
            .containsPattern("(?m)^> +20 +0\\.0057 +0\\.036 +0\\.038 +1\\.65 +meter accuracy +0\\.200")
            .containsPattern("(?m)^ +4 +0\\.0027 +0\\.017 +0\\.01[78] ")
            .contains("breaking the loop to insert it drops the signal");
    }

    /** 0.1 % of 12 mA is 12 uA, 0.075 % of span; 0.5 % of 120 mV and 2 counts are 0.8 mV, 80 uA. */
    @Test
    void aReadingShowsTheLimitOfEachTerm() {
        assertThat(text(ACROSS.at(12, ROOM, LOOP))).startsWith("handheld at 12 mA: U ")
            .containsPattern("(?m)^> meter accuracy +0\\.080 +0\\.50 ")
            .containsPattern("(?m)^ +resistor value +0\\.012 +0\\.075 ")
            .containsPattern("(?m)^ +thermal voltage +0\\.0020 +0\\.01[23] ");
    }

    private static MeterComparison compared(double tolerance) {
        final List<CurrentMeter> meters = List.of(ACROSS, DIRECT, new MilliammeterInLoop("small",
            MeterRange.of(10, 0.02, 2, 0.001), 10));
        return MeterComparison.of(meters, LOOP, ROOM, new PercentOfSpan(tolerance), 4);
    }

    /** U of the mA range is 0.95 of 0.0375 % of span at 20 mA: 0.2 / 0.035625 = 5.6. */
    @Test
    void setUpsStandSideBySideWithTheirRatioAtEachPoint() {
        assertThat(text(compared(0.2)))
            .startsWith("For a tolerance of \u00b10.2 % of span and a ratio of 4: mA range will do, at 23 ")
            .containsPattern("(?m)^> mA range .* 5\\.6 +5\\.6 +\u2713 yes")
            .containsPattern("(?m)^ +handheld .*\u2717 no")
                .contains("small: at 12 mA a reading of 12 is beyond the range, which ends at 10")
            .contains("0.0057 = 0.036");
        assertThat(text(compared(0.1))).contains("none will do").doesNotContain("\u2713 yes");
    }

    @Test
    void whatCannotReadTheRangeSaysSoAndHasNoTable() {
        final String shown = html("meter-small", new MilliammeterInLoop("small",
            MeterRange.of(10, 0.02, 2, 0.001), 10));
        assertThat(shown).contains("small cannot read 4 to 20 mA: at 12 mA ", "Before field work.")
            .doesNotContain("<table");
    }

    /** 50 ppm/K over 45 K on 20 mA of a 16 mA span: 0.28 %. */
    @Test
    void aResistorIsShownOverTemperature() {
        assertThat(text(TEN)).contains("\u00b10.12 % of span at 20 mA and 25 \u00b0C by its tolerance")
            .containsPattern("(?m)^ +70 +0\\.12 +0\\.28 +0\\.41");
        assertThat(text(SenseResistor.certified(10.0023, 0.0005, 2, 5, new Celsius(20))))
            .contains("by its certificate (k = 2)");
    }

    /**
     * The voltages follow from the diode equation (MeterTest); 0.3 V at 25 degC leaves 0.065 % of span in the
     * diode (worked independently).
     */
    @Test
    void aDiodeAllowsLessWhenItIsWarm() {
        assertThat(text(DiodeTerminal.usual())).containsPattern("(?m)^ +25 +0\\.21 +10\\.[0-9] ")
            .containsPattern("(?m)^> +70 +0\\.07 +3\\.[0-9] ").contains("low by what stays in the diode")
            .containsPattern("(?m)^ +0\\.30 +\u22120\\.00[0-9] +\u22120\\.06[456] ");
    }
}
