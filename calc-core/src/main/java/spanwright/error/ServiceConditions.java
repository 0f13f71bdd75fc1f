package spanwright.error;

import java.util.List;
import spanwright.quantity.Checks;
import spanwright.quantity.Kelvin;

/**
 * Where and at which temperatures a channel will be used: what an adjustment should serve, rather than the
 * day of the calibration alone.
 *
 * @param fromPercent        lower end of the part of the input range in use, in percent
 * @param toPercent          upper end, above {@code fromPercent}
 * @param coldest            lowest service temperature less the temperature of the calibration
 * @param warmest            highest service temperature less the temperature of the calibration, not below
 *                           {@code coldest}
 * @param zeroPercentPerKelvin shift of the output per kelvin at the lower range value, percent of span, with
 *     its sign
 * @param spanPercentPerKelvin further shift per kelvin at the upper range value, percent of span, with its
 *     sign
 */
public record ServiceConditions(double fromPercent, double toPercent, Kelvin coldest, Kelvin warmest,
                                double zeroPercentPerKelvin, double spanPercentPerKelvin) {
    /** The whole range, at the temperature of the calibration. */
    public static final ServiceConditions AS_CALIBRATED =
        new ServiceConditions(0, 100, new Kelvin(0), new Kelvin(0), 0, 0);

    /** Checks the components. */
    public ServiceConditions {
        Checks.within("lower end of the service range in percent", fromPercent, 0, 100);
        Checks.within("upper end of the service range in percent", toPercent, 0, 100);
        Checks.finite("zero coefficient", zeroPercentPerKelvin);
        Checks.finite("span coefficient", spanPercentPerKelvin);
        if (!(fromPercent < toPercent)) {
            throw new IllegalArgumentException(
                "the service range must rise: from " + fromPercent + " % to " + toPercent + " %");
        }
        if (coldest.compareTo(warmest) > 0) {
            throw new IllegalArgumentException(
                "the coldest, " + coldest + " off, lies above the warmest, " + warmest + " off");
        }
    }

    /** These conditions over a part of the range. */
    public ServiceConditions overRange(double newFrom, double newTo) {
        return new ServiceConditions(newFrom, newTo, coldest, warmest, zeroPercentPerKelvin,
            spanPercentPerKelvin);
    }

    /** These conditions over temperatures, given as differences from the temperature of the calibration. */
    public ServiceConditions overTemperature(Kelvin newColdest, Kelvin newWarmest, double zero, double span) {
        return new ServiceConditions(fromPercent, toPercent, newColdest, newWarmest, zero, span);
    }

    /** The ends of the temperature range: the shift is straight in temperature, so its ends are the worst. */
    List<Kelvin> temperatures() {
        return coldest.equals(warmest) ? List.of(coldest) : List.of(coldest, warmest);
    }

    /** Shift of the output in percent of span. */
    double shift(Kelvin difference, double expectedPercent) {
        return difference.value() * (zeroPercentPerKelvin + spanPercentPerKelvin * expectedPercent / 100);
    }
}
