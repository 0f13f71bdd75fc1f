package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static spanwright.quantity.Celsius.degC;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Supplies, corners and power. Expected values by hand from Ohm's and Kirchhoff's laws, beside each. */
class LoopSuppliesTest {
    private static CurrentLoop on(Supply supply) {
        return CurrentLoop.of("LT-101", supply, Transmitter.twoWire("LT", 12), Burden.receiver("card", 250));
    }

    private static double volts(Supply supply, double milliamps, Corner corner) {
        return on(supply).availableVolts(milliamps, corner);
    }

    @Test
    @DisplayName("minimum = nominal x (1 - tolerance) - ripple - diode - R x current of all loops")
    void theMinimumIsNotTheNominalVoltage() {
        final Supply supply = Supply.volts(24).tolerance(10).ripple(0.1)
            .diodeDrop(Toleranced.between(0.4, 0.8)).internalOhms(2).sharedOhms(3).alsoFeeding(7, 22.5);
        // 24 x 0.9 - 0.1 - 0.8 - (2 + 3) ohm x (22.5 + 7 x 22.5) mA = 20.7 - 0.9
        assertThat(volts(supply, 22.5, Corner.LEAST_VOLTAGE)).isEqualTo(19.8, within(1e-12));
        // 24 - 0.6 - 5 ohm x (20 + 7 x 12) mA
        assertThat(volts(supply, 20, Corner.NOMINAL)).isEqualTo(23.4 - 0.52, within(1e-12));
        // 24 x 1.1 + 0.1 - 0.4 - 5 ohm x 3.6 mA, the others drawing nothing
        assertThat(volts(supply, 3.6, Corner.MOST_VOLTAGE)).isEqualTo(26.1 - 0.018, within(1e-12));
    }

    @Test
    @DisplayName("split supply: voltages, drops and resistances of its units add")
    void unitsInSeriesAdd() {
        final Supply split = Supply.split("plus and minus 12 V", Supply.volts(12).internalOhms(3),
            Supply.volts(12).internalOhms(5)).diodeDrop(0.3);
        assertThat(split.nominalVolts()).isEqualTo(24);
        assertThat(volts(split, 20, Corner.NOMINAL)).isEqualTo(24 - 0.6 - 8 * 0.020, within(1e-12));
        assertThat(on(split).at(20).power().supplies().get(0).diodeMilliwatts())
            .isEqualTo(0.6 * 20, within(1e-12));
    }

    @Test
    @DisplayName("redundant supplies: the higher carries alone until it has sunk to the lower, then both do")
    void theHigherUnitCarriesFirst() {
        final Supply both = Supply.parallel("G1", Supply.volts(24).internalOhms(10),
            Supply.volts(23.9).internalOhms(10)).diodeDrop(0.5);
        // Alone up to 0.1 V / 10 ohm = 10 mA; beyond, 5 ohm.
        assertThat(volts(both, 6, Corner.NOMINAL)).isEqualTo(23.5 - 0.06, within(1e-12));
        assertThat(volts(both, 20, Corner.NOMINAL)).isEqualTo(23.4 - 0.010 * 5, within(1e-12));
        // At 20 mA they share: 23.5 - 10 I1 = 23.35 gives 15 mA, the other 5 mA: 23.85 V at both terminals.
        assertThat(on(both).at(20).power().supplies().get(0).unitMilliwatts())
            .isEqualTo(23.85 * 20, within(1e-9));
        final Supply stiff = Supply.parallel("G1", Supply.volts(24), Supply.volts(23));
        assertThat(volts(stiff, 20, Corner.NOMINAL)).isEqualTo(24, within(1e-12));
        assertThatThrownBy(() -> Supply.parallel("G1", Supply.volts(24).sharedOhms(1), Supply.volts(24)))
            .hasMessageContaining("give shared feed");
    }

    @Test
    void theRatingCountsEveryLoopAtItsAlarmCurrent() {
        // 22.5 mA of this loop and 7 x 22.5 mA of the others: 180 mA.
        final Supply eight = Supply.volts(24).alsoFeeding(7, 22.5);
        assertThat(on(eight.rated(180)).checks().items()).filteredOn(i -> i.rule().equals("rated current"))
            .singleElement().satisfies(i -> assertThat(i.outcome()).isEqualTo(LoopChecks.Outcome.ALLOWED));
        assertThat(on(eight.rated(179)).answer().word()).isEqualTo(LoopAnswer.Word.REFUSED);
        assertThat(on(eight.rated(179)).answer().sentence()).contains("180 mA", "rating of 179 mA");
    }

