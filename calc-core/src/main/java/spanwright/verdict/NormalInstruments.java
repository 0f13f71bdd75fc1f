package spanwright.verdict;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * Instruments whose errors at their points are jointly normal. A truncated prior at a point sorts out the
 * whole instrument.
 *
 * @param priors      the population at each point
 * @param correlation between the true errors of the points
 */
public record NormalInstruments(List<NormalPrior> priors, PointCorrelation correlation)
    implements InstrumentPopulation {
    /** Checks the components and copies the list. */
    public NormalInstruments {
        priors = List.copyOf(priors);
        Objects.requireNonNull(correlation, "correlation");
        Checks.atLeast("number of points", priors.size(), 1);
        if (correlation.points() != priors.size()) {
            throw new IllegalArgumentException(priors.size() + " points, but a correlation of "
                + correlation.points());
        }
    }

    /** The same population at every point, and the same correlation between every two. */
    public static NormalInstruments alike(int points, NormalPrior prior, double r) {
        return new NormalInstruments(Collections.nCopies(points, prior), PointCorrelation.equal(points, r));
    }

    @Override
    public int points() {
        return priors.size();
    }

    @Override
    public String sentence() {
        return points() + " points, jointly normal; at the first: " + priors.get(0).sentence();
    }
}
