package spanwright.chain;

import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;

/**
 * The error of a chain at one outdoor temperature, at the input that the claim is made for. Percent of span.
 *
 * @param outdoor    outdoor temperature
 * @param knownError sum of the known errors, signed
 * @param expanded   expanded uncertainty about the known error
 * @param worstCase  plus and minus, known error included
 */
public record TemperatureError(Celsius outdoor, double knownError, double expanded, double worstCase) {
    /** Checks the components. */
    public TemperatureError {
        Objects.requireNonNull(outdoor, "outdoor");
        Checks.finite("known error", knownError);
        Checks.notNegative("expanded uncertainty", expanded);
        Checks.notNegative("worst case", worstCase);
    }

    /** Size that the covered errors do not exceed: known error without sign plus expanded uncertainty. */
    public double largest() {
        return Math.abs(knownError) + expanded;
    }

    /** Lower end of the covered errors. */
    public double lower() {
        return knownError - expanded;
    }

    /** Upper end of the covered errors. */
    public double upper() {
        return knownError + expanded;
    }
}
