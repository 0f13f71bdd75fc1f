package spanwright.temperature;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What a temperature excursion does to the output, both sides kept. For a span effect the figures are those
 * at the upper range value.
 *
 * @param effect  what moves
 * @param atCold  percent of span at the lowest temperature; signed if the coefficient is
 * @param atHot   percent of span at the highest temperature; signed if the coefficient is
 * @param limit   what the error stays within over the whole excursion, percent of span, at least 0
 * @param warnings what the figures do not promise
 * @param basis   the coefficient or statement they come from
 */
public record TemperatureContribution(TemperatureEffect effect, double atCold, double atHot, double limit,
                                      List<String> warnings, String basis) {
    /** Checks the components and copies the list. */
    public TemperatureContribution {
        Objects.requireNonNull(effect, "effect");
        Checks.finite("contribution at the lowest temperature", atCold);
        Checks.finite("contribution at the highest temperature", atHot);
        Checks.notNegative("limit", limit);
        Objects.requireNonNull(basis, "basis");
        warnings = List.copyOf(warnings);
    }

    /** The limit at an input: a span effect grows with the input, a zero effect does not. */
    public double limitAt(double inputFraction) {
        return limit * effect.shareAt(inputFraction);
    }

    @Override
    public String toString() {
        final String text = effect + ": " + NumberText.signed(atCold, 3) + " % of span cold, "
            + NumberText.signed(atHot, 3) + " % of span hot, within \u00b1" + NumberText.fixed(limit, 3)
            + " % of span; " + basis;
        return warnings.isEmpty() ? text : text + "\n  warning: " + String.join("\n  warning: ", warnings);
    }
}
