package spanwright.error;

import java.util.Arrays;
import java.util.List;
import spanwright.quantity.Celsius;
import spanwright.quantity.Span;
import spanwright.uncertainty.Budget;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.MeasurementModel;

/**
 * A way to read a loop current: a voltmeter across a sense resistor, or a meter in its current range in the
 * loop or at a test terminal. Currents are in milliampere.
 */
public sealed interface CurrentMeter permits VoltmeterAcrossResistor, MilliammeterInLoop,
    MilliammeterAtTerminal {
    /** What the user calls this set-up. */
    String name();

    /** Voltage that the set-up takes from the loop, in volt. */
    double burdenVolts(double milliamps);

    /**
     * What may be wrong with a reading, each as a deviation in milliampere about 0.
     *
     * @throws IllegalArgumentException if the reading is beyond the range of the meter
     */
    List<InputQuantity> deviations(double milliamps, Celsius ambient);

    /** What the reader of the figures must know of the set-up. */
    List<String> notes();

    /**
     * The reading with its uncertainty budget in milliampere.
     *
     * @throws IllegalArgumentException if the reading is beyond the range of the meter
     */
    default Budget budget(double milliamps, Celsius ambient) {
        final List<InputQuantity> inputs = deviations(milliamps, ambient);
        final double[] ones = new double[inputs.size()];
        Arrays.fill(ones, 1);
        return MeasurementModel.linear("current by " + name(), "mA", inputs, milliamps, ones).budget();
    }

    /** The reading at a current, in mA and in percent of a span. */
    default MeterReading at(double milliamps, Celsius ambient, Span output) {
        return new MeterReading(name(), milliamps, output, budget(milliamps, ambient),
            burdenVolts(milliamps));
    }
}
