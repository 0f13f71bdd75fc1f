package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static spanwright.quantity.Celsius.degC;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** What holds of every loop: Kirchhoff's laws, and what takes voltage leaves less of it. */
class LoopPropertiesTest {
    private static CurrentLoop loop(double metres, double degrees, double ohms) {
        return CurrentLoop.of("LT-101", Supply.volts(24).internalOhms(5),
            Cable.copper(0.75).metres(metres).at(degC(degrees)), Transmitter.twoWire("LT", 10),
            Isolator.inputLoopPowered("iso", 2).inputDrop(2, 20).feeding(Burden.receiver("card", ohms)));
    }

    @Property(tries = 200)
    void voltagesRoundEveryCircuitSumToZero(@ForAll @DoubleRange(min = 0, max = 3000) double metres,
                                            @ForAll @DoubleRange(min = 1, max = 900) double ohms,
                                            @ForAll @DoubleRange(min = 0, max = 25) double milliamps) {
        final LoopState state = loop(metres, 40, ohms).at(milliamps);
        assertThat(state.circuits()).hasSize(2).allSatisfy(c -> assertThat(c.kirchhoffSum())
            .isEqualTo(0, within(1e-12)));
        assertThat(state.element("card").milliamps()).isEqualTo(state.primary().milliamps());
    }

    @Property(tries = 200)
    void marginFallsWithLengthTemperatureAndLoad(@ForAll @DoubleRange(min = 1, max = 2000) double metres,
                                                 @ForAll @DoubleRange(min = -20, max = 60) double degrees,
                                                 @ForAll @DoubleRange(min = 10, max = 500) double ohms) {
        final double margin = loop(metres, degrees, ohms).marginVolts(20, Corner.NOMINAL);
        assertThat(loop(metres + 1, degrees, ohms).marginVolts(20, Corner.NOMINAL)).isLessThan(margin);
        assertThat(loop(metres, degrees + 1, ohms).marginVolts(20, Corner.NOMINAL)).isLessThan(margin);
        assertThat(loop(metres, degrees, ohms + 1).marginVolts(20, Corner.NOMINAL)).isLessThan(margin);
    }
}
