package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What sets the current of a loop: a transmitter or an output card.
 *
 * <p>A passive one takes its lift-off voltage from the loop, which may depend on the current (displays and
 * digital communication raise it, and some need more at low current). An active one gives voltage: up to its
 * compliance.
 *
 * @param name   unique in its loop
 * @param kind   how it is powered, and whether its output is active
 * @param knots  voltage it needs (passive) or gives at most (active) over the current; level outside
 * @param limits its currents and voltages at the ends
 * @param whenReversed what it does when its terminals are swapped
 */
public record Transmitter(String name, Kind kind, List<Knot> knots, Ends limits, WhenReversed whenReversed)
        implements LoopElement {
    /** How a transmitter is powered. */
    public enum Kind {
        /** Two wires: powered by the loop, passive. */
        TWO_WIRE("two-wire transmitter", false),
        /** Four wires: powered by itself, its output a source. */
        FOUR_WIRE("four-wire transmitter, active output", true),
        /** Four wires with a sinking output: the loop needs a supply all the same. */
        FOUR_WIRE_PASSIVE("four-wire transmitter, passive output", false),
        /** Output card of a controller, a source. */
        OUTPUT_CARD("output card", true);

        private final String words;
        private final boolean active;

        Kind(String words, boolean active) {
            this.words = words;
            this.active = active;
        }

        /** Whether the output is a source. */
        public boolean isActive() {
            return active;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * A voltage at a current.
     *
     * @param milliamps 0 to 50
     * @param volts     at least 0
     */
    public record Knot(double milliamps, Toleranced volts) {
        /** Checks the components. */
        public Knot {
            Checks.within("current in mA", milliamps, 0, PiecewiseLine.END);
            volts.requireNotNegative("voltage at " + NumberText.plain(milliamps, 4) + " mA in V");
        }
    }

    /**
     * Currents and voltages at the ends.
     *
     * @param failLowMilliamps  current when it signals a failure downscale
     * @param failHighMilliamps current when it signals a failure upscale
     * @param maximumVolts      largest voltage across it, if stated
     */
    public record Ends(double failLowMilliamps, double failHighMilliamps, OptionalDouble maximumVolts) {
        /** Checks the components. */
        public Ends {
            Checks.within("fail-low current in mA", failLowMilliamps, 0, 4);
            Checks.within("fail-high current in mA", failHighMilliamps, 20, PiecewiseLine.END);
            Objects.requireNonNull(maximumVolts, "maximumVolts");
        }
    }

    /** Checks the components and copies the list. */
    public Transmitter {
        Checks.notBlank("name of the transmitter", name);
        Objects.requireNonNull(kind, "kind");
        knots = List.copyOf(knots);
        Checks.atLeast("number of voltages of " + name, knots.size(), 1);
        for (int i = 1; i < knots.size(); i++) {
            if (knots.get(i).milliamps() <= knots.get(i - 1).milliamps()) {
                throw new IllegalArgumentException(name + ": voltage at " + knots.get(i).milliamps()
                    + " mA is given after that at " + knots.get(i - 1).milliamps()
                        + " mA: currents must ascend");
            }
        }
        Objects.requireNonNull(limits, "limits");
        Objects.requireNonNull(whenReversed, "whenReversed");
    }

    /** A two-wire transmitter with this lift-off voltage, the same at every current. */
    public static Transmitter twoWire(String name, double liftOffVolts) {
        return of(name, Kind.TWO_WIRE, Checks.positive("lift-off voltage in V", liftOffVolts));
    }

    /** A four-wire transmitter whose output drives up to this voltage. */
    public static Transmitter fourWire(String name, double complianceVolts) {
        return of(name, Kind.FOUR_WIRE, Checks.positive("compliance voltage in V", complianceVolts));
    }

    /** A four-wire transmitter with a sinking output that needs this voltage from the loop. */
    public static Transmitter fourWirePassive(String name, double liftOffVolts) {
        return of(name, Kind.FOUR_WIRE_PASSIVE, liftOffVolts);
    }

    /** An output of a controller that drives up to this voltage. */
    public static Transmitter outputCard(String name, double complianceVolts) {
        return of(name, Kind.OUTPUT_CARD, Checks.positive("compliance voltage in V", complianceVolts));
    }

    private static Transmitter of(String name, Kind kind, double volts) {
        return new Transmitter(name, kind, List.of(new Knot(0, Toleranced.exactly(volts))),
            new Ends(3.6, 22.5, OptionalDouble.empty()),
            kind.isActive() ? WhenReversed.PASSES_REVERSED : WhenReversed.BLOCKS);
    }

    /**
     * Its voltage over the current, straight between these points: {@code withVoltages(3.6, 14, 20, 12)} is
     * 14 V at 3.6 mA falling to 12 V at 20 mA.
     *
     * @param milliampsAndVolts current and voltage in turn, currents ascending
     */
    public Transmitter withVoltages(double... milliampsAndVolts) {
        if (milliampsAndVolts.length < 2 || milliampsAndVolts.length % 2 != 0) {
            throw new IllegalArgumentException("currents and voltages are given in turn: "
                + milliampsAndVolts.length + " figures do not pair");
        }
        final List<Knot> points = new ArrayList<>();
        for (int i = 0; i < milliampsAndVolts.length; i += 2) {
            points.add(new Knot(milliampsAndVolts[i], Toleranced.exactly(milliampsAndVolts[i + 1])));
        }
        return new Transmitter(name, kind, points, limits, whenReversed);
    }

    /** Each voltage plus and minus so many volts. */
    public Transmitter tolerance(double volts) {
        return new Transmitter(name, kind, knots.stream().map(k -> new Knot(k.milliamps(),
            Toleranced.plusMinus(k.volts().nominal(), volts))).toList(), limits, whenReversed);
    }

    /** Its failure currents; 3.6 and 22.5 mA if not stated. */
    public Transmitter failing(double lowMilliamps, double highMilliamps) {
        return new Transmitter(name, kind, knots,
            new Ends(lowMilliamps, highMilliamps, limits.maximumVolts()), whenReversed);
    }

    /** The largest voltage it stands across its terminals. */
    public Transmitter maximumVolts(double volts) {
        return new Transmitter(name, kind, knots, new Ends(limits.failLowMilliamps(),
            limits.failHighMilliamps(),
            OptionalDouble.of(Checks.positive("maximum voltage in V", volts))), whenReversed);
    }

    /** What it does when its terminals are swapped. */
    public Transmitter whenReversed(WhenReversed behaviour) {
        return new Transmitter(name, kind, knots, limits, behaviour);
    }

    PiecewiseLine curve(Pick pick) {
        return PiecewiseLine.through(knots.stream().mapToDouble(Knot::milliamps).toArray(),
            knots.stream().mapToDouble(k -> {
                final String what = name + ": voltage at " + NumberText.plain(k.milliamps(), 4) + " mA";
                return kind.isActive() ? pick.push(what, k.volts()) : pick.drop(what, k.volts());
            }).toArray());
    }

    @Override
    public String toString() {
        final StringBuilder out = new StringBuilder(name + ": " + kind + (kind.isActive() ? ", drives "
            : ", needs "));
        for (Knot knot : knots) {
            out.append(knot.volts()).append(" V");
            if (knots.size() > 1) {
                out.append(" at ").append(NumberText.plain(knot.milliamps(), 4)).append(" mA, ");
            }
        }
        return out.toString().replaceAll(", $", "");
    }
}
