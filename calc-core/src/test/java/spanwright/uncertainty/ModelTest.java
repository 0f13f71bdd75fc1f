package spanwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class ModelTest {
    private static final InputQuantity A = InputQuantity.of("a", new Normal(2, 0.1));
    private static final InputQuantity B = InputQuantity.of("b", new Normal(3, 0.2));
    private static final InputQuantity C = InputQuantity.of("c", new Normal(5, 0.3));

    private static MeasurementModel sum() {
        return MeasurementModel.of("y", "V", List.of(A, B, C), x -> x[0] + x[1] + x[2]);
    }

    @Test
    void correlationsThatContradictEachOtherAreRefusedAndThePairNamed() {
        assertThatThrownBy(() -> sum().withCorrelations(new Correlation("a", "b", 0.9),
            new Correlation("b", "c", 0.8), new Correlation("a", "c", -0.7)))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("not positive semi-definite")
            .hasMessageContaining("r(a, b) = 0.9 contradicts the others most");
        assertThatThrownBy(() -> sum().withCorrelations(new Correlation("a", "b", 0.9),
            new Correlation("b", "c", 0.9))).hasMessageContaining("r(a, b) = 0.9")
            .hasMessageContaining("-0.273"
                .replace('-', '\u2212'));
        assertEquals(3, sum().withCorrelations(new Correlation("a", "b", 1), new Correlation("b", "c", 1),
            new Correlation("a", "c", 1)).correlations().size());
    }

    @Test
    void correlationsAreRefusedForUnknownAndRepeatedNames() {
        assertThatThrownBy(() -> sum().withCorrelations(new Correlation("a", "z", 0.1)))
            .hasMessage("no input is named z; there are [a, b, c]");
        assertThatThrownBy(() -> sum().withCorrelations(new Correlation("a", "b", 0.1),
            new Correlation("b", "a", 0.1)))
            .hasMessage("the correlation of b and a is given twice");
        assertThatThrownBy(() -> new Correlation("a", "a", 0.5)).hasMessageContaining("with itself: a");
        assertThatThrownBy(() -> new Correlation("a", "b", 1.01))
            .hasMessageContaining("correlation of a and b is 1.01");
    }

    @Test
    void negativeUncertaintiesAndCrossedLimitsAreRefused() {
        assertThatThrownBy(() -> new Normal(0, -0.1)).hasMessage(
            "standard uncertainty is -0.1: it must be finite and at least 0");
        assertThatThrownBy(() -> new ScaledT(0, -1, 3)).hasMessageContaining("scale is -1.0");
        assertThatThrownBy(() -> Rectangular.plusMinus(-1)).hasMessageContaining("half-width is -1.0");
        assertThatThrownBy(() -> new Rectangular(2, 1))
            .hasMessage("lower limit 2.0 is above upper limit 1.0");
        assertThatThrownBy(() -> Triangular.around(0, -1)).hasMessageContaining("half-width is -1.0");
        assertThatThrownBy(() -> UShaped.around(0, -1)).hasMessageContaining("half-width is -1.0");
        assertThatThrownBy(() -> Normal.ofExpanded(0, -1, 2))
            .hasMessageContaining("expanded uncertainty is -1.0");
        assertThatThrownBy(() -> Normal.ofExpanded(0, 1, 0)).hasMessageContaining("k is 0.0");
        assertThatThrownBy(() -> new Trapezoidal(0, 1, 1.5)).hasMessageContaining("beta is 1.5");
        assertThatThrownBy(() -> new CurvilinearTrapezoid(0, 1, 0.5)).hasMessageContaining("inexactness");
        assertThatThrownBy(() -> LogNormal.ofMean(-1, 1)).hasMessageContaining("mean is -1.0");
        assertThatThrownBy(() -> new Constant(Double.NaN)).hasMessageContaining("value is NaN");
        assertThatThrownBy(() -> Empirical.of(1)).hasMessageContaining("at least 2");
        assertThatThrownBy(() -> new Rectangular(-Double.MAX_VALUE, Double.MAX_VALUE))
            .hasMessageContaining("width");
    }

    @Test
    void aModelNeedsInputsOfDifferentNames() {
        assertThatThrownBy(() -> MeasurementModel.of("y", "", List.of(), x -> 0))
            .hasMessage("number of input quantities is 0: at least 1 needed");
        assertThatThrownBy(() -> MeasurementModel.of("y", "", List.of(A, A), x -> x[0]))
            .hasMessage("two input quantities are named a");
        assertThatThrownBy(() -> MeasurementModel.linear("y", "", List.of(A, B), 0, 1))
            .hasMessage("1 coefficients for 2 input quantities");
        assertThatThrownBy(() -> sum().withGradient(x -> new double[2]).budget())
            .hasMessage("2 sensitivities for 3 input quantities");
        assertThatThrownBy(() -> MeasurementModel.of("root", "", List.of(A), x -> Math.sqrt(-x[0])).budget())
            .hasMessageContaining("root at the best estimates is NaN");
        assertThatThrownBy(() -> MeasurementModel.of("y", "", List.of(A), x -> x[0] == 2 ? 1 : Double.NaN)
            .budget())
            .hasMessage("y has no finite sensitivity to a at 2.0");
    }

    @Test
    void aNamedFormulaIsTheSameModel() {
        final MeasurementModel named = MeasurementModel.named("power", "W", List.of(A, B),
            q -> q.at("a") * q.at("b"));
        final MeasurementModel plain = MeasurementModel.of("power", "W", List.of(A, B), x -> x[0] * x[1]);
        assertEquals(plain.budget(), named.budget());
        assertEquals("power in W from a, b", named.toString());
        assertThatThrownBy(() -> MeasurementModel.named("y", "", List.of(A), q -> q.at("b")).budget())
            .hasMessage("no input is named b; there are [a]");
    }

    @Test
    void exactSensitivitiesAreUsedAsGiven() {
        final MeasurementModel exact = MeasurementModel.of("y", "", List.of(A, B), x -> x[0] * x[1])
            .withGradient(x -> new double[] {x[1], x[0]});
        assertEquals(new Sensitivity(3, 0), exact.budget().line("a").sensitivity());
        final Sensitivity found = MeasurementModel.of("y", "", List.of(A, B), x -> x[0] * x[1]).budget()
            .line("a").sensitivity();
        assertEquals(3, found.value(), 1e-12);
        assertTrue(found.error() > 0 && found.error() < 1e-10);
    }

    @Test
    void anInputCanBeExchangedForAWhatIf() {
        final Budget better = sum().withInput("c", new Normal(5, 0.1)).budget();
        assertEquals(Math.sqrt(0.01 + 0.04 + 0.01), better.u(), 1e-12);
        assertEquals("c", sum().budget().byShare().get(0).name());
        assertThatThrownBy(() -> sum().withInput("z", new Constant(1)))
            .hasMessageContaining("no input is named z");
        assertThatThrownBy(() -> sum().budget().line("z")).hasMessage("no input is named z");
    }

    @Test
    void anEstimateBecomesTheDistributionOfItsDegreesOfFreedom() {
        assertEquals(new Normal(1, 0.1), InputQuantity.of("x", Estimate.of(1, 0.1)).distribution());
        assertEquals(new ScaledT(1, 0.1, 7), InputQuantity.of("x", Estimate.of(1, 0.1, 7)).distribution());
        assertEquals(50, InputQuantity.of("x", Rectangular.plusMinus(1)).withDof(50).dof().count());
        assertEquals(Estimate.of(1, 0.1, 7), new ScaledT(1, 0.1, 7).estimate());
    }

    @Test
    @DisplayName("A kink at the estimate: no order can be relied on, and the budget says so")
    void kink() {
        final Budget budget = MeasurementModel.of("size", "",
            List.of(InputQuantity.of("x", new Normal(0, 1))),
            x -> Math.abs(x[0])).budget();
        assertThat(budget.warnings()).anySatisfy(warning -> assertThat(warning)
            .startsWith("The model bends or jumps within the uncertainty of x"));
    }

    @Test
    void aKinkBesideTheEstimateLeavesTheSensitivityInDoubt() {
        final Budget budget = MeasurementModel.of("clamped", "",
            List.of(InputQuantity.of("x", new Normal(0, 1))),
            x -> Math.max(0, x[0])).budget();
        assertThat(budget.warnings()).isNotEmpty().allSatisfy(w -> assertThat(w).contains("Use Monte Carlo"));
    }

    @Test
    void aNegativeSecondOrderVarianceIsNotUsed() {
        final MeasurementModel sine = MeasurementModel.of("y", "",
            List.of(InputQuantity.of("x", new Normal(0, 1.5))),
            x -> Math.sin(x[0]));
        final Budget budget = sine.budget();
        assertEquals(Order.FIRST, budget.order());
        assertThat(budget.warnings()).anySatisfy(w -> assertThat(w)
            .startsWith("The second-order variance is negative"));
        assertThatThrownBy(() -> sine.budget(Order.SECOND))
            .hasMessageContaining("second-order variance of y is negative");
    }

    @Property(tries = 200)
    void secondOrderIsExactForAQuadraticModelOfNormalInputs(@ForAll @Size(9) List<@DoubleRange(min = -3,
        max = 3) Double>
                                                            q,
                                                            @ForAll @DoubleRange(min = -0.9,
                                                            max = 0.9) double r) {
        final double[] u = {0.5, 1.5};
        final MeasurementModel model = MeasurementModel.of("y", "", List.of(
            InputQuantity.of("x1", new Normal(q.get(0), u[0])),
            InputQuantity.of("x2", new Normal(q.get(1), u[1]))),
            x -> q.get(2) * x[0] + q.get(3) * x[1] + q.get(4) * x[0] * x[0] + q.get(5) * x[0] * x[1]
                + q.get(6) * x[1] * x[1]).withCorrelations(new Correlation("x1", "x2", r));
        final double c1 = (q.get(2) + 2 * q.get(4) * q.get(0) + q.get(5) * q.get(1)) * u[0];
        final double c2 = (q.get(3) + 2 * q.get(6) * q.get(1) + q.get(5) * q.get(0)) * u[1];
        final double h11 = 2 * q.get(4) * u[0] * u[0];
        final double h12 = q.get(5) * u[0] * u[1];
        final double h22 = 2 * q.get(6) * u[1] * u[1];
        // Variance of a quadratic form of normal numbers, c'Rc + tr((HR)^2) / 2, a textbook result (from
        // memory).
        final double[][] hr = {{h11 + h12 * r, h11 * r + h12}, {h12 + h22 * r, h12 * r + h22}};
        final double trace = hr[0][0] * hr[0][0] + 2 * hr[0][1] * hr[1][0] + hr[1][1] * hr[1][1];
        final double variance = c1 * c1 + c2 * c2 + 2 * r * c1 * c2 + trace / 2;
        final Budget budget = model.budget(Order.SECOND);
        assertEquals(Math.sqrt(variance), budget.u(), 1e-6 * (1 + Math.sqrt(variance)));
        assertEquals((h11 + h22 + 2 * r * h12) / 2, budget.meanShift(),
            1e-6 * (1 + Math.abs(budget.meanShift())));
        double parts = 0;
        for (final BudgetLine line : budget.lines()) {
            parts += line.percentOfVariance();
        }
        if (variance > 1e-6) {
            assertEquals(100, parts + budget.percentOfSecondOrder(), 1e-3);
        }
    }

    @Test
    void theBudgetReadsAsATable() {
        assertEquals(String.join(System.lineSeparator(),
            "y = 10.00 \u00b1 0.37 (k = 1) V",
            "  c: normal, u 0.30, sensitivity 1.000, contribution 0.30, 64.3 % of variance",
            "  b: normal, u 0.20, sensitivity 1.000, contribution 0.20, 28.6 % of variance",
            "  a: normal, u 0.10, sensitivity 1.000, contribution 0.10, 7.1 % of variance"), sum().budget()
            .toString());
    }
}
