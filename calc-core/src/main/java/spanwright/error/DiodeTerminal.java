package spanwright.error;

import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.Kelvin;
import spanwright.quantity.NumberText;

/**
 * A test terminal across a diode in the loop: a milliammeter put there takes the current past the diode,
 * unless its burden nears the diode's forward voltage. Then part of the current stays in the diode and the
 * reading is low.
 *
 * <p>Model: the diode's current falls by e for each {@code n k T / q} below its forward voltage, which itself
 * falls with temperature. Source: the diode equation; the figures of a typical silicon diode are common
 * practice, no source.
 *
 * @param forwardVolts     forward voltage at {@code atMilliamps} and {@code reference}
 * @param atMilliamps      the current it is stated at
 * @param reference        the temperature it is stated at
 * @param ideality         n of the diode equation, 1 to 2
 * @param voltsPerKelvin   change of the forward voltage with temperature, negative: -0.002 is usual
 */
public record DiodeTerminal(double forwardVolts, double atMilliamps, Celsius reference, double ideality,
                            double voltsPerKelvin) {
    /** Boltzmann's constant by the elementary charge, volt per kelvin (exact in the SI of 2019). */
    private static final double VOLTS_PER_KELVIN = 1.380649e-23 / 1.602176634e-19;
    private static final double KELVIN_OF_ZERO_CELSIUS = 273.15;

    /** Checks the components. */
    public DiodeTerminal {
        Checks.positive("forward voltage", forwardVolts);
        Checks.positive("current of the forward voltage in mA", atMilliamps);
        Objects.requireNonNull(reference, "reference");
        Checks.within("ideality", ideality, 1, 2);
        Checks.within("change of the forward voltage per kelvin", voltsPerKelvin, -0.01, 0);
    }

    /** A usual silicon diode: 0.65 V at 20 mA and 25 degC, ideality 1.8, -2 mV/K. */
    public static DiodeTerminal usual() {
        return new DiodeTerminal(0.65, 20, new Celsius(25), 1.8, -0.002);
    }

    /**
     * Current that stays in the diode, mA.
     *
     * @param terminalVolts voltage that the meter leaves across the terminal
     * @param ambient       temperature of the diode
     */
    public double leakageMilliamps(double terminalVolts, Celsius ambient) {
        Checks.notNegative("voltage across the terminal", terminalVolts);
        final Kelvin warmer = ambient.minus(reference);
        final double forward = Checks.positive("forward voltage at " + ambient,
            forwardVolts + voltsPerKelvin * warmer.value());
        final double scale = ideality * VOLTS_PER_KELVIN * (ambient.value() + KELVIN_OF_ZERO_CELSIUS);
        // (e^(v/s) - 1) / (e^(f/s) - 1) of the stated current, written so that neither power overflows.
        return atMilliamps * Math.exp((terminalVolts - forward) / scale)
            * Math.expm1(-terminalVolts / scale) / Math.expm1(-forward / scale);
    }

    /**
     * Error of the reading in percent of the span: never positive.
     *
     * @param burdenVolts   voltage that the meter leaves across the terminal at this current
     * @param ambient       temperature of the diode
     * @param spanMilliamps width of the span
     */
    public double errorPercentOfSpan(double burdenVolts, Celsius ambient, double spanMilliamps) {
        return -100 * leakageMilliamps(burdenVolts, ambient) / Checks.positive("span in mA", spanMilliamps);
    }

    /** Highest voltage across the terminal at which no more than the given current stays in the diode. */
    public double largestBurdenVolts(double leakageMilliamps, Celsius ambient) {
        Checks.positive("leakage in mA", leakageMilliamps);
        double low = 0;
        double high = forwardVolts + 1;
        // Leakage rises with the voltage; 60 halvings leave nothing a meter could show.
        for (int i = 0; i < 60; i++) {
            final double middle = (low + high) / 2;
            if (leakageMilliamps(middle, ambient) <= leakageMilliamps) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /**
     * Temperatures at which a table is worth having: a cold kiosk, the reference, a warm and a hot cabinet;
     * those at which the diode has no forward voltage left are not among them.
     */
    public List<Celsius> usualTemperatures() {
        return DoubleStream.of(-10, reference.value(), 45, 70).distinct().sorted()
            .filter(t -> forwardVolts + voltsPerKelvin * (t - reference.value()) > 0)
            .mapToObj(Celsius::new).toList();
    }

    @Override
    public String toString() {
        return "test terminal across a diode of " + NumberText.plain(forwardVolts, 3) + " V at "
            + NumberText.plain(atMilliamps, 3) + " mA, " + reference;
    }
}
