package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spanwright.uncertainty.Estimate;

class CurvesTest {
    /** qnorm(0.975) in R 4.2. */
    private static final double QNORM = 1.9599639845400536;
    private static final double[] X = {4, 8, 12, 16, 20};
    private static final double[] Y = {4.02, 7.93, 12.11, 16.05, 19.9};

    @Test
    void degreeOneIsTheStraightLine() {
        final PolynomialCurve curve = PolynomialCurve.fit(X, Y, 1);
        final CalibrationLine line = CalibrationLine.fit(X, Y);
        assertThat(curve.at(9).value()).isCloseTo(line.at(9).value(), within(1e-13));
        assertThat(curve.at(9).u()).isCloseTo(line.at(9).u(), within(1e-14));
        assertThat(curve.oneReadingAt(9).u()).isCloseTo(line.oneReadingAt(9).u(), within(1e-14));
        assertThat(curve.confidenceBand(9, 0.9).lower()).isCloseTo(line.confidenceBand(9, 0.9).lower(),
            within(1e-12));
        assertThat(curve.predictionBand(9, 0.9).upper()).isCloseTo(line.predictionBand(9, 0.9).upper(),
            within(1e-12));
        assertThat(curve.degree()).isEqualTo(1);
        assertThat(curve.toString().lines()).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 8})
    void findsThePolynomialItWasMadeFrom(int degree) {
        final double[] x = new double[14];
        final double[] y = new double[14];
        for (int i = 0; i < x.length; i++) {
            x[i] = 4 + 16.0 * i / 13;
            for (int k = degree; k >= 0; k--) {
                y[i] = y[i] * (x[i] - 12) / 8 + (k + 1);
            }
        }
        final PolynomialCurve curve = PolynomialCurve.fit(x, y, degree);
        double at = 0;
        for (int k = degree; k >= 0; k--) {
            at = at * (9.3 - 12) / 8 + (k + 1);
        }
        assertThat(curve.at(9.3).value()).isCloseTo(at, within(1e-11));
        double byCoefficients = 0;
        for (int k = degree; k >= 0; k--) {
            byCoefficients = byCoefficients * 9.3 + curve.coefficient(k).value();
        }
        assertThat(byCoefficients).isCloseTo(at, within(1e-7));
    }

    @Test
    void refusesWhatHasNoCurve() {
        assertThatThrownBy(() -> PolynomialCurve.fit(X, Y, 0)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("degree");
        assertThatThrownBy(() -> PolynomialCurve.fit(X, Y, 4)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("at least 6");
        assertThatThrownBy(
            () -> PolynomialCurve.fit(new double[] {4, 4, 20, 20}, new double[] {1, 2, 3, 4}, 2))
            .isInstanceOf(NoFitException.class)
            .hasMessage("x takes 2 different values: a polynomial of degree 2 needs 3");
        assertThatThrownBy(() -> PolynomialCurve.fit(new double[] {4, 4, 4}, new double[] {1, 2, 3}, 1))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("all 3 stimuli equal 4.0");
        assertThatThrownBy(() -> PolynomialCurve.fit(X, Y, 2).coefficient(3))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("power");
        assertThatThrownBy(() -> PolynomialCurve.fit(X, Y, 2).at(Double.NaN))
            .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void regressionRefusesDependentAndConstantRegressors() {
        final double[] y = {1, 2, 3, 4, 5};
        final double[][] twice = {{1, 2}, {2, 4}, {3, 6}, {4, 8}, {5, 10}};
        assertThatThrownBy(() -> LinearRegression.fit(twice, y)).isInstanceOf(NoFitException.class)
            .hasMessageContaining("regressor 2 is a combination");
        final double[][] constant = {{0.1}, {0.1}, {0.1}, {0.1}, {0.1}};
        assertThatThrownBy(() -> LinearRegression.fit(constant, y)).isInstanceOf(NoFitException.class)
            .hasMessageContaining("regressor 1 does not vary");
        assertThatThrownBy(() -> LinearRegression.fit(new double[][] {{1}, {2}}, y))
            .isInstanceOf(IllegalArgumentException.class).hasMessage("2 rows of x but 5 y: pairs needed");
        assertThatThrownBy(() -> LinearRegression.fit(new double[][] {{1}, {2, 3}, {4}},
            new double[] {1, 2, 3}))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("row 1 has 2 regressors, not 1");
        assertThatThrownBy(() -> LinearRegression.fit(new double[][] {{1}, {2}}, new double[] {1, 2}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("at least 3");
    }

    @Test
    void regressionThroughTheOriginHasNoIntercept() {
        final LinearRegression r = LinearRegression.fitThroughOrigin(new double[][] {{1}, {2}, {3}},
            new double[] {2, 4.1, 5.9});
        assertThatThrownBy(r::intercept).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("0 by choice");
        assertThat(r.at(0).value()).isZero();
        assertThat(r.at(0).u()).isZero();
        assertThat(r.toString()).startsWith("through the origin\nb1 = ");
        assertThatThrownBy(() -> r.at(1, 2)).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("2 regressors given, 1 fitted");
        assertThatThrownBy(() -> r.coefficient(0)).isInstanceOf(IllegalArgumentException.class);
        assertThat(r.residuals()).hasSize(3);
        assertThat(r.residuals().get(0)).isCloseTo(2 - r.at(1).value(), within(1e-12));
    }

    @Test
    void aLineThroughAPointKeepsToIt() {
        final LineThroughPoint line = LineThroughPoint.fit(X, Y, 4, 4.02);
        assertThat(line.at(4).value()).isEqualTo(4.02);
        assertThat(line.at(4).u()).isZero();
        assertThat(line.oneReadingAt(4).u()).isEqualTo(line.residualSd());
        assertThat(line.at(0).u()).isCloseTo(4 * line.slope().u(), within(1e-15));
        assertThat(line.slope().dof().count()).isEqualTo(4);
        assertThat(line.toString()).startsWith("slope 0.99").contains("through (4, 4.02)");
        assertThatThrownBy(() -> LineThroughPoint.fit(new double[] {4, 4}, new double[] {1, 2}, 4, 0))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("all 2 stimuli equal that of the point");
    }

    /**
     * The exact least-largest factor against a fine search by bisection on the slope of a convex function.
     */
    @Property(tries = 300)
    void theMinimaxFactorIsTheLeast(@ForAll long seed) {
        final Random random = new Random(seed);
        final int n = 1 + random.nextInt(8);
        final double[] a = random.doubles(n, -5, 20).toArray();
        final double[] b = random.doubles(n, -5, 20).toArray();
        if (random.nextBoolean()) {
            a[random.nextInt(n)] = 0;
        }
        if (Arrays.stream(a).allMatch(v -> v == 0)) {
            return;
        }
        final MinimaxFactor f = MinimaxFactor.of(a, b);
        double low = -1e6;
        double high = 1e6;
        for (int i = 0; i < 200; i++) {
            final double third = (high - low) / 3;
            if (largest(a, b, low + third) <= largest(a, b, high - third)) {
                high -= third;
            } else {
                low += third;
            }
        }
        assertThat(f.largest()).isLessThanOrEqualTo(largest(a, b, low) + 1e-9 * (1 + f.largest()));
        assertThat(f.largest()).isCloseTo(largest(a, b, f.value()), within(1e-12));
    }

    @Test
    void theMinimaxFactorNamesWhatFixesIt() {
        final MinimaxFactor f = MinimaxFactor.of(new double[] {4, 12, 20}, new double[] {4, 12, 22});
        // 12 g - 12 = 22 - 20 g at g = 34/32.
        assertThat(f.value()).isCloseTo(34.0 / 32, within(1e-15));
        assertThat(f.largest()).isCloseTo(0.75, within(1e-12));
        assertThat(f.fixedBy()).containsExactly(1, 2);
        assertThat(MinimaxFactor.of(new double[] {2}, new double[] {3}).value()).isEqualTo(1.5);
        assertThatThrownBy(() -> MinimaxFactor.of(new double[] {0, 0}, new double[] {1, 2}))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage("all 2 multipliers are 0: no factor is best");
    }

    private static double largest(double[] a, double[] b, double g) {
        double most = 0;
        for (int i = 0; i < a.length; i++) {
            most = Math.max(most, Math.abs(a[i] * g - b[i]));
        }
        return most;
    }

    /** Student's factor from R 4.2: qt((1 + coverage) / 2, dof). */
    @Test
    void theFactorOfAnIntervalIsStudentsT() {
        assertThat(Interval.about(Estimate.of(0, 1, 9), 0.95).upper())
            .isCloseTo(2.2621571627982049, within(1e-13));
        assertThat(Interval.about(Estimate.of(3, 1), 0.95).upper() - 3).isCloseTo(QNORM, within(1e-13));
    }

    @Test
    void anIntervalKnowsItsInside() {
        final Interval i = new Interval(-1, 3);
        assertThat(i.contains(-1)).isTrue();
        assertThat(i.contains(3)).isTrue();
        assertThat(i.contains(3.1)).isFalse();
        assertThat(i.contains(-1.1)).isFalse();
        assertThat(i.halfWidth()).isEqualTo(2);
        assertThat(i.toString()).isEqualTo("[\u22121.0, 3.0]");
        assertThatThrownBy(() -> new Interval(1, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
