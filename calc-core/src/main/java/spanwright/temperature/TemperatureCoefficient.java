package spanwright.temperature;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/**
 * A temperature coefficient with the method that made it and the range over which it was found.
 *
 * @param effect    what moves: zero, span or the whole output
 * @param method    how the figure was made
 * @param perKelvin percent of span per kelvin; signed only where the method keeps the sign
 * @param reference temperature at calibration, from which excursions count
 * @param coldest   coldest temperature tested
 * @param hottest   hottest temperature tested
 * @param residual  what the line of the method leaves over at the tested temperatures, percent of span, at
 *                  least 0; 0 for the methods that are bounds
 * @param origin    channel and source, for the report
 */
public record TemperatureCoefficient(TemperatureEffect effect, CoefficientMethod method, Estimate perKelvin,
                                     Celsius reference, Celsius coldest, Celsius hottest, double residual,
                                     String origin) {
    /** Below this share of a kelvin an excursion counts as the full range. */
    private static final double SAME_KELVIN = 2;

    /** Checks the components. */
    public TemperatureCoefficient {
        Objects.requireNonNull(effect, "effect");
        Objects.requireNonNull(method, "method");
        Objects.requireNonNull(perKelvin, "perKelvin");
        Objects.requireNonNull(reference, "reference");
        Objects.requireNonNull(origin, "origin");
        Checks.notNegative("residual", residual);
        if (!(coldest.value() < hottest.value())) {
            throw new IllegalArgumentException("coldest tested temperature " + coldest
                + " must be below the hottest " + hottest);
        }
    }

    /** The coefficient in parts per million of span per kelvin: 100 for 0.01 % of span per kelvin. */
    public double ppmOfSpanPerKelvin() {
        return perKelvin.value() * 1e4;
    }

    /** The same device with its zero point of excursions at another calibration temperature. */
    public TemperatureCoefficient withReference(Celsius calibration) {
        return new TemperatureCoefficient(effect, method, perKelvin, calibration, coldest, hottest, residual,
            origin);
    }

    /**
     * What the coefficient makes of an excursion, with both sides. The calibration temperature is the
     * excursion's.
     *
     * <p>Slope, bow-tie and least squares are multiplied by each side. A box figure bounds the spread over
     * the whole tested range and nothing less, so both sides get that whole spread. An end-point figure is
     * multiplied, and its residual added. Whatever the method does not promise becomes a warning.
     */
    public TemperatureContribution over(Excursion excursion) {
        final double width = hottest.value() - coldest.value();
        if (method == CoefficientMethod.BOX) {
            final double spread = perKelvin.value() * width;
            return new TemperatureContribution(effect, -spread, spread, spread, warnings(excursion),
                toString());
        }
        final double below = -perKelvin.value() * excursion.kelvinBelow();
        final double above = perKelvin.value() * excursion.kelvinAbove();
        final double limit = Math.max(Math.abs(below), Math.abs(above)) + residual;
        return new TemperatureContribution(effect, below, above, limit, warnings(excursion), toString());
    }

    /** What the method and the tested range do not promise for an excursion; empty where there is nothing. */
    public List<String> warnings(Excursion excursion) {
        final List<String> warnings = new ArrayList<>();
        if (!method.allowsPartialExcursion() && isPartial(excursion)) {
            warnings.add("the " + method + " figure holds for the full range " + coldest + " to " + hottest
                + " only: it does not promise " + NumberText.significant(perKelvin.value(), 2)
                + " % of span per K for an excursion of "
                + NumberText.plain(excursion.largestKelvin(), 3) + " K; use slope or bow-tie");
        }
        if (excursion.lowest().value() < coldest.value() - SAME_KELVIN
                || excursion.highest().value() > hottest.value() + SAME_KELVIN) {
            warnings.add("tested " + coldest + " to " + hottest + ", used " + excursion.lowest() + " to "
                + excursion.highest() + ": outside the tested range the coefficient is an extrapolation");
        }
        return List.copyOf(warnings);
    }

    private boolean isPartial(Excursion excursion) {
        return excursion.lowest().value() > coldest.value() + SAME_KELVIN
            || excursion.highest().value() < hottest.value() - SAME_KELVIN;
    }

    @Override
    public String toString() {
        final String sign = perKelvin.value() < 0 || !method.isSigned() ? "" : "+";
        return origin + ", " + effect + ": " + sign + NumberText.significant(perKelvin.value(), 3)
            + " % of span per K (" + method + ", " + coldest + " to " + hottest + ")";
    }
}
