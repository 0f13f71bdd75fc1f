package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import spanwright.loop.Burden;
import spanwright.loop.Cable;
import spanwright.loop.CurrentLoop;
import spanwright.loop.Isolator;
import spanwright.loop.Supply;
import spanwright.loop.Transmitter;

/** What the pictures of a loop say. */
class LoopChartsTest {
    private static final CurrentLoop LOOP = CurrentLoop.of("LT-101", Supply.volts(24).tolerance(10),
        Cable.copper(1.0).metres(600), Transmitter.twoWire("LT", 12),
        Isolator.inputLoopPowered("iso", 3.5).feeding(Burden.receiver("card", 250)));

    private static void keep(String name, Picture picture) throws IOException {
        if (System.getProperty("spanwright.pictures") != null) {
            Files.write(Path.of(System.getProperty("spanwright.pictures"), name + ".png"), picture.png());
        }
    }

    @Test
    void staircaseNamesEachStepWithItsVoltage() throws IOException {
        final Picture picture = LoopCharts.staircase(LOOP.at(20));
        keep("staircase", picture);
        // 3.5 V + 20 mA x 250 ohm.
        assertThat(picture.svg()).contains(">cable, out<", ">iso, input<", ">8.50 V<");
    }

    @Test
    void requiredVoltageStandsAgainstTheSupply() throws IOException {
        final Picture picture = LoopCharts.requiredAndAvailable(LOOP);
        keep("required", picture);
        assertThat(picture.title()).isEqualTo(LOOP.answer().sentence());
        assertThat(picture.svg()).contains(">least available<", ">needed, nominal<");
    }
}
