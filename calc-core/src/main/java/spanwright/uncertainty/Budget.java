package spanwright.uncertainty;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * An uncertainty budget: what each input contributes, and the combined result (JCGM 100:2008, clauses 5 and
 * 7).
 *
 * @param measurand    what is measured
 * @param unit         its unit; may be empty
 * @param order        first or second order of the Taylor series
 * @param value        model at the best estimates
 * @param u            combined standard uncertainty
 * @param meanShift    by how much the expectation lies above {@code value}, to second order; 0 for a linear
 *                     model
 * @param effectiveDof effective degrees of freedom by the Welch-Satterthwaite formula; absent where it is not
 *                     valid, since inputs of finite degrees of freedom are correlated
 * @param lines        one for each input, in the order of the model
 * @param secondOrder  terms beyond first order, largest first; counted in {@code u} only where {@code order}
 *                     is second
 * @param warnings     what a reader must know before using the figure
 */
public record Budget(String measurand, String unit, Order order, double value, double u, double meanShift,
                     Optional<DegreesOfFreedom> effectiveDof, List<BudgetLine> lines,
                     List<SecondOrderTerm> secondOrder, List<String> warnings) {
    /** Checks the components. */
    public Budget {
        Objects.requireNonNull(measurand, "measurand");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(order, "order");
        Checks.finite("value", value);
        Checks.notNegative("combined standard uncertainty", u);
        Checks.finite("shift of the mean", meanShift);
        Objects.requireNonNull(effectiveDof, "effectiveDof");
        lines = List.copyOf(lines);
        secondOrder = List.copyOf(secondOrder);
        warnings = List.copyOf(warnings);
    }

    /** Expanded uncertainty, k by dominance or by t, whichever applies. */
    public ExpandedUncertainty expanded(double probability) {
        return expanded(probability, CoverageRule.BY_DOMINANCE);
    }

    /**
     * Expanded uncertainty at a coverage probability.
     *
     * <p>Where the effective degrees of freedom are not determined, t is taken at the fewest degrees of
     * freedom of any input: an upper bound of k, and the basis says so.
     *
     * @param probability in the open interval (0, 1)
     */
    public ExpandedUncertainty expanded(double probability, CoverageRule rule) {
        final boolean shapeCounts = rule == CoverageRule.BY_DOMINANCE && order == Order.FIRST
            && lines.stream().allMatch(line -> line.correlationGroup().isEmpty());
        final Optional<Coverage.Factor> byShape = shapeCounts
            ? Coverage.byDominance(lines, probability) : Optional.empty();
        final Coverage.Factor factor = byShape.orElseGet(() -> byStudent(probability));
        return new ExpandedUncertainty(value, factor.k() * u, factor.k(), probability, factor.basis());
    }

    private Coverage.Factor byStudent(double probability) {
        if (effectiveDof.isPresent()) {
            return Coverage.student(effectiveDof.get(), probability);
        }
        final DegreesOfFreedom fewest = lines.stream().filter(line -> line.contribution() != 0)
            .map(BudgetLine::dof).max(Comparator.comparingDouble(DegreesOfFreedom::reciprocal)).orElseThrow();
        final Coverage.Factor bound = Coverage.student(fewest, probability);
        return new Coverage.Factor(bound.k(),
            "upper bound: correlated inputs have no effective degrees of freedom, "
            + "the fewest of any input are taken, " + fewest);
    }

    /** Value, combined standard uncertainty, and effective degrees of freedom where they are determined. */
    public Estimate estimate() {
        return new Estimate(value, u, effectiveDof.orElseGet(() -> lines.stream().map(BudgetLine::dof)
            .max(Comparator.comparingDouble(DegreesOfFreedom::reciprocal)).orElseThrow()));
    }

    /** The line of an input. */
    public BudgetLine line(String name) {
        return lines.stream().filter(line -> line.name().equals(name)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no input is named " + name));
    }

    /** The lines, largest share of the variance first. */
    public List<BudgetLine> byShare() {
        return lines.stream()
            .sorted(Comparator.comparingDouble((BudgetLine line) -> -Math.abs(line.percentOfVariance())))
            .toList();
    }

    /** Share of the combined variance that the terms of second order make, in percent; 0 for first order. */
    public double percentOfSecondOrder() {
        if (order == Order.FIRST || u == 0) {
            return 0;
        }
        return 100 * secondOrder.stream().mapToDouble(SecondOrderTerm::variance).sum() / (u * u);
    }

    @Override
    public String toString() {
        final StringBuilder text = new StringBuilder(measurand + " = " + estimate()
            + (unit.isEmpty() ? "" : " " + unit) + System.lineSeparator());
        for (final BudgetLine line : byShare()) {
            text.append("  ").append(line.name()).append(": ").append(line.input().distribution().kind())
                .append(", u ").append(NumberText.uncertainty(line.u()))
                .append(", sensitivity ").append(NumberText.significant(line.sensitivity().value(), 4))
                .append(", contribution ").append(NumberText.uncertainty(Math.abs(line.contribution())))
                .append(", ").append(NumberText.fixed(line.percentOfVariance(), 1)).append(" % of variance")
                .append(System.lineSeparator());
        }
        warnings.forEach(warning -> text.append("  ").append(warning).append(System.lineSeparator()));
        return text.toString().stripTrailing();
    }
}
