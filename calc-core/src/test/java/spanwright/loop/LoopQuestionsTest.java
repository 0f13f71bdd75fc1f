package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.uncertainty.MonteCarlo;

/** Faults, inverse questions and checks. Expected values by hand from Ohm's law unless a source is named. */
class LoopQuestionsTest {
    private static CurrentLoop loop(Isolator isolator) {
        return CurrentLoop.of("LT-101", Supply.volts(24).tolerance(10),
            Cable.copper(1.0).metres(600), Transmitter.twoWire("LT", 12), isolator.feeding(Burden
                .receiver("card", 250)));
    }

    private static FaultTable.Row row(CurrentLoop loop, LoopFault.Kind kind, String at) {
        return loop.faults(12).rows().stream().filter(r -> r.fault().equals(new LoopFault(kind, at)))
            .findFirst()
            .orElseThrow();
    }

    @Test
    @DisplayName("open output: a clamp keeps the loop, none breaks it, not stated is not determined")
    void openOutputIsAPropertyOfTheDevice() {
        final Isolator iso = Isolator.inputLoopPowered("iso", 3.5);
        final FaultTable.Row clamped = row(loop(iso.clampedAt(6)), LoopFault.Kind.OPEN_OUTPUT, "iso");
        assertThat(clamped.primary()).isEqualTo(FaultTable.Survival.YES);
        assertThat(clamped.readings().get(0).milliamps()).hasValue(0);
        assertThat(clamped.isFlagged(12)).contains(true);
        assertThat(row(loop(iso.withoutClamp()), LoopFault.Kind.OPEN_OUTPUT, "iso").primary())
            .isEqualTo(FaultTable.Survival.NO);
        final FaultTable.Row unknown = row(loop(iso), LoopFault.Kind.OPEN_OUTPUT, "iso");
        assertThat(unknown.primary()).isEqualTo(FaultTable.Survival.NOT_DETERMINED);
        assertThat(unknown.isFlagged(12)).isEmpty();
    }

    @Test
    void inverseAnswersSitOnTheEdge() {
        final CurrentLoop loop = loop(Isolator.inputLoopPowered("iso", 1));
        final double metres = loop.inverse().longestCables().get(0).value().orElseThrow();
        // 21.6 - 12 - 1 - 22.5 mA x 250 ohm leaves 2.975 V: 132.2 ohm, at 36.2 ohm per km there and back.
        assertThat(metres).isEqualTo(2.975 / 0.0225 / 36.2 * 1000, within(1e-3));
        assertThat(loop.exchanging("cable", c -> ((Cable) c).metres(metres))
            .marginVolts(22.5, Corner.LEAST_VOLTAGE)).isEqualTo(0, within(1e-6));
        // 0.9 x nominal = 12 + 1 + 22.5 mA x (250 + 21.72) ohm.
        assertThat(loop.inverse().smallestSupply().orElseThrow())
            .isEqualTo((13 + 0.0225 * 271.72) / 0.9, within(1e-5));
        // 21.6 - 12 - 6.1137 = 3.486 V: three isolators of 1 V.
        assertThat(loop.inverse().isolators()).contains(3);
    }

    @Test
    @DisplayName("10 mV across 250 ohm is 40 uA, 0.25 % of span; 250 V AC is 354 V DC peak")
    void groundsAndWorkingVoltages() {
        final GroundLoop ground = GroundLoop.of(IsolationRating.dc(0.010), 250);
        assertThat(ground.errorMilliamps()).isEqualTo(0.040, within(1e-12));
        assertAsPrinted("0.25", ground.errorPercentOfSpan());
        assertAsPrinted("354", IsolationRating.ac(250).peakVolts());
        final Isolator rated = Isolator.inputLoopPowered("iso", 3.5).rated(IsolationRating.ac(250));
        assertThat(GroundLoop.of(IsolationRating.dc(353), 250).isolatedBy(rated).workingVoltage().outcome())
            .isEqualTo(LoopChecks.Outcome.ALLOWED);
        assertThat(GroundLoop.of(IsolationRating.dc(355), 250).isolatedBy(rated).workingVoltage().outcome())
            .isEqualTo(LoopChecks.Outcome.REFUSED);
    }

    @Test
    void limitsAndBrokenDigitalPathsAreRefused() {
        final CurrentLoop loop = loop(Isolator.inputLoopPowered("iso", 3.5).loadLimit(200)
            .digital(DigitalPath.BLOCKS));
        assertThat(loop.answer().word()).isEqualTo(LoopAnswer.Word.REFUSED);
        assertThat(loop.answer().sentence()).contains("250", "200", "iso");
        assertThat(DigitalSignal.of(loop, 0).checks().refusals()).hasSize(2);
    }

    @Test
    void aLoopWithoutSolutionSaysSo() {
        final LoopState state = loop(Isolator.inputLoopPowered("iso", 3.5)).on(Supply.volts(10)).at(12);
        assertThat(state.isSolved()).isFalse();
        assertThat(state.sentence()).startsWith("No solution").contains("10.00 V", "15.50 V");
    }

    @Test
    void theDistributionLiesBetweenTheCorners() {
        final CurrentLoop loop = loop(Isolator.inputLoopPowered("iso", 3.5));
        final MarginDistribution margin = loop.marginDistribution(20, MonteCarlo.seeded(1).trials(20_000)
            .threads(1));
        assertThat(margin.result().least()).isGreaterThanOrEqualTo(loop.marginVolts(20,
            Corner.LEAST_VOLTAGE) - 0.01);
        assertThat(margin.result().greatest()).isLessThanOrEqualTo(loop.marginVolts(20,
            Corner.MOST_VOLTAGE) + 0.01);
    }

    @Test
    void readingGoesLevelAtTheKnee() {
        assertAsPrinted("18.17", LoopVectorsTest.nested(2, 24, 60).readingOf("card").knee().orElseThrow()
            .milliamps());
    }
}
