package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static spanwright.quantity.Celsius.degC;

import java.util.Random;
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

    /** A loop of every kind of device: nests of any depth, then an output with energy of its own. */
    private static CurrentLoop anyLoop(String name, Supply supply, double[] x) {
        LoopElement end = x[0] < 0.4 ? Burden.receiver("card", 50 + 400 * x[1])
            : x[0] < 0.7 ? Isolator.separatelyPowered("end", 10 + 8 * x[1]).inputDrop(x[2], 100 * x[3])
                .ownMilliwatts(600).feeding(Burden.receiver("card", 100 + 500 * x[4]))
                : Isolator.outputLoopPowered("end", 6 + 3 * x[1]).inputDrop(x[2], 100 * x[3])
                    .outputSupply(Supply.volts(24).named("G2").efficiency(80).internalOhms(10 * x[5]))
                    .feeding(Burden.meter("meter", x[2], 50), Burden.receiver("card", 100 + 500 * x[4]));
        for (int k = (int) (4 * x[5]); k > 0; k--) {
            final Isolator isolator = Isolator.inputLoopPowered("iso " + k, 0).inputDrop(1 + x[k], 40 * x[k
                + 1]);
            end = (x[k + 2] < 0.3 ? isolator.clampedAt(4 + 8 * x[k]) : isolator)
                .feeding(Cable.copper(1).named("wire " + k).metres(100 * x[k]), end);
        }
        return CurrentLoop.of(name, supply, Cable.copper(0.75).metres(1500 * x[6]),
            Transmitter.twoWire("LT", 8 + 4 * x[7]), Burden.surgeDevice("surge", 5), end);
    }

    @Property(tries = 300)
    void everyWattOfALoopIsAccountedFor(@ForAll long seed,
                                        @ForAll @DoubleRange(min = 0, max = 25) double milliamps,
                                        @ForAll Corner corner) {
        final double[] x = new Random(seed).doubles(8).toArray();
        final Supply supply = Supply.parallel("G1", Supply.volts(20 + 10 * x[0]).internalOhms(20 * x[1]),
            Supply.volts(20 + 10 * x[0] + x[2] - 0.5).internalOhms(10 * x[3])).diodeDrop(x[4]).tolerance(5)
            .ripple(0.1).sharedOhms(10 * x[5]).alsoFeeding(3, 22.5).efficiency(70 + 25 * x[6]);
        final LoopState state = anyLoop("LT-1", supply, x).at(milliamps, corner);
        if (state.isSolved()) {
            assertThat(state.power().circuitSumMilliwatts()).isEqualTo(0, within(1e-9));
            // A share of parallel units is a small difference of voltages over a small resistance.
            assertThat(state.power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-6));
            assertThat(state.powers()).allSatisfy(p -> assertThat(p.heatMilliwatts().orElseThrow())
                .isGreaterThanOrEqualTo(-1e-9));
        }
        assertThat(state.isSolved() || state.sentence().startsWith("No solution")).isTrue();
    }

    @Property(tries = 60)
    void everyWattOfAPanelIsAccountedFor(@ForAll long seed, @ForAll Corner corner,
                                         @ForAll @DoubleRange(min = 3.6, max = 22.5) double milliamps) {
        final double[] x = new Random(seed).doubles(8).toArray();
        final Supply supply = Supply.volts(16 + 12 * x[0]).named("G1").internalOhms(5 * x[1])
            .sharedOhms(20 * x[2]).efficiency(85);
        Panel panel = Panel.of("MK", anyLoop("LT-0", supply, x));
        for (int i = 1; i < 6; i++) {
            final double[] y = x.clone();
            y[0] = x[i];
            y[7] = x[7 - i];
            panel = panel.withDirect(anyLoop("LT-" + i, supply, y));
        }
        final PanelState state = panel.at(milliamps, corner);
        assertThat(state.isSolved()).as(state.sentence()).isTrue();
        assertThat(state.power().circuitSumMilliwatts()).isEqualTo(0, within(1e-7));
        assertThat(state.power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-7));
        assertThat(state.supply("G1").currents().totalMilliamps()).isEqualTo(state.channels().stream()
            .filter(c -> c.state().isSolved()).mapToDouble(c -> c.state().primary().milliamps()).sum(),
            within(1e-7));
    }
}
