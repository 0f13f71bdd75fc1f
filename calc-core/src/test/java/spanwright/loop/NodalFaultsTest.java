package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

/** Faults wired into ngspice, a general nodal solver: what flows then is what the fault table says. */
class NodalFaultsTest {
    /** 20 mA / 1e3 S of a device over 50 ohm, and 20 V over the leak of 100 Mohm, in mA. */
    private static final double MILLIAMPS = 2e-3;
    private static final Map<String, LoopFault> FAULTS = Map.of(
        "output shorted", new LoopFault(LoopFault.Kind.SHORTED_OUTPUT, "iso"),
        "output open", new LoopFault(LoopFault.Kind.OPEN_OUTPUT, "iso"),
        "input open", new LoopFault(LoopFault.Kind.OPEN_INPUT, "iso"),
        "transmitter shorted", new LoopFault(LoopFault.Kind.SHORTED_OUTPUT, "LT"),
        "end output shorted", new LoopFault(LoopFault.Kind.SHORTED_OUTPUT, "end"),
        "supply at minimum", new LoopFault(LoopFault.Kind.SUPPLY_AT_MINIMUM, "loop"),
        "card reversed", new LoopFault(LoopFault.Kind.REVERSED, "card"),
        "common broken", new LoopFault(LoopFault.Kind.BROKEN_COMMON, "loop"));
    private final PublishedData data = PublishedData.load("loop_faults");

    private double number(String column, int row) {
        return data.numbers(column)[row];
    }

    private CurrentLoop loop(int row) {
        return CurrentLoop.of("loop", Supply.volts(number("e1_V", row)).named("supply")
                .tolerance(number("tolerance_percent", row)).internalOhms(number("r1_ohm", row)),
            Cable.measured(Toleranced.exactly(number("cable_ohm", row))).metres(500),
            Transmitter.twoWire("LT", number("lift_V", row)),
            Isolator.inputLoopPowered("iso", 0).inputDrop(number("drop_V", row), number("drop_ohm", row))
                .clampedAt(number("clamp_V", row)).feeding(Burden.receiver("card", number("card_ohm", row)),
                    Isolator.outputLoopPowered("end", number("end_V", row))
                        .inputDrop(number("end_in_V", row), 0)
                        .outputSupply(Supply.volts(number("end_supply_V", row)).named("far supply"))
                        .feeding(Burden.receiver("far", number("far_ohm", row)))));
    }

    private void assertReads(FaultTable.Row row, String receiver, double milliamps) {
        final ReceiverReading reading = row.readings().stream().filter(r -> r.receiver().equals(receiver))
            .findFirst().orElseThrow();
        if (reading.orMore()) {
            assertThat(milliamps).as(row.toString()).isGreaterThan(50);
        } else {
            assertThat(reading.milliamps().orElseThrow()).as(row.toString()).isEqualTo(milliamps,
                within(MILLIAMPS));
        }
    }

    @Test
    @DisplayName("80 loops, eight faults: every reading agrees with ngspice (loop_faults.py)")
    void readingsWithAFaultAgreeWithTheNodalSolver() {
        final List<String> faults = data.texts("fault");
        assertThat(faults).hasSize(80);
        int sunk = 0;
        int beyond = 0;
        for (int i = 0; i < faults.size(); i++) {
            final double asked = number("asked_mA", i);
            final LoopFault fault = FAULTS.get(faults.get(i));
            final FaultTable.Row row = loop(i).faults(asked).row(fault.kind(), fault.at());
            assertReads(row, "card", number("card_mA", i));
            assertReads(row, "far", number("far_mA", i));
            final double primary = number("primary_mA", i);
            if (primary < 1e-3) {
                assertThat(row.primary()).as(row.toString()).isEqualTo(FaultTable.Survival.NO);
            } else if (primary < asked - 1e-2) {
                assertThat(row.primary()).as(row.toString()).isEqualTo(FaultTable.Survival.SHORT);
            }
            sunk += fault.kind() == LoopFault.Kind.SUPPLY_AT_MINIMUM && primary < asked - 0.1 ? 1 : 0;
            beyond += row.readings().stream().anyMatch(ReceiverReading::orMore) ? 1 : 0;
        }
        assertThat(sunk).as("supplies that sink too far").isGreaterThan(3);
        assertThat(beyond).as("currents beyond 50 mA").isGreaterThan(3);
    }

    @Test
    @DisplayName("an open or short that reads 0 or above 21 mA is flagged by NE 43, one in between is not")
    void flaggedIsWhatLiesOutsideTheLimits() {
        final List<String> faults = data.texts("fault");
        final List<FaultTable.Flagging> found = new ArrayList<>();
        for (int i = 0; i < faults.size(); i++) {
            final double asked = number("asked_mA", i);
            final LoopFault fault = FAULTS.get(faults.get(i));
            final FaultTable table = loop(i).faults(asked);
            final double[] read = {number("card_mA", i), number("far_mA", i)};
            boolean wrong = false;
            boolean unseen = false;
            for (double current : read) {
                final boolean off = Math.abs(current - asked) > 1e-2;
                // NAMUR NE 43 as four secondary pages give it: failure at or below 3.6, at or above 21.0 mA.
                wrong |= off;
                unseen |= off && current > 3.6 && current < 21;
            }
            final FaultTable.Flagging flagging = table.flagging(table.row(fault.kind(), fault.at()));
            assertThat(flagging).as(table.row(fault.kind(), fault.at()).toString()).isEqualTo(
                unseen ? FaultTable.Flagging.NOT_FLAGGED : wrong ? FaultTable.Flagging.FLAGGED
                    : FaultTable.Flagging.NOTHING_WRONG);
            found.add(flagging);
        }
        assertThat(found).contains(FaultTable.Flagging.NOT_FLAGGED, FaultTable.Flagging.FLAGGED,
            FaultTable.Flagging.NOTHING_WRONG);
    }
}
