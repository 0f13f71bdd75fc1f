package spanwright.loop;

import java.util.Objects;
import java.util.OptionalDouble;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A pair of copper conductors: the loop current goes out in one and comes back in the other, so that the
 * resistance of a loop is {@code 2 L r20 (1 + alpha (T - 20))} with L the length one way. It carries what
 * follows it in the loop, as far as the transmitter or, where none follows, to the end.
 *
 * @param name        as it is called in results
 * @param conductor   what it is made of, in words
 * @param copper      its resistance and temperature
 * @param metres      length one way, in m
 * @param picofaradsPerMetre capacitance, if stated
 */
public record Cable(String name, String conductor, Copper copper, double metres,
                    OptionalDouble picofaradsPerMetre) implements LoopElement {
    /**
     * Resistance of the conductors.
     *
     * @param ohmsPerKm   of one conductor at 20 degC, in ohm/km
     * @param degrees     temperature of the conductors, in degC
     * @param perKelvin   temperature coefficient at 20 degC, per K
     * @param areaMm2     nominal area, if the resistance came from the table
     * @param kind        class and finish
     */
    public record Copper(Toleranced ohmsPerKm, Toleranced degrees, double perKelvin, OptionalDouble areaMm2,
                         ConductorClass kind) {
        /** Checks the components. */
        public Copper {
            Checks.positive("resistance in ohm/km", ohmsPerKm.least());
            Checks.within("temperature of the cable in degC", degrees.least(), -100, degrees.most());
            Checks.within("temperature of the cable in degC", degrees.most(), degrees.least(), 250);
            Checks.within("temperature coefficient per K", perKelvin, 0, 0.01);
            Objects.requireNonNull(areaMm2, "areaMm2");
            Objects.requireNonNull(kind, "kind");
        }
    }

    /** Checks the components. */
    public Cable {
        Checks.notBlank("name of the cable", name);
        Checks.notBlank("conductor", conductor);
        Objects.requireNonNull(copper, "copper");
        Checks.notNegative("length one way in m", metres);
        Objects.requireNonNull(picofaradsPerMetre, "picofaradsPerMetre");
    }

    /** A stranded (class 2) plain copper pair at 20 degC, of the largest resistance its area allows. */
    public static Cable copper(double areaMm2) {
        return ofClass(areaMm2, ConductorClass.STRANDED);
    }

    /** A copper pair of a class at 20 degC, of the largest resistance its area allows. */
    public static Cable ofClass(double areaMm2, ConductorClass kind) {
        final double most = Conductors.largestOhmsPerKm(areaMm2, kind);
        final String words = NumberText.plain(areaMm2, 4) + " mm\u00b2 " + kind;
        return new Cable("cable", words, new Copper(
            new Toleranced(most, Math.min(most, Conductors.idealOhmsPerKm(areaMm2)), most),
                Toleranced.exactly(20),
            Conductors.COPPER_PER_KELVIN, OptionalDouble.of(areaMm2), kind), 0, OptionalDouble.empty());
    }

    /** A solid copper pair by American wire gauge, at 20 degC. */
    public static Cable awg(int gauge) {
        return new Cable("cable", gauge + " AWG solid", new Copper(
            Toleranced.exactly(Conductors.gaugeOhmsPerKm(gauge)), Toleranced.exactly(20),
            Conductors.COPPER_PER_KELVIN, OptionalDouble.empty(), ConductorClass.SOLID), 0,
                OptionalDouble.empty());
    }

    /** A pair of which the resistance of one conductor was measured, brought to 20 degC, in ohm/km. */
    public static Cable measured(Toleranced ohmsPerKm) {
        return new Cable("cable", "measured " + ohmsPerKm + " \u03a9/km", new Copper(ohmsPerKm,
            Toleranced.exactly(20), Conductors.COPPER_PER_KELVIN, OptionalDouble.empty(),
                ConductorClass.STRANDED),
            0, OptionalDouble.empty());
    }

    /** Called so in results. */
    public Cable named(String other) {
        return new Cable(other, conductor, copper, metres, picofaradsPerMetre);
    }

    /** So many metres one way. */
    public Cable metres(double oneWay) {
        return new Cable(name, conductor, copper, oneWay, picofaradsPerMetre);
    }

    /** At one temperature. */
    public Cable at(Celsius temperature) {
        return withDegrees(Toleranced.exactly(temperature.value()));
    }

    /** Between two temperatures; nominally at 20 degC, or at the nearer end if that is outside. */
    public Cable between(Celsius coldest, Celsius hottest) {
        final double nominal = Math.max(coldest.value(), Math.min(hottest.value(), 20));
        return withDegrees(new Toleranced(nominal, coldest.value(), hottest.value()));
    }

    private Cable withDegrees(Toleranced degrees) {
        return new Cable(name, conductor,
            new Copper(copper.ohmsPerKm, degrees, copper.perKelvin, copper.areaMm2, copper.kind), metres,
            picofaradsPerMetre);
    }

    /** With the 0.00400 per K of the IEC 60228 correction factors in place of 0.00393 per K. */
    public Cable withIec60228Temperature() {
        return new Cable(name, conductor, new Copper(copper.ohmsPerKm, copper.degrees,
            Conductors.IEC_60228_PER_KELVIN, copper.areaMm2, copper.kind), metres, picofaradsPerMetre);
    }

    /** With a capacitance between the conductors, for the digital signal. */
    public Cable picofaradsPerMetre(double capacitance) {
        return new Cable(name, conductor, copper, metres,
            OptionalDouble.of(Checks.positive("capacitance in pF/m", capacitance)));
    }

    /** The same run in another area of the table, same class. */
    Cable withArea(double areaMm2) {
        final Cable other = ofClass(areaMm2, copper.kind);
        return new Cable(name, other.conductor, new Copper(other.copper.ohmsPerKm, copper.degrees,
            copper.perKelvin, other.copper.areaMm2, copper.kind), metres, picofaradsPerMetre);
    }

    /** Resistance there and back in ohm, at a corner. */
    public double loopOhms(Corner corner) {
        return ohms(Pick.of(corner));
    }

    /** Resistance there and back in ohm, nominal. */
    public double loopOhms() {
        return loopOhms(Corner.NOMINAL);
    }

    double ohms(Pick pick) {
        final double r20 = pick.drop(name + ": ohm/km at 20 \u00b0C", copper.ohmsPerKm);
        final double degrees = pick.drop(name + ": temperature", copper.degrees);
        return 2 * metres / 1000 * r20 * (1 + copper.perKelvin * (degrees - 20));
    }

    @Override
    public String toString() {
        return name + ": " + NumberText.plain(metres, 6) + " m of " + conductor + ", "
            + NumberText.fixed(loopOhms(), 3) + " \u03a9 there and back";
    }
}
