package spanwright.chain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.MeasurementModel;
import spanwright.uncertainty.MonteCarlo;
import spanwright.uncertainty.Normal;

class AbsoluteErrorTest {
    private static final int TRIALS = 1_000_000;

    /**
     * The sizes of a normal error far from 0 are normal themselves; those of one about 0 are half normal.
     * Quantiles and densities from R: {@code qnorm(.95); dnorm(qnorm(.95)); qnorm(.975); 2 *
     * dnorm(qnorm(.975))}. The standard error of a quantile is sqrt(p (1 - p) / M) over the density there
     * (asymptotic, textbook).
     */
    @ParameterizedTest(name = "mean {0}: q = {1}, density {2}")
    @CsvSource({
        "5,  6.6448536269514715, 0.10313564037537151",
        "-5, 6.6448536269514715, 0.10313564037537151",
        "0,  1.9599639845400536, 0.11689013961007087"})
    void theErrorOfTheCoveredSizeIsThatOfItsOwnQuantile(double mean, double quantile, double density) {
        final AbsoluteError size = new AbsoluteError(MeasurementModel.linear("e", "", List.of(
            InputQuantity.of("x", new Normal(mean, 1))), 0, 1).monteCarlo(MonteCarlo.seeded(7)
                .trials(TRIALS)));
        final double error = Math.sqrt(0.95 * 0.05 / TRIALS) / density;
        assertThat(size.quantile(0.95)).isCloseTo(quantile, within(4 * error));
        assertThat(size.quantileError(0.95)).isCloseTo(error, within(0.15 * error));
    }
}
