package spanwright.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;

/**
 * The global risks of a rule against test uncertainty ratio and in-tolerance proportion, for a centred normal
 * population and a two-sided limit: what a chart of the risks is drawn from.
 *
 * @param rule           the rule
 * @param kind           whether the proportions are of true or of observed errors
 * @param ratios         the ratios, rising
 * @param reliabilities  the in-tolerance proportions, each in (0, 1), rising
 * @param coverageFactor k = U / u of the measurement
 * @param cells          one for each ratio and proportion, all proportions of the first ratio first
 */
public record RiskSurface(DecisionRule rule, Reliability kind, List<Double> ratios,
    List<Double> reliabilities,
                          double coverageFactor, List<Cell> cells) {
    /** Checks the components and copies the lists. */
    public RiskSurface {
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(kind, "kind");
        ratios = rising("ratio", ratios);
        reliabilities = rising("in-tolerance proportion", reliabilities);
        Checks.positive("coverage factor", coverageFactor);
        cells = List.copyOf(cells);
        if (cells.size() != ratios.size() * reliabilities.size()) {
            throw new IllegalArgumentException(cells.size() + " cells for " + ratios.size() + " ratios and "
                + reliabilities.size() + " proportions");
        }
    }

    /**
     * One point of the surface.
     *
     * @param ratio       test uncertainty ratio
     * @param reliability in-tolerance proportion
     * @param risk        the risks, in the unit where the limit is plus and minus 1; absent where the rule
     *                    does not apply or the measurement alone explains the observed proportion
     */
    public record Cell(double ratio, double reliability, Optional<GlobalRisk> risk) { }

    /**
     * Calculates the surface.
     *
     * @param rule any rule but one that is solved for a population of its own
     * @throws IllegalArgumentException for such a rule, or if a list is empty, not rising or out of range
     */
    public static RiskSurface of(DecisionRule rule, Reliability kind, double coverageFactor,
        List<Double> ratios,
                                 List<Double> reliabilities) {
        if (rule instanceof PlantRiskGuardBand) {
            throw new IllegalArgumentException("a guard band solved for one population has no surface"
                + " over others");
        }
        final List<Cell> cells = new ArrayList<>();
        for (double ratio : rising("ratio", ratios)) {
            final double expanded = 1 / Checks.positive("ratio", ratio);
            final MeasurementUncertainty u = MeasurementUncertainty.of(
                expanded / Checks.positive("coverage factor", coverageFactor), coverageFactor);
            for (double reliability : rising("in-tolerance proportion", reliabilities)) {
                cells.add(new Cell(ratio, reliability, risk(rule, kind, u, reliability)));
            }
        }
        return new RiskSurface(rule, kind, ratios, reliabilities, coverageFactor, cells);
    }

    private static Optional<GlobalRisk> risk(DecisionRule rule, Reliability kind, MeasurementUncertainty u,
                                             double reliability) {
        final ToleranceInterval limit = ToleranceInterval.plusMinus(1);
        final Acceptance acceptance = rule.acceptance(limit, u);
        final NormalPrior observed = NormalPrior.ofTrueReliability(reliability, limit);
        if (acceptance.unmet().isPresent() || kind == Reliability.OBSERVED && observed.sd() <= u.u()) {
            return Optional.empty();
        }
        final NormalPrior prior = kind == Reliability.TRUE ? observed
            : NormalPrior.ofObservedReliability(reliability, limit, 0, u.u());
        return Optional.of(GlobalRisk.of(prior, limit, acceptance, u.u()));
    }

    /** The cell of the i-th ratio and the j-th proportion, each from 0. */
    public Cell cell(int i, int j) {
        Checks.within("index of the ratio", i, 0, ratios.size() - 1);
        Checks.within("index of the proportion", j, 0, reliabilities.size() - 1);
        return cells.get(i * reliabilities.size() + j);
    }

    private static List<Double> rising(String name, List<Double> values) {
        Checks.atLeast("number of " + name + "s", values.size(), 1);
        for (int i = 0; i < values.size(); i++) {
            Checks.positive(name, values.get(i));
            if (i > 0 && !(values.get(i) > values.get(i - 1))) {
                throw new IllegalArgumentException(name + " " + values.get(i)
                    + " does not lie above the one before, "
                    + values.get(i - 1));
            }
        }
        return List.copyOf(values);
    }

    @Override
    public String toString() {
        return "Risks of " + cells.size() + " pairs: ratio " + ratios.get(0) + " to "
            + ratios.get(ratios.size() - 1)
            + ", " + kind + " in-tolerance proportion " + reliabilities.get(0) + " to "
            + reliabilities.get(reliabilities.size() - 1) + ". " + rule.sentence();
    }
}
