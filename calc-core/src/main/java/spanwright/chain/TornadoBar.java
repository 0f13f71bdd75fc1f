package spanwright.chain;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * How far one cause alone moves the error of the chain, the others at their expectation. Percent of span.
 *
 * @param label cause
 * @param low   error with the cause at one limit
 * @param high  error with it at the other
 */
public record TornadoBar(String label, double low, double high) {
    /** Checks the components. */
    public TornadoBar {
        Checks.notBlank("label", label);
        Checks.finite("low end", low);
        Checks.within("high end", high, low, Double.MAX_VALUE);
    }

    /** From one end to the other. */
    public double width() {
        return high - low;
    }

    @Override
    public String toString() {
        return label + ": " + NumberText.signed(low, 3) + " to " + NumberText.signed(high, 3) + " % of span";
    }
}
