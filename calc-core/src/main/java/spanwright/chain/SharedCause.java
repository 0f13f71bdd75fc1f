package spanwright.chain;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Elements whose error terms have a cause in common, so that they tend the same way: coefficients of one lot
 * or one module, for example. A shared temperature and a shared standard need no entry here: elements in one
 * ambient, or with one standard, share them by themselves.
 *
 * @param cause       what they have in common, in words
 * @param influence   which of their terms are concerned
 * @param coefficient correlation coefficient of each pair, in [-1, 1]
 * @param elements    names of the elements, at least two
 */
public record SharedCause(String cause, Influence influence, double coefficient, List<String> elements) {
    /** Checks the components and copies the list. */
    public SharedCause {
        Checks.notBlank("shared cause", cause);
        Objects.requireNonNull(influence, "influence");
        Checks.within("correlation by " + cause, coefficient, -1, 1);
        elements = List.copyOf(elements);
        Checks.atLeast("elements that share " + cause, elements.size(), 2);
    }

    @Override
    public String toString() {
        return cause + ": " + influence + " of " + String.join(", ", elements) + " correlated with r = "
            + NumberText.plain(coefficient, 3);
    }
}
