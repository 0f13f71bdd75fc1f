package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import spanwright.error.DeadBand.Reversal;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.readings.Conditions;

/** Influences made from their own definition must be found again (by hand). */
class InfluenceTest {
    private static final Span LOOP = Span.milliamps4to20();
    private static final double[] SCATTER = {0.0002, -0.0001, 0.0001, -0.0002, 0.0001, -0.0001, 0, 0};

    @Test
    void whatTheOtherChannelsDoToOne() {
        // All eight settings of three channels at 0 and 100 %. CH2 adds 0.008 mA = 0.05 % of span, CH4 half
        // of that off.
        final double[][] percent = new double[8][3];
        final double[] indicated = new double[8];
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 3; j++) {
                percent[i][j] = (i >> j & 1) * 100;
            }
            indicated[i] = 12 + 0.008 * percent[i][0] / 100 - 0.004 * percent[i][2] / 100 + SCATTER[i];
        }
        final InfluenceStudy study = InfluenceStudy.ofChannels("CH1 at 50 %", LOOP, indicated,
            List.of("CH2", "CH3", "CH4"), percent).orElseThrow();
        assertThat(study.influences().stream().map(MeasuredInfluence::name).toList())
            .containsExactly("CH2", "CH4", "CH3");
        assertThat(study.influences().get(0).overRange().value()).isCloseTo(0.05, within(0.002));
        assertThat(study.influences().get(0).perUnit().value()).isCloseTo(0.0005, within(2e-5));
        assertThat(study.influences().get(1).overRange().value()).isCloseTo(-0.025, within(0.002));
        assertThat(study.shown().stream().map(MeasuredInfluence::name).toList()).containsExactly("CH2",
            "CH4");
        final MeasuredInfluence none = study.influences().get(2);
        assertThat(none.isShown()).isFalse();
        assertThat(none.atMost().value()).isGreaterThan(Math.abs(none.overRange().value())).isLessThan(0.01);
        assertThat(none.toString()).startsWith("CH3: not shown, at most 0.00");
        assertThat(study.toString()).startsWith("CH1 at 50 %:\nCH2: +0.0");
        assertThat(study.scatter()).isLessThan(0.003);
    }

    @Test
    void channelsMovedTogetherAreNotToldApart() {
        final double[][] percent = {{0, 0}, {100, 100}, {50, 50}, {0, 0}, {100, 100}};
        final Finding<InfluenceStudy> f = InfluenceStudy.ofChannels("CH1", LOOP,
            new double[] {12, 12.1, 12, 12, 12.1},
            List.of("CH2", "CH3"), percent);
        assertThat(f.reason()).startsWith("the influences (CH2, CH3) were not varied by themselves");
        assertThat(InfluenceStudy.ofChannels("CH1", LOOP, new double[] {12, 12.1, 12}, List.of("CH2", "CH3"),
            new double[][] {{0, 0}, {100, 0}, {0, 100}}).reason())
                .isEqualTo("2 influences need 4 readings; there are 3");
        assertThatThrownBy(() -> InfluenceStudy.ofOne("CH1", LOOP, new double[] {1, 2, 3}, "supply", "V",
            new double[] {20, 24})).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("3 readings but 2 settings");
    }

    @Test
    void supplyAndLoadFromRunsAtSeveralConditions() {
        final List<ChannelAnalysis> runs = new ArrayList<>();
        for (double volts : new double[] {18, 21, 24, 30}) {
            // 0.002 % of span per volt at zero, 0.004 at the top, about 24 V; 0.01 % of span per 100 ohm
            // everywhere.
            final double at0 = 0.002 * (volts - 24);
            final double at100 = 0.004 * (volts - 24);
            runs.add(Runs.withErrors(new double[] {at0, (at0 + at100) / 2, at100}, new double[0])
                .under(new Conditions(Optional.empty(), OptionalDouble.of(volts),
                OptionalDouble.of(volts * 10)))
                .analysis());
        }
        final InfluenceStudy zero = InfluenceStudy.ofSupply(runs, 0).orElseThrow();
        assertThat(zero.influences().get(0).perUnit().value()).isCloseTo(0.002, within(1e-9));
        assertThat(zero.influences().get(0).overRange().value()).isCloseTo(0.024, within(1e-9));
        assertThat(zero.subject()).isEqualTo("LT-101A at 0 %");
        assertThat(InfluenceStudy.ofSupply(runs, 100).orElseThrow().influences().get(0).perUnit().value())
            .isCloseTo(0.004, within(1e-9));
        assertThat(InfluenceStudy.ofLoad(runs, 0).orElseThrow().influences().get(0).perUnit().value())
            .isCloseTo(0.0002, within(1e-9));
        assertThat(InfluenceStudy.ofLoad(runs, 0).orElseThrow().influences().get(0).unit()).isEqualTo("ohm");
        final ChannelAnalysis silent = Runs.withErrors(new double[] {0, 0, 0}, new double[0]).analysis();
        assertThat(InfluenceStudy.ofSupply(List.of(runs.get(0), runs.get(1), silent), 0).reason())
            .isEqualTo("the influence of the supply needs three runs that state it; there are 2 of 3");
    }

    @Test
    void warmUpEndsWhenTheOutputStaysInTheBand() {
        final double[] minutes = {0, 5, 10, 15, 20, 25, 30, 40, 50, 60};
        final double[] output = {12.08, 12.03, 12.012, 12.001, 12.005, 12.0012, 12.0008, 12, 12, 12};
        final WarmUp w = WarmUp.of(minutes, output, LOOP, new PercentOfSpan(0.01)).orElseThrow();
        // 0.01 % of span is 0.0016 mA: the reading at 15 min is inside, the one at 20 min is not.
        assertThat(w.minutes()).isEqualTo(25);
        assertThat(w.excursion().value()).isCloseTo(0.5, within(1e-9));
        assertThat(w.toString()).startsWith("settled within \u00b10.01 % of span after 25 minutes");
        assertThat(WarmUp.of(minutes, output, LOOP, new PercentOfSpan(1)).orElseThrow().minutes()).isZero();
        assertThat(WarmUp.of(new double[] {0, 1, 2, 3}, new double[] {12, 12.1, 12.2, 12.3}, LOOP,
            new PercentOfSpan(0.1)).reason())
                .isEqualTo("the output was still moving at 3 of 3 minutes: watch it longer");
        assertThatThrownBy(() -> WarmUp.of(new double[] {0, 2, 2}, new double[] {1, 2, 3}, LOOP,
            new PercentOfSpan(1)))
            .isInstanceOf(IllegalArgumentException.class).hasMessage("the times must rise: 2.0 before 2.0");
        assertThatThrownBy(() -> WarmUp.of(minutes, output, LOOP, new PercentOfSpan(0)))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("band");
    }

    @Test
    void theDeadBandIsTheLargestReversalWithoutAnAnswer() {
        final List<Reversal> reversals = List.of(new Reversal(10, 0.01, 0), new Reversal(10, 0.02, 0.02),
            new Reversal(50, 0.01, 0), new Reversal(50, 0.03, -0.005), new Reversal(50, 0.05, -0.05),
            new Reversal(90, 0.02, 0.015));
        final DeadBand d = DeadBand.of(reversals, 0.006).orElseThrow();
        assertThat(d.largest().value()).isEqualTo(0.03);
        assertThat(d.position()).isEqualTo(50);
        assertThat(d.toString()).isEqualTo("0.03 % of span, at 50 %");
        assertThat(DeadBand.of(reversals, 0.005).orElseThrow().largest().value()).isEqualTo(0.03);
        assertThat(DeadBand.of(reversals, 0.004).orElseThrow().largest().value()).isEqualTo(0.01);
        assertThat(DeadBand.of(reversals.subList(0, 5), 0.006).reason())
            .isEqualTo("a dead band needs reversals at three points; there are 2");
        assertThat(DeadBand.of(reversals, 0.016).reason())
            .isEqualTo("at 90 % a reversal of 0.02 % still changed nothing: try larger ones");
        assertThat(DeadBand.of(List.of(new Reversal(10, 1, 1), new Reversal(50, 1, 1),
            new Reversal(90, 1, 1)), 0)
            .orElseThrow().largest().value()).isZero();
    }
}
