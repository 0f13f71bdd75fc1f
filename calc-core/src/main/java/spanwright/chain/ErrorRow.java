package spanwright.chain;

import java.util.List;
import java.util.Optional;
import spanwright.uncertainty.Distribution;

/**
 * One independent or correlated cause of error in a chain at one input: {@code weight * q}, or
 * {@code weight * q * excursion} where a module temperature is given.
 *
 * @param label        unique in the chain
 * @param elements     the elements it acts in; several for a shared standard
 * @param influence    what it comes from
 * @param distribution of q
 * @param weight       percent of the chain's output span for each unit of q (and each kelvin)
 * @param limit        half width of q about its mean for worst case and root sum of squares
 * @param temperature  excursion that multiplies it
 * @param basis        standing and source
 */
record ErrorRow(String label, List<String> elements, Influence influence, Distribution distribution,
                double weight, double limit, Optional<ModuleTemperature> temperature, ErrorTerm.Basis basis) {
    ErrorRow {
        elements = List.copyOf(elements);
    }

    /** What q is multiplied by at these temperatures. */
    double factor(double[] temperatures) {
        return weight * temperature.map(t -> t.excursion(temperatures)).orElse(1.0);
    }

    /** Whether a temperature that is spread over time multiplies it. */
    boolean isProduct(List<TemperatureVariable> variables) {
        return temperature.isPresent()
            && temperature.get().variables().stream().anyMatch(v -> variables.get(v).isRandom());
    }
}
