package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

class ReferenceLineTest {
    private static final double[] PERCENT = {0, 25, 50, 75, 100};

    /** The data of a published TU Dublin exercise; its terminal-based deviations as printed. */
    @Test
    void theTerminalBasedLineOfTheTuDublinData() {
        final PublishedData d = PublishedData.load("tu_dublin_temperature_current");
        final ReferenceLine line = ReferenceLine.terminalBased(d.numbers("t_degC"), d.numbers("i_mA"));
        final String[] printed = {"0.00", "-0.06", "-0.42", "-0.08", "0.06", "0.00"};
        for (int i = 0; i < printed.length; i++) {
            assertAsPrinted(printed[i], line.deviations().get(i));
        }
        assertThat(line.fixedBy()).containsExactly(0, 5);
        assertThat(line.largestDeviation()).isCloseTo(0.42, within(1e-12));
        assertThat(line.highestDeviation()).isCloseTo(0.06, within(1e-12));
        assertThat(line.lowestDeviation()).isCloseTo(-0.42, within(1e-12));
    }

    /** The least-squares residuals of the same data, lm(I ~ T) in R 4.2. */
    @Test
    void theLeastSquaresLineOfTheTuDublinData() {
        final PublishedData d = PublishedData.load("tu_dublin_temperature_current");
        final ReferenceLine line = ReferenceLine.leastSquares(d.numbers("t_degC"), d.numbers("i_mA"));
        assertAsPrinted("5.066667", line.intercept());
        assertAsPrinted("0.064", line.slope());
        assertAsPrinted("-0.3267", line.deviations().get(2));
    }

    /**
     * A bow of 1 above the chord, worked by hand: a parabola 4 p (1 - p) on five points. Terminal-based keeps
     * the bow, independent halves it, zero-based lies between; the line through the origin must not be called
     * terminal-based.
     */
    @Test
    void theFourLinesOfABow() {
        final double[] y = {10, 10.75, 11, 10.75, 10};
        final ReferenceLine independent = ReferenceLine.independent(PERCENT, y);
        assertThat(independent.slope()).isCloseTo(0, within(1e-15));
        assertThat(independent.intercept()).isCloseTo(10.5, within(1e-12));
        assertThat(independent.largestDeviation()).isCloseTo(0.5, within(1e-12));
        assertThat(independent.fixedBy()).containsExactly(0, 2, 4);

        final ReferenceLine terminal = ReferenceLine.terminalBased(PERCENT, y);
        assertThat(terminal.intercept()).isCloseTo(10, within(1e-12));
        assertThat(terminal.largestDeviation()).isCloseTo(1, within(1e-12));

        // Through (0, 10), deviations 1 - 50 m and 100 m are equal at m = 1/150: two thirds.
        final ReferenceLine zero = ReferenceLine.zeroBased(PERCENT, y);
        assertThat(zero.at(0)).isCloseTo(10, within(1e-12));
        assertThat(zero.slope()).isCloseTo(1.0 / 150, within(1e-12));
        assertThat(zero.largestDeviation()).isCloseTo(2.0 / 3, within(1e-12));
        assertThat(zero.fixedBy()).containsExactly(0, 2, 4);

        final ReferenceLine absolute = ReferenceLine.absolute(PERCENT, y, 0, 10.25);
        assertThat(absolute.deviations()).containsExactly(-0.25, 0.5, 0.75, 0.5, -0.25);
        assertThat(absolute.fixedBy()).isEmpty();
        assertThat(absolute.largestDeviation()).isEqualTo(0.75);
    }

    @Test
    void twoPointsLieOnEveryLineButTheAbsoluteOne() {
        final double[] x = {0, 100};
        final double[] y = {1, 102};
        assertThat(ReferenceLine.independent(x, y).largestDeviation()).isZero();
        assertThat(ReferenceLine.independent(x, y).fixedBy()).containsExactly(0, 1);
        assertThat(ReferenceLine.zeroBased(x, y).largestDeviation()).isCloseTo(0, within(1e-13));
        assertThat(ReferenceLine.terminalBased(x, y).largestDeviation()).isZero();
        assertThat(ReferenceLine.absolute(x, y, 1, 0).largestDeviation()).isEqualTo(2);
    }

