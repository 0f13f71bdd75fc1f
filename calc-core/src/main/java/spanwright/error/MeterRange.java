package spanwright.error;

import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * One range of a digital meter with its stated accuracy: plus and minus so many percent of the reading and so
 * many counts, a count being one step of the last digit of this range. Percent is of the reading, not of the
 * range.
 *
 * <p>Unit: volt or milliampere, as the set-up that uses it says. The accuracy holds within a temperature
 * band; beyond it the limits grow by a share of themselves per kelvin (a tenth is common practice, no source:
 * check the manual). It holds for the period that the manual states, often a year.
 *
 * @param upper            largest reading of the range
 * @param percentOfReading percent of the reading
 * @param counts           number of counts
 * @param step             one count: the step of the last digit
 * @param bandFrom         lower end of the temperature band
 * @param bandTo           upper end
 * @param growthPerKelvin  share of the limits added per kelvin outside the band
 */
public record MeterRange(double upper, double percentOfReading, double counts, double step, Celsius bandFrom,
                         Celsius bandTo, double growthPerKelvin) {
    /** Checks the components. */
    public MeterRange {
        Checks.positive("upper end of the range", upper);
        Checks.notNegative("percent of reading", percentOfReading);
        Checks.notNegative("counts", counts);
        Checks.positive("step of the last digit", step);
        Objects.requireNonNull(bandFrom, "bandFrom");
        Objects.requireNonNull(bandTo, "bandTo");
        Checks.notNegative("growth per kelvin", growthPerKelvin);
        if (bandFrom.compareTo(bandTo) > 0) {
            throw new IllegalArgumentException("the temperature band must rise: " + bandFrom + " to "
                + bandTo);
        }
    }

    /** A range with the usual band of 18 to 28 degC, beyond which a tenth is added per kelvin. */
    public static MeterRange of(double upper, double percentOfReading, double counts, double step) {
        return new MeterRange(upper, percentOfReading, counts, step, new Celsius(18), new Celsius(28), 0.1);
    }

    /**
     * The resolution of an input card that divides its range into 2^bits steps, and nothing else: bits are
     * not accuracy. One step of a 12 bit card of 0-20 mA is 0.0305 % of the 16 mA span.
     *
     * @param bits 1 to 32
     */
    public static MeterRange ofBits(double upper, int bits) {
        Checks.within("bits", bits, 1, 32);
        return of(upper, 0, 0, upper / Math.pow(2, bits));
    }

    /** This range with another temperature band and growth beyond it. */
    public MeterRange within(Celsius from, Celsius to, double growth) {
        return new MeterRange(upper, percentOfReading, counts, step, from, to, growth);
    }

    /**
     * Half width of the limits at a reading and an ambient temperature, in the unit of the range. Where no
     * counts are stated, half a step stands for the resolution.
     *
     * @throws IllegalArgumentException if the reading is beyond the range
     */
    public double limitAt(double reading, Celsius ambient) {
        if (Math.abs(reading) > upper) {
            throw new IllegalArgumentException("a reading of " + NumberText.plain(reading, 6)
                + " is beyond the range, which ends at " + NumberText.plain(upper, 6));
        }
        final double atBand = percentOfReading / 100 * Math.abs(reading) + Math.max(counts, 0.5) * step;
        return atBand * (1 + growthPerKelvin * outside(ambient));
    }

    /** By how many kelvin a temperature lies outside the band, 0 inside. */
    public double outside(Celsius ambient) {
        return Math.max(0, Math.max(bandFrom.value() - ambient.value(), ambient.value() - bandTo.value()));
    }

    @Override
    public String toString() {
        return NumberText.plain(percentOfReading, 4) + " % of reading + " + NumberText.plain(counts, 4)
            + " counts of "
            + NumberText.plain(step, 4) + ", range to " + NumberText.plain(upper, 6);
    }
}
