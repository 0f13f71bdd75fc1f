package spanwright.loop;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A loop at a current: voltage at every terminal, power and heat of every device, what each receiver reads.
 *
 * @param loop     its name
 * @param demandedMilliamps current asked for
 * @param corner   which limits of the parameters count
 * @param circuits solved circuits, the first one first; empty where there is no solution
 * @param readings of the receivers and driven devices; empty where there is no solution
 * @param powers   of every device
 * @param sentence what to know first
 */
public record LoopState(String loop, double demandedMilliamps, Corner corner, List<CircuitState> circuits,
                        List<ReceiverReading> readings, List<ElementPower> powers, String sentence) {
    /** Checks the components and copies the lists. */
    public LoopState {
        Checks.notBlank("name of the loop", loop);
        Checks.finite("current asked for in mA", demandedMilliamps);
        Objects.requireNonNull(corner, "corner");
        circuits = List.copyOf(circuits);
        readings = List.copyOf(readings);
        powers = List.copyOf(powers);
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

    /** Heat of all devices in the cabinet, in mW. */
    public double cabinetHeatMilliwatts() {
        return powers.stream().filter(ElementPower::inCabinet).mapToDouble(ElementPower::heatMilliwatts)
            .sum();
    }

    @Override
    public String toString() {
        return sentence + circuits.stream().map(c -> "\n" + c + c.elements().stream().map(e -> "\n  " + e)
            .collect(Collectors.joining())).collect(Collectors.joining()) + (readings.isEmpty() ? "" : "\n"
            + readings.stream().map(ReceiverReading::toString).collect(Collectors.joining("; "))
            + "\nheat in the cabinet " + NumberText.fixed(cabinetHeatMilliwatts(), 1) + " mW");
    }
}
