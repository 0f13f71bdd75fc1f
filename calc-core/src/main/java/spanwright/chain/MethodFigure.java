package spanwright.chain;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What one method says the error stays within.
 *
 * @param method how the terms were added
 * @param limit  plus and minus, percent of span
 * @param remark what the figure rests on and does not promise
 */
public record MethodFigure(Method method, double limit, String remark) {
    /** Ways of adding the terms of a chain. */
    public enum Method {
        /** All limits against the claim at once. */
        WORST_CASE("worst case"),
        /** Root of the sum of the squared limits, as if they were independent. */
        ROOT_SUM_OF_SQUARES("root sum of squares of limits"),
        /** Combined standard uncertainty times coverage factor (JCGM 100:2008). */
        GUM("GUM"),
        /** Propagation of distributions (JCGM 101:2008). */
        MONTE_CARLO("Monte Carlo");

        private final String words;

        Method(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Checks the components. */
    public MethodFigure {
        Objects.requireNonNull(method, "method");
        Checks.notNegative("limit by " + method, limit);
        Objects.requireNonNull(remark, "remark");
    }

    @Override
    public String toString() {
        return method + ": \u00b1" + NumberText.fixed(limit, 3) + " % of span (" + remark + ")";
    }
}
