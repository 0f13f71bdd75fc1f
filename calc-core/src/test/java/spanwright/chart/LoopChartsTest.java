package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static spanwright.quantity.Celsius.degC;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.loop.Burden;
import spanwright.loop.Cable;
import spanwright.loop.Corner;
import spanwright.loop.CurrentLoop;
import spanwright.loop.Isolator;
import spanwright.loop.IsolatorModule;
import spanwright.loop.LoopElement;
import spanwright.loop.Panel;
import spanwright.loop.Supply;
import spanwright.loop.Transmitter;
import spanwright.uncertainty.MonteCarlo;

/** What the pictures of a loop and of a panel say. */
class LoopChartsTest {
    private static final CurrentLoop LOOP = loop("one isolator", 1);

    private static CurrentLoop loop(String name, int isolators) {
        LoopElement behind = Burden.receiver("card", 250);
        for (int i = isolators; i > 0; i--) {
            behind = Isolator.inputLoopPowered("iso " + i, 3.5).feeding(behind);
        }
        return CurrentLoop.of(name, Supply.volts(24).tolerance(10), Cable.copper(1.0).metres(600)
            .between(degC(-10), degC(60)), Transmitter.twoWire("LT", 12), behind);
    }

    private static Picture keep(String name, Picture picture) throws IOException {
        if (System.getProperty("spanwright.pictures") != null) {
            Files.write(Path.of(System.getProperty("spanwright.pictures"), name + ".png"), picture.png());
        }
        return picture;
    }

    @Test
    void staircaseNamesEachStepWithItsVoltage() throws IOException {
        final Picture picture = keep("staircase", LoopCharts.staircase(LOOP.at(20)));
        // 3.5 V + 20 mA x 250 ohm.
        assertThat(picture.svg()).contains(">cable, out<", ">iso 1, input<", ">8.50 V<");
    }

    @Test
    void requiredVoltageStandsAgainstTheSupply() throws IOException {
        final Picture picture = keep("required", LoopCharts.requiredAndAvailable(LOOP));
        assertThat(picture.title()).isEqualTo(LOOP.answer().sentence());
        assertThat(picture.svg()).contains(">least available<", ">needed, nominal<", ">must carry 22.5 mA<");
    }

    @Test
    void loopsOnOneSupplyStandBesideEachOther() throws IOException {
        final List<CurrentLoop> loops = List.of(loop("no isolator", 0), LOOP, loop("two isolators", 2));
        final Picture picture = keep("required-0-1-2", LoopCharts.requiredAndAvailable(loops));
        for (CurrentLoop loop : loops) {
            assertThat(picture.title()).contains(loop.name() + " ", "(" + loop.answer().word() + ")");
            assertThat(picture.svg()).contains(">" + loop.name() + "<");
        }
        // Worked by hand: 21.6 - 21.69 V at 22.5 mA and 60 degC.
        assertThat(picture.title()).contains("one isolator \u22120.09 V (Not shown)");
        assertThatThrownBy(() -> LoopCharts.requiredAndAvailable(List.of(LOOP, LOOP.on(Supply.volts(30)))))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("another supply");
    }

    @Test
    void marginFallsWithTheLengthOfTheCable() throws IOException {
        final CurrentLoop longer = loop("no isolator", 0);
        final Picture picture = keep("length", LoopSweeps.marginAgainstLength(longer, "cable"));
        // The longest cable of the sentence is that of the inverse question, rounded down.
        final double longest = longer.inverse().longestCables().get(0).value().orElseThrow();
        assertThat(picture.title()).contains("may be " + (long) Math.floor(longest) + " m long");
        assertThat(picture.svg()).contains(">as it is, 600 m<", ">nominal<");
        assertThat(keep("length-none", LoopSweeps.marginAgainstLength(loop("two isolators", 2), "cable"))
            .title()).contains("no length of cable would do");
        assertThatThrownBy(() -> LoopSweeps.marginAgainstLength(longer, "cabel"))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("there are [cable]");
    }

