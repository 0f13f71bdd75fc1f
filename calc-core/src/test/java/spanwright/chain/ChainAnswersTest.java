package spanwright.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.chain.Coverage.coverage;
import static spanwright.quantity.Celsius.degC;
import static spanwright.quantity.Kelvin.kelvin;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;
import static spanwright.reference.AsPrinted.assertAsPrinted;
import static spanwright.temperature.TemperatureRate.percentPerDegC;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.reference.PublishedData;
import spanwright.temperature.Ambient;
import spanwright.temperature.CoefficientMethod;
import spanwright.temperature.DurationCurve;
import spanwright.temperature.HourlyHistory;
import spanwright.temperature.HourlyTemperature;
import spanwright.temperature.TemperatureCoefficient;
import spanwright.temperature.TemperatureEffect;
import spanwright.uncertainty.Estimate;
import spanwright.uncertainty.Rectangular;
import spanwright.verdict.AgreedRule;
import spanwright.verdict.CoverageClaim;
import spanwright.verdict.GuardBand;
import spanwright.verdict.Verdict;
import spanwright.verdict.Word;

/** What the error of a chain is asked for. */
class ChainAnswersTest {
    private static final Coverage USUAL = coverage(0.95);
    private static final Coverage TWO = USUAL.withFactor(2);

    private static ChainElement rated(String name, double limit) {
        return ChainElement.oneToOne(name).withAccuracy(percentOfSpan(limit));
    }

    /** Ratings 0.1, 0.2, 0.2: variances 1 : 4 : 4. */
    private static MeasuringChain unequal() {
        return MeasuringChain.of(rated("A", 0.1), rated("B", 0.2), rated("C", 0.2)).withTrials(20_000);
    }

    @Test
    void contributionsAreSharesOfTheVarianceLargestFirst() {
        final List<Contribution> c = unequal().error(TWO).contributions();
        assertEquals(List.of("B: accuracy rating", "C: accuracy rating", "A: accuracy rating"),
            c.stream().map(Contribution::label).toList());
        assertEquals(100 * 4 / 9.0, c.get(0).percentOfVariance(), 1e-9);
        assertEquals(100 / 9.0, c.get(2).percentOfVariance(), 1e-9);
        assertEquals(0.2 / Math.sqrt(3), c.get(1).u(), 1e-12);
        assertEquals("rectangular", c.get(0).distribution());
        assertEquals(Standing.GUARANTEED, c.get(0).basis().standing());
    }

    @Test
    void tornadoDropOneAndMeasuringPointToTheSameCause() {
        final ChainError e = unequal().error(TWO);
        assertEquals(List.of(-0.2, 0.2), List.of(e.tornado().get(0).low(), e.tornado().get(0).high()));
        assertEquals(0.4, e.tornado().get(0).width(), 1e-12);
        // Without B: 2 sqrt(0.1^2 + 0.2^2) / sqrt 3.
        final MarginGain drop = e.dropOne().get(0);
        assertEquals("B: accuracy rating", drop.label());
        assertEquals(2 * Math.sqrt(0.09 / 3), drop.now(), 1e-12);
        assertEquals(2 * Math.sqrt(0.05 / 3), drop.then(), 1e-12);
        assertEquals(drop.now() - drop.then(), drop.gain(), 0);
        // B measured to U = 0.1: its u becomes 0.05.
        final MarginGain measured = e.valueOfMeasuring(percentOfSpan(0.1)).get(0);
        assertEquals("B: accuracy rating", measured.label());
        assertEquals(2 * Math.sqrt(0.05 / 3 + 0.0025), measured.then(), 1e-12);
        // What is known better than that gains nothing.
        assertEquals(0, e.valueOfMeasuring(percentOfSpan(1)).get(0).gain(), 0);
        assertTrue(measured.toString().contains("gains "), measured::toString);
    }

    @Test
    void droppingASharedStandardDropsItEverywhere() {
        final SharedStandard s = SharedStandard.of("S-01", percentOfSpan(0.2));
        final ChainError e = MeasuringChain.of(rated("A", 0.1).calibratedWith(s), rated("B", 0.1)
            .calibratedWith(s)).withTrials(1000).error(TWO);
        assertEquals("standard S-01", e.dropOne().get(0).label());
        assertEquals(2 * Math.sqrt(0.02 / 3), e.dropOne().get(0).then(), 1e-12);
    }

