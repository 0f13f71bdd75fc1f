package spanwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.reference.PublishedData;

class CoverageTest {

    @Test
    @DisplayName("Student's t of JCGM 100:2008 Table G.2, but for its misprint at 35 degrees of freedom")
    void tableG2() {
        final PublishedData table = PublishedData.load("gum_table_g2");
        final String[] columns = {"t_68.27", "t_90", "t_95", "t_95.45", "t_99", "t_99.73"};
        final double[] probabilities = {0.6826894921, 0.90, 0.95, 0.9544997361, 0.99, 0.9973002039};
        final List<String> dof = table.texts("dof");
        int checked = 0;
        for (int c = 0; c < columns.length; c++) {
            final List<String> printed = table.texts(columns[c]);
            for (int row = 0; row < dof.size(); row++) {
                if (dof.get(row).equals("35") && columns[c].equals("t_90")) {
                    continue;
                }
                final DegreesOfFreedom nu = dof.get(row).matches("[0-9]+")
                    ? DegreesOfFreedom.of(Integer.parseInt(dof.get(row))) : DegreesOfFreedom.UNLIMITED;
                assertAsPrinted(printed.get(row), Coverage.student(nu, probabilities[c]).k(),
                    dof.get(row) + " at " + columns[c]);
                checked++;
            }
        }
        assertTrue(checked > 100);
    }

    @Test
    @DisplayName("Degrees of freedom are cut to the next lower whole number, JCGM 100:2008 G.4.1 note 1")
    void cutsDegreesOfFreedom() {
        assertAsPrinted("2.92", Coverage.student(DegreesOfFreedom.of(16.7), 0.99).k());
        assertEquals("t with 16 effective degrees of freedom",
            Coverage.student(DegreesOfFreedom.of(16.7), 0.99).basis());
        assertTrue(Coverage.student(DegreesOfFreedom.of(0.5), 0.95).k() > 12.71);
        assertEquals("normal", Coverage.student(DegreesOfFreedom.UNLIMITED, 0.95).basis());
    }

    private static Budget linear(Distribution... parts) {
        final List<InputQuantity> inputs = new ArrayList<>();
        final double[] ones = new double[parts.length];
        for (int i = 0; i < parts.length; i++) {
            inputs.add(InputQuantity.of("x" + i, parts[i]));
            ones[i] = 1;
        }
        return MeasurementModel.linear("y", "", inputs, 0, ones).budget();
    }

    @ParameterizedTest(name = "two rectangles of half-width 1 and {0}")
    @CsvSource({"1", "0.7", "0.4"})
    @DisplayName("Two rectangular inputs dominate: the interval of their trapezoid, as Monte Carlo finds it")
    void twoRectangles(double second) {
        final List<InputQuantity> inputs = List.of(InputQuantity.of("a", Rectangular.plusMinus(1)),
            InputQuantity.of("b", Rectangular.plusMinus(second)));
        final MeasurementModel model = MeasurementModel.linear("y", "", inputs, 0, 1, 1);
        final ExpandedUncertainty expanded = model.budget().expanded(0.95);
        assertEquals("two rectangular inputs dominate, a trapezoid: a and b", expanded.basis());
        final MonteCarloResult run = model.monteCarlo(MonteCarlo.seeded(2));
        assertEquals(run.interval(0.95).upper(), expanded.expanded(), 5 * run.quantileError(0.975));
    }

    @Test
    @DisplayName("Dominance ends where the rest exceeds 0.3 of the rectangle, in the manner of EA-4/02")
    void endOfDominance() {
        final double u = 1 / Math.sqrt(3);
        assertAsPrinted("1.65", linear(Rectangular.plusMinus(1), Normal.ofUncertainty(0.29 * u))
            .expanded(0.95).k());
        assertAsPrinted("1.96", linear(Rectangular.plusMinus(1), Normal.ofUncertainty(0.31 * u))
            .expanded(0.95).k());
        assertAsPrinted("1.96", linear(Rectangular.plusMinus(1), Rectangular.plusMinus(1),
            Rectangular.plusMinus(1)).expanded(0.95).k());
        assertAsPrinted("1.96", linear(Rectangular.plusMinus(1), Normal.ofUncertainty(0.1))
            .expanded(0.95, CoverageRule.STUDENT).k());
    }

    @Test
    void dominanceDoesNotHoldForCorrelatedInputs() {
        final List<InputQuantity> inputs = List.of(InputQuantity.of("a", Rectangular.plusMinus(1)),
            InputQuantity.of("b", Normal.ofUncertainty(0.01)));
        final Budget budget = MeasurementModel.linear("y", "", inputs, 0, 1, 1)
            .withCorrelations(new Correlation("a", "b", 0.5)).budget();
        assertAsPrinted("1.96", budget.expanded(0.95).k());
    }

    @Test
    void correlatedInputsOfFewReadingsHaveNoEffectiveDegreesOfFreedom() {
        final List<InputQuantity> inputs = List.of(InputQuantity.of("a", new ScaledT(0, 1, 4)),
            InputQuantity.of("b", new ScaledT(0, 1, 9)));
        final Budget budget = MeasurementModel.linear("y", "", inputs, 0, 1, 1)
            .withCorrelations(new Correlation("a", "b", 0.5)).budget();
        assertThat(budget.effectiveDof()).isEmpty();
        assertThat(budget.warnings()).singleElement().asString()
            .startsWith("Effective degrees of freedom are not determined");
        final ExpandedUncertainty bound = budget.expanded(0.95);
        assertAsPrinted("2.78", bound.k());
        assertThat(bound.basis()).startsWith("upper bound");
        assertEquals(4, budget.estimate().dof().count());
    }

    @Test
    @DisplayName("Welch-Satterthwaite: two equal contributions of n have 2n, JCGM 100:2008 G.4.1")
    void welchSatterthwaite() {
        assertEquals(18, linear(new ScaledT(0, 1, 9), new ScaledT(5, 1, 9)).effectiveDof().orElseThrow()
            .count(), 1e-9);
        assertTrue(linear(new Normal(0, 1), new Normal(5, 1)).effectiveDof().orElseThrow().isUnlimited());
        assertEquals(16 * 9, linear(new ScaledT(0, 1, 9), new Normal(0, Math.sqrt(3))).effectiveDof()
            .orElseThrow()
            .count(), 1e-9);
    }

    @Test
    void intervalIsAboutTheValueAndReadsAsASentence() {
        final ExpandedUncertainty expanded = linear(new Normal(3, 0.5)).expanded(0.95);
        assertEquals(3 - 0.98, expanded.lower(), 0.001);
        assertEquals(3 + 0.98, expanded.upper(), 0.001);
        assertEquals("3.00 \u00b1 0.98 (95 % coverage, k = 1.96, normal)", expanded.toString());
        assertThatThrownBy(() -> linear(new Normal(3, 0.5)).expanded(1))
            .hasMessageContaining("coverage probability is 1.0");
    }
}
