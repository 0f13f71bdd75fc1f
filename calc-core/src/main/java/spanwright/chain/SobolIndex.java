package spanwright.chain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Share of the variance of the chain's error that one cause explains, alone and with its interactions. Exact:
 * the error is a sum of products of a coefficient and an excursion, whose decomposition of variance is known
 * in closed form (in the sense of I. M. Sobol, 1993, from memory). Causes that are correlated count as one.
 *
 * @param label      cause, causes, or temperature
 * @param firstOrder share explained by it alone, 0 to 1
 * @param total      share that would go if it were known: alone and together with others, 0 to 1
 */
public record SobolIndex(String label, double firstOrder, double total) {
    /** Rounding that a sum of shares may show. */
    private static final double ROUNDING = 1e-9;

    /** Checks the components. */
    public SobolIndex {
        Checks.notBlank("label", label);
        Checks.within("first-order index of " + label, firstOrder, -ROUNDING, 1 + ROUNDING);
        Checks.within("total index of " + label, total, firstOrder - ROUNDING, 1 + ROUNDING);
    }

    /** Share explained only together with others. */
    public double interaction() {
        return total - firstOrder;
    }

    static List<SobolIndex> of(VarianceParts parts) {
        final double whole = parts.whole();
        final List<SobolIndex> indices = new ArrayList<>();
        if (whole == 0) {
            return List.of();
        }
        for (int g = 0; g < parts.groups().size(); g++) {
            indices.add(new SobolIndex(parts.label(g), parts.ofGroup(g) / whole,
                (parts.ofGroup(g) + parts.interactionsOfGroup(g)) / whole));
        }
        for (int v : parts.spread()) {
            indices.add(new SobolIndex(parts.temperatureName(v), parts.ofTemperature(v) / whole,
                (parts.ofTemperature(v) + parts.interactionsOfTemperature(v)) / whole));
        }
        indices.sort(Comparator.comparingDouble((SobolIndex i) -> -i.total())
            .thenComparing(SobolIndex::label));
        return List.copyOf(indices);
    }

    @Override
    public String toString() {
        return label + ": first order " + NumberText.fixed(firstOrder, 3) + ", total "
            + NumberText.fixed(total, 3);
    }
}
