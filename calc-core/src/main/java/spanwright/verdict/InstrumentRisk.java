package spanwright.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import spanwright.quantity.Checks;

/**
 * Risk of wrong decisions on a whole instrument, which is accepted only if every point is. The points share
 * zero and span, and their measurements a standard, so their risks may not be multiplied: the instrument is
 * simulated.
 *
 * <p>The same seed gives the same counts.
 *
 * @param falseAccept some point outside its limit, and all accepted; of all instruments
 * @param falseReject every point inside its limit, and some rejected; of all instruments
 * @param inTolerance every point inside its limit
 * @param accepted    every point accepted
 * @param points      how many points
 * @param population  what the instruments were drawn from, in words
 * @param seed        seed of the generator
 */
public record InstrumentRisk(Proportion falseAccept, Proportion falseReject, Proportion inTolerance,
                             Proportion accepted, int points, String population, long seed) {
    /** The generator, for the record of a simulation. */
    public static final String GENERATOR = RandomSource.XO_SHI_RO_256_PP.name();

    /** Checks the components. */
    public InstrumentRisk {
        Objects.requireNonNull(falseAccept, "falseAccept");
        Objects.requireNonNull(falseReject, "falseReject");
        Objects.requireNonNull(inTolerance, "inTolerance");
        Objects.requireNonNull(accepted, "accepted");
        Checks.atLeast("points", points, 1);
        Checks.notBlank("population", population);
    }

    /**
     * Simulates instruments, measures each and judges it.
     *
     * @param points       how each point is judged, in the order of the population's points
     * @param population   true errors of whole instruments
     * @param measurements correlation between the measurements of the points
     * @param trials       number of instruments, 1000 to 100 million
     * @param seed         any
     * @throws IllegalArgumentException if the numbers of points differ or the trials are out of range
     */
    public static InstrumentRisk simulate(List<InstrumentPoint> points, InstrumentPopulation population,
                                          PointCorrelation measurements, int trials, long seed) {
        Checks.within("trials", trials, 1000, 100_000_000);
        final int n = points.size();
        if (population.points() != n || measurements.points() != n) {
            throw new IllegalArgumentException(n + " points judged, but a population of "
                + population.points()
                + " and measurements of " + measurements.points());
        }
        final UniformRandomProvider rng = RandomSource.XO_SHI_RO_256_PP.create(seed);
        final InstrumentDraw draw = InstrumentDraw.from(population, rng);
        final double[][] factor = measurements.factor();
        final InstrumentPoint[] judged = points.toArray(InstrumentPoint[]::new);
        final double[] truth = new double[n];
        final double[] scatter = new double[n];
        final int[][] counts = new int[2][2];
        for (int i = 0; i < trials; i++) {
            draw.next(truth);
            draw.correlated(factor, scatter);
            boolean within = true;
            boolean accepted = true;
            for (int j = 0; j < n; j++) {
                within &= judged[j].limit().room(truth[j]) >= 0;
                accepted &= judged[j].acceptance().room(truth[j] + judged[j].u() * scatter[j]) >= 0
                    && judged[j].acceptance().zone().isPresent();
            }
            counts[within ? 1 : 0][accepted ? 1 : 0]++;
        }
        return new InstrumentRisk(new Proportion(counts[0][1], trials), new Proportion(counts[1][0], trials),
            new Proportion(counts[1][0] + counts[1][1], trials),
            new Proportion(counts[0][1] + counts[1][1], trials), n, population.sentence(), seed);
    }

    /** Several points judged alike. */
    public static List<InstrumentPoint> alike(int points, ToleranceInterval limit, DecisionRule rule,
                                              MeasurementUncertainty uncertainty) {
        final List<InstrumentPoint> list = new ArrayList<>();
        for (int i = 1; i <= points; i++) {
            list.add(InstrumentPoint.of("point " + i, limit, rule, uncertainty));
        }
        return list;
    }

    /** The risks in one sentence. */
    public String sentence() {
        return "Per instrument of " + points + " points: false accept " + falseAccept + ", false reject "
            + falseReject + ", with the 95 % interval of the simulation (" + falseAccept.trials()
                + " instruments,"
            + " seed " + seed + ", " + GENERATOR + "). " + population;
    }

    @Override
    public String toString() {
        return sentence();
    }
}
