package spanwright.loop;

import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import spanwright.quantity.NumberText;

/** Works out one fault: which circuit it breaks, and what the rest of the loop then does. */
final class FaultCase {
    private static final String SHORT = "short across the output";
    private static final String UNLIMITED = "Nothing but resistance limits the current. Look for damage.";

    private final CurrentLoop loop;
    private final LoopState sound;

    FaultCase(CurrentLoop loop, LoopState sound) {
        this.loop = loop;
        this.sound = sound;
    }

    FaultTable.Row row(LoopFault fault) {
        return switch (fault.kind()) {
            case OPEN_OUTPUT -> openOutput(fault);
            case SHORTED_OUTPUT -> shortedOutput(fault);
            case OPEN_INPUT -> broken(fault, circuitOf(fault.at()), "Its circuit is open.");
            case REVERSED -> reversed(fault);
            case BROKEN_COMMON -> broken(fault, circuitNamed(fault.at()),
                "Every other loop with the same common is broken too.");
            case SUPPLY_AT_MINIMUM -> atMinimum(fault);
        };
    }

    private FaultTable.Row openOutput(LoopFault fault) {
        final Isolator isolator = (Isolator) element(fault.at());
        return switch (isolator.output().onOpen()) {
            case CLAMPS -> solved(fault, replaceLoad(fault.at(), clamp(isolator)), behind(fault.at()),
                "Its input rises to the clamp of " + NumberText.plain(isolator.output().clampVolts()
                    .orElseThrow(), 4)
                    + " V plus its drop.");
            case BREAKS_THE_INPUT_LOOP -> broken(fault, circuitOf(fault.at()),
                "It has no clamp: the open output breaks the loop at its input, for every device in it.");
            case KEEPS_THE_INPUT_LOOP -> solved(fault, loop, behind(fault.at()),
                "Its input does not depend on its output.");
            case UNKNOWN -> unknown(fault, "What its input does when the output opens is not stated.");
        };
    }

    /**
     * A short across a source bypasses what it drives; across a passive output it takes its place as a wire.
     */
    private FaultTable.Row shortedOutput(LoopFault fault) {
        if (element(fault.at()) instanceof Transmitter transmitter) {
            return transmitter.kind().isActive()
                ? broken(fault, loop.circuit(), "Its current flows through the short, past the loop.")
                : unregulated(fault, "The current flows past the transmitter.");
        }
        final Isolator isolator = (Isolator) element(fault.at());
        if (isolator.kind() != Isolator.Kind.OUTPUT_LOOP_POWERED) {
            return solved(fault, replaceLoad(fault.at(), Burden.resistor(SHORT, 0)), behind(fault.at()),
                "The receivers behind it are bypassed.");
        }
        final Circuit circuit = Circuit.behind(isolator);
        final Pick pick = Pick.of(Corner.NOMINAL);
        final double current = circuit.available(pick).minus(circuit.burden(pick))
            .largestNotNegative(PiecewiseLine.END).orElse(0);
        final Set<String> driven = behind(fault.at());
        return new FaultTable.Row(fault, sound.readings().stream().map(r -> driven.contains(r.receiver())
            ? ReceiverReading.of(r.receiver(), current) : r).toList(), survival(loop), UNLIMITED);
    }

    /** Nothing sets the current any more: the transmitter is a wire, what follows takes what it gets. */
    private FaultTable.Row unregulated(LoopFault fault, String note) {
        final Transmitter wire = new Transmitter(fault.at(), Transmitter.Kind.FOUR_WIRE_PASSIVE,
            List.of(new Transmitter.Knot(0, Toleranced.exactly(0))),
            new Transmitter.Ends(0, PiecewiseLine.END, OptionalDouble.empty()), WhenReversed.UNKNOWN);
        final LoopState state = loop.exchanging(fault.at(), e -> wire).at(PiecewiseLine.END);
        return new FaultTable.Row(fault, state.isSolved() ? state.readings() : zero(allNames()),
            FaultTable.Survival.NO, note + " " + UNLIMITED);
    }

    private static Burden clamp(Isolator isolator) {
        return new Burden(SHORT, Burden.Kind.METER,
            Toleranced.exactly(isolator.output().clampVolts().orElseThrow()), Toleranced.exactly(0),
            new Burden.Traits(java.util.Optional.empty(), OptionalDouble.empty(), WhenReversed.UNKNOWN));
    }

    private FaultTable.Row reversed(LoopFault fault) {
        final LoopElement element = element(fault.at());
        if (element instanceof Transmitter transmitter) {
            return transmitterReversed(fault, transmitter);
        }
        final WhenReversed behaviour = element instanceof Isolator i ? i.traits().whenReversed()
            : ((Burden) element).traits().whenReversed();
        if (behaviour == WhenReversed.UNKNOWN) {
            return unknown(fault, "What it does when reversed is not stated.");
        }
        return turned(fault, circuitOf(fault.at()), List.of(element), "Reversed, it " + behaviour + "."
            + (behaviour == WhenReversed.PASSES_WITHOUT_SIGNAL && element instanceof Isolator
                ? " The voltages are those of the sound loop at most." : ""));
    }

    /** A passive one no longer sets the current if it lets it through; an active one turns it round. */
    private FaultTable.Row transmitterReversed(LoopFault fault, Transmitter transmitter) {
        final String note = "Reversed, it " + transmitter.whenReversed() + ".";
        return switch (transmitter.whenReversed()) {
            case BLOCKS -> broken(fault, loop.circuit(), note);
            case WORKS -> solved(fault, loop, Set.of(), note);
            case UNKNOWN -> unknown(fault, "What it does when reversed is not stated.");
            case PASSES_REVERSED -> transmitter.kind().isActive()
                ? turned(fault, loop.circuit(), loop.elements(), note) : unregulated(fault, note);
            case PASSES_WITHOUT_SIGNAL -> transmitter.kind().isActive()
                ? broken(fault, loop.circuit(), note) : unregulated(fault, note);
        };
    }

