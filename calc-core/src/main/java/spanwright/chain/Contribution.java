package spanwright.chain;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What one cause adds to the error of the chain, at the input and temperatures that the claim is made for.
 *
 * @param label             cause, unique in the chain
 * @param elements          elements it acts in; several for a shared standard
 * @param influence         what it comes from
 * @param distribution      kind of the distribution
 * @param knownError        its expectation, percent of the chain's span, signed
 * @param limit             half width it has in worst case and root sum of squares, percent of the chain's
 *     span
 * @param u                 its standard uncertainty, percent of the chain's span
 * @param percentOfVariance its share of the variance; with shared causes the covariances are shared out with
 *     it
 * @param basis             standing and source
 */
public record Contribution(String label, List<String> elements, Influence influence, String distribution,
                           double knownError, double limit, double u, double percentOfVariance,
                           ErrorTerm.Basis basis) {
    /** Checks the components and copies the list. */
    public Contribution {
        Objects.requireNonNull(label, "label");
        elements = List.copyOf(elements);
        Objects.requireNonNull(influence, "influence");
        Objects.requireNonNull(distribution, "distribution");
        Checks.finite("known error of " + label, knownError);
        Checks.notNegative("limit of " + label, limit);
        Checks.notNegative("standard uncertainty of " + label, u);
        Checks.finite("share of " + label, percentOfVariance);
        Objects.requireNonNull(basis, "basis");
    }

    /** The error of the chain with this cause at its lower limit, others at their expectation. */
    public double tornadoLow(double knownErrorOfChain) {
        return knownErrorOfChain - limit;
    }

    /** The error of the chain with this cause at its upper limit, others at their expectation. */
    public double tornadoHigh(double knownErrorOfChain) {
        return knownErrorOfChain + limit;
    }

    /** The cause as a sentence names it: "cabinet isolator's temperature term". */
    public String words() {
        final String element = elements.get(0);
        return label.startsWith(element + ": ")
            ? element + "'s " + label.substring(element.length() + 2) + " term" : label;
    }

    /** Whether a term of an element is behind this cause. */
    boolean isOf(ChainElement element, ErrorTerm term) {
        return elements.contains(element.name())
            && label.equals(ErrorModel.label(element, term));
    }

    @Override
    public String toString() {
        return label + ": \u00b1" + NumberText.fixed(limit, 3) + " % of span, " + distribution + ", u = "
            + NumberText.uncertainty(u) + " % of span, " + NumberText.fixed(percentOfVariance, 1)
            + " % of the variance; " + basis.standing() + ", " + basis.source();
    }
}
