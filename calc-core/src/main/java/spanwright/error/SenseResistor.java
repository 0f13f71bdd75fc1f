package spanwright.error;

import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Distribution;
import spanwright.uncertainty.Normal;
import spanwright.uncertainty.Rectangular;

/**
 * A resistor through which the loop current is measured as a voltage.
 *
 * @param ohms             the value that is reckoned with: nominal, or certified
 * @param value            relative deviation of the true value from {@code ohms}: a rectangle for a
 *     tolerance, normal for a certificate
 * @param ppmPerKelvin     limit of the temperature coefficient, of either sign, parts per million per kelvin
 * @param reference        temperature at which {@code ohms} holds
 * @param isCertified      whether {@code ohms} comes from a certificate
 */
public record SenseResistor(double ohms, Distribution value, double ppmPerKelvin, Celsius reference,
                            boolean isCertified) {
    /** Checks the components. */
    public SenseResistor {
        Checks.positive("resistance in ohm", ohms);
        Objects.requireNonNull(value, "value");
        Checks.notNegative("temperature coefficient", ppmPerKelvin);
        Objects.requireNonNull(reference, "reference");
    }

    /**
     * A resistor known by its tolerance only; its value holds at 25 degC unless the data sheet says
     * otherwise.
     */
    public static SenseResistor ofTolerance(double ohms, double tolerancePercent, double ppmPerKelvin) {
        Checks.notNegative("tolerance in percent", tolerancePercent);
        return new SenseResistor(ohms, Rectangular.plusMinus(tolerancePercent / 100), ppmPerKelvin,
            new Celsius(25), false);
    }

    /** A resistor with a certificate: value and expanded uncertainty in ohm, coverage factor, temperature. */
    public static SenseResistor certified(double ohms, double expandedOhms, double k, double ppmPerKelvin,
                                          Celsius reference) {
        Checks.positive("resistance in ohm", ohms);
        return new SenseResistor(ohms, Normal.ofExpanded(0, expandedOhms / ohms, k), ppmPerKelvin, reference,
            true);
    }

    /**
     * Relative limit of the value: half width of the tolerance, or twice the standard uncertainty of the
     * certificate.
     */
    public double valueLimit() {
        return value instanceof Rectangular r ? (r.upper() - r.lower()) / 2 : 2 * value.standardUncertainty();
    }

    /** Largest relative change from the reference to an ambient temperature. */
    public double temperatureLimit(Celsius ambient) {
        return ppmPerKelvin * 1e-6 * Math.abs(ambient.minus(reference).value());
    }

    /**
     * Error of a current, in percent of span, when another resistance is in place than is reckoned with: 249
     * for 250 ohm reads 0.50 % of the 16 mA span low at 20 mA.
     *
     * @param trueOhms     the resistance in place
     * @param milliamps    the current
     * @param spanMilliamps width of the span
     */
    public double errorPercentOfSpan(double trueOhms, double milliamps, double spanMilliamps) {
        Checks.positive("true resistance in ohm", trueOhms);
        return 100 * milliamps * (trueOhms / ohms - 1) / Checks.positive("span in mA", spanMilliamps);
    }

    @Override
    public String toString() {
        return NumberText.plain(ohms, 7) + " ohm, " + (isCertified ? "certified" : "by its tolerance") + ", "
            + NumberText.plain(ppmPerKelvin, 4) + " ppm/K";
    }
}
