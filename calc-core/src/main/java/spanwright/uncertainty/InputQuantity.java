package spanwright.uncertainty;

import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * A named input of a measurement model.
 *
 * @param name         unique in its model
 * @param distribution what is known of it
 * @param dof          degrees of freedom of its standard uncertainty; those of the distribution unless stated
 */
public record InputQuantity(String name, Distribution distribution, DegreesOfFreedom dof) {
    /** Checks the components. */
    public InputQuantity {
        Checks.notBlank("name of an input quantity", name);
        Objects.requireNonNull(distribution, "distribution");
        Objects.requireNonNull(dof, "dof");
    }

    /** An input with the degrees of freedom of its distribution. */
    public static InputQuantity of(String name, Distribution distribution) {
        return new InputQuantity(name, distribution, distribution.dof());
    }

    /**
     * An input known as an estimate: normal, or Student's t where the degrees of freedom are finite.
     */
    public static InputQuantity of(String name, Estimate estimate) {
        final Distribution distribution = estimate.dof().isUnlimited()
            ? new Normal(estimate.value(), estimate.u())
            : new ScaledT(estimate.value(), estimate.u(), estimate.dof().count());
        return of(name, distribution);
    }

    /**
     * This input with other degrees of freedom in the budget, for limits of which the reliability is judged
     * (JCGM 100:2008, G.4.2). Monte Carlo does not see them: there, use a {@link CurvilinearTrapezoid}.
     */
    public InputQuantity withDof(double count) {
        return new InputQuantity(name, distribution, DegreesOfFreedom.of(count));
    }

    /** Best estimate. */
    public double value() {
        return distribution.mean();
    }

    /** Standard uncertainty. */
    public double u() {
        return distribution.standardUncertainty();
    }
}
