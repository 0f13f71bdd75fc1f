package spanwright.temperature;

import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.Kelvin;

/**
 * How far a module's temperature goes from the temperature at which it was calibrated, on both sides. A side
 * that the range does not reach is negative: a module calibrated at 10 degC that is never colder than 15 degC
 * has
 * {@code kelvinBelow} -5.
 *
 * @param calibration temperature at calibration
 * @param kelvinBelow calibration temperature minus lowest temperature
 * @param kelvinAbove highest temperature minus calibration temperature
 */
public record Excursion(Celsius calibration, double kelvinBelow, double kelvinAbove) {
    /** Checks the components. */
    public Excursion {
        Objects.requireNonNull(calibration, "calibration");
        Checks.finite("kelvin below", kelvinBelow);
        Checks.finite("kelvin above", kelvinAbove);
        if (!(kelvinBelow + kelvinAbove >= 0)) {
            throw new IllegalArgumentException("the highest temperature lies " + -(kelvinBelow + kelvinAbove)
                + " K below the lowest");
        }
    }

    /**
     * The excursion of a range about a calibration temperature.
     *
     * @throws IllegalArgumentException if the highest temperature is below the lowest
     */
    public static Excursion of(Celsius calibration, Celsius lowest, Celsius highest) {
        return new Excursion(calibration, calibration.minus(lowest).value(),
            highest.minus(calibration).value());
    }

    /** The larger of the two sides, in kelvin. */
    public double largestKelvin() {
        return Math.max(kelvinBelow, kelvinAbove);
    }

    /** Lowest temperature of the range. */
    public Celsius lowest() {
        return calibration.plus(new Kelvin(-kelvinBelow));
    }

    /** Highest temperature of the range. */
    public Celsius highest() {
        return calibration.plus(new Kelvin(kelvinAbove));
    }

    @Override
    public String toString() {
        return lowest() + " to " + highest() + " about " + calibration + " at calibration";
    }
}
