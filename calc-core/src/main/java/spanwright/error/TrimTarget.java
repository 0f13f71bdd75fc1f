package spanwright.error;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What the technician does: apply an input, turn until the output reads the target.
 *
 * @param apply       input to apply, in {@code inputUnit}
 * @param inputUnit   symbol of its unit
 * @param setTo       reading to set, in {@code outputUnit}
 * @param outputUnit  symbol of its unit
 * @param readsNow    what the output reads before the adjustment, in {@code outputUnit}
 */
public record TrimTarget(double apply, String inputUnit, double setTo, String outputUnit, double readsNow) {
    /** Checks the components. */
    public TrimTarget {
        Checks.finite("input to apply", apply);
        Checks.finite("reading to set", setTo);
        Checks.finite("reading before", readsNow);
    }

    @Override
    public String toString() {
        return "apply " + NumberText.fixed(apply, 3) + " " + inputUnit + ", set "
            + NumberText.fixed(setTo, 4) + " "
            + outputUnit + " (reads " + NumberText.fixed(readsNow, 4) + ")";
    }
}
