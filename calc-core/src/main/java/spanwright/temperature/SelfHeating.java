package spanwright.temperature;

import spanwright.quantity.Checks;
import spanwright.quantity.Kelvin;

/**
 * Heat of modules mounted side by side. A loop-powered module turns burden times current into heat:
 * {@code P = (V0 + R0 I) I}; a powered one adds what it draws from its supply.
 *
 * <p>A module's own heat is in its calibration too, if it was warmed up at a like current. So only the
 * neighbours' heat raises its temperature against calibration. Thermal resistance and coupling must be
 * measured or stated by the maker: there is no default.
 *
 * @param dropVolts      constant part of the voltage drop, V0
 * @param dropOhms       resistive part of the drop, R0
 * @param supplyWatts    power drawn from a supply of its own, 0 for a loop-powered module
 * @param kelvinPerWatt  temperature rise of a module for each watt of its own
 * @param neighbours     modules that heat it
 * @param coupling       share of a neighbour's own rise that is felt next door, 0 to 1
 */
public record SelfHeating(double dropVolts, double dropOhms, double supplyWatts, double kelvinPerWatt,
                          int neighbours, double coupling) {
    /** Largest current that a loop is sized for, mA. */
    private static final double MOST_MILLIAMPS = 25;

    /** Checks the components. */
    public SelfHeating {
        Checks.notNegative("voltage drop in V", dropVolts);
        Checks.notNegative("resistive drop in ohm", dropOhms);
        Checks.notNegative("supply power in W", supplyWatts);
        Checks.notNegative("thermal resistance in K/W", kelvinPerWatt);
        Checks.atLeast("number of neighbours", neighbours, 0);
        Checks.within("coupling", coupling, 0, 1);
    }

    /** Heat of one module at a current, watts. */
    public double dissipationWatts(double milliamps) {
        final double amps = Checks.within("current in mA", milliamps, 0, MOST_MILLIAMPS) / 1000;
        return (dropVolts + dropOhms * amps) * amps + supplyWatts;
    }

    /** By how much the neighbours raise the temperature of the module at a current. */
    public Kelvin riseByNeighbours(double milliamps) {
        return new Kelvin(dissipationWatts(milliamps) * kelvinPerWatt * neighbours * coupling);
    }
}
