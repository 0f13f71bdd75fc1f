package spanwright.chain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spanwright.uncertainty.Constant;
import spanwright.uncertainty.Distribution;
import spanwright.uncertainty.LogNormal;
import spanwright.uncertainty.Normal;
import spanwright.uncertainty.Rectangular;
import spanwright.uncertainty.ScaledT;
import spanwright.uncertainty.Triangular;
import spanwright.uncertainty.UShaped;

/**
 * Stretching about the expectation is a linear change: the mean stays, the standard uncertainty takes the
 * factor.
 */
class ScalingTest {
    static Stream<Distribution> kinds() {
        return Stream.of(new Normal(0.3, 0.1), new ScaledT(-0.2, 0.05, 4), new Rectangular(-0.1, 0.3),
            new Triangular(0.2, 0.5), new UShaped(-0.4, -0.1));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("kinds")
    void keepsTheMeanTheKindAndTheDegreesOfFreedom(Distribution d) {
        final Distribution wide = Scaling.aboutMean(d, 2.5);
        assertThat(wide).hasSameClassAs(d);
        assertThat(wide.mean()).isCloseTo(d.mean(), within(1e-15));
        assertThat(wide.standardUncertainty()).isCloseTo(2.5 * d.standardUncertainty(), within(1e-15));
        assertThat(wide.dof()).isEqualTo(d.dof());
    }

    @Test
    void leavesAConstantAsItIs() {
        final Constant constant = new Constant(0.7);
        assertThat(Scaling.aboutMean(constant, 3)).isSameAs(constant);
    }

    @Test
    void refusesWhatHasNoLinearStretch() {
        final Distribution skew = LogNormal.ofMean(1, 0.2);
        assertThatThrownBy(() -> Scaling.aboutMean(skew, 2)).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("a " + skew.kind() + " error term cannot be scaled");
    }
}
