package spanwright.uncertainty;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * An interval about a value that covers the measurand with a stated probability.
 *
 * @param value       best estimate
 * @param expanded    U: half-width of the interval, at least 0
 * @param k           coverage factor: U over the combined standard uncertainty
 * @param probability coverage probability, in (0, 1)
 * @param basis       how k was found, in words
 */
public record ExpandedUncertainty(double value, double expanded, double k, double probability, String basis) {
    /** Checks the components. */
    public ExpandedUncertainty {
        Checks.finite("value", value);
        Checks.notNegative("expanded uncertainty", expanded);
        Checks.positive("coverage factor", k);
        Checks.inside("coverage probability", probability, 0, 1);
        Objects.requireNonNull(basis, "basis");
    }

    /** Lower end of the interval. */
    public double lower() {
        return value - expanded;
    }

    /** Upper end of the interval. */
    public double upper() {
        return value + expanded;
    }

    @Override
    public String toString() {
        return NumberText.fixed(value, NumberText.decimalsFor(expanded)) + " \u00b1 "
            + NumberText.uncertainty(expanded) + " (" + NumberText.plain(100 * probability, 4)
            + " % coverage, k = "
            + NumberText.fixed(k, 2) + ", " + basis + ")";
    }
}