    @Test
    @DisplayName("Sobol indices agree with estimates of Saltelli and Jansen"
        + " [NumPy, test-data/published/sobol-chain.py]")
    void sobolIndicesAgreeWithSampling() {
        // a1 is 0.002 +- 0.004 rectangular: its known part and its spread in two terms of one element.
        final ErrorTerm a1 = new ErrorTerm("temperature", Influence.TEMPERATURE,
            new Rectangular(-0.002, 0.006), 0.004, ErrorProfile.CONSTANT,
            ErrorTerm.Basis.of(Standing.MEASURED, true, "made up").actingPerKelvin());
        final MeasuringChain chain = MeasuringChain.of(rated("A", 0.1).calibratedAt(degC(23)).with(a1),
            ChainElement.oneToOne("B").calibratedAt(degC(23))
                .withTemperature(percentPerDegC(0.006).maximumOfSpan()))
            .in(Ambient.evenlyBetween(degC(-10), degC(45)));
        final ChainError error = chain.withTrials(200_000).error(USUAL);
        assertEquals(error.monteCarlo().u(), error.budget().u(), 0.001);
        assertEquals(100, error.contributions().stream().mapToDouble(Contribution::percentOfVariance).sum(),
            1e-9);
        final List<SobolIndex> indices = error.sobolIndices();
        final PublishedData data = PublishedData.load("sobol-chain");
        final List<String> labels = List.of("A: accuracy rating", "A: temperature", "B: temperature",
            "outdoor temperature");
        for (int i = 0; i < labels.size(); i++) {
            final String label = labels.get(i);
            final SobolIndex index = indices.stream().filter(s -> s.label().equals(label)).findFirst()
                .orElseThrow();
            assertEquals(data.numbers("first_order")[i], index.firstOrder(), 0.003, label);
            assertEquals(data.numbers("total")[i], index.total(), 0.003, label);
        }
        assertEquals("outdoor temperature", indices.get(0).label());
        assertEquals(1, indices.stream().mapToDouble(SobolIndex::firstOrder).sum()
            + indices.stream().mapToDouble(SobolIndex::interaction).sum() / 2, 1e-12);
    }

    @Test
    void correlatedCausesHaveOneIndex() {
        final MeasuringChain chain = MeasuringChain.of(rated("A", 0.1),
            ChainElement.oneToOne("B").withTemperatureLimit(percentOfSpan(0.2)),
            ChainElement.oneToOne("C").withTemperatureLimit(percentOfSpan(0.2)))
            .sharingCoefficients("lot", 0.5, "B", "C").withTrials(1000);
        final List<SobolIndex> indices = chain.error(USUAL).sobolIndices();
        assertEquals(List.of("B: temperature with C: temperature", "A: accuracy rating"),
            indices.stream().map(SobolIndex::label).toList());
        // Variances times three: 0.01 of A, 0.04 + 0.04 + 2 x 0.5 x 0.04 of the pair.
        assertEquals(0.12 / 0.13, indices.get(0).firstOrder(), 1e-12);
        assertEquals(indices.get(0).firstOrder(), indices.get(0).total(), 0);
        assertEquals(100 * 0.06 / 0.13, chain.error(USUAL).contributions().get(0).percentOfVariance(), 1e-9);
    }

    @ParameterizedTest(name = "three stages, r = {0}: {1} of the target each")
    @CsvSource(textBlock = """
        # computed and verified independently of this project
        0,   0.577
        0.5, 0.408
        1,   0.333
        """)
    void stageLimits(double r, String share) {
        assertAsPrinted(share, InverseDesign.stageLimit(percentOfSpan(1), 3, r).value());
    }

