package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import spanwright.fit.OutlierTest.Kind;

/**
 * What must not depend on the order of the readings, on the zero of a scale or on the unit: the answers
 * follow the change, and nothing else happens to them.
 */
class InvariantsTest {
    /** Made-up readings, and the same in another order, unit and zero: X = a x + b, Y = c y + d. */
    private static final class Changed {
        private final double[] x;
        private final double[] y;
        private final double[] otherX;
        private final double[] otherY;
        private final List<Integer> order;
        private final double a;
        private final double b;
        private final double c;
        private final double d;

        Changed(long seed) {
            final Random random = new Random(seed);
            final int n = 6 + random.nextInt(8);
            x = IntStream.range(0, n).mapToDouble(i -> 4 + 16.0 * i / (n - 1)).toArray();
            y = Arrays.stream(x).map(v -> 0.3 + 1.1 * v + 0.2 * random.nextGaussian()).toArray();
            a = Math.exp(4 * random.nextDouble() - 2);
            b = 100 * (random.nextDouble() - 0.5);
            c = Math.exp(4 * random.nextDouble() - 2) * (random.nextBoolean() ? 1 : -1);
            d = 100 * (random.nextDouble() - 0.5);
            final List<Integer> shuffled = new ArrayList<>(IntStream.range(0, n).boxed().toList());
            Collections.shuffle(shuffled, random);
            order = List.copyOf(shuffled);
            otherX = order.stream().mapToDouble(i -> a * x[i] + b).toArray();
            otherY = order.stream().mapToDouble(i -> c * y[i] + d).toArray();
        }

        double toX(double value) {
            return a * value + b;
        }

        double toY(double value) {
            return c * value + d;
        }
    }

    private static void same(double actual, double expected, double scale) {
        assertThat(actual).isCloseTo(expected, within(1e-9 * Math.abs(scale)));
    }

    @Property(tries = 200)
    void aLineItsBandsAndItsInverseFollow(@ForAll long seed) {
        final Changed k = new Changed(seed);
        final CalibrationLine line = CalibrationLine.fit(k.x, k.y);
        final CalibrationLine other = CalibrationLine.fit(k.otherX, k.otherY);
        final double size = 30 * Math.abs(k.c) + 100;
        same(other.at(k.toX(9)).value(), k.toY(line.at(9).value()), size);
        same(other.at(k.toX(9)).u(), Math.abs(k.c) * line.at(9).u(), size);
        same(other.residualSd(), Math.abs(k.c) * line.residualSd(), size);
        same(other.predictionBand(k.toX(9), 0.95).halfWidth(),
            Math.abs(k.c) * line.predictionBand(9, 0.95).halfWidth(), size);
        for (int i = 0; i < k.x.length; i++) {
            same(other.residual(i), k.c * line.residual(k.order.get(i)), size);
        }
        assertThat(other.readingsWithin(0.9)).isEqualTo(line.readingsWithin(0.9));
        final Interval inverse = line.stimulusFor(12, 2, 0.95).interval().orElseThrow();
        final Interval otherInverse = other.stimulusFor(k.toY(12), 2, 0.95).interval().orElseThrow();
        final double width = 30 * k.a + 100;
        same(otherInverse.lower(), k.toX(inverse.lower()), 10 * width);
        same(otherInverse.upper(), k.toX(inverse.upper()), 10 * width);
    }

    @Property(tries = 200)
    void aCurveAndItsLackOfFitFollow(@ForAll long seed) {
        final Changed k = new Changed(seed);
        final double size = 30 * Math.abs(k.c) + 100;
        final PolynomialCurve curve = PolynomialCurve.fit(k.x, k.y, 2);
        final PolynomialCurve other = PolynomialCurve.fit(k.otherX, k.otherY, 2);
        same(other.at(k.toX(9)).value(), k.toY(curve.at(9).value()), size);
        same(other.at(k.toX(9)).u(), Math.abs(k.c) * curve.at(9).u(), size);
        same(other.rSquared(), curve.rSquared(), 10);
        final double[] stepped = Arrays.stream(k.x).map(v -> Math.rint(v / 6)).toArray();
        final double[] steppedOther = k.order.stream().mapToDouble(i -> stepped[i]).toArray();
        final LackOfFit test = LackOfFit.of(stepped, k.y, 1);
        final LackOfFit otherTest = LackOfFit.of(steppedOther, k.otherY, 1);
        same(otherTest.analysis().probability(LackOfFit.LACK_OF_FIT).orElseThrow(),
            test.analysis().probability(LackOfFit.LACK_OF_FIT).orElseThrow(), 1000);
    }

