package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Distribution;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.Normal;
import spanwright.uncertainty.Rectangular;

/**
 * A voltmeter across a sense resistor in the loop.
 *
 * @param name       what the user calls it
 * @param volts      range of the voltmeter, in volt
 * @param inputOhms  input resistance of the voltmeter
 * @param resistor   the sense resistor
 * @param emfVolts   limit of the thermal voltages of the junctions, volt; 50 uV is not unusual with brass and
 *                   solder
 * @param isReversed whether each reading is the mean of two with the leads reversed at the resistor, which
 *                   takes the thermal voltages out
 */
public record VoltmeterAcrossResistor(String name, MeterRange volts, double inputOhms, SenseResistor resistor,
                                      double emfVolts, boolean isReversed) implements CurrentMeter {
    /** Checks the components. */
    public VoltmeterAcrossResistor {
        Checks.notBlank("name", name);
        Objects.requireNonNull(volts, "volts");
        Checks.positive("input resistance of the voltmeter", inputOhms);
        Objects.requireNonNull(resistor, "resistor");
        Checks.notNegative("thermal voltage", emfVolts);
    }

    /** A voltmeter of 10 megohm input, thermal voltages of the given limit, not reversed. */
    public static VoltmeterAcrossResistor of(String name, MeterRange volts, SenseResistor resistor,
        double emfVolts) {
        return new VoltmeterAcrossResistor(name, volts, 10e6, resistor, emfVolts, false);
    }

    /** This set-up read twice, with the leads reversed. */
    public VoltmeterAcrossResistor reversed() {
        return new VoltmeterAcrossResistor(name, volts, inputOhms, resistor, emfVolts, true);
    }

    @Override
    public double burdenVolts(double milliamps) {
        return milliamps / 1000 * resistor.ohms();
    }

    @Override
    public List<InputQuantity> deviations(double milliamps, Celsius ambient) {
        final double perVolt = 1000 / resistor.ohms();
        final List<InputQuantity> d = new ArrayList<>();
        d.add(InputQuantity.of("meter accuracy",
            Rectangular.plusMinus(perVolt * volts.limitAt(burdenVolts(milliamps), ambient))));
        final double size = Math.abs(milliamps);
        if (size > 0 && resistor.value().standardUncertainty() > 0) {
            d.add(InputQuantity.of("resistor value", scaled(size)));
        }
        if (size * resistor.temperatureLimit(ambient) > 0) {
            d.add(InputQuantity.of("resistor temperature",
                Rectangular.plusMinus(size * resistor.temperatureLimit(ambient))));
        }
        if (size > 0) {
            d.add(InputQuantity.of("meter loading",
                Rectangular.plusMinus(size * resistor.ohms() / inputOhms)));
        }
        if (!isReversed && emfVolts > 0) {
            d.add(InputQuantity.of("thermal voltage", Rectangular.plusMinus(perVolt * emfVolts)));
        }
        return d;
    }

    private Distribution scaled(double milliamps) {
        if (resistor.value() instanceof Rectangular r) {
            return new Rectangular(milliamps * r.lower(), milliamps * r.upper());
        }
        return new Normal(0, milliamps * resistor.value().standardUncertainty());
    }

    @Override
    public List<String> notes() {
        final List<String> notes = new ArrayList<>();
        if (!resistor.isCertified()) {
            notes.add("the resistor is taken at its nominal " + NumberText.plain(resistor.ohms(), 6)
                + " ohm; a certificate would narrow it");
        }
        if (isReversed) {
            notes.add("thermal voltages cancel only if the temperatures hold between the two readings");
        } else if (emfVolts == 0) {
            notes.add("thermal voltages were taken as none");
        }
        return notes;
    }
}
