package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import spanwright.fit.ReferenceKind;
import spanwright.quantity.Span;
import spanwright.readings.Direction;

/**
 * The figures of a channel in percent of span do not depend on the unit of its output or on the order in
 * which the points stand in the record, and a constant error moves only what it must.
 */
class MetricInvariantsTest {
    private static final int[] POINTS = {0, 25, 50, 75, 100};

    /** Errors by point, direction and cycle; the same for a seed whatever the order they are written in. */
    private static ChannelAnalysis run(long seed, Runs runs, boolean turned, double added) {
        final Random random = new Random(seed);
        final double[][][] error = new double[3][2][POINTS.length];
        for (double[][] cycle : error) {
            for (double[] side : cycle) {
                for (int i = 0; i < side.length; i++) {
                    side[i] = random.nextGaussian() * 0.05 + added;
                }
            }
        }
        for (int cycle = 0; cycle < 3; cycle++) {
            for (Direction d : Direction.values()) {
                for (int i = 0; i < POINTS.length; i++) {
                    final int at = turned ? POINTS.length - 1 - i : i;
                    runs.at(POINTS[at], error[cycle][d.ordinal()][at], d, cycle + 1);
                }
            }
        }
        return runs.analysis();
    }

    private static double[] figures(ChannelAnalysis a) {
        final NonRepeatability n = a.nonRepeatability().orElseThrow();
        final NonLinearity l = a.nonLinearity().orElseThrow();
        return new double[] {a.spanShift().endPoint().orElseThrow().value(),
            a.hysteresis().orElseThrow().largest().value(), n.largestSpread().value(), n.pooledSd(),
            l.against(ReferenceKind.INDEPENDENT).value(), l.against(ReferenceKind.ZERO_BASED).value(),
            l.against(ReferenceKind.TERMINAL_BASED).value(),
            a.errorLine().orElseThrow().slope().value(),
            a.statistics().suspectReading(0.05).orElseThrow().test().statistic(),
            a.statistics().suspectScatter(0.05).orElseThrow().test().statistic(),
            a.statistics().sources().orElseThrow().ratio("direction").orElseThrow(),
            // These two know where zero is.
            a.zeroShift().endPoint().orElseThrow().value(),
            a.inaccuracy().orElseThrow().highest().deviation().value()};
    }

    private static void agree(double[] actual, double[] expected) {
        for (int i = 0; i < expected.length; i++) {
            assertThat(actual[i]).as("figure %d", i).isCloseTo(expected[i],
                within(1e-8 * Math.max(1, Math.abs(expected[i]))));
        }
    }

    @Property(tries = 100)
    void theUnitOfTheOutputDoesNotCount(@ForAll long seed) {
        agree(figures(run(seed, Runs.milliamps().to(Span.of(-1000, 4000, "mV")), false, 0)),
            figures(run(seed, Runs.milliamps(), false, 0)));
    }

    @Property(tries = 100)
    void theOrderOfThePointsDoesNotCount(@ForAll long seed) {
        agree(figures(run(seed, Runs.milliamps(), true, 0)), figures(run(seed, Runs.milliamps(), false, 0)));
    }

    @Property(tries = 100)
    void aConstantErrorMovesZeroAndInaccuracyAlone(@ForAll long seed) {
        final double[] moved = figures(run(seed, Runs.milliamps(), false, 0.3));
        final double[] still = figures(run(seed, Runs.milliamps(), false, 0));
        still[11] += 0.3;
        still[12] += 0.3;
        agree(moved, still);
    }
}
