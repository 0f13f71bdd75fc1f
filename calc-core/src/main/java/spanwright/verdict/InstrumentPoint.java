package spanwright.verdict;

import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * How one point of an instrument is judged, for {@link InstrumentRisk}. All in one unit, in verdicts percent
 * of span.
 *
 * @param name       what a person calls the point
 * @param limit      permissible true errors
 * @param acceptance accepted results
 * @param u          standard uncertainty of a result, above 0
 */
public record InstrumentPoint(String name, ToleranceInterval limit, Acceptance acceptance, double u) {
    /** Checks the components. */
    public InstrumentPoint {
        Checks.notBlank("name", name);
        Objects.requireNonNull(limit, "limit");
        Checks.positive("standard uncertainty", u);
        acceptance.unmet().ifPresent(words -> {
            throw new IllegalArgumentException("the rule does not apply at " + name + ", missing: " + words);
        });
    }

    /** A point judged by a rule. */
    public static InstrumentPoint of(String name, ToleranceInterval limit, DecisionRule rule,
                                     MeasurementUncertainty uncertainty) {
        return new InstrumentPoint(name, limit, rule.acceptance(limit, uncertainty), uncertainty.u());
    }
}
