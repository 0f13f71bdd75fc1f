package spanwright.loop;

import java.util.Objects;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Power of a device: what enters it either leaves it for another circuit or becomes heat in it.
 *
 * @param device         its name
 * @param inCabinet      whether its heat is counted to the cabinet: all but transmitters, cables and field
 *                       devices
 * @param takenMilliwatts power it takes at its terminals from circuits of the loop, in mW
 * @param ownMilliwatts   power it takes from a supply of its own, outside the loop, in mW; empty if it has
 *                        one and its data do not state it
 * @param givenMilliwatts power it gives to another circuit of the loop, in mW
 */
public record ElementPower(String device, boolean inCabinet, double takenMilliwatts,
                           OptionalDouble ownMilliwatts, double givenMilliwatts) {
    /** Checks the components. */
    public ElementPower {
        Checks.notBlank("device", device);
        Checks.finite("power taken in mW", takenMilliwatts);
        Objects.requireNonNull(ownMilliwatts, "ownMilliwatts");
        ownMilliwatts
            .ifPresent(p -> Checks.notNegative("power of " + device + " from its own supply in mW", p));
        Checks.finite("power given in mW", givenMilliwatts);
    }

    static ElementPower passive(String device, boolean inCabinet, double takenMilliwatts) {
        return new ElementPower(device, inCabinet, takenMilliwatts, OptionalDouble.of(0), 0);
    }

    ElementPower placed(boolean cabinet) {
        return new ElementPower(device, cabinet, takenMilliwatts, ownMilliwatts, givenMilliwatts);
    }

    /** What it takes from the circuits of the loop less what it gives to them, in mW. */
    public double netMilliwatts() {
        return takenMilliwatts - givenMilliwatts;
    }

    /** What becomes heat in it, in mW; empty if the power from its own supply is not stated. */
    public OptionalDouble heatMilliwatts() {
        return ownMilliwatts.isEmpty() ? OptionalDouble.empty()
            : OptionalDouble.of(ownMilliwatts.getAsDouble() + netMilliwatts());
    }

    @Override
    public String toString() {
        return device + ": " + (heatMilliwatts().isPresent()
            ? "heat " + NumberText.fixed(heatMilliwatts().getAsDouble(), 1) + " mW"
            : "heat not determined, the power from its own supply is not stated");
    }
}
