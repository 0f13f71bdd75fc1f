package spanwright.error;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;
import spanwright.uncertainty.BudgetLine;
import spanwright.verdict.InstrumentPoint;
import spanwright.verdict.InstrumentRisk;
import spanwright.verdict.JudgedPoint;
import spanwright.verdict.NormalInstruments;
import spanwright.verdict.NormalPrior;
import spanwright.verdict.PointCorrelation;
import spanwright.verdict.Verdict;

/**
 * The channels that a channel is one of, for the risk of a wrong decision on a whole instrument. How far the
 * measurements of two points hang together need not be stated: it follows from their budgets, in which a
 * standard and its drift are shared and everything else is not.
 *
 * @param prior      true errors at every point, percent of span
 * @param trueErrors correlation between the true errors of any two points, [0, 1]: 1 where only a common
 *                   shift moves them
 * @param trials     number of instruments simulated, at least 1000
 * @param seed       seed of the simulation
 */
public record ChannelPopulation(NormalPrior prior, double trueErrors, int trials, long seed) {
    /** Checks the components. */
    public ChannelPopulation {
        Objects.requireNonNull(prior, "prior");
        Checks.within("correlation of the true errors", trueErrors, 0, 1);
        Checks.atLeast("trials", trials, 1000);
    }

    /** The risk per instrument; absent unless every point was judged. */
    Optional<InstrumentRisk> risk(Verdict verdict, List<PointUncertainty> points) {
        final Map<String, JudgedPoint> judged = new HashMap<>();
        verdict.points().forEach(p -> judged.put(p.finding().point(), p));
        final List<InstrumentPoint> all = new ArrayList<>();
        for (PointUncertainty point : points) {
            final JudgedPoint p = judged.get(point.finding().point());
            if (p == null || p.acceptance().filter(a -> a.unmet().isEmpty()).isEmpty()) {
                return Optional.empty();
            }
            all.add(new InstrumentPoint(p.finding().point(), p.limit().orElseThrow(),
                p.acceptance().orElseThrow(), point.budget().u()));
        }
        return all.isEmpty() ? Optional.empty() : Optional.of(InstrumentRisk.simulate(all,
            NormalInstruments.alike(all.size(), prior, trueErrors), measurements(points), trials, seed));
    }

    /** Correlation of the measurements: the shared part of two budgets over the product of their u. */
    static PointCorrelation measurements(List<PointUncertainty> points) {
        final List<List<Double>> rows = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            final List<Double> row = new ArrayList<>();
            for (int j = 0; j < points.size(); j++) {
                // One order of the factors for both halves, so that the matrix is symmetric to the last bit.
                row.add(i == j ? 1.0 : correlation(points.get(Math.min(i, j)), points.get(Math.max(i, j))));
            }
            rows.add(row);
        }
        return new PointCorrelation(rows);
    }

    private static double correlation(PointUncertainty a, PointUncertainty b) {
        double shared = 0;
        for (BudgetLine line : a.budget().lines()) {
            if (MeasurementProcess.isShared(line.name())) {
                shared += b.budget().lines().stream().filter(other -> other.name().equals(line.name()))
                    .mapToDouble(other -> line.contribution() * other.contribution()).sum();
            }
        }
        return Math.max(-1, Math.min(1, shared / (a.budget().u() * b.budget().u())));
    }

    @Override
    public String toString() {
        return prior.sentence() + " Correlation of the true errors of two points " + trueErrors + "; "
            + trials + " instruments simulated, seed " + seed + ".";
    }
}
