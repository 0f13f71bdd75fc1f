package spanwright.loop;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;

/**
 * A loop at a current: voltage at every terminal, power and heat of every device, what each receiver reads.
 *
 * @param loop     its name
 * @param demandedMilliamps current asked for
 * @param corner   which limits of the parameters count
 * @param circuits solved circuits, the first one first; empty where there is no solution
 * @param readings of the receivers and driven devices; empty where there is no solution
 * @param power    where every watt comes from and goes; without devices where there is no solution
 * @param sentence what to know first
 */
public record LoopState(String loop, double demandedMilliamps, Corner corner, List<CircuitState> circuits,
                        List<ReceiverReading> readings, PowerBalance power, String sentence) {
    /** Checks the components and copies the lists. */
    public LoopState {
        Checks.notBlank("name of the loop", loop);
        Checks.finite("current asked for in mA", demandedMilliamps);
        Objects.requireNonNull(corner, "corner");
        circuits = List.copyOf(circuits);
        readings = List.copyOf(readings);
        Objects.requireNonNull(power, "power");
        Checks.notBlank("sentence", sentence);
    }

    /** Whether there is a steady state; {@link #sentence()} says why not. */
    public boolean isSolved() {
        return !circuits.isEmpty();
    }

    /** The circuit of the transmitter. */
    public CircuitState primary() {
        return circuit(0);
    }

    /** A circuit by its place, 0 for that of the transmitter. */
    public CircuitState circuit(int place) {
        if (!isSolved()) {
            throw new IllegalStateException(sentence);
        }
        return circuits.get(place);
    }

    /** An element, or the first part of it, by name. */
    public ElementState element(String name) {
        return circuits.stream().flatMap(c -> c.elements().stream())
            .filter(e -> e.element().equals(name) || e.label().equals(name)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no element of " + loop + " is named " + name));
    }

    /** What a receiver reads, by name. */
    public ReceiverReading reading(String receiver) {
        return readings.stream().filter(r -> r.receiver().equals(receiver)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no receiver of " + loop + " is named "
                + receiver));
    }

    /** Power of every device. */
    public List<ElementPower> powers() {
        return power.devices();
    }

    /** Power of a device, by name. */
    public ElementPower power(String device) {
        return powers().stream().filter(p -> p.device().equals(device)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no device of " + loop + " is named " + device));
    }

    /** Heat of all devices in the cabinet and the supplies, in mW; empty if a part is not determined. */
    public OptionalDouble cabinetHeatMilliwatts() {
        return power.cabinetHeatMilliwatts();
    }

    @Override
    public String toString() {
        return sentence + circuits.stream().map(c -> "\n" + c + c.elements().stream().map(e -> "\n  " + e)
            .collect(Collectors.joining())).collect(Collectors.joining()) + (readings.isEmpty() ? "" : "\n"
            + readings.stream().map(ReceiverReading::toString).collect(Collectors.joining("; "))
            + "\nheat in the cabinet " + PowerBalance.watts(cabinetHeatMilliwatts()));
    }
}
