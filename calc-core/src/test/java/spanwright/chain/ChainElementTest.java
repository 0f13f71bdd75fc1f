package spanwright.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.chain.Coverage.coverage;
import static spanwright.quantity.Celsius.degC;
import static spanwright.quantity.PercentOfReading.percentOfReading;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;
import static spanwright.reference.AsPrinted.assertAsPrinted;
import static spanwright.temperature.TemperatureRate.ppmPerDegC;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.quantity.Span;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Transfer;
import spanwright.temperature.Ambient;
import spanwright.temperature.ChamberRuns;
import spanwright.temperature.CoefficientMethod;
import spanwright.temperature.TemperatureCoefficient;
import spanwright.temperature.TemperatureEffect;
import spanwright.temperature.TemperatureTest;
import spanwright.uncertainty.Estimate;
import spanwright.verdict.Word;

/** What each kind of data turns into. */
class ChainElementTest {
    private static final Coverage USUAL = coverage(0.95);
    private static final double[] POINTS = {0, 25, 50, 75, 100};

    private static ChainElement isolator() {
        return ChainElement.oneToOne("isolator");
    }

    private static ChainError alone(ChainElement e) {
        return MeasuringChain.of(e).withTrials(1000).error(USUAL);
    }

    private static ErrorTerm term(ChainElement e, String name) {
        return e.terms().stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow();
    }

    @Test
    @DisplayName("14 bits over 0-20 mA: LSB 0.0076 % of 16 mA span, u = LSB / sqrt(12)"
        + " [JCGM 100:2008, F.2.2.1]")
    void resolutionOfAConverter() {
        final ErrorTerm t = term(isolator().withResolution(14, Span.of(0, 20, "mA")), "resolution");
        assertAsPrinted("0.0076", 2 * t.limit());
        assertEquals(2 * t.limit() / Math.sqrt(12), t.u(), 1e-15);
        assertAsPrinted("0.0305", 2 * term(isolator().withResolution(12, Span.of(0, 20, "mA")),
            "resolution").limit());
        assertThrows(IllegalArgumentException.class,
            () -> isolator().withResolution(0, Span.of(0, 20, "mA")));
    }

    @Test
    void loadSupplyAndAgeingGrowWithTheirCause() {
        final ChainElement e = isolator().withLoadEffect(percentOfSpan(0.04), 0, 250)
            .withSupplyEffect(percentOfSpan(0.005), 6).withAgeing(percentOfSpan(0.1), 4, Ageing.ROOT_OF_TIME);
        assertEquals(0.1, term(e, "load").limit(), 1e-12);
        assertEquals(0.03, term(e, "supply").limit(), 1e-12);
        assertEquals(0.2, term(e, "ageing").limit(), 1e-12);
        assertEquals(0.4, term(isolator().withAgeing(percentOfSpan(0.1), 4, Ageing.LINEAR), "ageing").limit(),
            1e-12);
        assertThrows(IllegalArgumentException.class,
            () -> isolator().withAgeing(percentOfSpan(0.1), -1, Ageing.LINEAR));
    }

    @Test
    void linearityAndHysteresisAreInsideTheAccuracyRating() {
        final ChainElement ratedFirst = isolator().withAccuracy(percentOfSpan(0.1))
            .withLinearity(percentOfSpan(0.05)).withHysteresis(percentOfSpan(0.02))
            .withRepeatability(percentOfSpan(0.01));
        final ChainElement ratedLast = isolator().withLinearity(percentOfSpan(0.05))
            .withHysteresis(percentOfSpan(0.02)).withRepeatability(percentOfSpan(0.01))
            .withAccuracy(percentOfSpan(0.1));
        for (ChainElement e : List.of(ratedFirst, ratedLast)) {
            assertEquals(0.1, alone(e).methods().worstCase().limit(), 1e-12);
            assertEquals(List.of("isolator: linearity is inside the accuracy rating and not added again",
                "isolator: hysteresis is inside the accuracy rating and not added again",
                "isolator: repeatability is inside the accuracy rating and not added again"),
                e.remarks().notes());
        }
        final ChainElement unrated = isolator().withLinearity(percentOfSpan(0.05))
            .withHysteresis(percentOfSpan(0.02));
        assertEquals(0.07, alone(unrated).methods().worstCase().limit(), 1e-12);
    }

