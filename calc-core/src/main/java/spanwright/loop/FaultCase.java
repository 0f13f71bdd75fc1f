package spanwright.loop;

import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import spanwright.quantity.NumberText;

/** Works out one fault: which circuit it breaks, and what the rest of the loop then does. */
final class FaultCase {
    private static final String SHORT = "short across the output";

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
            ? ReceiverReading.of(r.receiver(), current) : r).toList(), survival(loop),
            "Nothing but resistance limits the current of the output loop" + (current < PiecewiseLine.END
                ? "."
                : ": it is " + NumberText.plain(PiecewiseLine.END, 3) + " mA or more. Look for damage."));
    }

    private static Burden clamp(Isolator isolator) {
        return new Burden(SHORT, Burden.Kind.METER, Toleranced.exactly(isolator.output().clampVolts()
            .orElseThrow()),
            Toleranced.exactly(0), new Burden.Traits(java.util.Optional.empty(), OptionalDouble.empty(),
                WhenReversed.UNKNOWN));
    }

    private FaultTable.Row reversed(LoopFault fault) {
        final LoopElement element = element(fault.at());
        final WhenReversed behaviour = element instanceof Transmitter t ? t.whenReversed()
            : element instanceof Isolator i ? i.traits().whenReversed() : ((Burden) element).traits()
                .whenReversed();
        final String note = "Reversed, it " + behaviour + ".";
        return switch (behaviour) {
            case BLOCKS -> broken(fault, circuitOf(fault.at()), note);
            case WORKS -> solved(fault, loop, Set.of(), note);
            case UNKNOWN -> unknown(fault, "What it does when reversed is not stated.");
            case PASSES_WITHOUT_SIGNAL -> element instanceof Isolator
                ? solved(fault, loop, behind(fault.at()), note
                    + " The voltages are those of the sound loop at most.")
                : solved(fault, loop, Set.of(fault.at()), note);
            case PASSES_REVERSED -> mirrored(fault, note);
        };
    }

    private FaultTable.Row mirrored(LoopFault fault, String note) {
        final LoopElement element = element(fault.at());
        final Set<String> turned = element instanceof Transmitter
            ? new HashSet<>(Pairing.all(loop.elements()).map(LoopElement::name).toList())
                : behind(fault.at());
        turned.add(fault.at());
        final List<ReceiverReading> readings = sound.readings().stream()
            .map(r -> turned.contains(r.receiver())
            ? ReceiverReading.of(r.receiver(), -r.milliamps().orElseThrow()) : r).toList();
        return new FaultTable.Row(fault, readings, survival(loop), note);
    }

    private FaultTable.Row atMinimum(LoopFault fault) {
        final LoopState state = new LoopSolver(loop.name(), new SupplyAtMinimum()).solve(loop.circuit(),
            sound.demandedMilliamps(), Corner.NOMINAL);
        final double margin = loop.circuit().margin(new SupplyAtMinimum())
            .at(loop.transmitter().limits().failHighMilliamps());
        return new FaultTable.Row(fault, state.isSolved() ? state.readings() : zero(allNames()),
            !state.isSolved() ? FaultTable.Survival.NO
                : margin < 0 ? FaultTable.Survival.SHORT : FaultTable.Survival.YES,
            "Margin at the upscale failure current " + NumberText.signed(margin, 2)
                + " V, the rest nominal.");
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
            ? new ReceiverReading(r.receiver(), OptionalDouble.empty()) : r).toList(),
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

    /** Supplies at their minimum, everything else nominal. */
    private static final class SupplyAtMinimum implements Pick {
        @Override
        public double drop(String what, Toleranced value) {
            return value.nominal();
        }

        @Override
        public double push(String what, Toleranced value) {
            return value.least();
        }

        @Override
        public double ripple(double peakVolts) {
            return -peakVolts;
        }
    }
}
