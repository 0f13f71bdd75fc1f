package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.error.InfluenceStudy;
import spanwright.quantity.Span;

/** Readings made from a known effect: CH2 adds 0.008 mA, 0.05 % of span; CH3 adds nothing (by hand). */
class InfluenceChartsTest {
    private static final double[] SCATTER = {1e-4, -1e-4, -1e-4, 1e-4, -1e-4, 1e-4, 1e-4, -1e-4};

    private static InfluenceStudy study(double milliamps) {
        final double[][] percent = new double[8][2];
        final double[] indicated = new double[8];
        for (int i = 0; i < 8; i++) {
            percent[i] = new double[] {(i & 1) * 100, (i >> 1 & 1) * 100};
            indicated[i] = 12 + milliamps * percent[i][0] / 100 + SCATTER[i];
        }
        return InfluenceStudy.ofChannels("CH1 at 50 %", Span.milliamps4to20(), indicated,
            List.of("CH2", "CH3"), percent).orElseThrow();
    }

    @Test
    void anInfluenceIsABarAndWhatIsNotShownSaysHowLargeItMayBe() {
        final Picture picture = Sight.of("influence", InfluenceCharts.effects(study(0.008)));
        assertThat(picture.title()).containsPattern("^CH1 at 50 %: moved by CH2 \\(\\+0\\.05[0-9]*");
        assertThat(picture.title()).doesNotContain("CH3");
        assertThat(picture.svg()).contains("CH2, over 100 %", "not shown, at most 0.0",
            "range that was tried (% of span)");
        assertThat(Sight.of("influence-negative", InfluenceCharts.effects(study(-0.008))).title())
            .containsPattern("CH2 \\(\u22120\\.05");
        assertThat(InfluenceCharts.effects(study(0)).title())
            .isEqualTo("CH1 at 50 %: no influence is told from none.");
    }

    @Test
    void withoutAPointThereIsNoPicture() {
        assertThatThrownBy(() -> InfluenceCharts.errors(List.of()))
            .isInstanceOf(IllegalArgumentException.class).hasMessage("there is no point to draw");
    }
}
