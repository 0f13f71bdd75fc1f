package spanwright.loop;

import java.util.List;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * One galvanic circuit at a current: terminals in wiring order, from the plus of its source to the minus.
 *
 * @param name               as it is called
 * @param source             what gives the voltage
 * @param demandedMilliamps  current asked for
 * @param milliamps          current that flows
 * @param budget             voltages at the current asked for
 * @param elements           in wiring order; the sum of their voltages is that of the source
 */
public record CircuitState(String name, String source, double demandedMilliamps, double milliamps,
    Budget budget,
                           List<ElementState> elements) {
    /**
     * Voltages at the current asked for.
     *
     * @param availableVolts what the source gives
     * @param requiredVolts  what driver and burdens need
     */
    public record Budget(double availableVolts, double requiredVolts) {
        /** Checks the components. */
        public Budget {
            Checks.finite("available voltage in V", availableVolts);
            Checks.finite("required voltage in V", requiredVolts);
        }

        /** Voltage to spare; below 0 the current is not reached. */
        public double marginVolts() {
            return availableVolts - requiredVolts;
        }
    }

    /** Checks the components and copies the list. */
    public CircuitState {
        Checks.notBlank("name of the circuit", name);
        Checks.notBlank("source of the circuit", source);
        Checks.finite("current asked for in mA", demandedMilliamps);
        Checks.finite("current in mA", milliamps);
        elements = List.copyOf(elements);
    }

    /** Whether it carries less than was asked for. */
    public boolean isShort() {
        return milliamps < demandedMilliamps;
    }

    /** Voltage of the source at the current that flows. */
    public double sourceVolts() {
        return elements.get(0).plusVolts();
    }

    /** Sum of the voltages of all elements less that of the source: 0 (Kirchhoff's voltage law). */
    public double kirchhoffSum() {
        return elements.stream().mapToDouble(ElementState::volts).sum() - sourceVolts();
    }

    @Override
    public String toString() {
        return name + ": " + NumberText.fixed(milliamps, 2) + " mA"
            + (isShort() ? " of " + NumberText.fixed(demandedMilliamps, 2) + " mA asked for" : "") + ", "
            + source + " gives " + NumberText.fixed(budget.availableVolts(), 2) + " V, "
            + NumberText.fixed(budget.requiredVolts(), 2) + " V needed, margin "
            + NumberText.signed(budget.marginVolts(), 2) + " V";
    }
}