    private FaultTable.Row turned(LoopFault fault, Circuit circuit, List<LoopElement> devices, String note) {
        final ReversedInput reversed = new ReversedInput(sound.demandedMilliamps());
        reversed.through(devices, -1);
        if (reversed.isBlocked()) {
            return broken(fault, circuit, note);
        }
        final List<ReceiverReading> readings = sound.readings().stream().map(reversed::of).toList();
        return new FaultTable.Row(fault, readings, readings.stream().anyMatch(r -> r.milliamps().isEmpty())
            ? FaultTable.Survival.NOT_DETERMINED : survival(loop), note);
    }

    private FaultTable.Row atMinimum(LoopFault fault) {
        final Supply supply = circuitNamed(fault.at()).source().orElseThrow();
        final CurrentLoop changed = loop.exchangingSupplies(s -> s.equals(supply) ? s.atMinimum() : s);
        final Circuit sunk = changed.circuit().all().filter(c -> c.name().equals(fault.at())).findFirst()
            .orElseThrow();
        final double margin = sunk.margin(Pick.of(Corner.NOMINAL))
            .at(changed.transmitter().limits().failHighMilliamps());
        final String note = "Margin at the upscale failure current " + NumberText.signed(margin, 2)
            + " V, the rest nominal.";
        final boolean primary = fault.at().equals(loop.circuit().name());
        return primary || changed.at(sound.demandedMilliamps()).isSolved()
            ? solved(fault, changed, Set.of(), note) : broken(fault, circuitNamed(fault.at()), note);
    }

    /** The loop as changed, with receivers that are cut off reading nothing. */
    private FaultTable.Row solved(LoopFault fault, CurrentLoop changed, Set<String> cutOff, String note) {
        final LoopState state = changed.at(sound.demandedMilliamps());
        if (!state.isSolved()) {
            return new FaultTable.Row(fault, zero(allNames()), FaultTable.Survival.NO, note + " "
                + state.sentence());
        }
        final List<ReceiverReading> readings = sound.readings().stream()
            .map(r -> cutOff.contains(r.receiver())
            ? ReceiverReading.of(r.receiver(), 0) : state.reading(r.receiver())).toList();
        return new FaultTable.Row(fault, readings, survival(changed), note);
    }

    private FaultTable.Row broken(LoopFault fault, Circuit circuit, String note) {
        final Set<String> dead = new HashSet<>(Pairing.all(circuit.ring()).map(LoopElement::name).toList());
        final boolean primary = circuit.name().equals(loop.circuit().name());
        final String held = circuit.all().anyMatch(c -> c.driver() instanceof Isolator) && primary
            ? " Outputs with a supply of their own are taken to follow to 0 mA." : "";
        return new FaultTable.Row(fault, zero(dead), primary ? FaultTable.Survival.NO : survival(loop),
            note + held);
    }

    private FaultTable.Row unknown(LoopFault fault, String note) {
        final Set<String> concerned = new HashSet<>(Pairing.all(circuitOf(fault.at()).ring())
            .map(LoopElement::name).toList());
        return new FaultTable.Row(fault, sound.readings().stream().map(r -> concerned.contains(r.receiver())
            ? ReceiverReading.notDetermined(r.receiver()) : r).toList(),
            FaultTable.Survival.NOT_DETERMINED, note);
    }

    private List<ReceiverReading> zero(Set<String> dead) {
        return sound.readings().stream().map(r -> dead.contains(r.receiver())
            ? ReceiverReading.of(r.receiver(), 0)
            : r).toList();
    }

    private static FaultTable.Survival survival(CurrentLoop changed) {
        final Circuit circuit = changed.circuit();
        return circuit.margin(Pick.of(Corner.NOMINAL)).at(changed.transmitter().limits()
            .failHighMilliamps()) < 0
            ? FaultTable.Survival.SHORT : FaultTable.Survival.YES;
    }

    private CurrentLoop replaceLoad(String isolator, Burden load) {
        return loop.exchanging(isolator, e -> ((Isolator) e).withOutput(((Isolator) e).output()
            .withFed(List.of(load))));
    }

    private LoopElement element(String name) {
        return Pairing.all(loop.elements()).filter(e -> e.name().equals(name)).findFirst().orElseThrow();
    }

    private Set<String> behind(String isolator) {
        return element(isolator) instanceof Isolator i ? new HashSet<>(i.behind().map(LoopElement::name)
            .toList())
            : new HashSet<>();
    }

    private Set<String> allNames() {
        return new HashSet<>(Pairing.all(loop.elements()).map(LoopElement::name).toList());
    }

    /** The circuit in which an element stands, or an isolator has its input. */
    private Circuit circuitOf(String name) {
        return loop.circuit().all().filter(c -> c.ring().stream().anyMatch(e -> e.name().equals(name))
            || c.isolators().anyMatch(i -> i.name().equals(name) || i.nests()
                && i.output().fed().stream().anyMatch(e -> e.name().equals(name)))).findFirst().orElseThrow();
    }

    private Circuit circuitNamed(String name) {
        return loop.circuit().all().filter(c -> c.name().equals(name)).findFirst().orElseThrow();
    }
}
