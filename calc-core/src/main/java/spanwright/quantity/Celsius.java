package spanwright.quantity;

/**
 * A temperature on the Celsius scale. A difference of two is a {@link Kelvin}.
 *
 * @param value degrees Celsius, not below -273.15
 */
public record Celsius(double value) implements Comparable<Celsius> {
    private static final double ABSOLUTE_ZERO = -273.15;

    /** Checks the component. */
    public Celsius {
        Checks.within("temperature in degC", value, ABSOLUTE_ZERO, Double.MAX_VALUE);
    }

    /**
     * The temperature as a person writes it in a cell.
     *
     * @throws IllegalArgumentException if the value is not finite or below absolute zero
     */
    public static Celsius degC(double value) {
        return new Celsius(value);
    }

    /** This temperature raised by a difference. */
    public Celsius plus(Kelvin difference) {
        return new Celsius(value + difference.value());
    }

    /** How far this temperature lies above another. */
    public Kelvin minus(Celsius other) {
        return new Kelvin(value - other.value);
    }

    @Override
    public int compareTo(Celsius other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return NumberText.plain(value, 6) + " \u00b0C";
    }
}