    @Test
    void equalAccuracyUsesUpTheTarget() {
        final double a = unequal().toMeet(percentOfSpan(0.5), TWO).equalAccuracy().orElseThrow().value();
        // 2 sqrt(3 a^2 / 3) = 0.5.
        assertEquals(0.25, a, 1e-6);
        final MeasuringChain crowded = MeasuringChain.of(rated("A", 0.1)
            .withLimit("other", percentOfSpan(0.5), "test"));
        assertTrue(crowded.toMeet(percentOfSpan(0.5), TWO).equalAccuracy().isEmpty());
    }

    @Test
    void aRatingThatIsSoughtTakesThePlaceOfWhatTheRecordFound() {
        final SharedStandard s = SharedStandard.of("S-01", percentOfSpan(0.06));
        final MeasuringChain measured = MeasuringChain.of(ChainElement.oneToOne("A").calibratedWith(s)
            .withHysteresis(percentOfSpan(0.3)).withKnownError(percentOfSpan(0.2), "record"));
        // 4 (a^2 / 3 + 0.03^2) = 0.1^2.
        assertEquals(Math.sqrt(3 * (0.0025 - 0.0009)), measured.toMeet(percentOfSpan(0.1), TWO)
            .equalAccuracy()
            .orElseThrow().value(), 1e-6);
    }

    @Test
    @DisplayName("accuracy at a cost goes with the cube root of the cost [method of Lagrange]")
    void costWeightedAccuracy() {
        final InverseDesign design = unequal().toMeet(percentOfSpan(0.5), TWO);
        final var ratings = design.costWeightedAccuracy(java.util.Map.of("A", 8.0, "B", 1.0, "C", 1.0))
            .orElseThrow();
        assertEquals(2, ratings.get("A").value() / ratings.get("B").value(), 1e-9);
        final double sum = ratings.values().stream().mapToDouble(v -> v.value() * v.value()).sum();
        assertEquals(0.25 * 0.25 * 3, sum, 1e-6);
        // Any other split of the same squares costs more: cost is the sum of cost over rating.
        final double best = cost(ratings.get("A").value(), ratings.get("B").value(), ratings.get("C")
            .value());
        for (double shift : new double[] {0.9, 1.1}) {
            final double a = ratings.get("A").value() * shift;
            final double rest = Math.sqrt((sum - a * a) / 2);
            assertTrue(cost(a, rest, rest) > best);
        }
        assertEquals("no cost is given for C", assertThrows(IllegalArgumentException.class,
            () -> design.costWeightedAccuracy(java.util.Map.of("A", 1.0, "B", 1.0))).getMessage());
    }

    private static double cost(double a, double b, double c) {
        return 8 / a + 1 / b + 1 / c;
    }

    @Test
    void howManyElementsFit() {
        final MeasuringChain one = MeasuringChain.of(rated("A", 0.1));
        // 2 sqrt(n 0.01 / 3) <= 0.3: n <= 6.75, so five more than the one there is.
        assertEquals(5, one.toMeet(percentOfSpan(0.3), TWO).howManyMore(rated("isolator", 0.1)));
        assertEquals(0, one.toMeet(percentOfSpan(0.1), TWO).howManyMore(rated("isolator", 0.1)));
    }

    @Test
    void largestCoefficientAndWidestAmbient() {
        final MeasuringChain chain = MeasuringChain.of(ChainElement.oneToOne("A").calibratedAt(degC(20))
            .withTemperature(percentPerDegC(0.01).maximumOfSpan())).in(Ambient.between(degC(0), degC(40)));
        final InverseDesign design = chain.toMeet(percentOfSpan(0.4), TWO);
        // 2 x 20 K x a / sqrt 3 = 0.4; at 0.01 %/K: 2 x 0.01 x half / sqrt 3 = 0.4.
        assertEquals(0.4 * Math.sqrt(3) / 40, design.largestCoefficient("A").orElseThrow(), 1e-7);
        final Ambient widest = design.widestAmbient().orElseThrow();
        assertEquals(20 + 20 * Math.sqrt(3), widest.highest().value(), 1e-4);
        assertEquals(20 - 20 * Math.sqrt(3), widest.lowest().value(), 1e-4);
        assertThrows(IllegalArgumentException.class,
            () -> unequal().toMeet(percentOfSpan(1), TWO).widestAmbient());
        assertThrows(IllegalArgumentException.class, () -> design.largestCoefficient("B"));
    }

