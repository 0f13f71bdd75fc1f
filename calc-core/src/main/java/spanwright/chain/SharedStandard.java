package spanwright.chain;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;

/**
 * A standard with which elements were calibrated. Whatever it is wrong by, it is wrong by in all of them:
 * elements that name the same standard share one error, which adds linearly (JCGM 100:2008, 5.2.2 example and
 * F.1.2.3).
 *
 * @param id             number of the standard
 * @param expandedOfSpan expanded uncertainty of a calibration with it, percent of the element's span
 * @param k              coverage factor of that figure
 */
public record SharedStandard(String id, double expandedOfSpan, double k) {
    /** Checks the components. */
    public SharedStandard {
        Checks.notBlank("id of the standard", id);
        Checks.notNegative("expanded uncertainty of standard " + id, expandedOfSpan);
        Checks.positive("coverage factor of standard " + id, k);
    }

    /** A standard with its expanded uncertainty at k = 2. */
    public static SharedStandard of(String id, PercentOfSpan expanded) {
        return new SharedStandard(id, expanded.value(), 2);
    }

    /** Standard uncertainty, percent of span. */
    public double u() {
        return expandedOfSpan / k;
    }

    @Override
    public String toString() {
        return id + ", U = " + NumberText.uncertainty(expandedOfSpan) + " % of span (k = "
            + NumberText.plain(k, 3) + ")";
    }
}