    @Test
    @DisplayName("0.1 % of reading is 0.025 % of span at 4 mA and 0.125 % at 20 mA"
        + " [factor of the live zero]")
    void accuracyOfReadingFollowsTheOutput() {
        final ChainError e = alone(isolator().withAccuracy(percentOfReading(0.1)));
        assertEquals(0.025, e.byInput().get(0).worstCase(), 1e-12);
        assertEquals(0.075, e.byInput().get(10).worstCase(), 1e-12);
        assertEquals(0.125, e.byInput().get(20).worstCase(), 1e-12);
        assertEquals(100, e.at().inputPercent());
    }

    @Test
    void aKnownErrorAddsWithItsSignOutsideTheRoot() {
        final ChainElement a = ChainElement.oneToOne("A").withAccuracy(percentOfSpan(0.3))
            .withKnownError(percentOfSpan(0.2), "as-left record");
        final ChainElement b = ChainElement.oneToOne("B").withAccuracy(percentOfSpan(0.4))
            .withKnownError(percentOfSpan(-0.05), "as-left record");
        final FourMethods m = MeasuringChain.of(a, b).error(USUAL.withFactor(2)).methods();
        assertEquals(0.15, m.knownError(), 1e-12);
        assertEquals(0.15 + 0.7, m.worstCase().limit(), 1e-12);
        assertEquals(0.15 + 0.5, m.rootSumOfSquares().limit(), 1e-12);
        assertEquals(0.15 + 2 * 0.5 / Math.sqrt(3), m.gum().limit(), 1e-12);
    }

    @Test
    void aCorrectedErrorLeavesTheUncertaintyOfItsCorrection() {
        final ChainElement e = isolator().withKnownError(percentOfSpan(0.2), "record")
            .corrected(Estimate.of(0.2, 0.03));
        final ChainError error = alone(e);
        assertEquals(0, error.methods().knownError());
        assertEquals(0.03, error.budget().u(), 1e-12);
    }

