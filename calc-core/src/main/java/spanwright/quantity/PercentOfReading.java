package spanwright.quantity;

/**
 * A percentage of the reading, and of nothing else; {@link Span} converts between the kinds.
 *
 * @param value the figure before the percent sign: 0.5 is half a percent
 */
public record PercentOfReading(double value) implements Comparable<PercentOfReading> {
    /** Checks the component. */
    public PercentOfReading {
        Checks.finite("percent of reading", value);
    }

    /**
     * The percentage as a person writes it in a cell.
     *
     * @throws IllegalArgumentException if the value is not finite
     */
    public static PercentOfReading percentOfReading(double value) {
        return new PercentOfReading(value);
    }

    @Override
    public int compareTo(PercentOfReading other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return NumberText.plain(value, 6) + " % of reading";
    }
}
