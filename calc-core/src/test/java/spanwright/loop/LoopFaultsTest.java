package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Faults that depend on what a device is stated to do; currents by hand from Ohm's law. */
class LoopFaultsTest {
    private static final Isolator ISO = Isolator.inputLoopPowered("iso", 3);

    private static CurrentLoop loop(Isolator isolator) {
        return CurrentLoop.of("LT-101", Supply.volts(24).tolerance(10), Transmitter.twoWire("LT", 12),
            Burden.receiver("first", 100), isolator.feeding(Burden.receiver("card", 250)));
    }

    private static void assertReads(FaultTable.Row row, double first, double card) {
        assertThat(row.readings()).extracting(r -> r.milliamps().orElse(-99)).as(row.toString())
            .containsExactly(first, card);
    }

    @Test
    @DisplayName("an open output without a clamp breaks the primary loop: every receiver reads 0 mA")
    void anOpenOutputWithoutClamp() {
        final FaultTable table = loop(ISO.withoutClamp()).faults(12);
        final FaultTable.Row row = table.row(LoopFault.Kind.OPEN_OUTPUT, "iso");
        assertReads(row, 0, 0);
        assertThat(row.primary()).isEqualTo(FaultTable.Survival.NO);
        assertThat(table.flagging(row)).isEqualTo(FaultTable.Flagging.FLAGGED);
    }

    @Test
    void anOpenOutputOfAPoweredIsolatorLeavesThePrimaryLoop() {
        final FaultTable.Row row = loop(Isolator.separatelyPowered("iso", 12)).faults(12)
            .row(LoopFault.Kind.OPEN_OUTPUT, "iso");
        assertReads(row, 12, 0);
        assertThat(row.primary()).isEqualTo(FaultTable.Survival.YES);
    }

    @Test
    @DisplayName("a clamp above what the supply can give drives the loop short: 24 - 12 - 3 = 9 V")
    void aClampAboveTheComplianceOfTheSource() {
        assertThat(loop(ISO.clampedAt(6)).faults(12).row(LoopFault.Kind.OPEN_OUTPUT, "iso").primary())
            .isEqualTo(FaultTable.Survival.YES);
        // 9 V - 8.5 V over 100 ohm: 5 mA.
        final FaultTable.Row sunk = loop(ISO.clampedAt(8.5)).faults(12).row(LoopFault.Kind.OPEN_OUTPUT,
            "iso");
        assertReads(sunk, 5, 0);
        assertThat(sunk.primary()).isEqualTo(FaultTable.Survival.SHORT);
        assertThat(sunk.unnoticed(12)).extracting(ReceiverReading::receiver).containsExactly("first");
        final FaultTable.Row dead = loop(ISO.clampedAt(9.5)).faults(12).row(LoopFault.Kind.OPEN_OUTPUT,
            "iso");
        assertReads(dead, 0, 0);
        assertThat(dead.primary()).isEqualTo(FaultTable.Survival.NO);
        assertThat(dead.note()).contains("No solution");
    }

    @ParameterizedTest(name = "an isolator that {0} when reversed: {1} and {2} mA, {3}")
    @CsvSource({"BLOCKS, 0, 0, NO, FLAGGED", "WORKS, 12, 12, YES, NOTHING_WRONG",
        "PASSES_WITHOUT_SIGNAL, 12, 0, YES, FLAGGED", "PASSES_REVERSED, 12, -12, YES, FLAGGED"})
    void aReversedIsolator(WhenReversed behaviour, double first, double card, FaultTable.Survival primary,
                           FaultTable.Flagging flagging) {
        final FaultTable table = loop(ISO.whenReversed(behaviour)).faults(12);
        final FaultTable.Row row = table.row(LoopFault.Kind.REVERSED, "iso");
        assertReads(row, first, card);
        assertThat(row.primary()).isEqualTo(primary);
        assertThat(table.flagging(row)).isEqualTo(flagging);
    }

    @Test
    void whatIsNotStatedWhenReversedIsNotDetermined() {
        final FaultTable table = loop(ISO).faults(12);
        final FaultTable.Row row = table.row(LoopFault.Kind.REVERSED, "iso");
        assertThat(row.readings()).allMatch(r -> r.milliamps().isEmpty());
        assertThat(row.primary()).isEqualTo(FaultTable.Survival.NOT_DETERMINED);
        assertThat(table.flagging(row)).isEqualTo(FaultTable.Flagging.NOT_DETERMINED);
    }

