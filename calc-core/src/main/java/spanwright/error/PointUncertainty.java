package spanwright.error;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.readings.CellAddress;
import spanwright.readings.Direction;
import spanwright.uncertainty.Budget;
import spanwright.uncertainty.ExpandedUncertainty;
import spanwright.verdict.MeasurementUncertainty;

/**
 * The mean error at one point from one side, with its measurement uncertainty.
 *
 * @param position       place on the scale, in percent of the input span
 * @param direction      from which side
 * @param expected       expected output, in percent of the output span
 * @param outputPerInput slope of the specified characteristic there, empty where it has none
 * @param budget         the error and its uncertainty budget, percent of span
 * @param missing        what the budget lacks, in words; while this is not empty the uncertainty is too small
 * @param cells          cells of the indications behind the error
 */
public record PointUncertainty(double position, Direction direction, double expected,
    OptionalDouble outputPerInput,
                               Budget budget, List<String> missing, List<CellAddress> cells) {
    /** Checks the components and copies the lists. */
    public PointUncertainty {
        Checks.finite("position", position);
        Objects.requireNonNull(direction, "direction");
        Checks.finite("expected output", expected);
        Objects.requireNonNull(outputPerInput, "outputPerInput");
        Objects.requireNonNull(budget, "budget");
        missing = List.copyOf(missing);
        cells = List.copyOf(cells);
    }

    /** The error with its expanded uncertainty at 95 %. */
    public ExpandedUncertainty expanded() {
        return budget.expanded(0.95);
    }

    /** What a verdict needs of this point. */
    public spanwright.verdict.MeasurementResult finding() {
        final String name = NumberText.plain(position, 4) + " % " + direction;
        final spanwright.verdict.MeasurementResult found = spanwright.verdict.MeasurementResult.of(name,
            expected, budget.value(),
            MeasurementUncertainty.of(budget.estimate(), expanded().k()))
            .from(cells.stream().map(CellAddress::toString).toList());
        return outputPerInput.isPresent() ? found.withSlope(outputPerInput.getAsDouble()) : found;
    }

    @Override
    public String toString() {
        final ExpandedUncertainty u = expanded();
        final int decimals = NumberText.decimalsFor(u.expanded());
        return NumberText.plain(position, 4) + " % " + direction + ": "
            + NumberText.signed(u.value(), decimals)
            + " \u00b1 " + NumberText.uncertainty(u.expanded()) + " % of span (95 %, k = "
            + NumberText.fixed(u.k(), 2) + ")" + (missing.isEmpty() ? "" : "; lacks "
            + String.join("; ", missing));
    }
}
