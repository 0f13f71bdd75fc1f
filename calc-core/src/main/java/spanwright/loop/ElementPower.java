package spanwright.loop;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Power of a device.
 *
 * @param device         its name
 * @param inCabinet      whether its heat is counted to the cabinet: all but transmitters, cables and field
 *                       devices
 * @param takenMilliwatts power it takes at its terminals and from a supply of its own, in mW
 * @param givenMilliwatts power it gives to another circuit, in mW
 */
public record ElementPower(String device, boolean inCabinet, double takenMilliwatts, double givenMilliwatts) {
    /** Checks the components. */
    public ElementPower {
        Checks.notBlank("device", device);
        Checks.finite("power taken in mW", takenMilliwatts);
        Checks.finite("power given in mW", givenMilliwatts);
    }

    /** What becomes heat in it, in mW. */
    public double heatMilliwatts() {
        return takenMilliwatts - givenMilliwatts;
    }

    @Override
    public String toString() {
        return device + ": heat " + NumberText.fixed(heatMilliwatts(), 1) + " mW";
    }
}
