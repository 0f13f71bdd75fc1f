package spanwright.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.quantity.Celsius.degC;
import static spanwright.temperature.TemperatureRate.percentPerDegC;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.temperature.Ambient;

/** What holds for every chain. */
class ChainPropertiesTest {
    private static final Coverage TWO = Coverage.coverage(0.95).withFactor(2);
    private static final Ambient OUTDOOR = Ambient.between(degC(-10), degC(45));

    /** Figures of one stage: rating, coefficient, known error. */
    record Stage(double rating, double perKelvin, double known) {
        ChainElement element(int i, Span range) {
            return ChainElement.of("S" + i, range, range).withAccuracy(new PercentOfSpan(rating))
                .withKnownError(new PercentOfSpan(known), "record").calibratedAt(degC(20 + i))
                .withTemperature(percentPerDegC(perKelvin).maximumOfSpan());
        }
    }

    @Provide
    Arbitrary<Stage> stages() {
        return Combinators.combine(Arbitraries.doubles().between(0, 0.5),
            Arbitraries.doubles().between(0, 0.02), Arbitraries.doubles().between(-0.2, 0.2)).as(Stage::new);
    }

    private static MeasuringChain chain(List<Stage> stages, Span range) {
        final List<ChainElement> elements = new ArrayList<>();
        for (int i = 0; i < stages.size(); i++) {
            elements.add(stages.get(i).element(i, range));
        }
        return MeasuringChain.of(elements).withTrials(1000).in(OUTDOOR);
    }

    private static double gum(MeasuringChain chain) {
        return new Evaluation(chain, TWO).largestGum();
    }

    @Property(tries = 60)
    void worstCaseIsTheLargest(@ForAll @Size(min = 1, max = 5) List<@From("stages") Stage> stages) {
        final FourMethods m = chain(stages, Span.milliamps4to20()).error(TWO).methods();
        final double slack = 1 + 1e-12;
        assertTrue(m.rootSumOfSquares().limit() <= m.worstCase().limit() * slack, m::toString);
        assertTrue(m.monteCarlo().limit() <= m.worstCase().limit() * slack, m::toString);
        assertTrue(Math.abs(m.knownError()) <= m.rootSumOfSquares().limit() * slack, m::toString);
        // Two standard deviations of limits taken as rectangles are 2/sqrt 3 of their root sum of squares.
        assertTrue(
            m.gum().limit() <= Math.abs(m.knownError())
                + (m.rootSumOfSquares().limit() - Math.abs(m.knownError())) * 2 / Math.sqrt(3) + 1e-9,
            m::toString);
    }

    @Property(tries = 40)
    void theOrderOfElementsDoesNotMatter(
            @ForAll @Size(min = 2, max = 4) List<@From("stages") Stage> stages) {
        final MeasuringChain chain = chain(stages, Span.milliamps4to20());
        final List<ChainElement> reversed = new ArrayList<>(chain.elements());
        Collections.reverse(reversed);
        final double forward = gum(chain);
        assertEquals(forward, gum(chain.withElements(reversed)), 1e-12 * (1 + forward));
    }

    @Property(tries = 40)
    void theUnitDoesNotMatter(@ForAll @Size(min = 1, max = 4) List<@From("stages") Stage> stages) {
        final double milliamps = gum(chain(stages, Span.milliamps4to20()));
        assertEquals(milliamps, gum(chain(stages, Span.of(0.004, 0.020, "A"))), 1e-12 * (1 + milliamps));
        assertEquals(milliamps, gum(chain(stages, Span.of(1, 5, "V"))), 1e-12 * (1 + milliamps));
    }

    @Property(tries = 40)
    void aWiderAmbientIsNeverBetter(@ForAll @From("stages") Stage stage,
            @ForAll @DoubleRange(min = 0, max = 20) double wider) {
        final MeasuringChain chain = chain(List.of(stage), Span.milliamps4to20());
        assertTrue(gum(chain.in(Ambient.between(degC(-10 - wider), degC(45 + wider)))) >= gum(chain) - 1e-12);
    }

    @Property(tries = 40)
    void sharingCoefficientsIsNeverBetter(
            @ForAll @Size(min = 2, max = 4) List<@From("stages") Stage> stages,
            @ForAll @DoubleRange(min = 0, max = 1) double r) {
        final MeasuringChain chain = chain(stages, Span.milliamps4to20());
        final String[] names = chain.elements().stream().map(ChainElement::name).toArray(String[]::new);
        assertTrue(gum(chain.sharingCoefficients("lot", r, names)) >= gum(chain) - 1e-12);
    }

    @Property(tries = 40)
    void droppingACauseIsNeverWorse(
            @ForAll @Size(min = 1, max = 3) List<@From("stages") Stage> stages) {
        final ChainError e = chain(stages, Span.milliamps4to20()).error(TWO);
        for (MarginGain g : e.dropOne()) {
            assertTrue(g.gain() >= -1e-12, g::toString);
        }
    }

    @Property(tries = 40)
    void sharesOfTheVarianceAddUpAndAgreeWithTheBudget(
            @ForAll @Size(min = 1, max = 4) List<@From("stages") Stage> stages,
            @ForAll @DoubleRange(min = 0, max = 1) double r) {
        final MeasuringChain chain = chain(stages, Span.milliamps4to20())
            .in(Ambient.evenlyBetween(degC(-10), degC(45)));
        final String[] names = chain.elements().stream().map(ChainElement::name).toArray(String[]::new);
        final ChainError e = (names.length < 2 ? chain : chain.sharingCoefficients("lot", r, names))
            .error(TWO);
        final double sum = e.contributions().stream().mapToDouble(Contribution::percentOfVariance).sum();
        assertEquals(e.budget().u() == 0 ? 0 : 100, sum, 1e-6);
        final VarianceParts parts = VarianceParts.of(ErrorModel.of(e.chain(), TemperatureLayout.of(
            e.chain().elements(), e.chain().ambient()), 100), new double[1]);
        // First order alone where second adds less than the second digit shows (JCGM 100:2008, 7.2.6).
        assertEquals(Math.sqrt(parts.whole()), e.budget().u(), 0.05 * e.budget().u() + 1e-12);
    }

    @Property(tries = 30)
    void theTargetThatIsAskedForIsMet(@ForAll @From("stages") Stage stage,
            @ForAll @DoubleRange(min = 0.5, max = 2) double target) {
        final MeasuringChain chain = chain(List.of(stage, stage), Span.milliamps4to20());
        final InverseDesign design = chain.toMeet(new PercentOfSpan(target), TWO);
        design.equalAccuracy().ifPresent(a -> {
            final List<ChainElement> built = chain.elements().stream().map(e -> e.withTerms(e.terms().stream()
                .filter(t -> !t.influence().isFoundByCalibration()).toList()).withAccuracy(a)).toList();
            assertTrue(gum(chain.withElements(built)) <= target * (1 + 1e-9));
        });
    }
}