    @Test
    @DisplayName("ten elements calibrated with one standard of u = 0.1: 1, not 0.32"
        + " [JCGM 100:2008, 5.2.2 example]")
    void tenElementsAndOneStandard() {
        final List<ChainElement> one = new ArrayList<>();
        final List<ChainElement> ten = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            one.add(ChainElement.oneToOne("R" + i).calibratedWith(new SharedStandard("Rs", 0.2, 2)));
            ten.add(ChainElement.oneToOne("R" + i).calibratedWith(new SharedStandard("R" + i, 0.2, 2)));
        }
        final ChainError shared = MeasuringChain.of(one).withTrials(1000).error(USUAL);
        assertAsPrinted("1", shared.budget().u());
        assertAsPrinted("0.32", MeasuringChain.of(ten).withTrials(1000).error(USUAL).budget().u());
        assertEquals(1, shared.contributions().size());
        assertEquals(10, shared.contributions().get(0).elements().size());
        assertEquals(1, shared.sharedCauses().size());
        assertTrue(shared.sharedCauses().get(0).startsWith("calibration standard Rs: shared by R0, R1"));
    }

    @Test
    void aCertificateGivesErrorAndExpandedUncertainty() {
        final ChainError e = alone(isolator().withCertificate(percentOfSpan(0.04), percentOfSpan(0.06), 2));
        assertEquals(0.04, e.methods().knownError(), 1e-12);
        assertEquals(0.03, e.budget().u(), 1e-12);
        assertEquals(0.10, e.methods().worstCase().limit(), 1e-12);
        assertTrue(!e.isGuaranteed());
    }

    @Test
    void typicalAndAssumedFiguresNeedAReasonAndLeaveARisk() {
        final ChainElement e = isolator().withAccuracy(percentOfSpan(0.1))
            .withTypical("mounting", percentOfSpan(0.02), "no maximum is published")
            .withAssumedLimit("vibration", percentOfSpan(0.03), "like the pump house");
        final ChainClaim claim = MeasuringChain.of(e).withTrials(1000).claim(percentOfSpan(0.5), USUAL);
        assertEquals(Word.MEETS_WITH_STATED_RISK, claim.word());
        assertEquals(List.of("isolator: mounting is typical, forced", "isolator: vibration is assumed"),
            claim.reservations().stream().sorted().toList());
        assertEquals(0.02, term(e, "mounting").u(), 1e-15);
        assertTrue(!claim.mayPromise());
        assertTrue(claim.assumptions().stream().anyMatch(a -> a.text().startsWith("isolator: mounting is a"
            + " typical figure taken as one standard deviation: no maximum is published")));
        assertThrows(IllegalArgumentException.class, () -> e.withTypical("x", percentOfSpan(0.1), " "));
        assertThrows(IllegalArgumentException.class, () -> e.withAssumedLimit("x", percentOfSpan(0.1), ""));
    }

    private static CalibrationRun record() {
        return ChamberRuns.run(23, POINTS, new double[] {0.02, 0.03, 0.05, 0.03, 0.01},
            new double[] {0.02, 0.05, 0.09, 0.05, 0.01}, 0.001);
    }

    @Test
    void aRecordGivesItsErrorsPointByPoint() {
        final ChainElement e = ChainElement.measured("isolator", record());
        final ChainError error = alone(e);
        // Average of up and down at each point; half way between two points the mean of theirs.
        assertEquals(0.02, error.byInput().get(0).knownError(), 1e-12);
        assertEquals(0.04, error.byInput().get(5).knownError(), 1e-12);
        assertEquals(0.07, error.byInput().get(10).knownError(), 1e-12);
        assertEquals((0.04 + 0.01) / 2 - 0.0, error.byInput().get(20).knownError() + 0.015, 1e-12);
        assertEquals(50, error.at().inputPercent());
        assertEquals(0.04 / 2, term(e, "hysteresis").limit(), 1e-12);
        assertEquals(0.00625 / 2, term(e, "resolution of the record").limit(), 1e-12);
        assertEquals(degC(23), e.site().calibration().orElseThrow());
        assertTrue(e.terms().get(0).basis().source()
            .startsWith("record of LT-101A, as found, from chamber.csv"), e.terms().get(0).basis()::source);
    }

    @Test
    void whatARecordCannotTellIsAReservation() {
        final ChainElement e = ChainElement.measured("isolator",
            ChamberRuns.upscale(23, POINTS, new double[] {0, 0, 0, 0, 0}));
        final ChainClaim claim = MeasuringChain.of(e).withTrials(1000).claim(percentOfSpan(0.5), USUAL);
        assertEquals(Word.MEETS_WITH_STATED_RISK, claim.word());
        assertEquals(3, claim.reservations().size());
        assertTrue(claim.reservations().get(0).startsWith("LT-101A: hysteresis is not determined, "));
        assertTrue(claim.reservations().get(1).startsWith("LT-101A: non-repeatability is not determined, "));
        assertEquals("isolator: the uncertainty of its calibration standard is not given",
            claim.reservations().get(2));
        final ChainElement traced = e.calibratedWith(SharedStandard.of("S-02", percentOfSpan(0.02)));
        assertEquals(2, MeasuringChain.of(traced).withTrials(1000).claim(percentOfSpan(0.5), USUAL)
            .reservations().size());
    }

    private static TemperatureTest chamber() {
        final List<CalibrationRun> runs = new ArrayList<>();
        for (double t : new double[] {20, 55, -10, 20}) {
            final double zero = 0.004 * (t - 20);
            final double span = -0.002 * (t - 20);
            runs.add(ChamberRuns.run(t, new double[] {0, 100}, new double[] {zero, zero + span},
                new double[] {zero, zero + span}, 1e-6));
        }
        return TemperatureTest.of(runs);
    }

    @Test
    void aChamberTestGivesSignedSlopesOfZeroAndSpan() {
        final MeasuringChain chain = MeasuringChain.of(isolator().withTemperature(chamber())).withTrials(1000)
            .in(Ambient.between(degC(-10), degC(45)));
        final ChainError e = chain.error(USUAL);
        // Zero 0.004 %/K over -30 K and +25 K, span -0.002 %/K: at 0 % input -0.12 cold, at 100 % half of it.
        assertEquals(-0.12, e.byInput().get(0).knownError(), 1e-6);
        assertEquals(-0.06, e.byInput().get(20).knownError(), 1e-6);
        assertEquals(0, e.at().inputPercent());
        assertEquals(List.of("outdoor temperature \u221210 \u00b0C"), e.at().temperatures());
        final List<TemperatureError> curve = e.byTemperature();
        assertEquals(-0.12, curve.get(0).knownError(), 1e-6);
        assertEquals(0.10, curve.get(curve.size() - 1).knownError(), 1e-6);
        assertTrue(e.warnings().isEmpty(), e.warnings()::toString);
    }

    private static TemperatureCoefficient found(CoefficientMethod method, double perKelvin) {
        return new TemperatureCoefficient(TemperatureEffect.ZERO, method, Estimate.of(perKelvin, 0.0005),
            degC(20), degC(-10), degC(60), method == CoefficientMethod.END_POINT ? 0.03 : 0, "LT-101A");
    }

    @Test
    void theMethodDecidesHowACoefficientEnters() {
        final Ambient hot = Ambient.between(degC(20), degC(40));
        final ChainError bowTie = MeasuringChain.of(isolator()
            .withTemperature(found(CoefficientMethod.BOW_TIE, 0.01))).in(hot).withTrials(1000).error(USUAL);
        assertEquals(20 * (0.01 + 2 * 0.0005), bowTie.methods().worstCase().limit(), 1e-12);
        assertEquals(0, bowTie.methods().knownError());
        final ChainError endPoint = MeasuringChain.of(isolator()
            .withTemperature(found(CoefficientMethod.END_POINT, -0.01))).in(hot).withTrials(1000)
            .error(USUAL);
        assertEquals(-0.2, endPoint.methods().knownError(), 1e-12);
        assertEquals(0.2 + 20 * 2 * 0.0005 + 0.03, endPoint.methods().worstCase().limit(), 1e-12);
        assertEquals(1, endPoint.warnings().size());
        final ChainError box = MeasuringChain.of(isolator()
            .withTemperature(found(CoefficientMethod.BOX, 0.01))).in(hot).withTrials(1000).error(USUAL);
        assertEquals(0.01 * 70, box.methods().worstCase().limit(), 1e-12);
        assertTrue(box.warnings().get(0).startsWith("isolator, zero: the box figure holds for the full"),
            box.warnings()::toString);
    }

    @Test
    void aCoefficientBeyondItsTestedRangeIsAReservation() {
        final ChainClaim claim = MeasuringChain.of(isolator()
            .withTemperature(found(CoefficientMethod.BOW_TIE, 0.001)))
            .in(Ambient.between(degC(-20), degC(40))).withTrials(1000).claim(percentOfSpan(1), USUAL);
        assertEquals(Word.MEETS_WITH_STATED_RISK, claim.word());
        assertTrue(claim.reservations().get(0).contains("extrapolation"), claim.reservations()::toString);
    }

    @Test
    void statementsOfReadingZeroAndSpanActWhereTheyBelong() {
        final Ambient a = Ambient.between(degC(23), degC(33));
        final ChainElement e = isolator().calibratedAt(degC(23));
        final MeasuringChain reading = MeasuringChain.of(
            e.withTemperature(ppmPerDegC(100).maximumOfReading())).in(a).withTrials(1000);
        assertEquals(0.025, reading.error(USUAL).byInput().get(0).worstCase(), 1e-12);
        assertEquals(0.125, reading.error(USUAL).byInput().get(20).worstCase(), 1e-12);
        final MeasuringChain apart = MeasuringChain.of(
            e.withTemperature(ppmPerDegC(50).maximumOfSpan().onZero())
                .withTemperature(ppmPerDegC(100).maximumOfSpan().onSpan())).in(a).withTrials(1000);
        assertEquals(0.05, apart.error(USUAL).byInput().get(0).worstCase(), 1e-12);
        assertEquals(0.15, apart.error(USUAL).byInput().get(20).worstCase(), 1e-12);
        final MeasuringChain zeroOfReading = MeasuringChain.of(
            e.withTemperature(ppmPerDegC(100).maximumOfReading().onZero())
                .withTemperature(ppmPerDegC(100).maximumOfReading().onSpan())).in(a).withTrials(1000);
        assertEquals(0.025, zeroOfReading.error(USUAL).byInput().get(0).worstCase(), 1e-12);
        assertEquals(0.125, zeroOfReading.error(USUAL).byInput().get(20).worstCase(), 1e-12);
    }

    @Test
    @DisplayName("an error before a square root is passed on by 0.5 / sqrt(x) [derivative of the root]")
    void aSquareRootPassesErrorsOnByItsSlope() {
        final ChainElement cell = ChainElement.of("cell", Span.of(0, 25, "V"), Span.milliamps4to20())
            .withAccuracy(percentOfSpan(0.1));
        final ChainElement extractor = ChainElement.oneToOne("extractor").withTransfer(Transfer.SQUARE_ROOT);
        final ChainError e = MeasuringChain.of(cell, extractor).withTrials(1000).error(USUAL);
        assertEquals(20, e.byInput().size());
        assertEquals(5, e.at().inputPercent());
        assertEquals(0.1 * 0.5 / Math.sqrt(0.05), e.byInput().get(0).worstCase(), 1e-12);
        assertEquals(0.1, e.byInput().get(4).worstCase(), 1e-12);
        assertEquals(0.05, e.byInput().get(19).worstCase(), 1e-12);
        assertTrue(e.warnings().get(0).contains("below 5 % input nothing is stated"), e.warnings()::toString);
        assertEquals(1, e.warnings().size());
        final ChainError coarse = MeasuringChain.of(cell.withLimit("big", percentOfSpan(5), "test"),
            extractor).withTrials(1000).error(USUAL);
        assertTrue(coarse.warnings().get(1).contains("large against the curvature"),
            coarse.warnings()::toString);
    }

    @Test
    @DisplayName("into a wider range an error shrinks: 16 mA of 20 mA span [ratio of the spans]")
    void aRangeChangeRescales() {
        final ChainElement card = ChainElement.of("card", Span.of(0, 20, "mA"), Span.of(0, 20, "mA"));
        final ChainError e = MeasuringChain.of(isolator().withAccuracy(percentOfSpan(0.1)), card)
            .withTrials(1000).error(USUAL);
        assertEquals(0.08, e.methods().worstCase().limit(), 1e-12);
        final ChainElement late = ChainElement.of("card", Span.of(0, 20, "mA"), Span.of(0, 20, "mA"))
            .withAccuracy(percentOfReading(0.1));
        final ChainError r = MeasuringChain.of(isolator(), late).withTrials(1000).error(USUAL);
        assertEquals(0.02, r.byInput().get(0).worstCase(), 1e-12);
        assertEquals(0.1, r.byInput().get(20).worstCase(), 1e-12);
    }

    @Test
    void refusesChainsThatDoNotFit() {
        assertMessage("card takes V", () -> MeasuringChain.of(isolator(),
            ChainElement.of("card", Span.of(1, 5, "V"), Span.of(1, 5, "V"))));
        assertMessage("two elements of the chain are named isolator",
            () -> MeasuringChain.of(isolator(), isolator()));
        assertMessage("no element of the chain is named B; there are [isolator]",
            () -> MeasuringChain.of(isolator()).sharingCoefficients("lot", 1, "isolator", "B"));
        assertMessage("no element of the chain has an error term",
            () -> MeasuringChain.of(isolator()).error(USUAL));
        assertMessage("two error terms have the same name in [accuracy rating, accuracy rating]",
            () -> isolator().withAccuracy(percentOfSpan(0.1)).withAccuracy(percentOfSpan(0.1)));
        assertMessage("limit of load", () -> isolator().withLimit("load", percentOfSpan(-0.1), "x"));
        assertMessage("limit of accuracy rating in % of span is -0.1", () -> isolator()
            .withAccuracy(percentOfSpan(-0.1)));
        assertMessage("contradicts the others most", () -> {
            final ChainElement a = isolator().withTemperatureLimit(percentOfSpan(0.1));
            MeasuringChain.of(a, a.named("B"), a.named("C"))
                .sharingCoefficients("x", -1, "isolator", "B")
                .sharingCoefficients("y", -1, "B", "C").sharingCoefficients("z", -1, "isolator", "C")
                .error(USUAL);
        });
    }

    private static void assertMessage(String part, org.junit.jupiter.api.function.Executable code) {
        final var e = assertThrows(IllegalArgumentException.class, code);
        assertTrue(e.getMessage().contains(part), e::getMessage);
    }
}
