package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class LabelsTest {
    @Test
    void whatDoesNotTouchStays() {
        assertThat(Labels.spread(new double[] {5, 1, 9}, 2)).containsExactly(5, 1, 9);
        assertThat(Labels.spread(new double[0], 2)).isEmpty();
    }

    @Test
    void whatTouchesSharesTheWay() {
        assertThat(Labels.spread(new double[] {3, 3}, 2)).containsExactly(2, 4);
        assertThat(Labels.spread(new double[] {3.5, 3, 10}, 2)).containsExactly(4.25, 2.25, 10);
    }

    @Property(tries = 100)
    void orderIsKeptAndNoTwoTouch(@ForAll long seed, @ForAll @IntRange(min = 1, max = 8) int n) {
        final double[] wanted = new Random(seed).doubles(n, 0, 10).toArray();
        final double[] places = Labels.spread(wanted, 1);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                if (wanted[i] < wanted[j]) {
                    assertThat(places[j] - places[i]).isGreaterThan(1 - 1e-9);
                }
            }
        }
        // The labels as a whole stay where they are wanted.
        assertThat(Arrays.stream(places).sum()).isCloseTo(Arrays.stream(wanted).sum(), within(1e-9));
    }
}
