package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static spanwright.quantity.Celsius.degC;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ends of reach, limits of data sheets, digital signal and grounds; by hand unless a source is named. */
class LoopLimitsTest {
    private static LoopChecks.Outcome outcome(LoopChecks checks, String rule) {
        return checks.items().stream().filter(i -> i.rule().equals(rule)).findFirst().orElseThrow().outcome();
    }

    @Test
    @DisplayName("lift-off that rises at low current limits the low end: where supply = lift-off + I R")
    void theLowEndOfReach() {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(13.9),
            Transmitter.twoWire("LT", 12).withVoltages(3.6, 14, 20, 12), Burden.receiver("card", 50));
        final LoopReach reach = loop.reach(Corner.NOMINAL);
        // 13.9 V = 14 V - s (I - 3.6 mA) + 0.05 V/mA I, s = 2 V / 16.4 mA: I = (0.1 + 3.6 s) / (s - 0.05).
        final double slope = 2 / 16.4;
        assertThat(reach.low().orElseThrow().milliamps()).isEqualTo((0.1 + 3.6 * slope) / (slope - 0.05),
            within(1e-9));
        assertThat(reach.low().orElseThrow().limitedBy()).isEqualTo("LT");
        assertThat(reach.high().orElseThrow().milliamps()).isEqualTo(22.5);
        assertThat(loop.answer().word()).isEqualTo(LoopAnswer.Word.DOES_NOT_MEET);
        assertThat(loop.answer().sentence()).contains("7.49 mA");
        assertThat(loop.at(4).isSolved()).isFalse();
        final KneeCurve curve = loop.readingOf("card");
        assertThat(curve.withoutSolution()).startsWith(4.0).allMatch(i -> i < 7.5);
        assertThat(curve.toString()).contains("No steady state at 4 to 7.2 mA");
    }

    @Test
    @DisplayName("24 V, 250 ohm and a maximum of 20 V across the transmitter: not below 16 mA")
    void theMaximumVoltageLimitsTheLowEnd() {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24),
            Transmitter.twoWire("LT", 12).maximumVolts(20), Burden.receiver("card", 250));
        // 24 V - 0.25 V/mA I = 20 V
        assertThat(loop.reach(Corner.NOMINAL).low().orElseThrow().milliamps()).isEqualTo(16, within(1e-9));
        assertThat(loop.checks().refusals()).singleElement().satisfies(i -> {
            assertThat(i.rule()).isEqualTo("maximum voltage");
            assertThat(i.sentence()).contains("23.10 V", "3.6 mA", "maximum of 20 V");
        });
        // With +10 %: 26.4 V - 3.6 mA x 250 ohm = 25.5 V, allowed by 25.6 V and not by 25.4 V.
        final CurrentLoop high = loop.on(Supply.volts(24).tolerance(10));
        assertThat(outcome(high.exchanging("LT", t -> ((Transmitter) t).maximumVolts(25.6)).checks(),
            "maximum voltage")).isEqualTo(LoopChecks.Outcome.ALLOWED);
        assertThat(outcome(high.exchanging("LT", t -> ((Transmitter) t).maximumVolts(25.4)).checks(),
            "maximum voltage")).isEqualTo(LoopChecks.Outcome.REFUSED);
        final LoopReach none = loop.on(Supply.volts(40)).reach(Corner.NOMINAL);
        assertThat(none.low().orElseThrow().because()).contains("even at this current");
    }

    @Test
    @DisplayName("the device at its limit is named: clamp of an output, compliance of a card")
    void whatLimitsTheHighEnd() {
        final CurrentLoop clamped = CurrentLoop.of("LT-101", Supply.volts(30), Transmitter.twoWire("LT", 12),
            Isolator.inputLoopPowered("iso", 3).clampedAt(5).feeding(Burden.receiver("card", 250)));
        // 5 V / 250 ohm = 20 mA
        final LoopReach.End high = clamped.reach(Corner.NOMINAL).high().orElseThrow();
        assertThat(high.milliamps()).isEqualTo(20, within(1e-9));
        assertThat(high.limitedBy()).isEqualTo("iso");
        final LoopReach.End card = CurrentLoop.of("AO", Transmitter.outputCard("AO-1", 10),
            Burden.fieldDevice("valve", 2, 400)).reach(Corner.NOMINAL).high().orElseThrow();
        // (10 V - 2 V) / 400 ohm = 20 mA
        assertThat(card.milliamps()).isEqualTo(20, within(1e-9));
        assertThat(card.because()).contains("no more voltage", "valve");
    }

    @Test
    void loadsAboveTheLimitAreRefusedAtTheEdge() {
        final Isolator iso = Isolator.inputLoopPowered("iso", 3).loadLimit(250);
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(30), Transmitter.twoWire("LT", 12),
            iso.feeding(Burden.receiver("card", 250)));
        assertThat(outcome(loop.checks(), "load limit")).isEqualTo(LoopChecks.Outcome.ALLOWED);
        assertThat(outcome(loop.exchanging("card", c -> ((Burden) c).withOhms(250.1)).checks(), "load limit"))
            .isEqualTo(LoopChecks.Outcome.REFUSED);
        // A second isolator of 1 V behind it counts as 1 V / 20 mA = 50 ohm.
        assertThat(outcome(loop.exchanging("iso", i -> iso.feeding(Isolator.inputLoopPowered("second", 1)
            .feeding(Burden.receiver("card", 201)))).checks(), "load limit"))
            .isEqualTo(LoopChecks.Outcome.REFUSED);
    }

    @ParameterizedTest(name = "{0} ohm: {1}")
    @CsvSource({"250, true", "230, true", "229.9, false", "0.1, false"})
    void theToneNeedsTwoHundredThirtyOhm(double ohms, boolean enough) {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24), Transmitter.twoWire("LT", 12),
            Burden.receiver("card", ohms));
        assertThat(DigitalSignal.of(loop, 0).checks().isAllowed()).isEqualTo(enough);
    }

    @Test
    void anInputThatBlocksTheToneMustItselfPresentTheResistance() {
        final Isolator iso = Isolator.inputLoopPowered("iso", 3).feeding(Burden.receiver("card", 250));
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(30), Transmitter.twoWire("LT", 12),
            iso);
        assertThat(signal(loop, iso.digital(DigitalPath.PASSES)).checks().isAllowed()).isTrue();
        assertThat(signal(loop, iso.digital(DigitalPath.PASSES)).signalOhms()).isEqualTo(250);
        final DigitalSignal blocked = signal(loop, iso.digital(DigitalPath.BLOCKS));
        assertThat(blocked.checks().refusals()).extracting(LoopChecks.Item::rule)
            .containsExactly("digital path", "resistance for the tone");
        assertThat(signal(loop, iso.inputDrop(3, 240).digital(DigitalPath.BLOCKS)).signalOhms())
            .isEqualTo(240);
        assertThat(outcome(signal(loop, iso.digital(DigitalPath.PASSES_ONE_WAY)).checks(), "digital path"))
            .isEqualTo(LoopChecks.Outcome.REFUSED);
        assertThat(outcome(signal(loop, iso).checks(), "digital path"))
            .isEqualTo(LoopChecks.Outcome.NOT_DETERMINED);
        final LoopChecks all = loop.checks().with(blocked.checks().items());
        assertThat(all.refusals()).hasSize(2);
    }

    private static DigitalSignal signal(CurrentLoop loop, Isolator isolator) {
        return DigitalSignal.of(loop.exchanging("iso", i -> isolator), 0);
    }

    @Test
    @DisplayName("RC limit of 65 us, L = 65e6 / (R C) - (C_dev + 10000) / C: 2450 m at 250 ohm and 100 pF/m")
    void theRcLimit() {
        assertThat(DigitalSignal.longestMetres(250, 100, 5000)).isEqualTo(2600 - 150, within(1e-9));
        assertThat(DigitalSignal.longestMetres(250, 100, 1e9)).isEqualTo(0);
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24),
            Cable.copper(1.0).metres(1000).picofaradsPerMetre(100).at(degC(60)),
            Transmitter.twoWire("LT", 12), Burden.receiver("card", 250));
        final double most = DigitalSignal.of(loop, 5000).longestMetres().orElseThrow();
        // The length meets the equation with the hot cable's own resistance in it.
        final double ohmsPerMetre = 2 * 18.1e-3 * (1 + 0.00393 * 40);
        assertThat((250 + ohmsPerMetre * most) * (100 * most + 15_000)).isEqualTo(65e6, within(1e-3));
        assertThat(rc(loop, most - 0.01)).isEqualTo(LoopChecks.Outcome.ALLOWED);
        assertThat(rc(loop, most + 0.01)).isEqualTo(LoopChecks.Outcome.REFUSED);
        assertThat(DigitalSignal.of(loop, 1e9).longestMetres()).hasValue(0);
        final CurrentLoop unstated = loop.exchanging("cable", c -> Cable.copper(1.0).metres(100));
        assertThat(outcome(DigitalSignal.of(unstated, 0).checks(), "resistance times capacitance"))
            .isEqualTo(LoopChecks.Outcome.NOT_DETERMINED);
    }

    private static LoopChecks.Outcome rc(CurrentLoop loop, double metres) {
        return outcome(DigitalSignal.of(loop.exchanging("cable", c -> ((Cable) c).metres(metres)), 5000)
            .checks(), "resistance times capacitance");
    }

    @Test
    @DisplayName("10 V common mode at 80 dB are 1 mV: 4 uA in 250 ohm, 0.025 % of span")
    void commonMode() {
        assertThat(GroundLoop.commonModeErrorPercentOfSpan(10, 80, 250)).isEqualTo(0.025, within(1e-12));
        assertThat(GroundLoop.commonModeErrorPercentOfSpan(10, 0, 250)).isEqualTo(250, within(1e-9));
    }

    @Test
    @DisplayName("ground loop before isolation V / R, after it V / (R + isolation resistance)")
    void groundLoopAfterIsolation() {
        final GroundLoop ground = GroundLoop.of(IsolationRating.dc(10), 250);
        assertThat(ground.errorMilliamps()).isEqualTo(40, within(1e-12));
        assertThat(ground.isolatedErrorPercentOfSpan()).isEmpty();
        final Isolator iso = Isolator.inputLoopPowered("iso", 3);
        assertThat(ground.isolatedBy(iso).isolatedErrorPercentOfSpan()).isEmpty();
        assertThat(ground.isolatedBy(iso).toString()).contains("isolation resistance is not stated");
        // 10 V / (1 Gohm + 250 ohm) = 10 nA of 16 mA
        assertThat(ground.isolatedBy(iso.isolationOhms(1e9)).isolatedErrorPercentOfSpan().orElseThrow())
            .isEqualTo(10 / (1e9 + 250) / 0.016 * 100, within(1e-15));
        final GroundLoop mains = GroundLoop.of(IsolationRating.ac(10), 250)
            .isolatedBy(iso.isolationOhms(1e9));
        assertThat(mains.isolatedErrorPercentOfSpan()).isEmpty();
        assertThat(mains.toString()).contains("coupling capacitance");
    }

    @Test
    @DisplayName("250 V AC is 354 V DC peak (reference: common practice): which potential a rating covers")
    void alternatingAndDirectVoltagesAreToldApart() {
        assertAsPrinted("354", IsolationRating.ac(250).peakVolts());
        assertThat(IsolationRating.dc(300).covers(IsolationRating.ac(250))).isFalse();
        assertThat(IsolationRating.dc(354).covers(IsolationRating.ac(250))).isTrue();
        assertThat(IsolationRating.ac(250).covers(IsolationRating.dc(300))).isTrue();
        assertThat(IsolationRating.ac(250).covers(IsolationRating.ac(250))).isTrue();
        final GroundLoop ground = GroundLoop.of(IsolationRating.ac(250), 250)
            .isolatedBy(Isolator.inputLoopPowered("iso", 3).rated(IsolationRating.dc(300)));
        assertThat(ground.workingVoltage().sentence()).contains("354 V peak", "above", "300 V DC");
    }

    @Test
    @DisplayName("a second receiver of 10 kohm across 250 ohm takes 2.4 % of the reading")
    void aTappedReceiverReadsLow() {
        final Burden tapped = Burden.receiver("card", 250).tappedThrough(10_000);
        // 250 / 10250 = 2.439 %
        assertThat(tapped.tapErrorPercentOfReading()).isEqualTo(-100 * 250 / 10_250.0, within(1e-12));
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24), Transmitter.twoWire("LT", 12),
            tapped);
        assertThat(loop.at(20).element("card").volts()).isEqualTo(0.020 * 250 * 10_000 / 10_250,
            within(1e-12));
        assertThat(loop.checks().toString()).contains("card reads 2.4 % of reading low");
        assertThat(loop.with(Burden.receiver("second", 100)).marginVolts(20, Corner.NOMINAL))
            .isEqualTo(loop.marginVolts(20, Corner.NOMINAL) - 2, within(1e-12));
    }

    @Test
    @DisplayName("barrier: twice its end-to-end ohms, surge device: both lines (common practice, no source)")
    void whatStandsInBothLinesCountsTwice() {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24), Transmitter.twoWire("LT", 12),
            Burden.barrier("barrier", 60), Burden.surgeDevice("surge", 5), Burden.fuse("fuse", 3),
            Burden.meter("indicator", 1.5, 10), Burden.resistor("handheld", 250),
            Burden.receiver("card", 50));
        // 12 V + 1.5 V + 20 mA x (120 + 10 + 3 + 10 + 250 + 50) ohm
        assertThat(loop.requiredVolts(20, Corner.NOMINAL)).isEqualTo(13.5 + 0.020 * 443, within(1e-12));
        assertThat(DigitalSignal.of(loop, 0).signalOhms()).isEqualTo(443, within(1e-12));
    }

    @Test
    @DisplayName("conductors by class and gauge give the resistance of their table at 20 degC")
    void conductorsByClassAndGauge() {
        // IEC 60228: class 5, 1.5 mm2, 13.3 ohm/km; class 1, 0.5 mm2, 36.0 ohm/km.
        assertThat(Cable.ofClass(1.5, ConductorClass.FLEXIBLE).metres(250).loopOhms())
            .isEqualTo(13.3 / 2, within(1e-12));
        assertThat(Cable.ofClass(0.5, ConductorClass.SOLID).metres(500).loopOhms()).isEqualTo(36,
            within(1e-12));
        // 18 AWG: 6.385 ohm per 1000 ft.
        assertThat(Cable.awg(18).metres(304.8).loopOhms()).isEqualTo(2 * 6.385, within(1e-9));
    }

    @Test
    void marginsIncludeTheFailureCurrentsOfTheTransmitter() {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24), Transmitter.twoWire("LT", 12)
            .failing(3.5, 23), Burden.receiver("card", 250));
        assertThat(loop.margins().rows()).extracting(LoopMargins.Row::milliamps)
            .containsExactly(3.5, 3.6, 4.0, 12.0, 20.0, 20.5, 22.0, 22.5, 23.0);
        // 24 - 12 - 23 mA x 250 ohm
        assertThat(loop.margins().rows().get(8).nominalVolts()).isEqualTo(6.25, within(1e-12));
        assertThat(loop.margins().toString()).contains("23 mA", "+6.25 V nominal");
    }
}
