package spanwright.verdict;

import java.util.List;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Instruments as the plant's history shows them. Each is kept whole, so that whatever ties its points
 * together stays; the variance of the measurement is taken out point by point, and the history is smoothed as
 * in
 * {@link EmpiricalPrior}, with bells correlated as the history is.
 *
 * @param errors one row of observed errors per instrument, at least 10, all of the same length
 * @param u      standard uncertainty of each observed error, at least 0; 0 takes them as true
 */
public record RecordedInstruments(List<List<Double>> errors, double u) implements InstrumentPopulation {
    /** Checks the components and copies the lists. */
    public RecordedInstruments {
        errors = errors.stream().map(List::copyOf).toList();
        Checks.atLeast("number of instruments", errors.size(), EmpiricalPrior.FEWEST);
        Checks.atLeast("number of points", errors.get(0).size(), 1);
        Checks.notNegative("standard uncertainty of the observations", u);
        for (int j = 0; j < errors.get(0).size(); j++) {
            NormalPrior.withoutMeasurement(
                Math.sqrt(Moments.variance(PointCorrelation.column(errors, j))), u);
        }
    }

    @Override
    public int points() {
        return errors.get(0).size();
    }

    @Override
    public String sentence() {
        return errors.size() + " recorded instruments of " + points() + " points, " + (u == 0
            ? "taken as true"
            : "observed, less the measurement's u = " + NumberText.uncertainty(u)) + ", smoothed.";
    }
}