    @Test
    @DisplayName("calibrating the chain as a whole beats its stages one by one [common practice, no source]")
    void endToEndCalibrationBeatsStages() {
        final SharedStandard s = SharedStandard.of("S-01", percentOfSpan(0.05));
        final MeasuringChain stages = MeasuringChain
            .of(IntStream.range(0, 3)
                .mapToObj(i -> rated("S" + i, 0.1).withKnownError(percentOfSpan(0.03), "record")
                    .calibratedWith(s).withAgeing(percentOfSpan(0.05), 1, Ageing.LINEAR))
                .toList())
            .withTrials(1000);
        final MeasuringChain whole = stages.calibratedEndToEnd(percentOfSpan(0.1), s);
        final ChainError apart = stages.error(TWO);
        final ChainError together = whole.error(TWO);
        assertEquals(0.09, apart.methods().knownError(), 1e-12);
        assertEquals(0, together.methods().knownError());
        assertEquals(2 * Math.sqrt((3 * 0.05 * 0.05 + 0.01) / 3 + 0.025 * 0.025),
            together.methods().gum().limit(), 1e-12);
        assertEquals(0.09 + 2 * Math.sqrt((3 * 0.05 * 0.05 + 0.03) / 3 + 0.075 * 0.075),
            apart.methods().gum().limit(), 1e-12);
    }

    @ParameterizedTest(name = "target {0}: {1}")
    @CsvSource(textBlock = """
        # one rectangle of +-0.4: 95 % within 0.38, half of it within 0.2
        0.39, Meets
        0.37, Not shown
        0.19, Does not meet
        """)
    void wordsOfTheClaim(double target, String word) {
        final ChainClaim claim = MeasuringChain.of(rated("A", 0.4)).withTrials(100_000)
            .claim(percentOfSpan(target), USUAL);
        assertEquals(word, claim.word().toString());
        assertEquals(target / 0.4, claim.probability().orElseThrow(), 0.005);
        assertEquals(target - 0.38, claim.margin().orElseThrow().value(), 0.003);
        assertEquals((target - 0.38) / (0.4 / Math.sqrt(3)), claim.marginInSigmas().orElseThrow(), 0.01);
    }

    @Test
    void mayPromiseOnlyTheWorstCaseOfGuaranteedLimits() {
        final MeasuringChain chain = MeasuringChain.of(rated("A", 0.4)).withTrials(1000);
        assertTrue(chain.claim(percentOfSpan(0.4), USUAL).mayPromise());
        assertFalse(chain.claim(percentOfSpan(0.39), USUAL).mayPromise());
        final ChainElement certified = rated("A", 0.1).calibratedWith(
            SharedStandard.of("S", percentOfSpan(0.01)));
        assertFalse(MeasuringChain.of(certified).withTrials(1000).claim(percentOfSpan(1), USUAL)
            .mayPromise());
    }

    @Test
    void theVerdictFollowsAnAgreedRule() {
        final ChainClaim claim = MeasuringChain.of(rated("A", 0.4).withKnownError(percentOfSpan(0.1),
            "record")
            .calibratedWith(SharedStandard.of("S-01", percentOfSpan(0.001)))).withTrials(100_000)
            .claim(percentOfSpan(0.6), USUAL);
        final AgreedRule rule = new AgreedRule(GuardBand.wholeUncertainty(), LocalDate.of(2026, 1, 12),
            "DB-7");
        final Verdict verdict = claim.verdict(rule, LocalDate.of(2026, 3, 2));
        assertEquals(Word.MEETS, verdict.word());
        // By hand: of a rectangle of half width 0.4 about 0.1, 95 % stays within 0.1 + 0.9 x 0.4.
        assertEquals(0.6 - 0.1 - 0.36, verdict.margin().orElseThrow().value(), 0.005);
        assertEquals(claim.margin().orElseThrow().value(), verdict.margin().orElseThrow().value(), 0.002);
        assertEquals(1, verdict.grounds().dominating().size());
        assertEquals(claim.assumptions().size(), verdict.grounds().assumptions().size());
        assertEquals(Word.NOT_DETERMINED, claim.verdict(rule, LocalDate.of(2025, 3, 2)).word());
    }

