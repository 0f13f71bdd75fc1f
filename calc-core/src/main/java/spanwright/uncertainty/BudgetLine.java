package spanwright.uncertainty;

import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;

/**
 * One input of an uncertainty budget.
 *
 * @param input             the input: name, distribution, degrees of freedom
 * @param sensitivity       partial derivative of the model
 * @param contribution      sensitivity times standard uncertainty, with its sign, in the unit of the
 *                          measurand
 * @param percentOfVariance share of the combined variance, by first-order terms; with correlation it may be
 *     negative, since one input may take away what another adds
 * @param correlationGroup  name of the group of inputs it is correlated with; empty where it is independent
 */
public record BudgetLine(InputQuantity input, Sensitivity sensitivity, double contribution,
    double percentOfVariance,
                         Optional<String> correlationGroup) {
    /** Checks the components. */
    public BudgetLine {
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(sensitivity, "sensitivity");
        Checks.finite("contribution", contribution);
        Checks.finite("percent of variance", percentOfVariance);
        Objects.requireNonNull(correlationGroup, "correlationGroup");
    }

    /** Name of the input. */
    public String name() {
        return input.name();
    }

    /** Best estimate of the input. */
    public double value() {
        return input.value();
    }

    /** Standard uncertainty of the input. */
    public double u() {
        return input.u();
    }

    /** Degrees of freedom of the input's standard uncertainty. */
    public DegreesOfFreedom dof() {
        return input.dof();
    }
}
