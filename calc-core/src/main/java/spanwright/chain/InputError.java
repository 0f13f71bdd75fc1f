package spanwright.chain;

import spanwright.quantity.Checks;

/**
 * The error of a chain at one input, at the worst temperatures for it. Percent of span.
 *
 * @param inputPercent     input, percent of the first element's range
 * @param knownError       sum of the known errors, signed
 * @param worstCase        plus and minus
 * @param rootSumOfSquares plus and minus
 * @param gum              plus and minus: known error plus expanded uncertainty
 */
public record InputError(double inputPercent, double knownError, double worstCase, double rootSumOfSquares,
                         double gum) {
    /** Checks the components. */
    public InputError {
        Checks.finite("input", inputPercent);
        Checks.finite("known error", knownError);
        Checks.notNegative("worst case", worstCase);
        Checks.notNegative("root sum of squares", rootSumOfSquares);
        Checks.notNegative("GUM limit", gum);
    }
}