    @Property(tries = 200)
    void aLineWithBothUncertainFollows(@ForAll long seed) {
        final Changed k = new Changed(seed);
        final LineWithBothUncertain line = LineWithBothUncertain.deming(k.x, k.y, 0.1, 0.2);
        final LineWithBothUncertain other = LineWithBothUncertain.deming(k.otherX, k.otherY, k.a * 0.1,
            Math.abs(k.c) * 0.2);
        final double size = 30 * Math.abs(k.c) + 100;
        same(other.at(k.toX(9)).value(), k.toY(line.at(9).value()), 100 * size);
        same(other.at(k.toX(9)).u(), Math.abs(k.c) * line.at(9).u(), 100 * size);
        same(other.chiSquaredByDof(), line.chiSquaredByDof(), 1000);
        same(other.probabilityOfChiSquared(), line.probabilityOfChiSquared(), 1000);
    }

    @Property(tries = 200)
    void anAnalysisOfVarianceFollows(@ForAll long seed) {
        final Changed k = new Changed(seed);
        final List<String> days = IntStream.range(0, k.y.length).mapToObj(i -> "day " + i % 3).toList();
        final AnalysisOfVariance a = AnalysisOfVariance.nested(k.y, Map.of("day", days));
        final AnalysisOfVariance other = AnalysisOfVariance.nested(k.otherY,
            new LinkedHashMap<>(Map.of("day", k.order.stream().map(days::get).toList())));
        final double size = k.c * k.c * a.last().sumOfSquares() * 100 + 100;
        same(other.source("day").sumOfSquares(), k.c * k.c * a.source("day").sumOfSquares(), size);
        same(other.last().sumOfSquares(), k.c * k.c * a.last().sumOfSquares(), size);
        same(other.probability("day").orElseThrow(), a.probability("day").orElseThrow(), 1000);
    }

    @Property(tries = 200)
    void theSuspectStaysTheSame(@ForAll long seed) {
        final Changed k = new Changed(seed);
        final OutlierTest test = OutlierTest.grubbs(Kind.GRUBBS_TWO_SIDED, k.y, 0.05);
        final OutlierTest other = OutlierTest.grubbs(Kind.GRUBBS_TWO_SIDED, k.otherY, 0.05);
        same(other.statistic(), test.statistic(), 1000);
        assertThat(k.order.get(other.suspect())).isEqualTo(test.suspect());
        // A unit that turns the scale over turns the side over.
        final OutlierTest high = OutlierTest.grubbs(Kind.GRUBBS_HIGHEST, k.y, 0.05);
        final OutlierTest turned = OutlierTest.grubbs(k.c > 0 ? Kind.GRUBBS_HIGHEST : Kind.GRUBBS_LOWEST,
            k.otherY, 0.05);
        same(turned.statistic(), high.statistic(), 1000);
        assertThat(k.order.get(turned.suspect())).isEqualTo(high.suspect());
        final List<Sample> groups = IntStream.range(0, 3).mapToObj(g -> Sample.of(k.y[2 * g],
            k.y[2 * g + 1])).toList();
        final List<Sample> scaled = groups.stream().map(s -> new Sample(2, k.toY(s.mean()),
            Math.abs(k.c) * s.sd())).toList();
        same(OutlierTest.cochran(scaled, 0.05).statistic(), OutlierTest.cochran(groups, 0.05).statistic(), 1);
    }

    @Property(tries = 200)
    void theBestCorrectionFollows(@ForAll long seed) {
        final Changed k = new Changed(seed);
        final double[] limit = IntStream.range(0, k.x.length).mapToDouble(i -> 1 + i % 3).toArray();
        final MinimaxAdjustment m = MinimaxAdjustment.of(k.x, k.y, limit);
        final MinimaxAdjustment other = MinimaxAdjustment.of(k.otherX, k.otherY,
            k.order.stream().mapToDouble(i -> Math.abs(k.c) * limit[i]).toArray());
        same(other.largest(), m.largest(), 1000);
        for (int i = 0; i < k.x.length; i++) {
            same(Math.abs(other.shareAfter(i)), Math.abs(m.shareAfter(k.order.get(i))), 10_000);
        }
        assertThat(other.fixedBy().stream().map(k.order::get).sorted().toList()).isEqualTo(m.fixedBy());
    }
}
