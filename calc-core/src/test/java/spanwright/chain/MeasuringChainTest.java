package spanwright.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.chain.Coverage.coverage;
import static spanwright.quantity.Celsius.degC;
import static spanwright.quantity.Kelvin.kelvin;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;
import static spanwright.reference.AsPrinted.assertAsPrinted;
import static spanwright.temperature.TemperatureRate.percentPerDegC;
import static spanwright.temperature.TemperatureRate.ppmPerDegC;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.temperature.Ambient;
import spanwright.uncertainty.MonteCarloResult;
import spanwright.verdict.Word;

/** Checks whole chains against worked values. */
class MeasuringChainTest {

    private static ChainElement stage(String name) {
        return ChainElement.oneToOne(name).withAccuracy(percentOfSpan(0.1))
            .withTemperatureLimit(percentOfSpan(0.2));
    }

    private static MeasuringChain three() {
        return MeasuringChain.of(stage("A"), stage("B"), stage("C"));
    }

    /** Monte Carlo agrees to half a unit of the last place and four of its own standard errors. */
    private static void assertMonteCarlo(double expected, double place, ChainError e, double share) {
        final double error = new AbsoluteError(e.monteCarlo()).quantileError(share);
        assertEquals(expected, new AbsoluteError(e.monteCarlo()).quantile(share), place / 2 + 4 * error);
    }

    @Test
    @DisplayName("three stages, 0.1 accuracy and 0.2 temperature limit each: 0.900 / 0.387 / 0.447 / 0.433"
        + " [computed and verified independently of this project]")
    void addsThreeStagesInFourWays() {
        final ChainError e = three().error(coverage(0.95));
        assertAsPrinted("0.900", e.methods().worstCase().limit());
        assertAsPrinted("0.387", e.methods().rootSumOfSquares().limit());
        assertAsPrinted("0.447", e.methods().gum().limit());
        assertMonteCarlo(0.433, 0.001, e, 0.95);
    }

    @Test
    @DisplayName("the same with temperature terms fully correlated: U 0.721, P95 0.623"
        + " [computed and verified independently of this project]")
    void fullyCorrelatedTemperatureTerms() {
        final ChainError e = three().sharingCoefficients("one module", 1, "A", "B", "C")
            .error(coverage(0.95));
        assertAsPrinted("0.721", e.methods().gum().limit());
        assertMonteCarlo(0.623, 0.001, e, 0.95);
    }

    private static MeasuringChain sharedTemperature(double r) {
        final MeasuringChain chain = MeasuringChain.of(IntStream.range(0, 3).mapToObj(i ->
            ChainElement.oneToOne("S" + i).calibratedAt(degC(0))
                .withTemperature(percentPerDegC(0.006).maximumOfSpan())).toList())
            .in(Ambient.evenlyBetween(degC(-33), degC(32)));
        return r == 0 ? chain : chain.sharingCoefficients("same lot", r, "S0", "S1", "S2");
    }

    @ParameterizedTest(name = "coefficients correlated {0}: P95 {1}, P99.7 {2}")
    @CsvSource(textBlock = """
        # three stages, coefficient limit 0.006 %/degC, one temperature, uniform -33..+32 degC about that at
        # calibration; computed and verified independently of this project. There the correlation of 0.5 is
        # that of the normals behind the rectangles: 6/pi asin(0.5/2) = 0.4826 of the coefficients themselves.
        0,      0.247, 0.406
        0.4826, 0.341,
        1,      0.410, 0.541
        """)
    void oneTemperatureForThreeStages(double r, double p95, Double p997) {
        final ChainError e = sharedTemperature(r).error(coverage(0.95));
        assertMonteCarlo(p95, 0.001, e, 0.95);
        if (p997 != null) {
            assertMonteCarlo(p997, 0.001, e, 0.997);
        }
    }

    @Test
    @DisplayName("coefficient times temperature, both zero on average: sd 0.113, not 0"
        + " [computed and verified independently of this project]")
    void secondOrderKeepsTheProduct() {
        final ChainError e = sharedTemperature(0).error(coverage(0.95));
        assertAsPrinted("0.113", e.budget().u());
        assertEquals(0.1126, e.monteCarlo().u(), 0.0005);
        assertTrue(e.warnings().stream().anyMatch(w -> w.contains("second-order")), e.warnings()::toString);
    }

    @Test
    @DisplayName("root sum of squares of the limits 0.343 misses P95 0.410 of shared coefficients"
        + " [computed and verified independently of this project]")
    void rootSumOfSquaresFallsShortOfSharedCoefficients() {
        final ChainError e = sharedTemperature(1).error(coverage(0.95));
        assertAsPrinted("0.343", e.methods().rootSumOfSquares().limit());
        assertTrue(e.methods().monteCarlo().limit() > e.methods().rootSumOfSquares().limit());
    }

