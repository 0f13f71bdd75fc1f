package spanwright.quantity;

/**
 * A percentage of the upper range value, and of nothing else; {@link Span} converts between the kinds.
 *
 * @param value the figure before the percent sign: 0.5 is half a percent
 */
public record PercentOfUpperRangeValue(double value) implements Comparable<PercentOfUpperRangeValue> {
    /** Checks the component. */
    public PercentOfUpperRangeValue {
        Checks.finite("percent of upper range value", value);
    }

    /**
     * The percentage as a person writes it in a cell.
     *
     * @throws IllegalArgumentException if the value is not finite
     */
    public static PercentOfUpperRangeValue percentOfUpperRangeValue(double value) {
        return new PercentOfUpperRangeValue(value);
    }

    @Override
    public int compareTo(PercentOfUpperRangeValue other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return NumberText.plain(value, 6) + " % of upper range value";
    }
}
