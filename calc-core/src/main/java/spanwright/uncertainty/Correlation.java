package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * Correlation coefficient of two inputs. Where the common cause can be named, a shared input in the model
 * says more than a coefficient.
 *
 * @param first       name of one input
 * @param second      name of the other
 * @param coefficient in [-1, 1]
 */
public record Correlation(String first, String second, double coefficient) {
    /** Checks the components. */
    public Correlation {
        Checks.notBlank("first input", first);
        Checks.notBlank("second input", second);
        Checks.within("correlation of " + first + " and " + second, coefficient, -1, 1);
        if (first.equals(second)) {
            throw new IllegalArgumentException("an input is always fully correlated with itself: " + first);
        }
    }
}