    /**
     * Rectangle of half width 0.087 about 0.5, worked by hand: 95 % of the errors stay within 0.5 + 0.9 x
     * 0.087 = 0.578, though the interval that is central in probability ends at 0.5 + 0.95 x 0.087 = 0.583.
     */
    @Test
    void theVerdictAcceptsWhatTheClaimAccepts() {
        final AgreedRule whole = new AgreedRule(GuardBand.wholeUncertainty(), LocalDate.of(2026, 1, 12),
            "DB-7");
        final AgreedRule covered = new AgreedRule(new CoverageClaim(0.95), LocalDate.of(2026, 1, 12), "DB-7");
        for (double target : new double[] {0.576, 0.581, 0.590}) {
            final ChainClaim claim = MeasuringChain.of(rated("A", 0.087).withKnownError(percentOfSpan(0.5),
                "record").calibratedWith(SharedStandard.of("S-01", percentOfSpan(0.0001))))
                .withTrials(100_000).claim(percentOfSpan(target), USUAL);
            assertEquals(target > 0.578 ? Word.MEETS : Word.NOT_SHOWN, claim.word());
            assertEquals(claim.word(), claim.verdict(whole, LocalDate.of(2026, 3, 2)).word());
            assertEquals(claim.word(), claim.verdict(covered, LocalDate.of(2026, 3, 2)).word());
        }
    }

    @Test
    void withoutTheCalibrationTemperatureTheVerdictIsNotDetermined() {
        final ChainClaim claim = MeasuringChain.of(ChainElement.oneToOne("A")
            .withTemperature(percentPerDegC(0.01).maximumOfSpan())).claim(percentOfSpan(1), USUAL);
        assertEquals(List.of("the ambient temperatures of A", "the temperature at calibration of A"),
            claim.missing());
        assertTrue(claim.margin().isEmpty());
        assertTrue(claim.probability().isEmpty());
        assertTrue(claim.dominating().isEmpty());
        assertTrue(claim.sentence()
            .startsWith("Not determined: whether the chain keeps within 1.00 % of span;"));
        assertThrows(IllegalStateException.class, claim::error);
        final AgreedRule rule = new AgreedRule(GuardBand.wholeUncertainty(), LocalDate.of(2026, 1, 12),
            "DB-7");
        final Verdict verdict = claim.verdict(rule, LocalDate.of(2026, 3, 2));
        assertEquals(Word.NOT_DETERMINED, verdict.word());
        assertTrue(verdict.missing().contains("the temperature at calibration of A"),
            verdict.missing()::toString);
        assertThrows(IllegalArgumentException.class, () -> claim.chain().error(USUAL));
    }

    @Test
    void dominatingCausesMakeEightyPercent() {
        final ChainClaim claim = unequal().claim(percentOfSpan(1), TWO);
        assertEquals(2, claim.dominating().size());
        assertTrue(claim.sentence().contains("; B's accuracy rating term is 44 % of the variance"),
            claim::sentence);
    }

    private static HourlyHistory twoTemperatures(int hoursAtCold) {
        final Instant start = Instant.parse("2023-01-01T00:00:00Z");
        return new HourlyHistory("made up", IntStream.range(0, 100).mapToObj(h -> new HourlyTemperature(
            start.plusSeconds(3600L * h), degC(h < hoursAtCold ? -20 : 20), h + 2, "")).toList(), List.of());
    }

