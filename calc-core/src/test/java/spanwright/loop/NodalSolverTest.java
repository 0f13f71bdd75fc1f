package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

/** 200 random loops against ngspice, a general nodal solver that knows nothing of loops. */
class NodalSolverTest {
    private static final double VOLTS = 1e-6;
    /** 2e-7 V, by which a device of 1e5 S is off at its limit, over 10 ohm or more. */
    private static final double MILLIAMPS = 2e-5;
    private final PublishedData data = PublishedData.load("loop_circuits");

    private double number(String column, int row) {
        return Double.parseDouble(data.texts(column).get(row));
    }

    private Supply supply(int row) {
        final Supply first = Supply.volts(number("e1_V", row)).internalOhms(number("r1_ohm", row));
        if (number("e2_V", row) == 0) {
            return first.named("supply");
        }
        return Supply.parallel("supply", first,
            Supply.volts(number("e2_V", row)).internalOhms(number("r2_ohm", row)))
                .diodeDrop(number("diode_V", row));
    }

    private LoopElement end(int row) {
        final Burden far = Burden.receiver("far", number("end_load_ohm", row));
        final double volts = number("end_V", row);
        return switch (data.texts("end").get(row)) {
            case "output-loop-powered" -> Isolator.outputLoopPowered("end", volts)
                .outputSupply(Supply.volts(number("end_supply_V", row))).inputDrop(number("end_in_V", row), 0)
                .feeding(far);
            case "separately powered" -> Isolator.separatelyPowered("end", volts)
                .inputDrop(number("end_in_V", row), 0).feeding(far);
            default -> throw new IllegalStateException("no such end");
        };
    }

    private CurrentLoop loop(int row) {
        List<LoopElement> behind = new ArrayList<>(List.of(Burden.receiver("load", number("load_ohm", row))));
        if (!"none".equals(data.texts("end").get(row))) {
            behind.add(end(row));
        }
        for (int k = (int) number("isolators", row); k > 0; k--) {
            Isolator isolator = Isolator.inputLoopPowered("iso" + k, 0)
                .inputDrop(number("drop" + k + "_V", row), number("drop" + k + "_ohm", row));
            if (number("clamp" + k + "_V", row) > 0) {
                isolator = isolator.clampedAt(number("clamp" + k + "_V", row));
            }
            behind.add(0, Burden.resistor("wire" + k, number("wire" + k + "_ohm", row)));
            behind = new ArrayList<>(List.of(isolator.feeding(behind.toArray(LoopElement[]::new))));
        }
        // 1 km of r ohm/km there and back is 2 r; the resistance of the cable is shared between its cores.
        final List<LoopElement> ring = new ArrayList<>(List.of(
            Cable.measured(Toleranced.exactly(number("cable_ohm", row))).metres(500),
            Transmitter.twoWire("LT", 1).withVoltages(0, number("lift_V", row), 50,
                number("lift_V", row) + 0.050 * number("lift_ohm", row)),
            Burden.meter("meter", number("meter_V", row), number("meter_ohm", row))));
        ring.addAll(behind);
        return CurrentLoop.of("LT", supply(row), ring.toArray(LoopElement[]::new));
    }

    @Test
    @DisplayName("every voltage and the current agree with ngspice to 1e-6 V (loop_circuits.py)")
    void agreesWithTheNodalSolver() {
        final int rows = data.rows().size();
        assertThat(rows).isEqualTo(200);
        int cutShort = 0;
        int clamped = 0;
        for (int row = 0; row < rows; row++) {
            final double asked = number("asked_mA", row);
            final LoopState state = loop(row).at(asked);
            final String at = "circuit " + data.texts("id").get(row);
            if (!state.isSolved()) {
                // Not enough voltage for any current: ngspice shows the device below its lift-off.
                assertThat(number("current_mA", row)).as(at).isLessThanOrEqualTo(1e-6);
                continue;
            }
            final double current = number("current_mA", row);
            assertThat(state.primary().milliamps()).as(at).isEqualTo(current, within(MILLIAMPS));
            assertThat(state.primary().sourceVolts()).as(at).isEqualTo(number("supply_V", row),
                within(VOLTS));
            assertThat(state.element("LT").plusVolts()).as(at).isEqualTo(number("transmitter_plus_V", row),
                within(VOLTS));
            assertThat(state.element("LT").minusVolts()).as(at).isEqualTo(number("transmitter_minus_V", row),
                within(VOLTS));
            assertThat(state.element("meter").minusVolts()).as(at).isEqualTo(number("nest_V", row),
                within(VOLTS));
            assertThat(state.element("load").volts()).as(at).isEqualTo(number("load_V", row), within(VOLTS));
            final OptionalDouble far = state.readings().stream().filter(r -> r.receiver().equals("far"))
                .map(ReceiverReading::milliamps).findFirst().orElse(OptionalDouble.empty());
            if (far.isPresent()) {
                assertThat(state.element("far").volts()).as(at).isEqualTo(number("end_load_V", row),
                    within(VOLTS));
            }
            cutShort += state.primary().isShort() ? 1 : 0;
            clamped += state.circuits().stream().skip(1).anyMatch(CircuitState::isShort) ? 1 : 0;
        }
        assertThat(cutShort).as("loops short of compliance").isBetween(20, 150);
        assertThat(clamped).as("outputs cut short").isBetween(10, 150);
    }
}
