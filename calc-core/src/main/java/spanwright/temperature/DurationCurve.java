package spanwright.temperature;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Hours sorted by the size of what happened in them: how long an error was at least so large. The values are
 * magnitudes in percent of span, or in kelvin for excursions.
 *
 * @param descending magnitudes, the largest first, one for each recorded hour, at least one
 */
public record DurationCurve(List<Double> descending) {
    /** Sorts and copies the list. */
    public DurationCurve {
        final List<Double> sorted = new ArrayList<>(descending);
        Checks.atLeast("number of hours", sorted.size(), 1);
        sorted.forEach(v -> Checks.notNegative("magnitude", v));
        sorted.sort(Comparator.reverseOrder());
        descending = List.copyOf(sorted);
    }

    /** How many hours are in the record. */
    public int hours() {
        return descending.size();
    }

    /** The largest magnitude. */
    public double largest() {
        return descending.get(0);
    }

    /** Root of the mean square. */
    public double rootMeanSquare() {
        final double scale = largest();
        if (scale == 0) {
            return 0;
        }
        return scale * Math.sqrt(descending.stream()
            .mapToDouble(v -> v / scale * (v / scale)).sum() / hours());
    }

    /**
     * The magnitude that is not exceeded in the given share of the hours: the smallest recorded one with at
     * least that share at or below it.
     *
     * @param share in the open interval (0, 1): 0.95 for 95 % of the hours
     */
    public double notExceededFor(double share) {
        Checks.inside("share of the hours", share, 0, 1);
        final int rank = (int) Math.ceil(share * hours());
        return descending.get(hours() - Math.max(1, rank));
    }

    /** Recorded hours with a magnitude above the limit. */
    public int hoursBeyond(double limit) {
        return (int) descending.stream().filter(v -> v > limit).count();
    }

    /** The same hours with every magnitude multiplied: kelvin into percent of span. */
    public DurationCurve times(double factor) {
        final double size = Math.abs(Checks.finite("factor", factor));
        return new DurationCurve(descending.stream().map(v -> v * size).toList());
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "largest %s, 95 %% of the hours within %s, rms %s, over %d hours",
            NumberText.significant(largest(), 3), NumberText.significant(notExceededFor(0.95), 3),
            NumberText.significant(rootMeanSquare(), 3), hours());
    }
}
