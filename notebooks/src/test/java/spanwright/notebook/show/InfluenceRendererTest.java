package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.notebook.show.InventedChannel.html;
import static spanwright.notebook.show.InventedChannel.text;

import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.error.Finding;
import spanwright.error.InfluenceStudy;
import spanwright.quantity.Span;

/** Readings made from a known effect (by hand). */
class InfluenceRendererTest {
    private static final Span LOOP = Span.milliamps4to20();
    private static final double[] SCATTER = {1e-4, -1e-4, -1e-4, 1e-4, -1e-4, 1e-4, 1e-4, -1e-4};

    /** CH2 adds 0.008 mA = 0.05 % of span over its range, CH3 nothing. */
    private static Finding<InfluenceStudy> channels() {
        final double[][] percent = new double[8][2];
        final double[] indicated = new double[8];
        for (int i = 0; i < 8; i++) {
            percent[i] = new double[] {(i & 1) * 100, (i >> 1 & 1) * 100};
            indicated[i] = 12 + 0.008 * percent[i][0] / 100 + SCATTER[i];
        }
        return InfluenceStudy.ofChannels("CH1 at 50 %", LOOP, indicated, List.of("CH2", "CH3"), percent);
    }

    @Test
    void whatAnotherChannelDoesIsShownAndWhatIsNotShownIsBounded() {
        assertThat(text(channels())).startsWith("CH1 at 50 %: CH2: +0.0")
            .contains("not shown: CH3 at most 0.0")
            .containsPattern("(?m)^> CH2 +100 % +0\\.05[0-9]+ .* yes$")
            .containsPattern("(?m)^ +CH3 +100 % .* not shown$");
        final String shown = html("influence-channels", channels());
        assertThat(shown).contains("Before field work.", "moves the processes behind them", "<svg");
        assertThat(shown.indexOf("Before field work.")).isLessThan(shown.indexOf("<table"));
    }

    /** 0.0016 mA = 0.01 % of span a volt, over 12 V: 0.12 % of span; 0.0008 mA = 0.005 % per 100 ohm. */
    @Test
    void supplyAndLoadAreShownPerUnit() {
        final double[] volts = {18, 21, 24, 30};
        final double[] output = {12.0096 - 0.0192, 12.0048 - 0.0096, 12, 12.0096};
        assertThat(text(InfluenceStudy.ofOne("CH1 at 50 %", LOOP, output, "supply", "V", volts)))
            .startsWith("CH1 at 50 %: supply: +0.1200 % of span over 12 V.")
                .containsPattern(" 0\\.010+ per V ");
        assertThat(
            text(InfluenceStudy.ofOne("CH1 at 50 %", LOOP, new double[] {12, 12.0008, 12.0016, 12.0024},
                "load", "ohm", new double[] {0, 100, 200, 300}).orElseThrow().influences().get(0)))
            .startsWith("load: +0.0150 % of span over 300 ohm.");
    }

    @Test
    void whatWasMovedTogetherIsNotToldApart() {
        assertThat(text(InfluenceStudy.ofChannels("CH1", LOOP, new double[] {12, 12.1, 12, 12, 12.1},
            List.of("CH2", "CH3"), new double[][] {{0, 0}, {100, 100}, {50, 50}, {0, 0}, {100, 100}})))
            .startsWith("Not determined: the influences (CH2, CH3) were not varied by themselves");
    }
}
