package spanwright.uncertainty;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/** Coverage factors. */
final class Coverage {
    /**
     * Rest over dominant part, up to which the dominant part alone sets the shape; in the manner of EA-4/02.
     */
    static final double NEGLIGIBLE = 0.3;

    private Coverage() { }

    /** A coverage factor and how it was found. */
    record Factor(double k, String basis) { }

    /**
     * By Student's t. The degrees of freedom are cut to the next lower whole number (JCGM 100:2008, G.4.1
     * note 1), so that k is never too small.
     */
    static Factor student(DegreesOfFreedom dof, double probability) {
        Checks.inside("coverage probability", probability, 0, 1);
        if (dof.isUnlimited()) {
            return new Factor(Normal.standardQuantile(0.5 + probability / 2), "normal");
        }
        final double whole = dof.count() < 1 ? dof.count() : Math.floor(dof.count());
        final double k = TDistribution.of(whole).inverseCumulativeProbability(0.5 + probability / 2);
        return new Factor(k, "t with " + NumberText.plain(whole, 4) + " effective degrees of freedom");
    }

    /**
     * By the dominating rectangular inputs, if there are.
     *
     * @param lines independent inputs of a model that first order describes
     */
    static Optional<Factor> byDominance(List<BudgetLine> lines, double probability) {
        Checks.inside("coverage probability", probability, 0, 1);
        final double total = lines.stream().mapToDouble(l -> l.contribution() * l.contribution()).sum();
        final List<BudgetLine> flat = lines.stream()
            .filter(l -> l.input().distribution() instanceof Rectangular && l.contribution() != 0)
            .sorted(Comparator.comparingDouble((BudgetLine l) -> -Math.abs(l.contribution())))
            .toList();
        if (flat.isEmpty()) {
            return Optional.empty();
        }
        final double a = Math.abs(flat.get(0).contribution());
        if (isNegligible(total - a * a, a * a)) {
            return Optional.of(new Factor(Math.sqrt(3) * probability,
                "one rectangular input dominates: " + flat.get(0).name()));
        }
        if (flat.size() < 2) {
            return Optional.empty();
        }
        final double b = Math.abs(flat.get(1).contribution());
        if (!isNegligible(total - a * a - b * b, a * a + b * b)) {
            return Optional.empty();
        }
        final Trapezoidal sum = Trapezoidal.ofSum(0, a, b);
        final double k = sum.quantile(0.5 + probability / 2) / sum.standardUncertainty();
        return Optional.of(new Factor(k,
            "two rectangular inputs dominate, a trapezoid: " + flat.get(0).name() + " and " + flat.get(1)
            .name()));
    }

    private static boolean isNegligible(double restOfVariance, double dominantVariance) {
        return restOfVariance <= NEGLIGIBLE * NEGLIGIBLE * dominantVariance;
    }
}
