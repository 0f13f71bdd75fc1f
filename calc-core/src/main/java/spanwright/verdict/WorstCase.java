package spanwright.verdict;

import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The largest false-accept risk that a rule leaves open where the population is not known.
 *
 * @param falseAccept the risk, of all measured, 0 to 1
 * @param sd          spread of the centred normal population that has it, in the unit of the limit
 * @param inTolerance proportion of that population inside the limit
 */
public record WorstCase(double falseAccept, double sd, double inTolerance) {
    private static final int STEPS = 80;
    private static final double RANGE = 1e4;

    /** Checks the components. */
    public WorstCase {
        Checks.within("false-accept risk", falseAccept, 0, 1);
        Checks.positive("spread", sd);
        Checks.within("in-tolerance proportion", inTolerance, 0, 1);
    }

    /**
     * Over every spread of a normal population centred in a two-sided limit. A biased population can be
     * worse: see {@link #overAnyPopulation}.
     *
     * @throws IllegalArgumentException if the limit is one-sided or the rule does not apply
     */
    public static WorstCase overCentredNormal(ToleranceInterval limit, DecisionRule rule,
                                              MeasurementUncertainty uncertainty) {
        final double half = limit.halfWidth().orElseThrow(() -> new IllegalArgumentException(
            "a limit of " + limit + " has no middle for a population to be centred in"));
        final double middle = limit.lower().orElseThrow() + half;
        final Acceptance acceptance = rule.acceptance(limit, uncertainty);
        int best = 0;
        double largest = -1;
        for (int i = 0; i <= STEPS; i++) {
            final double risk = at(step(i), half, middle, limit, acceptance, uncertainty.u()).falseAccept();
            if (risk > largest) {
                largest = risk;
                best = i;
            }
        }
        final UnivariatePointValuePair found = new BrentOptimizer(1e-9, 1e-14).optimize(new MaxEval(200),
            new UnivariateObjectiveFunction(s ->
                at(s, half, middle, limit, acceptance, uncertainty.u()).falseAccept()),
            GoalType.MAXIMIZE, new SearchInterval(step(Math.max(0, best - 1)), step(best + 1), step(best)));
        final GlobalRisk worst = at(found.getPoint(), half, middle, limit, acceptance, uncertainty.u());
        return new WorstCase(worst.falseAccept(), half * Math.exp(found.getPoint()),
            Math.min(1, worst.inTolerance()));
    }

    /**
     * Over every population whatever: the probability that an error just beyond its limit is accepted, since
     * the worst population consists of these alone. Half for simple acceptance.
     *
     * @return probability, 0 to 1
     * @throws IllegalArgumentException if the rule does not apply
     */
    public static double overAnyPopulation(ToleranceInterval limit, DecisionRule rule,
                                           MeasurementUncertainty uncertainty) {
        final Acceptance acceptance = rule.acceptance(limit, uncertainty);
        acceptance.unmet().ifPresent(words -> {
            throw new IllegalArgumentException("the rule does not apply, missing: " + words);
        });
        final RiskIntegral integral = new RiskIntegral(limit, acceptance, uncertainty.u());
        double worst = 0;
        if (limit.lower().isPresent()) {
            worst = integral.acceptance(limit.lower().getAsDouble());
        }
        if (limit.upper().isPresent()) {
            worst = Math.max(worst, integral.acceptance(limit.upper().getAsDouble()));
        }
        return worst;
    }

    /** Logarithms of the spread in half widths, evenly from 1 / RANGE to RANGE. */
    private static double step(int i) {
        return Math.log(RANGE) * (2.0 * i / STEPS - 1);
    }

    private static GlobalRisk at(double logOfSpread, double half, double middle, ToleranceInterval limit,
                                 Acceptance acceptance, double u) {
        return GlobalRisk.of(NormalPrior.of(middle, half * Math.exp(logOfSpread), "worst case"), limit,
            acceptance, u);
    }

    @Override
    public String toString() {
        return "Largest false-accept risk of any centred normal population "
            + NumberText.significant(100 * falseAccept, 3) + " %, where "
            + NumberText.significant(100 * inTolerance, 3) + " % are in tolerance";
    }
}
