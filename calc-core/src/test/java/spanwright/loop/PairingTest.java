package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/**
 * The four cases of active and passive outputs and inputs: Kuphaldt, Lessons in Industrial Instrumentation
 * (CC BY 4.0); the rest is common practice, no source.
 */
class PairingTest {
    private static final Supply SUPPLY = Supply.volts(24);
    private static final Burden CARD = Burden.receiver("card", 250);
    private static final Transmitter PASSIVE = Transmitter.twoWire("LT", 12);
    private static final Transmitter ACTIVE = Transmitter.fourWire("FT", 18);

    private static void refused(org.assertj.core.api.ThrowableAssert.ThrowingCallable wiring,
        String... words) {
        assertThatThrownBy(wiring).isInstanceOf(IllegalPairingException.class).hasMessageContainingAll(words);
    }

    @Test
    void twoOfTheFourCasesWork() {
        assertThat(CurrentLoop.of("a", SUPPLY, PASSIVE, CARD).at(20).isSolved()).isTrue();
        assertThat(CurrentLoop.of("b", ACTIVE, CARD).at(20).isSolved()).isTrue();
        assertThat(CurrentLoop.of("c", PASSIVE, Burden.poweredReceiver("card", 250, SUPPLY)).at(20).primary()
            .source()).isEqualTo("24 V supply");
        assertThat(CurrentLoop.of("d", SUPPLY, Transmitter.fourWirePassive("FT", 6), CARD).at(20).isSolved())
            .isTrue();
    }

    @Test
    void activeToPoweredIsRefused() {
        refused(() -> CurrentLoop.of("a", SUPPLY, ACTIVE, CARD), "active to powered", "FT", "24 V supply",
            "damage");
        refused(() -> CurrentLoop.of("a", ACTIVE, Burden.poweredReceiver("card", 250, SUPPLY)),
            "active to powered",
            "card (a powered input)");
        refused(() -> CurrentLoop.of("a", SUPPLY, PASSIVE, Isolator.separatelyPowered("iso", 15)
            .feeding(Burden.poweredReceiver("card", 250, SUPPLY))), "active to powered",
                "output loop of iso");
    }

    @Test
    void passiveToPassiveIsRefused() {
        refused(() -> CurrentLoop.of("a", PASSIVE, CARD), "passive to passive", "0 mA");
        refused(() -> CurrentLoop.of("a", Transmitter.fourWirePassive("FT", 6), CARD), "passive to passive");
        refused(
            () -> CurrentLoop.of("a", SUPPLY, PASSIVE, Isolator.outputLoopPowered("iso", 8).feeding(CARD)),
            "passive to passive", "output loop of iso");
    }

    @Test
    void loopPoweredOutputOntoASupplyIsRefused() {
        refused(() -> CurrentLoop.of("a", SUPPLY, PASSIVE, Isolator.inputLoopPowered("iso", 3.5)
            .feeding(Burden.poweredReceiver("card", 250, SUPPLY))), "iso", "must never meet a supply");
        refused(() -> CurrentLoop.of("a", SUPPLY, PASSIVE, Isolator.inputLoopPowered("iso", 3.5)
            .outputSupply(SUPPLY).feeding(CARD)), "must never meet a supply");
    }

    @Test
    void otherWiringsThatCannotWorkAreRefused() {
        refused(() -> CurrentLoop.of("a", SUPPLY, PASSIVE, Burden.poweredReceiver("card", 250, SUPPLY)),
            "two supplies");
        refused(() -> CurrentLoop.of("a", SUPPLY, CARD), "0 transmitters");
        refused(() -> CurrentLoop.of("a", SUPPLY, PASSIVE, Transmitter.twoWire("LT2", 12), CARD),
            "2 transmitters");
        refused(() -> CurrentLoop.of("a", SUPPLY, PASSIVE, Isolator.inputLoopPowered("iso", 3.5)),
            "feeds nothing");
        refused(() -> CurrentLoop.of("a", SUPPLY, PASSIVE, Isolator.inputLoopPowered("iso", 3.5)
            .feeding(Transmitter.twoWire("LT2", 12))), "same current");
        assertThatThrownBy(() -> CurrentLoop.of("a", SUPPLY, PASSIVE, CARD, CARD))
            .hasMessageContaining("two elements named card");
    }
}
