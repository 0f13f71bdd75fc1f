package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static spanwright.quantity.Celsius.degC;
import static spanwright.quantity.Kelvin.kelvin;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import spanwright.chain.ChainClaim;
import spanwright.chain.ChainElement;
import spanwright.chain.Coverage;
import spanwright.chain.MeasuringChain;
import spanwright.readings.Readings;
import spanwright.reference.PublishedData;
import spanwright.temperature.Ambient;
import spanwright.temperature.TemperatureRate;
import spanwright.temperature.TemperatureTest;

/** The pictures of the demo chain, and what they say. The data are invented, for showing only. */
class ChainChartsTest {
    private static TemperatureTest chamber;
    private static ChainClaim claim;

    @BeforeAll
    static void chain() {
        final Path demo = PublishedData.folder().resolve("demo");
        chamber = TemperatureTest.of(Readings.read(demo.resolve("LT-101B-chamber.csv")).runs());
        claim = MeasuringChain.of(
            ChainElement.measured("isolator", Readings.read(demo.resolve("LT-101B.csv")).run("LT-101B"))
                .withTemperature(chamber).inCabinet(),
            ChainElement.oneToOne("input card").withAccuracy(percentOfSpan(0.05))
                .withTemperature(TemperatureRate.ppmPerDegC(25).maximumOfSpan()).inCabinet()
                    .calibratedAt(degC(23)))
            .in(Ambient.between(degC(-10), degC(45)).withCabinetRise(kelvin(8)))
            .withTrials(100_000).claim(percentOfSpan(0.3), Coverage.coverage(0.95));
    }

    private static void keep(String name, Picture picture) throws IOException {
        if (System.getProperty("spanwright.pictures") != null) {
            Files.write(Path.of(System.getProperty("spanwright.pictures"), name + ".png"), picture.png());
        }
    }

    @Test
    void theDistributionCarriesFourIntervalsAndTheTarget() throws IOException {
        final Picture picture = ChainCharts.distribution(claim);
        keep("distribution", picture);
        assertThat(picture.title()).startsWith("By Monte Carlo, 95 % coverage, the error stays within \u00b1")
            .endsWith("inside the target of \u00b10.30 % of span.");
        assertThat(picture.svg()).contains(">worst case \u00b1", ">root sum of squares of limits \u00b1",
            ">GUM \u00b1", ">Monte Carlo \u00b1", ">target +0.30<", ">target \u22120.30<");
    }

    @Test
    void contributionsAndTornadoNameEachCause() throws IOException {
        keep("contributions", ChainCharts.contributions(claim.error()));
        keep("tornado", ChainCharts.tornado(claim.error()));
        final String first = claim.error().contributions().get(0).label();
        assertThat(ChainCharts.contributions(claim.error()).title()).startsWith(first + " makes ");
        assertThat(ChainCharts.contributions(claim.error()).svg()).contains(">" + first + "<");
    }

    @Test
    void showsTheErrorOverTemperatureAndInput() throws IOException {
        keep("temperature", ChainCharts.temperature(claim));
        keep("input", ChainCharts.byInput(claim));
        assertThat(ChainCharts.temperature(claim).title()).contains("outdoor", "% of span at");
        assertThat(ChainCharts.byInput(claim).svg()).contains(">GUM<", ">worst case<", ">target 0.30<");
    }

    @Test
    void aChainWithoutAmbientHasNoTemperatureToDraw() {
        final ChainClaim bare = MeasuringChain.of(ChainElement.oneToOne("card")
            .withAccuracy(percentOfSpan(0.1)))
            .withTrials(10_000).claim(percentOfSpan(0.3), Coverage.coverage(0.95));
        assertThatThrownBy(() -> ChainCharts.temperature(bare)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("no error against temperature");
    }

    @Test
    void showsZeroAndSpanInTheChamber() throws IOException {
        final Picture picture = TemperatureCharts.errors(chamber);
        keep("chamber", picture);
        assertThat(picture.title()).startsWith("LT-101B: zero moves by up to ").contains("bow-tie");
        assertThat(picture.svg()).contains(">calibrated at 21.5 \u00b0C<");
    }
}
