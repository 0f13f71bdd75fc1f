package spanwright.uncertainty;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A value with its standard uncertainty (k = 1) and the degrees of freedom of that uncertainty. The unit is
 * that of the quantity it stands for.
 *
 * @param value best estimate
 * @param u     standard uncertainty, at least 0; 0 is a constant
 * @param dof   degrees of freedom of {@code u}
 */
public record Estimate(double value, double u, DegreesOfFreedom dof) {
    /** Checks the components. */
    public Estimate {
        Checks.finite("value", value);
        Checks.notNegative("standard uncertainty", u);
        Objects.requireNonNull(dof, "dof");
    }

    /** An estimate whose uncertainty rests on a finite number of degrees of freedom. */
    public static Estimate of(double value, double u, double dof) {
        return new Estimate(value, u, DegreesOfFreedom.of(dof));
    }

    /** An estimate whose uncertainty is taken as exactly known. */
    public static Estimate of(double value, double u) {
        return new Estimate(value, u, DegreesOfFreedom.UNLIMITED);
    }

    /** A constant: no uncertainty. */
    public static Estimate exactly(double value) {
        return of(value, 0);
    }

    /** This estimate with value and uncertainty in another unit. */
    public Estimate times(double factor) {
        return new Estimate(value * factor, Math.abs(factor) * u, dof);
    }

    @Override
    public String toString() {
        if (u == 0) {
            return NumberText.significant(value, 7);
        }
        return NumberText.fixed(value, NumberText.decimalsFor(u))
            + " \u00b1 " + NumberText.uncertainty(u) + " (k = 1"
            + (dof.isUnlimited() ? ")" : ", " + dof + " degrees of freedom)");
    }
}
