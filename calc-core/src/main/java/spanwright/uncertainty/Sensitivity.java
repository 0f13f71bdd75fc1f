package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * Sensitivity coefficient of an input.
 *
 * @param value partial derivative of the model at the best estimates
 * @param error estimated error of {@code value}; 0 where it is exact
 */
public record Sensitivity(double value, double error) {
    /** Checks the components. */
    public Sensitivity {
        Checks.finite("sensitivity", value);
        Checks.notNegative("error of a sensitivity", error);
    }
}
