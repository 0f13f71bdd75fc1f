package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.uncertainty.MonteCarlo;

/** Loops of several circuits, supplies in parallel, and what the results say; by hand from Ohm's law. */
class LoopCircuitsTest {
    private static final Burden FIRST = Burden.receiver("first", 100);
    private static final Burden CARD = Burden.receiver("card", 250);

    private static CurrentLoop loop(LoopElement end) {
        return CurrentLoop.of("LT-101", Supply.volts(24), Transmitter.twoWire("LT", 12), FIRST, end);
    }

    /** Separately powered A, whose output circuit B lives in; the card lives on B. */
    private static CurrentLoop twoCircuits(Isolator b) {
        return loop(Isolator.separatelyPowered("A", 15).ownMilliwatts(900).feeding(b.feeding(CARD)));
    }

    @Test
    @DisplayName("the knee of a receiver is that of the circuits before it: (12 - 8) V / 250 ohm = 16 mA")
    void theKneeBelongsToTheCircuitsBeforeTheReceiver() {
        final CurrentLoop behind = loop(Isolator.outputLoopPowered("iso", 8).outputSupply(Supply.volts(12)
            .named("G2")).feeding(CARD));
        assertThat(behind.readingOf("card").knee().orElseThrow().milliamps()).isEqualTo(16, within(1e-9));
        assertThat(behind.readingOf("card").knee().orElseThrow().limitedBy()).isEqualTo("iso");
        assertThat(behind.readingOf("first").knee()).isEmpty();
        final CurrentLoop clamped = loop(Isolator.inputLoopPowered("iso", 2).clampedAt(4).feeding(CARD));
        assertThat(clamped.readingOf("card").knee().orElseThrow().milliamps()).isEqualTo(16, within(1e-9));
        assertThat(clamped.readingOf("card").knee().orElseThrow().limitedBy()).isEqualTo("iso");
        assertThat(clamped.readingOf("first").knee()).isEmpty();
        // (24 - 12 - 3) V / (100 + 400) ohm = 18 mA in the first circuit holds back the second too.
        final CurrentLoop primary = CurrentLoop.of("LT-101", Supply.volts(24), Transmitter.twoWire("LT", 12),
            Burden.meter("meter", 3, 400), FIRST, Isolator.outputLoopPowered("iso", 8)
                .outputSupply(Supply.volts(24).named("G2")).feeding(CARD));
        assertThat(primary.readingOf("card").knee().orElseThrow().milliamps()).isEqualTo(18, within(1e-9));
        assertThat(primary.readingOf("card").knee().orElseThrow().limitedBy()).isEqualTo("LT");
        assertThat(primary.at(20).sentence()).isEqualTo("LT-101 does not carry 20 mA: LT-101 is short of "
            + "1.00 V and stops at 18.00 mA.");
        assertThat(behind.at(20).sentence()).contains("output of iso is short of 1.00 V", "16.00 mA");
        assertThat(behind.at(12).sentence()).contains("24 V supply gives 24.00 V", "10.80 V to spare");
    }