    @Test
    void theClaimOverAHistoryHoldsForAShareOfTheTime() {
        final TemperatureCoefficient a = new TemperatureCoefficient(TemperatureEffect.ZERO,
            CoefficientMethod.LEAST_SQUARES, Estimate.exactly(0.01), degC(20), degC(-25), degC(60), 0, "A");
        final ChainElement e = rated("A", 0.01).withTemperature(a);
        final HourlyHistory rarely = twoTemperatures(3);
        final MeasuringChain chain = MeasuringChain.of(e).in(Ambient.of(rarely)).withTrials(100_000);
        final ChainClaim byTime = chain.claim(percentOfSpan(0.1), USUAL);
        assertEquals(Word.MEETS, byTime.word());
        assertEquals(8760 * 0.03, byTime.error().expectedHoursBeyond(percentOfSpan(0.1)).orElseThrow(), 20);
        final ChainClaim always = MeasuringChain.of(e).in(Ambient.of(rarely).atEveryTemperature())
            .withTrials(1000).claim(percentOfSpan(0.1), USUAL);
        assertEquals(Word.DOES_NOT_MEET, always.word());
        assertTrue(always.error().expectedHoursBeyond(percentOfSpan(0.1)).isEmpty());
        assertTrue(byTime.sentence().contains("weighted by time"), byTime::sentence);
        assertTrue(always.sentence().contains("at every temperature"), always::sentence);
        final DurationCurve curve = chain.durationCurve(rarely, TWO);
        assertEquals(3, curve.hoursBeyond(0.1));
        assertEquals(0.4 + 2 * 0.01 / Math.sqrt(3), curve.largest(), 1e-9);
        assertEquals(2 * 0.01 / Math.sqrt(3), curve.notExceededFor(0.95), 1e-9);
    }

    @Test
    void aVaryingRiseIsACauseOfItsOwn() {
        final MeasuringChain chain = MeasuringChain.of(ChainElement.oneToOne("A").inCabinet()
            .calibratedAt(degC(20)).withTemperature(percentPerDegC(0.01).maximumOfSpan()));
        final Ambient steady = Ambient.between(degC(10), degC(30));
        final ChainError worst = chain.in(steady.withCabinetRise(kelvin(0), kelvin(8))).withTrials(1000)
            .error(TWO);
        assertEquals(0.18, worst.methods().worstCase().limit(), 1e-12);
        assertEquals(List.of("outdoor temperature 30 \u00b0C",
            "outdoor temperature, rise in the cabinet"
            + " 8 K"), worst.at().temperatures());
        final Ambient spread = Ambient.evenlyBetween(degC(10), degC(30)).withCabinetRise(kelvin(0),
            kelvin(8));
        final ChainError time = chain.in(spread).withTrials(200_000).error(TWO);
        // u^2 = u_a^2 (mean^2 + u_T^2 + u_rise^2): a 0.01/sqrt 3, mean 4 K, 10/sqrt 3 and 4/sqrt 3 (JCGM
        // 100:2008, 5.1.2 note).
        assertEquals(0.01 / Math.sqrt(3) * Math.sqrt(16 + 100 / 3.0 + 16 / 3.0), time.budget().u(), 1e-6);
        assertEquals(time.budget().u(), time.monteCarlo().u(), 5e-4);
        assertEquals(time.budget().u(), time.contributions().get(0).u(), 1e-12);
    }

    @Test
    void assumptionsAreNumberedAndSayWhatWouldFalsifyThem() {
        final ChainError e = unequal().in(Ambient.between(degC(-10), degC(45)))
            .sharingCoefficients("lot", 0.5, "A", "B").error(USUAL);
        for (int i = 0; i < e.assumptions().size(); i++) {
            assertEquals("A" + (i + 1), e.assumptions().get(i).id());
            assertFalse(e.assumptions().get(i).falsifiedBy().isBlank());
        }
        assertTrue(e.assumptions().stream().anyMatch(a -> a.text().contains("for every temperature")));
        assertTrue(e.assumptions().stream().anyMatch(a -> a.text().startsWith("lot: temperature of A, B")));
    }

    @Test
    void theHistogramHoldsAllTrials() {
        final List<Bin> bins = unequal().error(USUAL).histogram(40);
        assertEquals(40, bins.size());
        assertEquals(1, bins.stream().mapToDouble(Bin::share).sum(), 1e-9);
        assertEquals(bins.get(3).to(), bins.get(4).from(), 0);
        final double width = bins.get(7).to() - bins.get(7).from();
        assertEquals(bins.get(7).share() / width, bins.get(7).density(), 1e-9);
        // Most of the errors lie about 0: the middle bins are the highest.
        assertTrue(bins.get(20).share() > bins.get(2).share());
    }
}
