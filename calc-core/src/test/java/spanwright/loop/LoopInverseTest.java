package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static spanwright.quantity.Celsius.degC;

import java.util.function.DoubleFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.uncertainty.MonteCarlo;

/** Questions asked backwards, verdicts and distributions; by hand from Ohm's law, derived beside each. */
class LoopInverseTest {
    private static CurrentLoop loop(double supply, double metres, double ohms, Isolator isolator) {
        return CurrentLoop.of("LT-101", Supply.volts(supply).tolerance(10),
            Cable.copper(0.75).metres(metres).at(degC(60)), Transmitter.twoWire("LT", 12),
            isolator.feeding(Burden.receiver("card", ohms)));
    }

    private static double only(java.util.List<LoopInverse.Answer> answers) {
        assertThat(answers).hasSize(1);
        return answers.get(0).value().orElseThrow();
    }

    @Test
    @DisplayName("largest load and smallest area: 21.6 - 12 - 1 V over 22.5 mA, cable at 60 degC")
    void largestLoadAndSmallestArea() {
        final Isolator iso = Isolator.inputLoopPowered("iso", 1);
        final double hot = 1 + 0.00393 * 40;
        final LoopInverse inverse = loop(24, 600, 250, iso).inverse();
        assertThat(only(inverse.largestLoads())).isEqualTo(8600 / 22.5 - 1.2 * 24.5 * hot, within(1e-4));
        // 8600 / 22.5 - 250 = 132.2 ohm for 2 x 1500 m: 44.07 ohm/km hot, 38.08 at 20 degC: 0.5 mm2 (36.0).
        assertThat(only(loop(24, 1500, 250, iso).inverse().smallestAreas())).isEqualTo(0.5);
        // Twice the length leaves 19.04 ohm/km: 1.0 mm2 (18.1), not 0.75 (24.5).
        assertThat(only(loop(24, 3000, 250, iso).inverse().smallestAreas())).isEqualTo(1.0);
        // Ten times leaves 3.8 ohm/km: less than the 7.41 of 2.5 mm2.
        assertThat(loop(24, 15_000, 250, iso).inverse().smallestAreas().get(0).value()).isEmpty();
    }

    @Test
    @DisplayName("with a load limit of 250 ohm: no larger load, and no isolator behind another of 1 V")
    void loadLimitsBoundTheAnswers() {
        final Isolator iso = Isolator.inputLoopPowered("iso", 1).loadLimit(250);
        final LoopInverse inverse = loop(30, 10, 200, iso).inverse();
        assertThat(only(inverse.largestLoads())).isEqualTo(250, within(1e-3));
        // The second sees 200 ohm, the first 200 ohm + 1 V / 20 mA = 250 ohm, a third would see 300 ohm.
        assertThat(inverse.isolators()).contains(2);
        // 27 - 12 - 22.5 mA x (200 + cable) ohm - n V: nine more volts than the limit would let be used.
        assertThat(loop(30, 10, 200, Isolator.inputLoopPowered("iso", 1)).inverse().isolators()).contains(10);
    }

