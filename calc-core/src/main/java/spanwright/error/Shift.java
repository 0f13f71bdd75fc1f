package spanwright.error;

import java.util.Objects;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.uncertainty.Estimate;

/**
 * A zero shift or a span shift, by two methods that differ when the characteristic is not straight.
 *
 * @param name         "zero shift" or "span shift"
 * @param endPoint     from the readings at the ends of the range
 * @param leastSquares from the least-squares line through the errors of all readings, in percent of span,
 *                     with its standard uncertainty
 */
public record Shift(String name, Finding<PercentOfSpan> endPoint, Finding<Estimate> leastSquares) {
    /** Checks the components. */
    public Shift {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(endPoint, "endPoint");
        Objects.requireNonNull(leastSquares, "leastSquares");
    }

    @Override
    public String toString() {
        return name + ": end point "
            + endPoint.map(p -> NumberText.signed(p.value(), 3) + " % of span") + "; least squares "
            + leastSquares.map(e -> NumberText.signed(e.value(), 3) + " % of span, u "
                + NumberText.uncertainty(e.u()));
    }
}
