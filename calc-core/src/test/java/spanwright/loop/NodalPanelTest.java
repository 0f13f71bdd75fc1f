package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

/** Panels on one supply, some of their loops short of voltage, against ngspice. */
class NodalPanelTest {
    private final PublishedData data = PublishedData.load("panel_circuits");

    private double number(String column, int row) {
        return data.numbers(column)[row];
    }

    private Supply supply(int row) {
        final Supply first = Supply.volts(number("e1_V", row)).internalOhms(number("r1_ohm", row));
        final Supply all = number("e2_V", row) == 0 ? first.named("G1")
            : Supply.parallel("G1", first, Supply.volts(number("e2_V", row))
                .internalOhms(number("r2_ohm", row))).diodeDrop(number("diode_V", row));
        return all.sharedOhms(number("shared_ohm", row)).efficiency(80);
    }

    private CurrentLoop loop(int row, int k) {
        final double lift = number("lift" + k + "_V", row);
        return CurrentLoop.of("LT-" + k, supply(row), Transmitter.twoWire("LT", 1).withVoltages(0, lift, 50,
            lift + 0.050 * number("lift" + k + "_ohm", row)), Isolator.separatelyPowered("channel", 20)
                .inputDrop(0, number("loop" + k + "_ohm", row)).feeding(Burden.receiver("card", 250)));
    }

    @Test
    @DisplayName("voltage, currents and powers of 30 panels agree with ngspice (panel_circuits.py)")
    void agreesWithTheNodalSolver() {
        int fallen = 0;
        for (int i = 0; i < data.rows().size(); i++) {
            final int row = i;
            final String at = "panel " + i;
            final PanelState state = Panel.of("MK", IsolatorModule.of("M", 4)
                .drawing(supply(row), number("module_mA", row))
                .channels(IntStream.rangeClosed(1, 4).mapToObj(k -> loop(row, k)).toList()))
                .at(number("asked_mA", row));
            final SupplyPower power = state.supply("G1");
            assertThat(power.volts()).as(at).isEqualTo(number("feed_V", i), within(1e-6));
            assertThat(power.currents().totalMilliamps()).as(at).isEqualTo(number("total_mA", i),
                within(1e-5));
            assertThat(power.unitMilliwatts()).as(at).isEqualTo(number("units_mW", i), within(1e-3));
            assertThat(power.feedMilliwatts()).as(at).isEqualTo(number("feed_mW", i), within(1e-3));
            assertThat(power.mainsMilliwatts().orElseThrow()).as(at).isEqualTo(number("units_mW", i) / 0.80,
                within(1e-3));
            for (int k = 1; k <= 4; k++) {
                assertThat(state.channel("LT-" + k).state().primary().milliamps()).as(at)
                    .isEqualTo(number("current" + k + "_mA", i), within(2e-5));
            }
            assertThat(state.power().sumMilliwatts().orElseThrow()).as(at).isEqualTo(0, within(1e-6));
            fallen += state.shortOfVoltage().size();
        }
        assertThat(fallen).as("loops short of voltage").isBetween(10, 110);
    }
}
