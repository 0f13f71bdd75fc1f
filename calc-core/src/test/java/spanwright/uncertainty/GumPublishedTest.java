package spanwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

/** Worked examples of JCGM 100:2008 (GUM) and of EA-4/02. */
class GumPublishedTest {

    @Test
    @DisplayName("20 temperature readings, JCGM 100:2008 4.2, Table 1 and 4.4.3")
    void meanOfReadings() {
        final double[] readings = PublishedData.load("gum_table1_temperature").numbers("t_degC");
        final ScaledT t = ScaledT.ofReadings(readings);
        assertAsPrinted("100.145", t.mean());
        assertAsPrinted("0.333", t.standardUncertainty());
        assertAsPrinted("1.489", t.standardUncertainty() * Math.sqrt(readings.length));
        assertEquals(19, t.dof().count());
    }

    @Test
    @DisplayName("Type B evaluations, JCGM 100:2008 4.3.4, 4.3.7, 4.4.5, 4.4.6 (last from memory)")
    void typeB() {
        assertAsPrinted("50", Normal.ofExpanded(0, 129, 2.58).standardUncertainty());
        final double a = 14 * 0.928571 + 2;
        assertAsPrinted("15", a);
        assertAsPrinted("8.7", Rectangular.plusMinus(a).standardUncertainty());
        assertAsPrinted("2.3", new Rectangular(96, 104).standardUncertainty());
        assertAsPrinted("1.6", new Triangular(96, 104).standardUncertainty());
    }

    @Test
    @DisplayName("Voltmeter: 12 uV and 8.7 uV combine to 15 uV, JCGM 100:2008 5.1.5")
    void combinesTwo() {
        final Budget budget = MeasurementModel.linear("V", "uV", List.of(
            InputQuantity.of("mean", Normal.ofUncertainty(12)),
            InputQuantity.of("correction", Rectangular.plusMinus(15))), 928571, 1, 1).budget();
        assertAsPrinted("15", budget.u());
        assertEquals(Order.FIRST, budget.order());
    }

    @Test
    @DisplayName("Ten resistors calibrated with one standard: 1 ohm, not 0.32, JCGM 100:2008 5.2.2")
    void tenResistors() {
        final List<InputQuantity> inputs = new ArrayList<>();
        final List<Correlation> full = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            inputs.add(InputQuantity.of("R" + i, new Normal(1000, 0.1)));
            for (int j = 0; j < i; j++) {
                full.add(new Correlation("R" + j, "R" + i, 1));
            }
        }
        final double[] ones = new double[10];
        java.util.Arrays.fill(ones, 1);
        final MeasurementModel independent = MeasurementModel.linear("R", "ohm", inputs, 0, ones);
        assertAsPrinted("0.32", independent.budget().u());
        final Budget shared = independent.withCorrelations(full).budget();
        assertAsPrinted("1.0", shared.u());
        assertThat(shared.lines()).allSatisfy(line -> assertEquals(10, line.percentOfVariance(), 1e-9));
    }

    private static MeasurementModel endGauge() {
        return MeasurementModel.of("l", "nm", List.of(
            InputQuantity.of("lS", new ScaledT(50_000_623, 25, 18)),
            InputQuantity.of("d1", new ScaledT(215, 5.8, 24)),
            InputQuantity.of("d2", new ScaledT(0, 3.9, 5)),
            InputQuantity.of("d3", new ScaledT(0, 6.7, 8)),
            InputQuantity.of("dalpha", new ScaledT(0, 0.58e-6, 50)),
            InputQuantity.of("theta", new Normal(-0.1, 0.41)),
            InputQuantity.of("alphaS", new Normal(11.5e-6, 1.2e-6)),
            InputQuantity.of("dtheta", new ScaledT(0, 0.029, 2))),
            x -> x[0] + x[1] + x[2] + x[3] - x[0] * (x[4] * x[5] + x[6] * x[7]));
    }

    @Test
    @DisplayName("End gauge, JCGM 100:2008 H.1, to first order")
    void endGaugeFirstOrder() {
        final Budget first = endGauge().budget(Order.FIRST);
        assertEquals(50_000_838, first.value(), 0.5);
        assertEquals(32, first.u(), 0.5);
        assertEquals(16, Math.floor(first.effectiveDof().orElseThrow().count()));
        assertEquals(93, first.expanded(0.99).expanded(), 0.5);
    }

    @Test
    @DisplayName("End gauge, JCGM 100:2008 H.1.7: with second-order terms 34 nm, chosen without being asked")
    void endGaugeSecondOrder() {
        final Budget second = endGauge().budget();
        assertEquals(Order.SECOND, second.order());
        assertEquals(34, second.u(), 0.5);
        assertEquals("dalpha \u00d7 theta", second.secondOrder().get(0).label());
        assertThat(second.warnings()).singleElement().asString().contains("First order would give u = 32");
    }

    @Test
    @DisplayName("Hand-held multimeter at 100 V, EA-4/02 S9 (from memory): k = 1.65, U = 0.05 V")
    void multimeter() {
        final Budget budget = MeasurementModel.linear("E", "V", List.of(
            InputQuantity.of("indication", Rectangular.around(100.1, 0.05)),
            InputQuantity.of("standard", Normal.ofExpanded(100.0, 0.002, 2)),
            InputQuantity.of("other", Rectangular.plusMinus(0.011))), 0, 1, -1, 1).budget();
        assertAsPrinted("0.10", budget.value());
        assertAsPrinted("0.030", budget.u());
        final ExpandedUncertainty expanded = budget.expanded(0.95);
        assertAsPrinted("1.65", expanded.k());
        assertAsPrinted("0.05", expanded.expanded());
    }

    @Test
    @DisplayName("Weight of 10 kg, EA-4/02 S2 (from memory): 10 000.025 g, u 29.3 mg, U 59 mg at k = 2")
    void weight() {
        final Budget budget = MeasurementModel.linear("m", "mg", List.of(
            InputQuantity.of("standard", Normal.ofExpanded(10_000_005, 45, 2)),
            InputQuantity.of("drift", Rectangular.plusMinus(15)),
            InputQuantity.of("difference", new Normal(20, 25 / Math.sqrt(3))),
            InputQuantity.of("eccentricity", Rectangular.plusMinus(10)),
            InputQuantity.of("buoyancy", Rectangular.plusMinus(10))), 0, 1, 1, 1, 1, 1).budget();
        assertAsPrinted("10000025", budget.value());
        assertAsPrinted("29.3", budget.u());
        assertAsPrinted("59", 2 * budget.u());
    }
}