    @Test
    void theIndependentLineTakesSeveralReadingsAtOnePoint() {
        final double[] x = {0, 0, 50, 50, 100, 100};
        final double[] y = {-1, 1, -2, 2, -1, 1};
        final ReferenceLine line = ReferenceLine.independent(x, y);
        assertThat(line.largestDeviation()).isCloseTo(2, within(1e-12));
        assertThat(line.at(50)).isCloseTo(0, within(1e-12));
    }

    @Test
    void refusesEqualAbscissasAndARepeatedEnd() {
        final double[] y = {1, 2, 3};
        assertThatThrownBy(() -> ReferenceLine.independent(new double[] {4, 4, 4}, y))
            .isInstanceOf(IllegalArgumentException.class).hasMessage("all 3 x equal 4.0: no slope");
        assertThatThrownBy(() -> ReferenceLine.zeroBased(new double[] {4, 4, 20}, y))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("x = 4.0 is the lowest");
        assertThatThrownBy(() -> ReferenceLine.terminalBased(new double[] {20, 4, 20}, y))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("x = 20.0 is the highest");
        assertThatThrownBy(() -> ReferenceLine.independent(new double[] {4}, new double[] {4}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("at least 2");
    }

    /**
     * Against brute force over all triples: the oracle tries every line parallel to a pair, midway to a
     * third.
     */
    @Property(tries = 300)
    void theIndependentLineIsTheBestOfAllTriples(@ForAll long seed) {
        final Random random = new Random(seed);
        final int n = 3 + random.nextInt(9);
        final double[] x = distinct(random, n);
        final double[] y = Arrays.stream(x).map(v -> v + random.nextGaussian() * 0.2).toArray();
        final ReferenceLine line = ReferenceLine.independent(x, y);
        final double best = bruteForce(x, y);
        assertThat(line.largestDeviation()).isCloseTo(best, within(1e-11));
        assertThat(line.highestDeviation()).isCloseTo(-line.lowestDeviation(), within(1e-11));
        assertThat(line.fixedBy()).hasSize(3).allSatisfy(i ->
            assertThat(Math.abs(line.deviations().get(i))).isCloseTo(best, within(1e-11)));
        assertAlternates(line, x);
    }

    @Property(tries = 300)
    void theZeroBasedLineIsTheBestOfAllPairs(@ForAll long seed) {
        final Random random = new Random(seed);
        final int n = 3 + random.nextInt(9);
        final double[] x = distinct(random, n);
        final double[] y = Arrays.stream(x).map(v -> v + random.nextGaussian() * 0.2).toArray();
        final ReferenceLine line = ReferenceLine.zeroBased(x, y);
        assertThat(line.largestDeviation()).isCloseTo(bruteForceZeroBased(x, y), within(1e-11));
        final int first = firstOf(x);
        assertThat(line.at(x[first])).isEqualTo(y[first]);
        assertThat(line.fixedBy()).contains(first).hasSizeBetween(2, 3);
    }

    /** The order that holds by definition: independent is free, the others are bound. */
    @Property(tries = 500)
    void independentIsNeverLargerThanZeroBasedOrTerminalBased(@ForAll long seed) {
        final Random random = new Random(seed);
        final int n = 2 + random.nextInt(10);
        final double[] x = distinct(random, n);
        final double[] y = Arrays.stream(x).map(v -> v + random.nextGaussian() * Math.pow(10,
            random.nextInt(4) - 3))
            .toArray();
        final double independent = ReferenceLine.independent(x, y).largestDeviation();
        assertThat(independent).isLessThanOrEqualTo(ReferenceLine.zeroBased(x, y).largestDeviation() + 1e-12)
            .isLessThanOrEqualTo(ReferenceLine.terminalBased(x, y).largestDeviation() + 1e-12)
            .isLessThanOrEqualTo(ReferenceLine.leastSquares(x, y).largestDeviation() + 1e-12);
    }

    /** Order of points, a line added to y, and a change of units leave the deviations as they are. */
    @Property(tries = 200)
    void deviationsDoNotDependOnOrderOrUnitsOrAnAddedLine(@ForAll long seed) {
        final Random random = new Random(seed);
        final int n = 3 + random.nextInt(6);
        final double[] x = distinct(random, n);
        final double[] y = Arrays.stream(x).map(v -> random.nextGaussian()).toArray();
        final double[] turnedX = new double[n];
        final double[] turnedY = new double[n];
        for (int i = 0; i < n; i++) {
            turnedX[n - 1 - i] = x[i] * 0.16 + 4;
            turnedY[n - 1 - i] = 3 * (y[i] + 5 - 0.7 * x[i]);
        }
        assertThat(ReferenceLine.independent(turnedX, turnedY).largestDeviation())
            .isCloseTo(3 * ReferenceLine.independent(x, y).largestDeviation(), within(1e-9));
        assertThat(ReferenceLine.zeroBased(turnedX, turnedY).largestDeviation())
            .isCloseTo(3 * ReferenceLine.zeroBased(x, y).largestDeviation(), within(1e-9));
        assertThat(ReferenceLine.terminalBased(turnedX, turnedY).largestDeviation())
            .isCloseTo(3 * ReferenceLine.terminalBased(x, y).largestDeviation(), within(1e-9));
    }

    @Test
    void readsAsASentence() {
        assertThat(ReferenceLine.terminalBased(PERCENT, new double[] {0, 25, 51, 75, 100}).toString())
            .isEqualTo("terminal-based: largest deviation 1.0000 (+1.0000 / 0.0000), "
                + "slope 1.000000, intercept 0");
    }

    @Test
    void theNamesAreTheFieldsOwn() {
        assertThat(List.of(ReferenceKind.values()).toString())
            .isEqualTo("[independent, zero-based, terminal-based, absolute, least squares]");
    }

    private static void assertAlternates(ReferenceLine line, double[] x) {
        final List<Integer> byX = line.fixedBy().stream()
            .sorted((i, j) -> Double.compare(x[i], x[j])).toList();
        assertThat(line.deviations().get(byX.get(0)) * line.deviations().get(byX.get(1))).isNegative();
        assertThat(line.deviations().get(byX.get(1)) * line.deviations().get(byX.get(2))).isNegative();
    }

    private static double[] distinct(Random random, int n) {
        return random.doubles().map(v -> 100 * v).distinct().limit(n).toArray();
    }

    private static int firstOf(double[] x) {
        int first = 0;
        for (int i = 0; i < x.length; i++) {
            first = x[i] < x[first] ? i : first;
        }
        return first;
    }

    private static double bruteForce(double[] x, double[] y) {
        double best = Double.MAX_VALUE;
        for (int i = 0; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                final double m = (y[j] - y[i]) / (x[j] - x[i]);
                for (int k = 0; k < x.length; k++) {
                    final double a = (y[i] - m * x[i] + y[k] - m * x[k]) / 2;
                    best = Math.min(best, largest(x, y, m, a));
                }
            }
        }
        return best;
    }

    private static double bruteForceZeroBased(double[] x, double[] y) {
        final int o = firstOf(x);
        double best = Double.MAX_VALUE;
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < x.length; j++) {
                if (i != o && j != o) {
                    final double m = (y[i] + y[j] - 2 * y[o]) / (x[i] + x[j] - 2 * x[o]);
                    best = Math.min(best, largest(x, y, m, y[o] - m * x[o]));
                }
            }
        }
        return best;
    }

    private static double largest(double[] x, double[] y, double m, double a) {
        double most = 0;
        for (int i = 0; i < x.length; i++) {
            most = Math.max(most, Math.abs(y[i] - a - m * x[i]));
        }
        return most;
    }
}