    @Test
    @DisplayName("a reversed transmitter blocks, or conducts without setting the current: 9 V / 350 ohm")
    void aReversedPassiveTransmitter() {
        assertReads(loop(ISO).faults(12).row(LoopFault.Kind.REVERSED, "LT"), 0, 0);
        final CurrentLoop conducting = loop(ISO).exchanging("LT", t -> ((Transmitter) t)
            .whenReversed(WhenReversed.PASSES_REVERSED));
        // (24 V - 3 V) / (100 + 250) ohm = 60 mA: beyond what is worked out.
        final FaultTable.Row row = conducting.faults(12).row(LoopFault.Kind.REVERSED, "LT");
        assertThat(row.readings()).allMatch(ReceiverReading::orMore);
        final FaultTable.Row weaker = conducting.on(Supply.volts(19.8)).faults(12)
            .row(LoopFault.Kind.REVERSED, "LT");
        // (19.8 V - 3 V) / 350 ohm = 48 mA.
        assertThat(weaker.readings().get(1).milliamps().orElseThrow()).isEqualTo(48, within(1e-9));
        assertThat(weaker.note()).contains("Look for damage");
        assertThat(weaker.flagging(12)).isEqualTo(FaultTable.Flagging.FLAGGED);
        // The same current flows when its terminals are shorted.
        assertThat(conducting.on(Supply.volts(19.8)).faults(12).row(LoopFault.Kind.SHORTED_OUTPUT, "LT")
            .readings()).isEqualTo(weaker.readings());
    }

    @Test
    void aReversedActiveOutputTurnsTheSignOfWhatLetsItThrough() {
        final CurrentLoop loop = CurrentLoop.of("FT", Transmitter.fourWire("FT-1", 20),
            Burden.receiver("first", 100), ISO.whenReversed(WhenReversed.PASSES_WITHOUT_SIGNAL)
                .feeding(Burden.receiver("card", 250)));
        assertReads(loop.faults(12).row(LoopFault.Kind.REVERSED, "FT-1"), -12, 0);
        assertReads(loop.exchanging("iso", i -> ((Isolator) i).whenReversed(WhenReversed.BLOCKS)).faults(12)
            .row(LoopFault.Kind.REVERSED, "FT-1"), 0, 0);
        assertReads(loop.exchanging("iso", i -> ((Isolator) i).whenReversed(WhenReversed.WORKS)).faults(12)
            .row(LoopFault.Kind.REVERSED, "FT-1"), -12, 12);
        final FaultTable.Row unknown = loop.exchanging("iso", i -> ((Isolator) i)
            .whenReversed(WhenReversed.UNKNOWN)).faults(12).row(LoopFault.Kind.REVERSED, "FT-1");
        assertReads(unknown, -12, -99);
        assertThat(unknown.primary()).isEqualTo(FaultTable.Survival.NOT_DETERMINED);
        // Its short leads the current past the loop.
        assertReads(loop.faults(12).row(LoopFault.Kind.SHORTED_OUTPUT, "FT-1"), 0, 0);
    }

    @Test
    void aSupplyBehindAnOutputSinksAlone() {
        final CurrentLoop loop = loop(Isolator.outputLoopPowered("iso", 8)
            .outputSupply(Supply.volts(14).tolerance(20).named("G2")));
        // 14 V x 0.8 - 8 V = 3.2 V over 250 ohm: 12.8 mA, short of 16 mA; the primary loop stays.
        final FaultTable.Row row = loop.faults(16).row(LoopFault.Kind.SUPPLY_AT_MINIMUM, "output of iso");
        assertThat(row.readings().get(0).milliamps()).hasValue(16);
        assertThat(row.readings().get(1).milliamps().orElseThrow()).isEqualTo(12.8, within(1e-9));
        assertThat(row.primary()).isEqualTo(FaultTable.Survival.YES);
        assertThat(row.flagging(16)).isEqualTo(FaultTable.Flagging.NOT_FLAGGED);
        final CurrentLoop dead = loop.exchangingSupplies(s -> s.name().equals("G2")
            ? s.tolerance(50) : s);
        final FaultTable.Row none = dead.faults(16).row(LoopFault.Kind.SUPPLY_AT_MINIMUM, "output of iso");
        assertReads(none, 16, 0);
        assertThat(none.primary()).isEqualTo(FaultTable.Survival.YES);
        assertReads(dead.faults(16).row(LoopFault.Kind.BROKEN_COMMON, "output of iso"), 16, 0);
        assertThatThrownBy(() -> loop.faults(12).row(LoopFault.Kind.BROKEN_COMMON, "nowhere"))
            .hasMessageContaining("no fault common broken at nowhere");
    }

    @Test
    void faultsOfALoopThatIsNotSoundAreRefused() {
        assertThatThrownBy(() -> loop(ISO).on(Supply.volts(16)).faults(12))
            .hasMessageContaining("the sound loop does not carry it");
    }

    @ParameterizedTest(name = "{0} mA: {1}")
    @CsvSource({"3.6, FAILURE_LOW", "3.61, UNDEFINED", "3.79, UNDEFINED", "3.8, MEASURING", "20.5, MEASURING",
        "20.51, UNDEFINED", "20.99, UNDEFINED", "21, FAILURE_HIGH", "-12, FAILURE_LOW"})
    @DisplayName("NAMUR NE 43: measuring 3.8 to 20.5 mA, failure at or below 3.6, at or above 21.0 mA")
    void limitsInTheMannerOfNe43(double milliamps, Ne43 expected) {
        assertThat(Ne43.of(milliamps)).isEqualTo(expected);
    }
}
