package spanwright.error;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;

/**
 * The largest positive and the largest negative of some deviations. Where all have one sign, the other figure
 * is the deviation nearest to that sign, not zero.
 *
 * @param highest the most positive deviation
 * @param lowest  the most negative deviation
 */
public record SignedPair(Extreme highest, Extreme lowest) {
    /** Checks the components. */
    public SignedPair {
        Objects.requireNonNull(highest, "highest");
        Objects.requireNonNull(lowest, "lowest");
        if (highest.deviation().value() < lowest.deviation().value()) {
            throw new IllegalArgumentException("highest " + highest + " is below lowest " + lowest);
        }
    }

    static SignedPair of(List<Extreme> deviations) {
        Extreme highest = deviations.get(0);
        Extreme lowest = highest;
        for (Extreme e : deviations) {
            highest = e.deviation().value() > highest.deviation().value() ? e : highest;
            lowest = e.deviation().value() < lowest.deviation().value() ? e : lowest;
        }
        return new SignedPair(highest, lowest);
    }

    /** The larger of the two without its sign. */
    public PercentOfSpan largest() {
        return new PercentOfSpan(Math.max(Math.abs(highest.deviation().value()),
            Math.abs(lowest.deviation().value())));
    }

    @Override
    public String toString() {
        return NumberText.signed(highest.deviation().value(), 3) + " / "
            + NumberText.signed(lowest.deviation().value(), 3) + " % of span";
    }
}