    @Test
    @DisplayName("the low end at the worst corner counts the highest voltage: 26.4 V - 250 ohm I = 24 V")
    void theLowEndAtTheWorstCorner() {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24).tolerance(10),
            Transmitter.twoWire("LT", 12).maximumVolts(24), CARD);
        assertThat(loop.reach(Corner.LEAST_VOLTAGE).low().orElseThrow().milliamps())
            .isEqualTo(9.6, within(1e-9));
        assertThat(loop.reach(Corner.NOMINAL).low().orElseThrow().milliamps()).isEqualTo(3.6);
        assertThat(loop.on(Supply.volts(60)).reach(Corner.NOMINAL).low().orElseThrow().because())
            .contains("54.38 V across it", "24 V");
    }

    @ParameterizedTest(name = "{0} and {1} mA: {2} V")
    @CsvSource({"4, 3, 23.93", "30, 20, 23.70", "0, 10, 23.90", "0, 12, 23.89", "200, 20, 22.85"})
    @DisplayName("24 V and 23.9 V of 10 ohm each: 10 ohm up to 10 mA, 5 ohm beyond, others drawing too")
    void parallelUnitsWithOtherLoops(double others, double milliamps, double volts) {
        final Supply supply = Supply.parallel("G1", Supply.volts(24).internalOhms(10), Supply.volts(23.9)
            .internalOhms(10)).withOthers(others);
        assertThat(loop(CARD).on(supply).availableVolts(milliamps, Corner.NOMINAL)).isEqualTo(volts,
            within(1e-9));
    }

    @Test
    @DisplayName("a third unit of 5 ohm joins at 30 mA, where both others have sunk to its 23.8 V")
    void aThirdUnitJoins() {
        final Supply supply = Supply.parallel("G1", Supply.volts(23.8).internalOhms(5),
            Supply.volts(24).internalOhms(10), Supply.volts(23.9).internalOhms(10)).efficiency(50);
        final CurrentLoop loop = loop(CARD).on(supply.withOthers(30));
        // 23.8 V - 20 mA / (1/10 + 1/10 + 1/5) S
        assertThat(loop.availableVolts(20, Corner.NOMINAL)).isEqualTo(23.75, within(1e-9));
        final SupplyPower power = loop.at(20).power().supplies().get(0);
        assertThat(power.currents().totalMilliamps()).isEqualTo(50, within(1e-12));
        assertThat(power.unitMilliwatts()).isEqualTo(23.75 * 50, within(1e-9));
        assertThat(power.givenToOthersMilliwatts()).isEqualTo(23.75 * 30, within(1e-9));
        assertThat(loop.at(20).power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-9));
    }

    @Test
    void unitsWithoutResistanceTakeTheRest() {
        // 24 V behind 10 ohm sinks to the stiff 23.9 V at 10 mA; the stiff unit gives the other 10 mA.
        final SupplyPower mixed = power(Supply.parallel("G1", Supply.volts(24).internalOhms(10),
            Supply.volts(23.9)));
        assertThat(mixed.volts()).isEqualTo(23.9, within(1e-12));
        assertThat(mixed.unitMilliwatts()).isEqualTo(23.9 * 20, within(1e-9));
        final SupplyPower alike = power(Supply.parallel("G1", Supply.volts(24), Supply.volts(24))
            .diodeDrop(0.5));
        assertThat(alike.unitMilliwatts()).isEqualTo(24 * 20, within(1e-9));
        assertThat(alike.diodeMilliwatts()).isEqualTo(0.5 * 20, within(1e-9));
        final SupplyPower higher = power(Supply.parallel("G1", Supply.volts(23), Supply.volts(24)));
        assertThat(higher.unitMilliwatts()).isEqualTo(24 * 20, within(1e-9));
    }

    private static SupplyPower power(Supply supply) {
        return loop(CARD).on(supply).at(20).power().supplies().get(0);
    }

    @Test
    void aFaultInTheSecondCircuitLeavesTheFirst() {
        final FaultTable table = twoCircuits(Isolator.inputLoopPowered("B", 2)
            .whenReversed(WhenReversed.BLOCKS)).faults(12);
        for (FaultTable.Row row : java.util.List.of(table.row(LoopFault.Kind.REVERSED, "B"),
            table.row(LoopFault.Kind.OPEN_INPUT, "card"), table.row(LoopFault.Kind.OPEN_INPUT, "B"))) {
            assertThat(row.readings()).extracting(r -> r.milliamps().orElseThrow()).as(row.toString())
                .containsExactly(12.0, 0.0);
            assertThat(row.primary()).isEqualTo(FaultTable.Survival.YES);
            assertThat(row.note()).doesNotContain("taken to follow");
        }
        final FaultTable.Row primary = table.row(LoopFault.Kind.OPEN_INPUT, "first");
        assertThat(primary.readings()).allMatch(r -> r.milliamps().orElseThrow() == 0);
        assertThat(primary.note()).contains("Outputs with a supply of their own are taken to follow to 0 mA");
        assertThat(loop(CARD).faults(12).row(LoopFault.Kind.OPEN_INPUT, "card").note())
            .doesNotContain("taken to follow");
        assertThat(table.toString()).startsWith("Faults of LT-101 at 12 mA")
            .contains("B: polarity reversed: first reads 12.00 mA (taken as a measurement); "
                + "card reads 0.00 mA (failure, low)").contains("By NE 43 limits: flagged.");
    }

    @Test
    void transmittersThatPassCurrentWithoutASignal() {
        final CurrentLoop passive = loop(CARD).exchanging("LT", t -> ((Transmitter) t)
            .whenReversed(WhenReversed.PASSES_WITHOUT_SIGNAL)).on(Supply.volts(16.8));
        // 16.8 V / 350 ohm = 48 mA
        assertThat(passive.faults(12).row(LoopFault.Kind.REVERSED, "LT").readings().get(0).milliamps()
            .orElseThrow()).isEqualTo(48, within(1e-9));
        final CurrentLoop active = CurrentLoop.of("FT", Transmitter.fourWire("FT-1", 20)
            .whenReversed(WhenReversed.PASSES_WITHOUT_SIGNAL), CARD);
        assertThat(active.faults(12).row(LoopFault.Kind.REVERSED, "FT-1").readings().get(0).milliamps())
            .hasValue(0);
        final CurrentLoop burden = loop(CARD.whenReversed(WhenReversed.BLOCKS));
        assertThat(burden.faults(12).row(LoopFault.Kind.REVERSED, "card").primary())
            .isEqualTo(FaultTable.Survival.NO);
    }

    @Test
    @DisplayName("supply at its minimum: nominal less tolerance less ripple")
    void theMinimumCountsTheRipple() {
        final FaultTable.Row row = loop(CARD).on(Supply.volts(24).tolerance(10).ripple(0.205)).faults(12)
            .row(LoopFault.Kind.SUPPLY_AT_MINIMUM, "LT-101");
        // 24 x 0.9 - 0.205 - 12 - 22.5 mA x 350 ohm = 1.52 V
        assertThat(row.note()).contains("+1.52 V").contains("the rest nominal");
        assertThat(row.primary()).isEqualTo(FaultTable.Survival.YES);
    }

    @Test
    @DisplayName("tolerances of active outputs and of lift-off go against the margin at the least voltage")
    void limitsOfOutputsGoAgainstTheMargin() {
        final CurrentLoop card = CurrentLoop.of("AO", Transmitter.outputCard("AO-1", 16).tolerance(1), CARD);
        // 16 - 1 - 22.5 mA x 250 ohm
        assertThat(card.marginVolts(22.5, Corner.LEAST_VOLTAGE)).isEqualTo(9.375, within(1e-12));
        assertThat(card.marginVolts(22.5, Corner.MOST_VOLTAGE)).isEqualTo(11.375, within(1e-12));
        final CurrentLoop lift = CurrentLoop.of("LT", Supply.volts(24), Transmitter.twoWire("LT-1", 12)
            .tolerance(0.5), CARD);
        assertThat(lift.marginVolts(20, Corner.LEAST_VOLTAGE)).isEqualTo(6.5, within(1e-12));
        final Isolator iso = Isolator.outputLoopPowered("iso", 8).outputSupply(Supply.volts(14).named("G2"));
        final Isolator loose = iso.withOutput(new Isolator.Output(Toleranced.plusMinus(8, 0.6),
            iso.output().clampVolts(), iso.output().loadLimitOhms(), iso.output().onOpen(),
            iso.output().fed(), iso.output().supply()));
        // 14 - 8.6 - 5 V and 14 - 7.4 - 5 V
        assertThat(loop(loose.feeding(CARD)).marginVolts(20, Corner.LEAST_VOLTAGE))
            .isEqualTo(0.4, within(1e-12));
        assertThat(loop(loose.feeding(CARD)).marginVolts(20, Corner.MOST_VOLTAGE))
            .isEqualTo(1.6, within(1e-12));
    }

    @Test
    void theRippleStandsAtItsTroughInEveryTrial() {
        final CurrentLoop loop = loop(CARD).on(Supply.volts(24).tolerance(1).ripple(0.5));
        final MarginDistribution margin = loop.marginDistribution(20, MonteCarlo.seeded(2).trials(20_000)
            .threads(1));
        // 24 +- 0.24 V - 0.5 - 12 - 7 V
        assertThat(margin.result().mean()).isEqualTo(4.5, within(0.01));
        assertThat(margin.result().greatest()).isLessThanOrEqualTo(4.741);
        assertThat(margin.probabilityShort()).isZero();
        assertThatThrownBy(() -> loop(CARD).marginDistribution(20, MonteCarlo.seeded(2).trials(1000)))
            .hasMessageContaining("no parameter with limits");
    }

    @Test
    void aWiringThatCannotWorkIsRefusedAtAnyDepth() {
        assertThatThrownBy(() -> twoCircuits(Isolator.inputLoopPowered("B", 2)
            .outputSupply(Supply.volts(24))))
            .isInstanceOf(IllegalPairingException.class).hasMessageContaining("must never meet a supply");
        assertThatThrownBy(() -> loop(CARD).at(12).element("nothing"))
            .hasMessage("no element of LT-101 is named nothing");
        assertThatThrownBy(() -> loop(CARD).at(12).reading("nothing")).hasMessageContaining("named nothing");
        assertThatThrownBy(() -> loop(CARD).at(12).power("nothing")).hasMessageContaining("named nothing");
        assertThatThrownBy(() -> loop(CARD).exchanging("nothing", e -> e)).hasMessageContaining("LT, first");
        assertThatThrownBy(() -> Supply.volts(24).efficiency(101)).hasMessageContaining("101");
        assertThatThrownBy(() -> Isolator.separatelyPowered("A", 15).ownMilliwatts(-1))
            .hasMessageContaining("-1");
        assertThatThrownBy(() -> Transmitter.twoWire("LT", 12).withVoltages(20, 12, 4, 13))
            .hasMessageContaining("currents must ascend");
        assertThatThrownBy(() -> Transmitter.twoWire("LT", 12).withVoltages(20, 12, 4))
            .hasMessageContaining("3 figures do not pair");
        assertThatThrownBy(() -> Cable.awg(50)).hasMessageContaining("50");
    }

    @Test
    void theAnswerSaysWhatItRestsOn() {
        final LoopAnswer answer = loop(CARD).on(Supply.volts(24).tolerance(10)).answer();
        assertThat(answer.assumptions()).contains("The loop must carry 3.6 to 22.5 mA, its failure currents.",
            "Supply: 24 V supply, at its terminals 21.60 to 26.40 V.").anyMatch(a -> a.startsWith("card: "));
        // 21.6 - 12 - 22.5 mA x 350 ohm
        assertThat(answer.worstMarginVolts()).isEqualTo(1.725, within(1e-12));
        assertThat(answer.neededMilliamps()).isEqualTo(22.5);
        assertThat(answer.toString()).startsWith("\u2713 Meets 22.5 mA with 1.7")
            .contains("Voltages of LT-101");
        assertThat(loop(CARD).inverse().toString()).startsWith("From 3.6 to 22.5 mA").contains(
            "longest cable none to ask about", "largest load first ", "smallest supply 24 V supply 19.88 V");
        final CurrentLoop nested = loop(Isolator.inputLoopPowered("outer", 1).feeding(Isolator
            .inputLoopPowered("inner", 1).feeding(Burden.receiver("card", 50))));
        // 24 - 12 - 22.5 mA x 150 ohm = 8.625 V: eight of 1 V, whatever stands there now.
        assertThat(nested.inverse().isolators()).contains(8);
    }

    @Test
    void theDigitalSignalSaysWhatItMet() {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24),
            Cable.measured(Toleranced.exactly(20))
            .metres(500).picofaradsPerMetre(100), Transmitter.twoWire("LT", 12), CARD);
        // 270 ohm x (50 + 5 + 10) nF = 17.55 us
        assertThat(DigitalSignal.of(loop, 5000).toString()).contains("LT-101 lets the digital signal through",
            "the tone meets 250 \u03a9 beside the cable, at least the 230 \u03a9",
                "270 \u03a9 times 65 nF is 17.6",
            "within the 65 \u00b5s allowed").doesNotContain("above", "less than");
        assertThat(DigitalSignal.of(loop.exchanging("card", c -> Burden.receiver("card", 100)), 500_000)
            .toString()).contains("does not let", "less than the 230", "120 \u03a9 times 560 nF is 67.2",
                "above");
        final DigitalSignal blocked = DigitalSignal.of(twoCircuits(Isolator.inputLoopPowered("B", 2)
            .digital(DigitalPath.BLOCKS)), 0);
        assertThat(blocked.toString())
            .contains("B blocks the digital signal: the path to the far side is broken",
            "A does not state whether it passes the digital signal")
                .doesNotContain("signal: the path to the far "
                + "side is broken; a handheld works on the transmitter's side only\nnot");
    }
}