    @Test
    void marginFallsWithTheTemperatureOfTheCopper() throws IOException {
        final Picture picture = keep("temperature", LoopSweeps.marginAgainstTemperature(LOOP));
        // Worked by hand: 21.6 - 21.69 V at 60 degC, see LoopVectorsTest.
        assertThat(picture.title()).contains("copper at 60 \u00b0C and every limit against it \u22120.09 V");
        assertThat(picture.svg()).contains(">hottest stated, 60 \u00b0C<");
    }

    @Test
    void theKneeIsMarked() throws IOException {
        final CurrentLoop two = CurrentLoop.of("LT-101", Supply.volts(24), Cable.copper(1.0).metres(600)
            .at(degC(60)), Transmitter.twoWire("LT", 12), Isolator.inputLoopPowered("iso 1", 3.5)
            .feeding(Isolator.inputLoopPowered("iso 2", 3.5).feeding(Burden.receiver("card", 250))));
        final Picture picture = keep("knee", LoopCharts.knee(two.readingOf("card")));
        // Worked by hand, see LoopVectorsTest.
        assertThat(picture.svg()).contains(">knee at 18.17 mA, 88.6 % of span<");
        assertThat(keep("knee-none", LoopCharts.knee(loop("none", 0).readingOf("card"))).svg())
            .doesNotContain("knee at");
    }

    @Test
    void theMarginIsADistribution() throws IOException {
        final var margin = LOOP.marginDistribution(22.5, MonteCarlo.seeded(7).trials(100_000));
        final Picture picture = keep("distribution", LoopCharts.marginDistribution(margin));
        assertThat(picture.title()).isEqualTo(margin + ".");
        assertThat(picture.svg()).contains(">95 % of the trials<").contains("short below 0 V");
    }

    @Test
    void faultsStandOnTheScaleOfTheLimits() throws IOException {
        final CurrentLoop loop = CurrentLoop.of("LT-101", Supply.volts(36).tolerance(10),
            Cable.copper(1.0).metres(600), Transmitter.twoWire("LT", 12),
            Isolator.inputLoopPowered("iso", 3.5).withoutClamp().feeding(Burden.receiver("card", 250)),
            Burden.receiver("recorder", 100));
        final Picture picture = keep("faults", LoopCharts.faults(loop.faults(12)));
        assertThat(picture.svg()).contains(">iso: output open \u2192 card<", ">iso: polarity reversed"
            + " \u2192 recorder<", ">not determined<", ">0.00 mA, failure, low<");
        assertThat(picture.title()).contains("faults");
    }

    @Test
    void aPanelShowsMarginsLoadAndHeat() throws IOException {
        final Supply main = Supply.volts(24).tolerance(5).rated(1000).efficiency(88).named("main supply");
        IsolatorModule module = IsolatorModule.of("module A", 8).drawing(main, 300);
        for (int i = 1; i <= 8; i++) {
            module = module.channel(i, CurrentLoop.of("LT-1" + i, main, Cable.copper(1.0).metres(100 * i),
                Transmitter.twoWire("LT-1" + i, 12), Isolator.separatelyPowered("channel", 12)
                    .inputDrop(2, 0).feeding(Burden.receiver("card", 250))));
        }
        final Panel panel = Panel.of("MC-1", module);
        final Picture margins = keep("panel-margins", PanelCharts.margins(panel
            .atAlarm(Corner.LEAST_VOLTAGE)));
        // By hand: 12 V of the output less 22.5 mA x 250 ohm leave 6.375 V, less than at the transmitter.
        assertThat(margins.svg()).contains(">LT-11<", ">LT-18<", ">+6.38 V, output of channel<");
        final Picture load = keep("panel-load", PanelCharts.load(panel.load()));
        // By hand: eight loops of 20 mA and the module's 300 mA.
        assertThat(load.svg()).contains(">460 mA<", ">1000 mA<");
        final Picture heat = keep("panel-heat", PanelCharts.heat(panel.at(20)));
        final Picture over = keep("panel-heat-over", PanelCharts.heatOverCurrent(panel.heat()));
        assertThat(over.svg()).contains(">nominal<", ">least voltage<", ">most voltage<");
        assertThat(over.title()).contains(panel.heat().hottest().orElseThrow().corner().toString());
        assertThat(heat.svg()).contains(">module A<", ">main supply<").doesNotContain("not determined");
    }
}
