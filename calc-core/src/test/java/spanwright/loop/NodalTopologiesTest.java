package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

/**
 * Split and shared supplies, output cards, nests of up to 12 isolators and tapped receivers against ngspice,
 * with the power of each kind of element.
 */
class NodalTopologiesTest {
    private static final double VOLTS = 1e-6;
    private static final double MILLIAMPS = 2e-5;
    private static final double MILLIWATTS = 1e-3;
    private final PublishedData data = PublishedData.load("loop_topologies");

    private double number(String column, int row) {
        return data.numbers(column)[row];
    }

    private CurrentLoop loop(int row) {
        final String kind = data.texts("kind").get(row);
        final List<LoopElement> ring = new ArrayList<>(List.of(
            Cable.measured(Toleranced.exactly(number("cable_ohm", row))).metres(500)));
        ring.add("card".equals(kind) ? Transmitter.outputCard("AO", number("card_V", row))
            : Transmitter.twoWire("LT", 1).withVoltages(0, number("lift_V", row), 50,
                number("lift_V", row) + 0.050 * number("lift_ohm", row)));
        final Burden load = "card".equals(kind)
            ? Burden.fieldDevice("load", number("device_V", row), number("load_ohm", row))
            : Burden.receiver("load", number("load_ohm", row));
        LoopElement end = load.tappedThrough(number("tap_ohm", row));
        for (int k = (int) number("isolators", row); k > 0; k--) {
            end = Isolator.inputLoopPowered("iso" + k, 0).inputDrop(number("drop_V", row),
                number("drop_ohm", row)).feeding(Burden.resistor("wire" + k, number("wire_ohm", row)), end);
        }
        ring.add(end);
        final LoopElement[] elements = ring.toArray(LoopElement[]::new);
        final Supply first = "card".equals(kind) ? null
            : Supply.volts(number("e1_V", row)).internalOhms(number("r1_ohm", row));
        return switch (kind) {
            case "card" -> CurrentLoop.of("loop", elements);
            case "split" -> CurrentLoop.of("loop", Supply.split("supply", first,
                Supply.volts(number("e2_V", row)).internalOhms(number("r2_ohm", row))), elements);
            default -> CurrentLoop.of("loop", first.sharedOhms(number("shared_ohm", row))
                .withOthers(number("others_mA", row)), elements);
        };
    }

    private static double sum(LoopState state, String start) {
        return state.powers().stream().filter(p -> p.device().startsWith(start))
            .mapToDouble(p -> p.heatMilliwatts().orElseThrow()).sum();
    }

    @Test
    @DisplayName("current, voltages and powers of 80 loops agree with ngspice (loop_topologies.py)")
    void agreesWithTheNodalSolver() {
        int cutShort = 0;
        int deep = 0;
        for (int i = 0; i < data.rows().size(); i++) {
            final String kind = data.texts("kind").get(i);
            final LoopState state = loop(i).at(number("asked_mA", i));
            final String at = kind + " circuit " + i;
            if (!state.isSolved()) {
                // Not enough voltage for any current: ngspice shows the device below its lift-off.
                assertThat(number("current_mA", i)).as(at).isLessThanOrEqualTo(1e-6);
                continue;
            }
            assertThat(state.primary().milliamps()).as(at).isEqualTo(number("current_mA", i),
                within(MILLIAMPS));
            assertThat(state.primary().sourceVolts()).as(at).isEqualTo(number("supply_V", i), within(VOLTS));
            assertThat(state.element("load").volts()).as(at)
                .isEqualTo(number("load_V", i) + number("device_V", i), within(VOLTS));
            final LoopElement first = loop(i).elements().get(2);
            assertThat(state.element(first.name()).volts()).as(at).isEqualTo(number("nest_V", i),
                within(VOLTS));
            assertThat(sum(state, "cable")).as(at).isEqualTo(number("cable_mW", i), within(MILLIWATTS));
            assertThat(sum(state, "iso")).as(at).isEqualTo(number("isolators_mW", i), within(MILLIWATTS));
            assertThat(sum(state, "load")).as(at).isEqualTo(number("load_mW", i), within(MILLIWATTS));
            if (!"card".equals(kind)) {
                assertThat(sum(state, "LT")).as(at).isEqualTo(number("transmitter_mW", i),
                    within(MILLIWATTS));
            }
            cutShort += state.primary().isShort() ? 1 : 0;
            deep += number("isolators", i) > 5 ? 1 : 0;
        }
        assertThat(cutShort).as("loops short of compliance").isGreaterThan(8);
        assertThat(deep).as("nests of more than 5 isolators").isGreaterThan(20);
    }
}
