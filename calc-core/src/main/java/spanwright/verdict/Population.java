package spanwright.verdict;

import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;

/**
 * The population that the risks of a verdict are calculated for.
 *
 * @param prior      true errors at a point, percent of span
 * @param dependence how the points of one instrument hang together; absent if only the risk at the deciding
 *                   point is wanted
 */
public record Population(Prior prior, Optional<Dependence> dependence) {
    /**
     * How the points of one instrument hang together, and how long to simulate.
     *
     * @param trueErrors   correlation between the true errors of any two points, [0, 1]
     * @param measurements correlation between the measurements of any two points (a shared standard), [0, 1]
     * @param trials       number of instruments simulated, at least 1000
     * @param seed         seed of the simulation
     */
    public record Dependence(double trueErrors, double measurements, int trials, long seed) {
        /** Checks the components. */
        public Dependence {
            Checks.within("correlation of the true errors", trueErrors, 0, 1);
            Checks.within("correlation of the measurements", measurements, 0, 1);
            Checks.atLeast("trials", trials, 1000);
        }
    }

    /** Checks the components. */
    public Population {
        Objects.requireNonNull(prior, "prior");
        if (dependence.isPresent() && !(prior instanceof NormalPrior)) {
            throw new IllegalArgumentException("the points of an instrument are simulated from a normal"
                + " population; for recorded ones see RecordedInstruments and InstrumentRisk");
        }
    }

    /** A population whose risk is calculated at the deciding point. */
    public static Population ofPoints(Prior prior) {
        return new Population(prior, Optional.empty());
    }

    /** This population, with the risk per instrument simulated as well. */
    public Population ofInstruments(Dependence points) {
        return new Population(prior, Optional.of(points));
    }
}
