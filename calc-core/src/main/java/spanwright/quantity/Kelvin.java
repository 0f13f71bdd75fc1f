package spanwright.quantity;

/**
 * A temperature difference.
 *
 * @param value kelvin, of either sign
 */
public record Kelvin(double value) implements Comparable<Kelvin> {
    /** Checks the component. */
    public Kelvin {
        Checks.finite("temperature difference in K", value);
    }

    /**
     * The difference as a person writes it in a cell.
     *
     * @throws IllegalArgumentException if the value is not finite
     */
    public static Kelvin kelvin(double value) {
        return new Kelvin(value);
    }

    @Override
    public int compareTo(Kelvin other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return NumberText.plain(value, 6) + " K";
    }
}
