package spanwright.uncertainty;

import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * A part of the variance that first-order propagation does not see (JCGM 100:2008, 5.1.2 note): the curvature
 * of the model in one input, or the product of two. A term of third derivatives is counted with the input
 * whose sensitivity it multiplies.
 *
 * @param first    name of one input
 * @param second   name of the other, or the same
 * @param variance in the unit of the measurand squared; may be negative
 */
public record SecondOrderTerm(String first, String second, double variance) {
    /** Checks the components. */
    public SecondOrderTerm {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
        Checks.finite("variance", variance);
    }

    /** "alpha x T", or "alpha squared". */
    public String label() {
        return first.equals(second) ? first + " squared" : first + " \u00d7 " + second;
    }
}
