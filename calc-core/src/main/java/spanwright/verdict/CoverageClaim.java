package spanwright.verdict;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The rule of a design claim: the coverage interval of the error must lie inside the limit. It is the guard
 * band w = U, told in the words of a claim, with two differences. The coverage of the finding must be at
 * least the one claimed. And an error that may be anything is not "Not shown" for ever: where the limit holds
 * with a probability below one half, the claim is "Does not meet".
 *
 * @param coverage claimed coverage probability, in (0.5, 1)
 */
public record CoverageClaim(double coverage) implements DecisionRule {
    /** Checks the component. */
    public CoverageClaim {
        Checks.inside("claimed coverage probability", coverage, 0.5, 1);
    }

    @Override
    public String sentence() {
        return "Claim: the error lies inside the limit with " + percent(coverage) + " coverage.";
    }

    @Override
    public Acceptance acceptance(ToleranceInterval limit, MeasurementUncertainty uncertainty) {
        if (uncertainty.coverage() >= coverage) {
            return new GuardBand(1).acceptance(limit, uncertainty).with(Answers.CLAIM);
        }
        return Acceptance.notApplicable(limit, "a coverage interval of " + percent(coverage)
            + " (it is one of "
            + percent(uncertainty.coverage()) + ")");
    }

    private static String percent(double probability) {
        return NumberText.plain(100 * probability, 4) + " %";
    }
}
