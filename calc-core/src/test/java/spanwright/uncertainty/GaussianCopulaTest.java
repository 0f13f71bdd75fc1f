package spanwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GaussianCopulaTest {

    private static double normalCorrelation(Distribution a, Distribution b, double r) {
        final List<InputQuantity> inputs = List.of(InputQuantity.of("a", a), InputQuantity.of("b", b));
        double rho = 0;
        for (final double[] axis : GaussianCopula.axes(inputs,
            CorrelationMatrix.of(List.of("a", "b"), List.of(new Correlation("a", "b", r))))) {
            rho += axis[0] * axis[1];
        }
        return rho;
    }

    @Test
    @DisplayName("Two rectangular inputs: 2 sin(pi r / 6), a textbook result (from memory)")
    void rectangular() {
        for (final double r : new double[] {-1, -0.7, 0.2, 0.5, 0.9}) {
            assertEquals(2 * Math.sin(Math.PI * r / 6),
                normalCorrelation(Rectangular.plusMinus(1), new Rectangular(2, 7), r), 2e-5);
        }
    }

    @Test
    @DisplayName("Two log-normal inputs: r = (e^(rho s^2) - 1) / (e^(s^2) - 1), in closed form")
    void logNormal() {
        final double s = 0.5;
        final double rho = 0.6;
        final double r = Math.expm1(rho * s * s) / Math.expm1(s * s);
        assertEquals(rho, normalCorrelation(new LogNormal(0, s), new LogNormal(1, s), r), 1e-9);
    }

    @Test
    @DisplayName("Two inputs of two values: rho = sin(pi r / 2), a textbook result (from memory)")
    void twoValues() {
        final Distribution coin = Empirical.of(0, 1);
        for (final double r : new double[] {-0.95, -0.5, 0.3, 0.9, 0.95, 1}) {
            final double allowed = Math.abs(r) > 0.5 ? 0.0015 : 2e-5;
            assertEquals(Math.sin(Math.PI * r / 2), normalCorrelation(coin, coin, r), allowed);
        }
    }

    @Test
    void normalInputsKeepTheirCorrelation() {
        assertEquals(0.3, normalCorrelation(new Normal(1, 2), new Normal(3, 4), 0.3), 1e-12);
        assertEquals(1, normalCorrelation(new Normal(1, 2), new ScaledT(3, 4, 5), 1), 1e-12);
    }

    @Test
    void aCorrelationThatTheDistributionsCannotHaveIsRefused() {
        assertThatThrownBy(() -> normalCorrelation(new LogNormal(0, 1), new LogNormal(0, 1), -0.9))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageStartingWith("b and a cannot have the correlation -0.9: with these distributions it")
            .hasMessageContaining("within \u22120.3679");
    }

    static List<List<Distribution>> pairs() {
        return List.of(
            List.of(Rectangular.plusMinus(1), new Normal(0, 1)),
            List.of(UShaped.around(0, 1), Rectangular.plusMinus(2)),
            List.of(LogNormal.ofMean(2, 1), new Normal(0, 1)),
            List.of(new Triangular(0, 1), new Trapezoidal(0, 1, 0.6)),
            List.of(Empirical.of(1, 2, 2, 3, 7), new Normal(0, 1)));
    }

    @ParameterizedTest
    @MethodSource("pairs")
    @DisplayName("Drawn inputs have the correlation that was stated, and still their own distribution")
    void drawnCorrelation(List<Distribution> pair) {
        final Distribution a = pair.get(0);
        final Distribution b = pair.get(1);
        final MeasurementModel product = MeasurementModel.of("product", "",
            List.of(InputQuantity.of("a", a), InputQuantity.of("b", b)),
            x -> (x[0] - a.mean()) * (x[1] - b.mean()) / a.standardUncertainty() / b.standardUncertainty())
            .withCorrelations(new Correlation("a", "b", -0.6));
        final MonteCarloResult result = product.monteCarlo(MonteCarlo.seeded(8).trials(400_000));
        assertEquals(-0.6, result.mean(), 5 * result.meanError() + 0.001);
        final MonteCarloResult alone = MeasurementModel.of("a", "", product.inputs(), x -> x[0])
            .withCorrelations(product.correlations()).monteCarlo(MonteCarlo.seeded(8).trials(200_000));
        assertEquals(a.mean(), alone.mean(), 5 * alone.meanError());
        assertEquals(a.standardUncertainty(), alone.u(), 0.01 * a.standardUncertainty());
    }
}
