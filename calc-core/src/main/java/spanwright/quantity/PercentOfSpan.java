package spanwright.quantity;

/**
 * A percentage of the span, and of nothing else; {@link Span} converts between the kinds.
 *
 * @param value the figure before the percent sign: 0.5 is half a percent
 */
public record PercentOfSpan(double value) implements Comparable<PercentOfSpan> {
    /** Checks the component. */
    public PercentOfSpan {
        Checks.finite("percent of span", value);
    }

    /**
     * The percentage as a person writes it in a cell.
     *
     * @throws IllegalArgumentException if the value is not finite
     */
    public static PercentOfSpan percentOfSpan(double value) {
        return new PercentOfSpan(value);
    }

    @Override
    public int compareTo(PercentOfSpan other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return NumberText.plain(value, 6) + " % of span";
    }
}
