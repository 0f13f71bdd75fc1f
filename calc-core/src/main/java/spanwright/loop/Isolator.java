package spanwright.loop;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spanwright.quantity.Checks;

/**
 * A signal isolator: its input takes {@code V0 + R0 I} from one loop, its output carries the same current in
 * another.
 *
 * <p>Of an input-loop-powered one the output is a source fed from the input current: what its load takes is
 * seen at its input. An output-loop-powered one looks like a two-wire transmitter to the supply behind it; a
 * separately powered one drives its output by itself. Both end the nest.
 *
 * @param name   unique in its loop
 * @param kind   where it takes its power from
 * @param input  drop of the input
 * @param output what the output can do
 * @param traits what else its data sheet says
 */
public record Isolator(String name, Kind kind, Input input, Output output,
    Traits traits) implements LoopElement {
    /** Where an isolator takes its power from. */
    public enum Kind {
        /** From the input current; nests. */
        INPUT_LOOP_POWERED("input-loop-powered isolator"),
        /** From the loop at its output; ends the nest. */
        OUTPUT_LOOP_POWERED("output-loop-powered isolator"),
        /** From a supply of its own; ends the nest. */
        SEPARATELY_POWERED("separately powered isolator");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** What happens to the input of an input-loop-powered isolator when its output opens. */
    public enum OnOpenOutput {
        /** The input voltage rises to a clamp and the input loop lives on. */
        CLAMPS,
        /** The input loop is broken for every device in it. */
        BREAKS_THE_INPUT_LOOP,
        /** Nothing: the input does not depend on the output. */
        KEEPS_THE_INPUT_LOOP,
        /** Not stated. */
        UNKNOWN
    }

    /**
     * Drop of the input, {@code V0 + R0 I}.
     *
     * @param volts V0 in V
     * @param ohms  R0 in ohm
     */
    public record Input(Toleranced volts, Toleranced ohms) {
        /** Checks the components. */
        public Input {
            volts.requireNotNegative("input drop in V");
            ohms.requireNotNegative("input resistance in ohm");
        }
    }

    /**
     * What the output can do.
     *
     * @param volts         compliance of a separately powered output, lift-off of an output-loop-powered one,
     *                      0 of an input-loop-powered one
     * @param clampVolts    voltage to which an input-loop-powered output is limited
     * @param loadLimitOhms largest load its data sheet allows
     * @param onOpen        what an open output does to the input loop
     * @param fed           what the output drives, in wiring order
     * @param supply        supply of the output loop of an output-loop-powered one
     */
    public record Output(Toleranced volts, OptionalDouble clampVolts, OptionalDouble loadLimitOhms,
                         OnOpenOutput onOpen, List<LoopElement> fed, Optional<Supply> supply) {
        /** Checks the components and copies the list. */
        public Output {
            volts.requireNotNegative("output voltage in V");
            Objects.requireNonNull(clampVolts, "clampVolts");
            Objects.requireNonNull(loadLimitOhms, "loadLimitOhms");
            Objects.requireNonNull(onOpen, "onOpen");
            fed = List.copyOf(fed);
            Objects.requireNonNull(supply, "supply");
        }

        Output withFed(List<LoopElement> elements) {
            return new Output(volts, clampVolts, loadLimitOhms, onOpen, elements, supply);
        }

        Output withSupply(Optional<Supply> other) {
            return new Output(volts, clampVolts, loadLimitOhms, onOpen, fed, other);
        }
    }

    /**
     * What else is known.
     *
     * @param digital      what it does to the digital signal
     * @param whenReversed what its input does when swapped
     * @param rating       what its isolation stands, if stated
     * @param isolationOhms resistance between input and output, if stated, in ohm
     * @param ownMilliwatts power it takes from a supply of its own, in mW; empty if it has one and its data
     *                      do not state it
     */
    public record Traits(DigitalPath digital, WhenReversed whenReversed, Optional<IsolationRating> rating,
                         OptionalDouble isolationOhms, OptionalDouble ownMilliwatts) {
        /** Checks the components. */
        public Traits {
            Objects.requireNonNull(digital, "digital");
            Objects.requireNonNull(whenReversed, "whenReversed");
            Objects.requireNonNull(rating, "rating");
            Objects.requireNonNull(isolationOhms, "isolationOhms");
            ownMilliwatts.ifPresent(p -> Checks.notNegative("power from its own supply in mW", p));
        }
    }

    /** Checks the components. */
    public Isolator {
        Checks.notBlank("name of the isolator", name);
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(output, "output");
        Objects.requireNonNull(traits, "traits");
    }

    /** An isolator powered by its input current, which drops so many volts at any current. */
    public static Isolator inputLoopPowered(String name, double dropVolts) {
        return of(name, Kind.INPUT_LOOP_POWERED, dropVolts, 0, OnOpenOutput.UNKNOWN);
    }

    /** An isolator powered by the loop at its output, where it needs so many volts like a transmitter. */
    public static Isolator outputLoopPowered(String name, double liftOffVolts) {
        return of(name, Kind.OUTPUT_LOOP_POWERED, 0, Checks.positive("lift-off voltage in V", liftOffVolts),
            OnOpenOutput.KEEPS_THE_INPUT_LOOP);
    }

    /** An isolator with a supply of its own, whose output drives up to so many volts. */
    public static Isolator separatelyPowered(String name, double complianceVolts) {
        return of(name, Kind.SEPARATELY_POWERED, 0, Checks.positive("compliance voltage in V",
            complianceVolts),
            OnOpenOutput.KEEPS_THE_INPUT_LOOP);
    }

    private static Isolator of(String name, Kind kind, double inputVolts, double outputVolts,
        OnOpenOutput onOpen) {
        return new Isolator(name, kind, new Input(Toleranced.exactly(inputVolts), Toleranced.exactly(0)),
            new Output(Toleranced.exactly(outputVolts), OptionalDouble.empty(), OptionalDouble.empty(),
                onOpen, List.of(), Optional.empty()),
            new Traits(DigitalPath.UNKNOWN, WhenReversed.UNKNOWN, Optional.empty(), OptionalDouble.empty(),
                kind == Kind.SEPARATELY_POWERED ? OptionalDouble.empty() : OptionalDouble.of(0)));
    }

    /** With this drop at its input: so many volts at any current, plus so many ohms. */
    public Isolator inputDrop(double volts, double ohms) {
        return inputDrop(Toleranced.exactly(volts), Toleranced.exactly(ohms));
    }

    /** With this drop at its input, with limits. */
    public Isolator inputDrop(Toleranced volts, Toleranced ohms) {
        return new Isolator(name, kind, new Input(volts, ohms), output, traits);
    }

    /** What its output drives, in wiring order. */
    public Isolator feeding(LoopElement... elements) {
        return withOutput(output.withFed(List.of(elements)));
    }

    /** The supply of its output loop. Only an output-loop-powered isolator may have one. */
    public Isolator outputSupply(Supply supply) {
        return withOutput(new Output(output.volts, output.clampVolts, output.loadLimitOhms, output.onOpen,
            output.fed, Optional.of(supply)));
    }

    /** Output limited to so many volts, to which the input drop is added when it opens. */
    public Isolator clampedAt(double volts) {
        return withOutput(
            new Output(output.volts, OptionalDouble.of(Checks.positive("clamp voltage in V", volts)),
                output.loadLimitOhms, OnOpenOutput.CLAMPS, output.fed, output.supply));
    }

    /** Without any clamp: an open output breaks the input loop. */
    public Isolator withoutClamp() {
        return withOutput(new Output(output.volts, OptionalDouble.empty(), output.loadLimitOhms,
            kind == Kind.INPUT_LOOP_POWERED ? OnOpenOutput.BREAKS_THE_INPUT_LOOP
                : OnOpenOutput.KEEPS_THE_INPUT_LOOP, output.fed, output.supply));
    }

    /** The largest load its data sheet allows, in ohm. */
    public Isolator loadLimit(double ohms) {
        return withOutput(new Output(output.volts, output.clampVolts,
            OptionalDouble.of(Checks.positive("load limit in ohm", ohms)), output.onOpen, output.fed,
            output.supply));
    }

    /** What it does to the digital signal. */
    public Isolator digital(DigitalPath path) {
        return withTraits(new Traits(path, traits.whenReversed, traits.rating, traits.isolationOhms,
            traits.ownMilliwatts));
    }

    /** What its input does when swapped. */
    public Isolator whenReversed(WhenReversed behaviour) {
        return withTraits(new Traits(traits.digital, behaviour, traits.rating, traits.isolationOhms,
            traits.ownMilliwatts));
    }

    /** What its isolation stands in continuous operation. */
    public Isolator rated(IsolationRating rating) {
        return withTraits(new Traits(traits.digital, traits.whenReversed, Optional.of(rating),
            traits.isolationOhms,
            traits.ownMilliwatts));
    }

    /** Resistance between its input and output, in ohm. */
    public Isolator isolationOhms(double ohms) {
        return withTraits(new Traits(traits.digital, traits.whenReversed, traits.rating,
            OptionalDouble.of(Checks.positive("isolation resistance in ohm", ohms)), traits.ownMilliwatts));
    }

    /**
     * Power it takes from a supply of its own, in mW: all of it, with what its output gives. Without it the
     * heat of a separately powered isolator is not determined.
     */
    public Isolator ownMilliwatts(double milliwatts) {
        return withTraits(new Traits(traits.digital, traits.whenReversed, traits.rating, traits.isolationOhms,
            OptionalDouble.of(milliwatts)));
    }

    Isolator named(String other) {
        return new Isolator(other, kind, input, output, traits);
    }

    Isolator withOutput(Output other) {
        return new Isolator(name, kind, input, other, traits);
    }

    private Isolator withTraits(Traits other) {
        return new Isolator(name, kind, input, output, other);
    }

    /** Whether the load of the output is seen at the input. */
    public boolean nests() {
        return kind == Kind.INPUT_LOOP_POWERED;
    }

    /** Drop of the input alone. */
    PiecewiseLine inputCurve(Pick pick) {
        return PiecewiseLine.ofOhms(pick.drop(name + ": input drop", input.volts),
            pick.drop(name + ": input resistance", input.ohms));
    }

    /** Voltage of the load of the output, before any clamp. */
    PiecewiseLine loadCurve(Pick pick) {
        return output.fed.stream().map(e -> Drops.of(e, pick)).reduce(PiecewiseLine.line(0, 0),
            PiecewiseLine::plus);
    }

    /** Lift-off or compliance of the output. */
    PiecewiseLine outputCurve(Pick pick) {
        return PiecewiseLine
            .line(kind == Kind.SEPARATELY_POWERED ? pick.push(name + ": compliance", output.volts)
                : pick.drop(name + ": lift-off of the output", output.volts), 0);
    }

    /** Every element behind the output, however deep. */
    Stream<LoopElement> behind() {
        return output.fed.stream()
            .flatMap(e -> e instanceof Isolator i ? Stream.concat(Stream.of(e), i.behind()) : Stream.of(e));
    }

    @Override
    public String toString() {
        return name + ": " + kind + ", input drop " + input.volts + " V"
            + (input.ohms.most() > 0 ? " + " + input.ohms + " \u03a9" : "")
            + (output.fed.isEmpty() ? "" : ", feeding "
                + String.join(", ", output.fed.stream().map(LoopElement::name).toList()));
    }
}
