package spanwright.loop;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;

/**
 * What takes voltage and leaves the current as it is: {@code V = V0 + R I}. A receiver, a meter, a barrier, a
 * surge device, a fuse, a resistor added for digital communication, a field device driven by an output.
 *
 * @param name  unique in its loop
 * @param kind  what it is
 * @param volts V0 in V
 * @param ohms  R in ohm
 * @param traits what else is known
 */
public record Burden(String name, Kind kind, Toleranced volts, Toleranced ohms, Traits traits)
        implements LoopElement {
    /** What a burden is. */
    public enum Kind {
        /** Reads the current by a resistor. */
        RECEIVER("receiver"),
        /** A device the current drives, such as a positioner. */
        FIELD_DEVICE("field device"),
        /** A meter or indicator in series. */
        METER("meter in series"),
        /** A resistor, for example added for digital communication. */
        RESISTOR("resistor"),
        /** A barrier. */
        BARRIER("barrier"),
        /** A surge protective device. */
        SURGE_DEVICE("surge device"),
        /** A fuse with its terminals. */
        FUSE("fuse");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** Whether it reads or uses the current as a signal. */
        public boolean reads() {
            return this == RECEIVER || this == FIELD_DEVICE;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * What else is known of a burden.
     *
     * @param ownSupply    supply that a powered input brings with it
     * @param tappedOhms   input resistance of a second receiver that reads the voltage across this one
     * @param whenReversed what it does when its terminals are swapped
     */
    public record Traits(Optional<Supply> ownSupply, OptionalDouble tappedOhms, WhenReversed whenReversed) {
        private static final Traits PLAIN = new Traits(Optional.empty(), OptionalDouble.empty(),
            WhenReversed.PASSES_REVERSED);

        /** Checks the components. */
        public Traits {
            Objects.requireNonNull(ownSupply, "ownSupply");
            Objects.requireNonNull(tappedOhms, "tappedOhms");
            Objects.requireNonNull(whenReversed, "whenReversed");
        }
    }

    /** Checks the components. */
    public Burden {
        Checks.notBlank("name of the burden", name);
        Objects.requireNonNull(kind, "kind");
        volts.requireNotNegative("voltage drop of " + name + " in V");
        ohms.requireNotNegative("resistance of " + name + " in ohm");
        Objects.requireNonNull(traits, "traits");
    }

    /** A passive receiver that reads the voltage across so many ohms. */
    public static Burden receiver(String name, double ohms) {
        return new Burden(name, Kind.RECEIVER, Toleranced.exactly(0),
            Toleranced.exactly(Checks.positive("receiver resistance in ohm", ohms)), Traits.PLAIN);
    }

    /** A receiver that powers the loop itself: supply and resistor in one device. */
    public static Burden poweredReceiver(String name, double ohms, Supply supply) {
        return new Burden(name, Kind.RECEIVER, Toleranced.exactly(0), Toleranced.exactly(ohms),
            new Traits(Optional.of(supply), OptionalDouble.empty(), WhenReversed.PASSES_REVERSED));
    }

    /** A device that an output drives, with its drop and resistance. */
    public static Burden fieldDevice(String name, double volts, double ohms) {
        return of(name, Kind.FIELD_DEVICE, volts, ohms);
    }

    /** A meter or loop-powered indicator in series. */
    public static Burden meter(String name, double volts, double ohms) {
        return of(name, Kind.METER, volts, ohms);
    }

    /** A resistor, such as one added for digital communication. */
    public static Burden resistor(String name, double ohms) {
        return of(name, Kind.RESISTOR, 0, ohms);
    }

    /** A two-channel barrier: twice its end-to-end resistance stands in the loop. */
    public static Burden barrier(String name, double endToEndOhms) {
        return of(name, Kind.BARRIER, 0, 2 * endToEndOhms);
    }

    /** A surge device with so many ohms in each of the two lines. */
    public static Burden surgeDevice(String name, double ohmsPerLine) {
        return of(name, Kind.SURGE_DEVICE, 0, 2 * ohmsPerLine);
    }

    /** A fuse with its terminals. */
    public static Burden fuse(String name, double ohms) {
        return of(name, Kind.FUSE, 0, ohms);
    }

    private static Burden of(String name, Kind kind, double volts, double ohms) {
        return new Burden(name, kind, Toleranced.exactly(volts), Toleranced.exactly(ohms), Traits.PLAIN);
    }

    /** With its resistance within plus and minus so many percent of itself. */
    public Burden tolerance(double percent) {
        return new Burden(name, kind, volts, Toleranced.plusMinusPercent(ohms.nominal(), percent), traits);
    }

    /** With another resistance. */
    public Burden withOhms(double other) {
        return new Burden(name, kind, volts, Toleranced.exactly(other), traits);
    }

    /** With a second receiver across it that reads its voltage through so many ohms of its own. */
    public Burden tappedThrough(double inputOhms) {
        return new Burden(name, kind, volts, ohms, new Traits(traits.ownSupply,
            OptionalDouble.of(Checks.positive("input resistance in ohm", inputOhms)), traits.whenReversed));
    }

    Burden withOwnSupply(Optional<Supply> other) {
        return new Burden(name, kind, volts, ohms, new Traits(other, traits.tappedOhms, traits.whenReversed));
    }

    /** What it does when its terminals are swapped. */
    public Burden whenReversed(WhenReversed behaviour) {
        return new Burden(name, kind, volts, ohms,
            new Traits(traits.ownSupply, traits.tappedOhms, behaviour));
    }

    /**
     * Error of the reading because a second receiver draws its share of the current, in percent of the
     * reading.
     */
    public double tapErrorPercentOfReading() {
        return traits.tappedOhms.isEmpty() ? 0
            : -100 * ohms.nominal() / (ohms.nominal() + traits.tappedOhms.getAsDouble());
    }

    PiecewiseLine curve(Pick pick) {
        final double seen = seenOhms(pick);
        return PiecewiseLine.ofOhms(pick.drop(name + ": drop", volts), seen);
    }

    /** Its resistance with that of a second receiver across it. */
    double seenOhms(Pick pick) {
        final double own = pick.drop(name + ": resistance", ohms);
        return traits.tappedOhms.isEmpty() ? own
            : own * traits.tappedOhms.getAsDouble() / (own + traits.tappedOhms.getAsDouble());
    }

    @Override
    public String toString() {
        return name + ": " + kind + ", " + (volts.most() > 0 ? volts + " V + " : "") + ohms + " \u03a9";
    }
}