    @Test
    @DisplayName("smallest supplies: (12 + 22.5 mA x 350 ohm) / 0.9, behind the isolator 8 V + 5.625 V")
    void everySupplyIsAskedAbout() {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24).tolerance(10).named("G1"),
            Transmitter.twoWire("LT", 12), Burden.receiver("first", 350), Isolator.outputLoopPowered("iso", 8)
                .outputSupply(Supply.volts(24).named("G2")).feeding(Burden.receiver("card", 250)));
        final LoopInverse inverse = loop.inverse();
        assertThat(inverse.smallestSupplies()).extracting(LoopInverse.Answer::element)
            .containsExactly("G1", "G2");
        assertThat(inverse.smallestSupply().orElseThrow()).isEqualTo((12 + 7.875) / 0.9, within(1e-5));
        assertThat(inverse.smallestSupplies().get(1).value().orElseThrow()).isEqualTo(13.625, within(1e-5));
        assertThat(inverse.toString()).contains("smallest supply G1 22.08 V, G2 13.63 V");
        assertThat(CurrentLoop.of("FT", Transmitter.fourWire("FT-1", 18), Burden.receiver("card", 250))
            .inverse()
            .smallestSupply()).isEmpty();
        final CurrentLoop powered = CurrentLoop.of("LT-102", Transmitter.twoWire("LT", 12),
            Burden.poweredReceiver("card", 250, Supply.volts(24)));
        // 12 + 5.625 V
        assertThat(powered.inverse().smallestSupply().orElseThrow()).isEqualTo(17.625, within(1e-5));
    }

    @Property(tries = 60)
    void justInsideWorksAndJustOutsideDoesNot(@ForAll @DoubleRange(min = 22, max = 30) double supply,
                                              @ForAll @DoubleRange(min = 1, max = 400) double metres,
                                              @ForAll @DoubleRange(min = 50, max = 200) double ohms) {
        final CurrentLoop loop = loop(supply, metres, ohms, Isolator.inputLoopPowered("iso", 1));
        final LoopInverse inverse = loop.inverse();
        assertEdge(only(inverse.longestCables()), 1, v -> loop.exchanging("cable", c -> ((Cable) c)
            .metres(v)));
        assertEdge(only(inverse.largestLoads()), 1, v -> loop.exchanging("card", c -> ((Burden) c)
            .withOhms(v)));
        assertEdge(inverse.smallestSupply().orElseThrow(), -1, v -> loop.on(Supply.volts(v).tolerance(10)));
    }

    private static void assertEdge(double edge, int outward, DoubleFunction<CurrentLoop> at) {
        assertThat(at.apply(edge * (1 - outward * 1e-4)).answer().word()).isEqualTo(LoopAnswer.Word.MEETS);
        assertThat(at.apply(edge * (1 + outward * 1e-4)).answer().word()).isNotEqualTo(LoopAnswer.Word.MEETS);
    }

    @Test
    void theVerdictTellsNominalFromWorstCase() {
        final Isolator iso = Isolator.inputLoopPowered("iso", 1);
        assertThat(loop(24, 100, 250, iso).answer().word()).isEqualTo(LoopAnswer.Word.MEETS);
        // 12 + 1 + 22.5 mA x (300 + 5.67) ohm = 19.88 V: 21 V have it, 18.9 V have not.
        assertThat(loop(21, 100, 300, iso).answer().word()).isEqualTo(LoopAnswer.Word.NOT_SHOWN);
        assertThat(loop(19, 100, 300, iso).answer().word()).isEqualTo(LoopAnswer.Word.DOES_NOT_MEET);
        assertThat(loop(12, 100, 300, iso).answer().sentence()).contains("carries no current at all");
        assertThat(loop(24, 100, 250, iso).answer().cautions()).anyMatch(c -> c.contains("Live work"))
            .anyMatch(c -> c.contains("intrinsically safe")).anyMatch(c -> c.contains("Opening a loop"));
    }

    @Test
    @DisplayName("a nest of 40 isolators needs 40 (V0 + R0 I) and ends at an output with its own supply")
    void chainsOfAnyDepth() {
        LoopElement end = Isolator.outputLoopPowered("end", 8).inputDrop(0.5, 20)
            .outputSupply(Supply.volts(24).named("G2")).feeding(Isolator.inputLoopPowered("far", 2)
                .feeding(Isolator.separatelyPowered("last", 15).inputDrop(1, 0)
                    .feeding(Burden.receiver("card", 500))));
        for (int i = 0; i < 40; i++) {
            end = Isolator.inputLoopPowered("iso " + i, 0).inputDrop(1.5, 10).feeding(end);
        }
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(90), Transmitter.twoWire("LT", 12),
            end);
        // 12 + 40 x (1.5 + 0.2) + 0.5 + 0.4 V at 20 mA
        assertThat(loop.requiredVolts(20, Corner.NOMINAL)).isEqualTo(80.9, within(1e-9));
        final LoopState state = loop.at(20);
        assertThat(state.circuits()).hasSize(44);
        assertThat(state.reading("card").milliamps()).hasValue(20);
        // The second circuit: 24 - 8 - 2 - 1 V; the third: 15 V - 20 mA x 500 ohm.
        assertThat(state.circuits()).filteredOn(c -> c.name().equals("output of end")).singleElement()
            .satisfies(c -> assertThat(c.budget().marginVolts()).isEqualTo(13, within(1e-9)));
        assertThat(loop.marginVolts(20, Corner.NOMINAL)).isEqualTo(5, within(1e-9));
    }

    @Test
    @DisplayName("three output cards drive field devices through one module: margin and heat by hand")
    void outputCardsThroughAMultiChannelIsolator() {
        IsolatorModule module = IsolatorModule.of("MK-90", 4);
        for (int i = 1; i <= 3; i++) {
            module = module.channel(i, CurrentLoop.of("FV-" + i, Transmitter.outputCard("AO", 16),
                Isolator.inputLoopPowered("channel", 2.5).feeding(Cable.measured(Toleranced.exactly(20))
                    .metres(500), Burden.fieldDevice("valve", 3, 300))));
        }
        final Panel panel = Panel.of("MK-2", module);
        // 16 - 2.5 - 3 - 22.5 mA x 320 ohm
        assertThat(panel.channel("FV-2").loop().marginVolts(22.5, Corner.NOMINAL)).isEqualTo(3.3,
            within(1e-9));
        final PanelState state = panel.at(20);
        assertThat(panel.supplies()).isEmpty();
        assertThat(state.module("MK-90").heatMilliwatts().orElseThrow()).isEqualTo(3 * 2.5 * 20,
            within(1e-9));
        // In the cabinet the module and what the cards keep: 16 - 2.5 - 3 - 6.4 = 4.1 V each.
        assertThat(state.cabinetHeatMilliwatts().orElseThrow()).isEqualTo(3 * (2.5 + 4.1) * 20, within(1e-9));
        assertThat(state.fieldHeatMilliwatts().orElseThrow()).isEqualTo(3 * (3 + 6.4) * 20, within(1e-9));
        assertThat(state.power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-9));
        assertThat(panel.commonCauses(12)).singleElement().satisfies(c -> assertThat(c.channels())
            .hasSize(3));
    }

    @Property(tries = 100)
    void marginsFallWithCurrentAndTheWorstIsNeverAboveTheNominal(
            @ForAll @DoubleRange(min = 16, max = 30) double supply,
            @ForAll @DoubleRange(min = 0, max = 2000) double metres) {
        final LoopMargins margins = loop(supply, metres, 250, Isolator.inputLoopPowered("iso", 2)).margins();
        for (int i = 0; i < margins.rows().size(); i++) {
            final LoopMargins.Row row = margins.rows().get(i);
            assertThat(row.worstVolts()).isLessThan(row.nominalVolts());
            assertThat(row.requiredVolts() + row.nominalVolts()).isEqualTo(supply, within(1e-9));
            if (i > 0) {
                final LoopMargins.Row before = margins.rows().get(i - 1);
                assertThat(row.milliamps()).isGreaterThan(before.milliamps());
                assertThat(row.nominalVolts()).isLessThan(before.nominalVolts());
                assertThat(row.worstVolts()).isLessThan(before.worstVolts());
            }
        }
    }

    @Test
    @DisplayName("margin of two rectangular limits: trapezoid, P(short) = (b - a)^2 / 2 over the area")
    void theDistributionOfTheMargin() {
        // Supply 24 +- 2.4 V, load 250 ohm +- 20 % at 20 mA: 5 +- 1 V. Margin 24 - 19 - x + y.
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24).tolerance(10),
            Transmitter.twoWire("LT", 16.5), Burden.receiver("card", 250).tolerance(20));
        final MarginDistribution margin = loop.marginDistribution(20, MonteCarlo.seeded(5).trials(200_000)
            .threads(1));
        // Mean 2.5 V, variance (2.4^2 + 1^2) / 3; short where the sum is below -2.5 of -3.4:
        // 0.9^2 / 2 / (4.8 x 2) = 0.0421875. Three standard errors of 200 000 trials.
        assertThat(margin.result().mean()).isEqualTo(2.5, within(3 * 1.5011 / Math.sqrt(200_000)));
        assertThat(margin.probabilityShort()).isEqualTo(0.0421875,
            within(3 * Math.sqrt(0.0421875 * 0.9578125 / 200_000)));
    }

    @Test
    @DisplayName("short of compliance the error is 0 to the knee and falls with slope -1 from there")
    void theErrorCurveHasSlopeMinusOne() {
        final KneeCurve curve = LoopVectorsTest.nested(2, 24, 60).readingOf("card");
        final double knee = curve.knee().orElseThrow().milliamps();
        assertThat(curve.points()).allSatisfy(p -> assertThat(p.errorPercentOfSpan()).isEqualTo(
            p.askedMilliamps() <= knee ? 0 : (knee - p.askedMilliamps()) / 16 * 100, within(1e-9)));
        assertThat(curve.withoutSolution()).isEmpty();
        assertThat(curve.toString()).contains("88.6 % of span", "no span error");
        final CurrentLoop none = LoopVectorsTest.nested(2, 15, 60);
        assertThat(none.readingOf("card").toString()).contains("no current at all",
            "No steady state at 4 to 22.5");
        assertThat(none.at(12).sentence()).startsWith("No solution");
    }
}