    @Test
    @DisplayName("hot cable has most resistance; IEC 60228 gives the largest, the area alone the least")
    void temperatureCornersOfACable() {
        final Cable cable = Cable.copper(1.0).metres(600).between(degC(-10), degC(60));
        assertThat(cable.loopOhms(Corner.LEAST_VOLTAGE)).isEqualTo(1.2 * 18.1 * (1 + 0.00393 * 40),
            within(1e-9));
        assertThat(cable.loopOhms(Corner.NOMINAL)).isEqualTo(1.2 * 18.1, within(1e-9));
        assertThat(cable.loopOhms(Corner.MOST_VOLTAGE)).isLessThan(1.2 * 18.1 * (1 - 0.00393 * 30))
            .isEqualTo(1.2 * Conductors.idealOhmsPerKm(1.0) * (1 - 0.00393 * 30), within(1e-9));
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24), cable,
            Transmitter.twoWire("LT", 12), Burden.receiver("card", 250).tolerance(1));
        assertThat(loop.marginVolts(20, Corner.LEAST_VOLTAGE)).isEqualTo(12 - 0.020 * (252.5 + 1.2 * 18.1
            * (1 + 0.00393 * 40)), within(1e-9));
    }

    @Test
    @DisplayName("power and heat of each element: V x I of each, by hand")
    void powerOfEachElement() {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(24).efficiency(80).internalOhms(5),
            Cable.measured(Toleranced.exactly(20)).metres(500), Transmitter.twoWire("LT", 12),
            Isolator.inputLoopPowered("nest", 3).feeding(Isolator.outputLoopPowered("far", 8)
                .inputDrop(1, 10).outputSupply(Supply.volts(18).named("G2").efficiency(75))
                .feeding(Burden.receiver("card", 250))));
        final LoopState state = loop.at(20);
        // Across the transmitter: 24 - 0.1 - 0.4 - 3 - 1.2 = 19.3 V.
        assertThat(heat(state, "LT")).isEqualTo(19.3 * 20, within(1e-9));
        assertThat(heat(state, "cable")).isEqualTo(0.4 * 20, within(1e-9));
        assertThat(heat(state, "nest")).isEqualTo(3 * 20, within(1e-9));
        // Its input 1.2 V, and at its output all that the card leaves of 18 V: 13 V.
        assertThat(heat(state, "far")).isEqualTo((1.2 + 13) * 20, within(1e-9));
        assertThat(heat(state, "card")).isEqualTo(5 * 20, within(1e-9));
        // Terminals 23.9 V: 478 mW / 0.80; the loss in the 5 ohm lies within the efficiency.
        assertThat(state.power().supplies().get(0).mainsMilliwatts().orElseThrow())
            .isEqualTo(23.9 * 20 / 0.80, within(1e-9));
        assertThat(state.power().inMilliwatts().orElseThrow())
            .isEqualTo(23.9 * 20 / 0.80 + 18 * 20 / 0.75, within(1e-9));
        assertThat(state.power().fieldHeatMilliwatts().orElseThrow()).isEqualTo(19.7 * 20, within(1e-9));
        assertThat(state.cabinetHeatMilliwatts().orElseThrow()).isEqualTo(
            23.9 * 20 / 0.80 + 18 * 20 / 0.75 - 19.7 * 20, within(1e-9));
        assertThat(state.power().toString()).contains("in the field 0.394 W");
    }

    private static double heat(LoopState state, String device) {
        return state.power(device).heatMilliwatts().orElseThrow();
    }

    @Test
    @DisplayName("an output card and a separately powered isolator keep what their outputs do not give")
    void activeOutputsHeatByWhatTheyDoNotGive() {
        final CurrentLoop loop = CurrentLoop.of("AO", Transmitter.outputCard("AO-1", 16),
            Isolator.separatelyPowered("channel", 14).inputDrop(2, 0).ownMilliwatts(700)
                .feeding(Burden.fieldDevice("valve", 2, 300)));
        final LoopState state = loop.at(20);
        // The card's rail of 16 V gives 20 mA, of which 2 V reach the isolator.
        assertThat(heat(state, "AO-1")).isEqualTo((16 - 2) * 20, within(1e-9));
        // 700 mW and 2 V x 20 mA in, (2 V + 300 ohm x 20 mA) x 20 mA = 160 mW out.
        assertThat(heat(state, "channel")).isEqualTo(700 + 40 - 160, within(1e-9));
        assertThat(state.power().fieldHeatMilliwatts().orElseThrow()).isEqualTo(160, within(1e-9));
        assertThat(state.power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-9));
        final LoopState silent = CurrentLoop.of("AO", Transmitter.outputCard("AO-1", 16), Isolator
            .separatelyPowered("channel", 14).feeding(Burden.receiver("card", 250))).at(20);
        assertThat(silent.power("channel").heatMilliwatts()).isEmpty();
        assertThat(silent.power().notDetermined()).singleElement().asString().contains("channel");
        assertThat(silent.toString()).contains("heat in the cabinet not determined");
    }
}
