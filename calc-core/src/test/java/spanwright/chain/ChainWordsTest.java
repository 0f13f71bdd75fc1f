package spanwright.chain;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.quantity.Celsius.degC;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import spanwright.temperature.Ambient;

/**
 * What the results of a chain say as text. The chain is the example of three equal stages, whose figures are
 * known.
 */
class ChainWordsTest {
    private static final MeasuringChain THREE = MeasuringChain.of(Stream.of("A", "B", "C").map(n ->
        ChainElement.oneToOne(n).withAccuracy(percentOfSpan(0.1)).withTemperatureLimit(percentOfSpan(0.2)))
            .toList())
        .withTrials(100_000);

    @Test
    void theFourMethodsStandInOneOrderWithWhatEachRestsOn() {
        final FourMethods methods = THREE.error(Coverage.coverage(0.95).withFactor(2)).methods();
        assertThat(methods.figures()).extracting(MethodFigure::method)
            .containsExactly(MethodFigure.Method.values());
        assertThat(methods.toString().lines().toList()).satisfiesExactly(
            worst -> assertThat(worst).startsWith("worst case: \u00b10.900 % of span ("),
            root -> assertThat(root).startsWith("root sum of squares of limits: \u00b10.387 % of span ("),
            gum -> assertThat(gum).startsWith("GUM: \u00b10.447 % of span ("),
            simulated -> assertThat(simulated).startsWith("Monte Carlo: \u00b10.43"));
    }

    @Test
    void aContributionNamesItsLimitShareAndSource() {
        final ChainError error = THREE.error(Coverage.coverage(0.95));
        assertThat(error.contributions()).hasSize(6);
        assertThat(error.contributions().get(0).toString())
            // 0.2 / sqrt 3 = 0.115; of the variance 0.04 / (3 * 0.05) = 26.7 %.
            .contains(": \u00b10.200 % of span, rectangular, u = 0.12 % of span, 26.7 % of the variance; ")
            .endsWith("guaranteed limit, data sheet, over the whole ambient range");
        assertThat(error.toString()).contains("Error of A \u2192 B \u2192 C", "Known error 0.000 % of span")
            .contains(error.contributions().get(5).toString());
        assertThat(error.tornado().get(0).toString()).endsWith(": \u22120.200 to +0.200 % of span");
        assertThat(error.sobolIndices().get(0).toString()).contains(": first order 0.26", ", total 0.26");
        assertThat(error.isGuaranteed()).isTrue();
    }

    @Test
    void aClaimShowsItsSentenceAndTheMethodsBelow() {
        final ChainClaim claim = THREE.claim(percentOfSpan(0.5), Coverage.coverage(0.95));
        assertThat(claim.toString()).startsWith("Meets 0.50 % of span at 95 % coverage with 0.06")
            .endsWith("\n" + claim.methods().orElseThrow());
        assertThat(claim.mayPromise()).as("the worst case is 0.900").isFalse();
        assertThat(THREE.claim(percentOfSpan(0.9), Coverage.coverage(0.95)).mayPromise()).isTrue();
    }

    @Test
    void theIntervalAtATemperatureLiesAboutTheKnownError() {
        final TemperatureError at = new TemperatureError(degC(20), 0.25, 0.5, 1);
        assertThat(at.lower()).isEqualTo(-0.25);
        assertThat(at.upper()).isEqualTo(0.75);
    }

    @Test
    void aChainSaysItsElementsItsAmbientAndItsPoint() {
        assertThat(THREE.in(Ambient.between(degC(-10), degC(45)))).asString()
            .startsWith("A \u2192 B \u2192 C, \u221210 \u00b0C to 45 \u00b0C outdoor");
        assertThat(new OperatingPoint(75, List.of("field at 45 \u00b0C"))).asString()
            .isEqualTo("at 75 % input, field at 45 \u00b0C");
        assertThat(ChainElement.oneToOne("A").inCabinet().inField()).isEqualTo(ChainElement.oneToOne("A"));
        assertThat(ChainElement.oneToOne("A")).asString().startsWith("A");
    }
}
