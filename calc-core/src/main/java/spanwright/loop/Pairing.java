package spanwright.loop;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which outputs and inputs may meet. Every circuit has one device that sets its current and one source of
 * energy: an active output brings it, a passive one needs exactly one supply.
 */
final class Pairing {
    private Pairing() { }

    static void check(String loop, Optional<Supply> supply, List<LoopElement> elements) {
        checkNames(loop, elements);
        final List<Transmitter> transmitters = elements.stream().filter(Transmitter.class::isInstance)
            .map(Transmitter.class::cast).toList();
        if (transmitters.size() != 1) {
            throw new IllegalPairingException(loop + " has " + transmitters.size()
                + " transmitters or output cards in series: exactly one must set the current");
        }
        final Transmitter transmitter = transmitters.get(0);
        checkEnergy(loop, transmitter.name() + " (" + transmitter.kind() + ")", transmitter.kind().isActive(),
            supplies(supply, elements));
        elements.forEach(Pairing::checkOutput);
    }

    private static void checkNames(String loop, List<LoopElement> elements) {
        final Set<String> seen = new HashSet<>();
        all(elements).map(LoopElement::name).forEach(name -> {
            if (!seen.add(name)) {
                throw new IllegalArgumentException(loop + " has two elements named " + name
                    + ": give each a name of its own, a cable by named(...)");
            }
        });
    }

    static Stream<LoopElement> all(List<LoopElement> elements) {
        return elements.stream()
            .flatMap(e -> e instanceof Isolator i ? Stream.concat(Stream.of(e), i.behind()) : Stream.of(e));
    }

    private static List<String> supplies(Optional<Supply> supply, List<LoopElement> elements) {
        return Stream.concat(supply.map(Supply::name).stream(), elements.stream()
            .filter(e -> e instanceof Burden b && b.traits().ownSupply().isPresent())
            .map(e -> e.name() + " (a powered input)")).toList();
    }

    private static void checkEnergy(String circuit, String driver, boolean active, List<String> supplies) {
        if (active && !supplies.isEmpty()) {
            throw new IllegalPairingException("active to powered in " + circuit + ": " + driver
                + " is a source and "
                + supplies.get(0) + " is another; two sources against each other read wrong or do damage");
        }
        if (!active && supplies.isEmpty()) {
            throw new IllegalPairingException("passive to passive in " + circuit + ": " + driver
                + " needs a supply and there is none; the loop would carry 0 mA");
        }
        if (supplies.size() > 1) {
            throw new IllegalPairingException("two supplies in " + circuit + ", " + supplies.get(0) + " and "
                + supplies.get(1) + ": join them on purpose by Supply.parallel or Supply.split");
        }
    }

    private static void checkOutput(LoopElement element) {
        if (!(element instanceof Isolator isolator)) {
            return;
        }
        final Isolator.Output output = isolator.output();
        final String circuit = "the output loop of " + isolator.name();
        if (output.fed().isEmpty()) {
            throw new IllegalPairingException("the output of " + isolator.name()
                + " feeds nothing: say what it drives by feeding(...); an open output is a case of faults()");
        }
        output.fed().stream().filter(Transmitter.class::isInstance).findFirst().ifPresent(t -> {
            throw new IllegalPairingException(t.name() + " stands in " + circuit
                + ": two devices would set the same current");
        });
        final List<String> supplies = supplies(output.supply(), output.fed());
        if (isolator.nests() && !supplies.isEmpty()) {
            throw new IllegalPairingException("the output of " + isolator.name()
                + ", which its input current powers, meets " + supplies.get(0)
                + ": such an output is a source into a passive load and must never meet a supply");
        }
        if (!isolator.nests()) {
            checkEnergy(circuit, isolator.name(), isolator.kind() == Isolator.Kind.SEPARATELY_POWERED,
                supplies);
        }
        output.fed().forEach(Pairing::checkOutput);
    }
}