    @Test
    @DisplayName("separate temperatures, independent coefficients: P95 0.222, P99.7 0.338"
        + " [computed and verified independently of this project]")
    void separateTemperatures() {
        final MeasuringChain chain = MeasuringChain.of(IntStream.range(0, 3).mapToObj(i ->
            ChainElement.oneToOne("S" + i).calibratedAt(degC(0))
                .in(Ambient.evenlyBetween(degC(-33), degC(32)))
                .withTemperature(percentPerDegC(0.006).maximumOfSpan())).toList());
        final ChainError e = chain.error(coverage(0.95));
        assertMonteCarlo(0.222, 0.001, e, 0.95);
        assertMonteCarlo(0.338, 0.001, e, 0.997);
    }

    @Test
    @DisplayName("one standard, U = 0.05 % (k = 2), for three stages: u = 0.075, not 0.043"
        + " [JCGM 100:2008, F.1.2.3; computed and verified independently of this project]")
    void oneStandardForAllStagesAddsLinearly() {
        final SharedStandard s = SharedStandard.of("S-01", percentOfSpan(0.05));
        final MeasuringChain one = MeasuringChain.of(ChainElement.oneToOne("A").calibratedWith(s),
            ChainElement.oneToOne("B").calibratedWith(s), ChainElement.oneToOne("C").calibratedWith(s));
        assertAsPrinted("0.075", one.error(coverage(0.95)).budget().u());
        final MeasuringChain three = MeasuringChain.of(IntStream.range(1, 4).mapToObj(i ->
            ChainElement.oneToOne("E" + i).calibratedWith(
                SharedStandard.of("S-0" + i, percentOfSpan(0.05)))).toList());
        assertAsPrinted("0.043", three.error(coverage(0.95)).budget().u());
    }

    @Test
    @DisplayName("a chain in an ambient with a cabinet is read aloud")
    void readsAloud() {
        final ChainElement transmitter = stage("transmitter");
        final ChainElement isolator = ChainElement.oneToOne("cabinet isolator").inCabinet()
            .calibratedAt(degC(23)).withTemperature(ppmPerDegC(100).maximumOfSpan());
        final ChainClaim claim = MeasuringChain.of(transmitter, isolator)
            .in(Ambient.between(degC(-10), degC(45)).withCabinetRise(kelvin(8)))
            .claim(percentOfSpan(1), coverage(0.95));
        assertEquals(Word.MEETS, claim.word());
        assertTrue(claim.sentence().startsWith("Meets 1.00 % of span at 95 % coverage with "),
            claim::sentence);
        // Cold: 23 - (-10 + 8) = 25 K. Hot: 45 + 8 - 23 = 30 K, the larger: 30 K x 0.01 %/K = 0.30 %.
        final Contribution t = claim.error().contributions().stream()
            .filter(c -> c.label().equals("cabinet isolator: temperature")).findFirst().orElseThrow();
        assertEquals(0.30, t.limit(), 1e-12);
        assertEquals(List.of("outdoor temperature 45 \u00b0C"), claim.error().at().temperatures());
    }

    @Test
    void withoutCalibrationTemperatureNothingIsDetermined() {
        final ChainClaim claim = MeasuringChain.of(ChainElement.oneToOne("isolator")
            .withTemperature(ppmPerDegC(100).maximumOfSpan())).in(Ambient.between(degC(-10), degC(45)))
            .claim(percentOfSpan(1), coverage(0.95));
        assertEquals(Word.NOT_DETERMINED, claim.word());
        assertEquals(List.of("the temperature at calibration of isolator"), claim.missing());
    }

    @Test
    void aTypicalFigureIsRefusedUnderAGuarantee() {
        final var e = assertThrows(IllegalArgumentException.class, () -> ChainElement.oneToOne("isolator")
            .withTemperature(ppmPerDegC(100).typicalOfSpan()));
        assertTrue(e.getMessage().startsWith("100 ppm/\u00b0C is a typical figure and carries no guarantee"),
            e::getMessage);
    }

    @Test
    void aForcedTypicalFigureIsMarked() {
        final ChainClaim claim = MeasuringChain.of(ChainElement.oneToOne("isolator").calibratedAt(degC(23))
            .withTemperature(ppmPerDegC(20).typicalOfSpan().takenAsOneSigma("no other figure to be had")))
            .in(Ambient.between(degC(-10), degC(45))).claim(percentOfSpan(1), coverage(0.95));
        assertEquals(Word.MEETS_WITH_STATED_RISK, claim.word());
        assertEquals(List.of("isolator: temperature is typical, forced"), claim.reservations());
        assertTrue(!claim.mayPromise());
    }

    @Test
    void oneSeedGivesOneResult() {
        final MonteCarloResult a = three().withSeed(7).withTrials(20_000).error(coverage(0.95)).monteCarlo();
        final MonteCarloResult b = three().withSeed(7).withTrials(20_000).error(coverage(0.95)).monteCarlo();
        assertEquals(a.quantile(0.975), b.quantile(0.975));
        assertTrue(a.quantile(0.975)
            != three().withSeed(8).withTrials(20_000).error(coverage(0.95)).monteCarlo().quantile(0.975));
    }
}
