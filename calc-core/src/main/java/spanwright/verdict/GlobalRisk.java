package spanwright.verdict;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Risk of wrong decisions over a population, at one point, before anything is measured: the joint
 * distribution of true error and result, integrated (JCGM 106:2012, clause 9, from memory). All are
 * probabilities, 0 to 1.
 *
 * <p>Limits: the result is taken as normal about the true error with standard deviation u. With a rule of
 * four answers, accepted means an unconditional pass.
 *
 * @param falseAccept outside the limit and accepted, of all
 * @param falseReject inside the limit and rejected, of all
 * @param inTolerance inside the limit, of all
 * @param accepted    accepted, of all
 * @param prior       the population
 */
public record GlobalRisk(double falseAccept, double falseReject, double inTolerance, double accepted,
                         Prior prior) {
    private static final double ROUNDING = 1e-9;

    /** Checks the components. */
    public GlobalRisk {
        Checks.within("false-accept risk", falseAccept, 0, 1);
        Checks.within("false-reject risk", falseReject, 0, 1);
        Checks.within("in-tolerance proportion", inTolerance, 0, 1 + ROUNDING);
        Checks.within("accepted proportion", accepted, -ROUNDING, 1 + ROUNDING);
        Objects.requireNonNull(prior, "prior");
    }

    /**
     * The risks of a rule.
     *
     * @param prior       population of true errors, in the unit of the limit
     * @param limit       permissible true errors
     * @param rule        how results are accepted
     * @param uncertainty uncertainty of a result, in the unit of the limit
     * @throws IllegalArgumentException if the rule does not apply to this limit and uncertainty
     */
    public static GlobalRisk of(Prior prior, ToleranceInterval limit, DecisionRule rule,
                                MeasurementUncertainty uncertainty) {
        return of(prior, limit, rule.acceptance(limit, uncertainty), uncertainty.u());
    }

    /**
     * The risks of accepting the results in an interval.
     *
     * @param u standard uncertainty of a result, above 0, in the unit of the limit
     * @throws IllegalArgumentException if the acceptance is that of a rule that does not apply
     */
    public static GlobalRisk of(Prior prior, ToleranceInterval limit, Acceptance acceptance, double u) {
        Checks.positive("standard uncertainty", u);
        acceptance.unmet().ifPresent(words -> {
            throw new IllegalArgumentException("the rule does not apply, missing: " + words);
        });
        final RiskIntegral.Parts parts = new RiskIntegral(limit, acceptance, u).of(prior);
        return new GlobalRisk(parts.falseAccept(), parts.falseReject(), parts.within(), parts.accepted(),
            prior);
    }

    /** Of the accepted, the proportion outside the limit; 0 where nothing is accepted. */
    public double falseAcceptOfAccepted() {
        return accepted > 0 ? falseAccept / accepted : 0;
    }

    /** The risks in one sentence. */
    public String sentence() {
        return "False accept " + percent(falseAccept) + ", false reject " + percent(falseReject) + " of all; "
            + percent(inTolerance) + " in tolerance, " + percent(accepted) + " accepted. " + prior.sentence();
    }

    private static String percent(double probability) {
        return NumberText.significant(100 * probability, 3) + " %";
    }

    @Override
    public String toString() {
        return sentence();
    }
}
