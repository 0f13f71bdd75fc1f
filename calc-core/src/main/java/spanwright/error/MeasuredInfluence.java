package spanwright.error;

import java.util.Objects;
import spanwright.fit.Interval;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.uncertainty.Estimate;

/**
 * What one influence does to an output.
 *
 * @param name     the influence: "CH2", "supply"
 * @param unit     unit of its settings, "%" of span where it is another channel
 * @param perUnit  change of the output per unit, percent of the output span
 * @param interval 95 % interval of {@code perUnit}
 * @param range    largest less smallest setting that was tried
 */
public record MeasuredInfluence(String name, String unit, Estimate perUnit, Interval interval, double range) {
    /** Checks the components. */
    public MeasuredInfluence {
        Checks.notBlank("name of the influence", name);
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(perUnit, "perUnit");
        Objects.requireNonNull(interval, "interval");
        Checks.positive("range of the settings", range);
    }

    /** Change of the output over the range of settings that was tried. */
    public PercentOfSpan overRange() {
        return new PercentOfSpan(perUnit.value() * range);
    }

    /** Largest size of that change that the readings do not exclude. */
    public PercentOfSpan atMost() {
        return new PercentOfSpan(range * Math.max(Math.abs(interval.lower()), Math.abs(interval.upper())));
    }

    /** Whether the influence is told from none. */
    public boolean isShown() {
        return !interval.contains(0);
    }

    @Override
    public String toString() {
        return name + ": " + (isShown() ? NumberText.signed(overRange().value(), 4) : "not shown, at most "
            + NumberText.fixed(atMost().value(), 4)) + " % of span over " + NumberText.plain(range, 4) + " "
            + unit;
    }
}
