package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class MinimaxAdjustmentTest {
    /** With equal limits it is the independent line, which is found in another way. */
    @Property(tries = 200)
    void withEqualLimitsItIsTheIndependentLine(@ForAll long seed) {
        final Random random = new Random(seed);
        final int n = 3 + random.nextInt(8);
        final double[] x = random.doubles(n, 0, 100).toArray();
        final double[] error = random.doubles(n, -1, 1).toArray();
        final double[] limit = new double[n];
        Arrays.fill(limit, 0.25);
        final MinimaxAdjustment a = MinimaxAdjustment.of(x, error, limit);
        final ReferenceLine line = ReferenceLine.independent(x, error);
        assertThat(a.largest()).isCloseTo(line.largestDeviation() / 0.25, within(1e-9));
        assertThat(a.tilt()).isCloseTo(-line.slope(), within(1e-8));
        assertThat(a.offset()).isCloseTo(-line.intercept(), within(1e-7));
    }

    /** By hand: errors 0, 0.3, 0 with the middle limit twice the others: 0.3 - a = 2 t, a = t. */
    @Test
    void aWiderLimitTakesMoreOfTheError() {
        final MinimaxAdjustment a = MinimaxAdjustment.of(new double[] {0, 50, 100}, new double[] {0, 0.3, 0},
            new double[] {1, 2, 1});
        assertThat(a.offset()).isCloseTo(-0.1, within(1e-12));
        assertThat(a.tilt()).isCloseTo(0, within(1e-14));
        assertThat(a.largest()).isCloseTo(0.1, within(1e-12));
    }

    @Test
    void twoPlacesCanAlwaysBeNulled() {
        final MinimaxAdjustment a = MinimaxAdjustment.of(new double[] {0, 100}, new double[] {1, 3},
            new double[] {1, 1});
        assertThat(a.largest()).isCloseTo(0, within(1e-13));
        assertThat(a.offset()).isCloseTo(-1, within(1e-12));
        assertThat(a.tilt()).isCloseTo(-0.02, within(1e-14));
    }

    @Test
    void refusesLengthsThatDifferAndALimitBelowZero() {
        final double[] two = {1, 2};
        assertThatThrownBy(() -> MinimaxAdjustment.of(two, new double[] {1, 2, 3}, two))
            .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> MinimaxAdjustment.of(two, two, new double[] {-1, 1}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("limit[0]");
        assertThatThrownBy(() -> MinimaxAdjustment.of(new double[] {1}, new double[] {1}, new double[] {1}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("at least 2");
    }
}
