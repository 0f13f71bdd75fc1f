package spanwright.loop;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import spanwright.quantity.Checks;

/**
 * A loop in a panel, and which of its devices stand where. Transmitters, cables and driven field devices
 * stand in the field; everything else stands in the cabinet unless it is said to stand in the field.
 *
 * @param loop     the loop; its name is that of the channel
 * @param isolator the isolator of the loop that is a channel of the module, if that has been said
 * @param inField  names of further devices that stand in the field
 */
public record PanelChannel(CurrentLoop loop, Optional<String> isolator, Set<String> inField) {
    /** Checks the names and copies the set. */
    public PanelChannel {
        Objects.requireNonNull(loop, "loop");
        Objects.requireNonNull(isolator, "isolator");
        inField = Set.copyOf(inField);
        for (String name : inField) {
            requireDevice(loop, name);
        }
        final Set<String> outside = inField;
        isolator.ifPresent(i -> {
            if (!(requireDevice(loop, i) instanceof Isolator) || outside.contains(i)) {
                throw new IllegalArgumentException(i + " of " + loop.name()
                    + " is no isolator in the cabinet: it cannot be a channel of a module");
            }
        });
    }

    private static LoopElement requireDevice(CurrentLoop loop, String name) {
        return Pairing.all(loop.elements()).filter(e -> e.name().equals(name)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no device of " + loop.name() + " is named "
                + name));
    }

    /** A loop, its devices where they usually stand. */
    public static PanelChannel of(CurrentLoop loop) {
        return new PanelChannel(loop, Optional.empty(), Set.of());
    }

    /** Which isolator of the loop is the channel of the module; needed if several stand in the cabinet. */
    public PanelChannel through(String isolatorName) {
        return new PanelChannel(loop, Optional.of(isolatorName), inField);
    }

    /** Devices that stand in the field: an isolator in a kiosk, a surge device at the transmitter. */
    public PanelChannel inField(String... devices) {
        final Set<String> all = new HashSet<>(inField);
        all.addAll(Arrays.asList(devices));
        return new PanelChannel(loop, isolator, all);
    }

    /** Name of the loop. */
    public String name() {
        return loop.name();
    }

    /** The isolators that stand in the cabinet. */
    List<Isolator> cabinetIsolators() {
        return Pairing.all(loop.elements()).filter(Isolator.class::isInstance).map(Isolator.class::cast)
            .filter(i -> !inField.contains(i.name())).toList();
    }

    /**
     * The isolator that is a channel of the module.
     *
     * @throws IllegalArgumentException if it is not said and there is not just one in the cabinet
     */
    Isolator inModule(String module) {
        Checks.notBlank("module", module);
        final List<Isolator> found = cabinetIsolators().stream()
            .filter(i -> isolator.isEmpty() || isolator.get().equals(i.name())).toList();
        if (found.size() != 1) {
            throw new IllegalArgumentException(loop.name() + " in " + module + " has " + found.size()
                + " isolators in the cabinet: say by through(...) which one is a channel of the module");
        }
        return found.get(0);
    }

    @Override
    public String toString() {
        return loop.name() + isolator.map(i -> " through " + i).orElse("");
    }
}
