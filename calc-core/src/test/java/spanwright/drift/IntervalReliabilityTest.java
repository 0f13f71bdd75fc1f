package spanwright.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class IntervalReliabilityTest {
    @Test
    @DisplayName("zero failures, C = R = 0.95: n = ln(1 - C) / ln(R) = 58.4, so 59 (read in a public copy)")
    void failureFreeSample() {
        final IntervalReliability reliability = IntervalReliability.ofPercent(95);
        assertAsPrinted("58.4", reliability.exactFailureFreeSample(0.95));
        assertThat(reliability.failureFreeSample(0.95)).isEqualTo(59);
    }

    @Test
    @DisplayName("12 months, observed 90 %, target 95 %: 5.84 months (from memory)")
    void intervalForATarget() {
        assertAsPrinted("5.84", IntervalReliability.ofPercent(95).intervalFrom(12,
            IntervalReliability.ofPercent(90)));
    }

    @Property
    void theSampleShowsTheReliabilityAndOneFewerDoesNot(@ForAll @DoubleRange(min = 0.5,
        max = 0.99) double share,
                                                        @ForAll @DoubleRange(min = 0.5,
                                                            max = 0.99) double confidence) {
        final int n = new IntervalReliability(share).failureFreeSample(confidence);
        assertThat(Math.pow(share, n)).isLessThanOrEqualTo((1 - confidence) * (1 + 1e-12));
        assertThat(Math.pow(share, n - 1)).isGreaterThan((1 - confidence) * (1 - 1e-12));
    }

    @Property
    void aHigherTargetNeedsAShorterIntervalAndTheObservedOneKeepsIt(
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double observed) {
        final IntervalReliability seen = new IntervalReliability(observed);
        assertThat(seen.intervalFrom(12, seen)).isEqualTo(12);
        assertThat(new IntervalReliability((1 + observed) / 2).intervalFrom(12, seen)).isLessThan(12);
    }

    @Test
    void refusesCertaintyAndNamesTheBound() {
        assertThatThrownBy(() -> IntervalReliability.ofPercent(100))
            .hasMessage("reliability is 1.0: out of range (0.0, 1.0)");
        assertThatThrownBy(() -> IntervalReliability.ofPercent(95).failureFreeSample(1))
            .hasMessage("confidence is 1.0: out of range (0.0, 1.0)");
    }
}
