package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.Rectangular;

/**
 * A meter in its milliampere range at a test terminal: it takes the current past the terminal's diode,
 * without opening the loop. What stays in the diode is missing in the reading, so the reading is low. Since
 * the diode is known by type only, the reading is not corrected: the whole leakage counts as a limit of
 * either sign.
 *
 * @param name       what the user calls it
 * @param milliamps  range of the meter, in milliampere
 * @param burdenOhms resistance of the range with its fuse and leads
 * @param terminal   the diode of the terminal
 */
public record MilliammeterAtTerminal(String name, MeterRange milliamps, double burdenOhms,
                                     DiodeTerminal terminal) implements CurrentMeter {
    /** Checks the components. */
    public MilliammeterAtTerminal {
        Checks.notBlank("name", name);
        Objects.requireNonNull(milliamps, "milliamps");
        Checks.notNegative("burden in ohm", burdenOhms);
        Objects.requireNonNull(terminal, "terminal");
    }

    /** Voltage across the terminal; the loop already gives it to the diode, and mostly more. */
    @Override
    public double burdenVolts(double current) {
        return Math.abs(current) / 1000 * burdenOhms;
    }

    /** Current that stays in the diode, mA; never more than the loop has. */
    public double leakageMilliamps(double current, Celsius ambient) {
        return Math.min(Math.abs(current), terminal.leakageMilliamps(burdenVolts(current), ambient));
    }

    @Override
    public List<InputQuantity> deviations(double current, Celsius ambient) {
        final List<InputQuantity> d = new ArrayList<>();
        d.add(InputQuantity.of("meter accuracy",
            Rectangular.plusMinus(milliamps.limitAt(current, ambient))));
        final double leakage = leakageMilliamps(current, ambient);
        if (leakage > 0) {
            d.add(InputQuantity.of("leakage of the diode", Rectangular.plusMinus(leakage)));
        }
        return d;
    }

    @Override
    public List<String> notes() {
        return List.of("the reading is low by what stays in the diode, "
            + NumberText.significant(leakageMilliamps(20, terminal.reference()), 2) + " mA at 20 mA and "
            + terminal.reference() + "; it is not corrected, and grows with temperature");
    }
}
