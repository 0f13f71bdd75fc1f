package spanwright.error;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.Rectangular;

/**
 * A meter in its milliampere range, in the loop.
 *
 * @param name       what the user calls it
 * @param milliamps  range of the meter, in milliampere
 * @param burdenOhms resistance of the range with its fuse: no matter for the error, but it takes voltage from
 *                   the loop
 */
public record MilliammeterInLoop(String name, MeterRange milliamps,
    double burdenOhms) implements CurrentMeter {
    /** Checks the components. */
    public MilliammeterInLoop {
        Checks.notBlank("name", name);
        Objects.requireNonNull(milliamps, "milliamps");
        Checks.notNegative("burden in ohm", burdenOhms);
    }

    @Override
    public double burdenVolts(double current) {
        return current / 1000 * burdenOhms;
    }

    @Override
    public List<InputQuantity> deviations(double current, Celsius ambient) {
        return List.of(InputQuantity.of("meter accuracy",
            Rectangular.plusMinus(milliamps.limitAt(current, ambient))));
    }

    @Override
    public List<String> notes() {
        return List.of("the meter takes " + NumberText.significant(burdenVolts(20), 2)
            + " V of the loop at 20 mA: check the loop's margin; breaking the loop to insert it drops "
            + "the signal");
    }
}
