package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A direct-voltage supply: one unit, several in parallel through diodes, or a split one in series. What a
 * loop gets is {@code nominal x (1 - tolerance) - ripple - diode drop - resistance x current of all loops on
 * it}, not "24 V". Immutable; every method gives a new supply.
 *
 * @param name        as it is called in results
 * @param arrangement how the units are joined
 * @param units       at least one
 * @param shared      the feed behind the units and what else hangs on it
 */
public record Supply(String name, Arrangement arrangement, List<Unit> units, Feed shared) {
    /** How several units are joined. */
    public enum Arrangement {
        /** One unit. */
        SINGLE,
        /** Redundant units: current flows from those that are high enough. */
        PARALLEL,
        /** Units in series, such as plus and minus 12 V. */
        SPLIT
    }

    /**
     * One unit.
     *
     * @param volts       terminal voltage without load, in V
     * @param rippleVolts peak of the ripple above and below it, in V
     * @param diodeVolts  drop of its decoupling diode, in V; 0 without one
     * @param ohms        internal resistance, in ohm
     */
    public record Unit(Toleranced volts, double rippleVolts, Toleranced diodeVolts, Toleranced ohms) {
        /** Checks the components. */
        public Unit {
            Checks.positive("supply voltage in V", volts.least());
            Checks.notNegative("ripple in V", rippleVolts);
            diodeVolts.requireNotNegative("diode drop in V");
            ohms.requireNotNegative("internal resistance in ohm");
        }
    }

    /**
     * The feed behind the units.
     *
     * @param ohms              wiring and fuse that all loops share, in ohm
     * @param otherMilliamps    current of the other loops on it
     * @param ratedMilliamps    what the supply can give, if stated
     * @param efficiencyPercent of the units, for the heat they make, if stated
     */
    public record Feed(Toleranced ohms, Toleranced otherMilliamps, OptionalDouble ratedMilliamps,
                       OptionalDouble efficiencyPercent) {
        /** Checks the components. */
        public Feed {
            ohms.requireNotNegative("shared resistance in ohm");
            otherMilliamps.requireNotNegative("current of the other loops in mA");
            Objects.requireNonNull(ratedMilliamps, "ratedMilliamps");
            efficiencyPercent.ifPresent(p -> Checks.inside("efficiency in percent", p, 0,
                Math.nextUp(100.0)));
        }
    }

    /** Checks the components and copies the list. */
    public Supply {
        Checks.notBlank("name of the supply", name);
        Objects.requireNonNull(arrangement, "arrangement");
        units = List.copyOf(units);
        Checks.atLeast("number of supply units", units.size(), arrangement == Arrangement.SINGLE ? 1 : 2);
        Objects.requireNonNull(shared, "shared");
    }

    /** One unit of so many volts, without tolerance, ripple, diode and resistance so far. */
    public static Supply volts(double nominal) {
        final Toleranced none = Toleranced.exactly(0);
        return new Supply(NumberText.plain(nominal, 6) + " V supply", Arrangement.SINGLE,
            List.of(new Unit(Toleranced.exactly(nominal), 0, none, none)),
            new Feed(none, none, OptionalDouble.empty(), OptionalDouble.empty()));
    }

    /** Redundant supplies: each feeds through its own diode, the higher one carries the load. */
    public static Supply parallel(String name, Supply... supplies) {
        return joined(name, Arrangement.PARALLEL, supplies);
    }

    /** A split supply: units in series, the loop across all of them. */
    public static Supply split(String name, Supply... supplies) {
        return joined(name, Arrangement.SPLIT, supplies);
    }

    private static Supply joined(String name, Arrangement arrangement, Supply... supplies) {
        final List<Unit> units = new ArrayList<>();
        for (Supply supply : supplies) {
            if (supply.arrangement != Arrangement.SINGLE || supply.shared.ohms().most() > 0
                || supply.shared.otherMilliamps().most() > 0) {
                throw new IllegalArgumentException(supply.name
                    + " is joined with others: give shared feed and other loops to the joined supply");
            }
            units.addAll(supply.units);
        }
        final Toleranced none = Toleranced.exactly(0);
        return new Supply(name, arrangement, units,
            new Feed(none, none, OptionalDouble.empty(), OptionalDouble.empty()));
    }

    /** Called so in results. */
    public Supply named(String other) {
        return new Supply(other, arrangement, units, shared);
    }

    /** Voltage of each unit within plus and minus so many percent of itself. */
    public Supply tolerance(double percent) {
        return withUnits(u -> new Unit(Toleranced.plusMinusPercent(u.volts.nominal(), percent), u.rippleVolts,
            u.diodeVolts, u.ohms));
    }

    /** Ripple of so many volts peak, above and below the mean. */
    public Supply ripple(double peakVolts) {
        return withUnits(u -> new Unit(u.volts, peakVolts, u.diodeVolts, u.ohms));
    }

    /** A decoupling diode behind each unit. */
    public Supply diodeDrop(double volts) {
        return diodeDrop(Toleranced.exactly(volts));
    }

    /** A decoupling diode behind each unit, with limits. */
    public Supply diodeDrop(Toleranced volts) {
        return withUnits(u -> new Unit(u.volts, u.rippleVolts, volts, u.ohms));
    }

    /** Internal resistance of each unit, in ohm. */
    public Supply internalOhms(double ohms) {
        return withUnits(u -> new Unit(u.volts, u.rippleVolts, u.diodeVolts, Toleranced.exactly(ohms)));
    }

    /** Wiring, terminals and fuse that all loops on the supply share, in ohm. */
    public Supply sharedOhms(double ohms) {
        return withFeed(new Feed(Toleranced.exactly(ohms), shared.otherMilliamps, shared.ratedMilliamps,
            shared.efficiencyPercent));
    }

    /**
     * Other loops on the same supply. Nominally they carry 12 mA each; in the worst case the given current.
     *
     * @param loops         how many others, at least 0
     * @param mostMilliamps largest current of each, at least 12; 22.5 is the usual upscale alarm
     */
    public Supply alsoFeeding(int loops, double mostMilliamps) {
        Checks.atLeast("number of other loops", loops, 0);
        Checks.within("largest current of another loop in mA", mostMilliamps, 12, PiecewiseLine.END);
        return withFeed(new Feed(shared.ohms, new Toleranced(12.0 * loops, 0, mostMilliamps * loops),
            shared.ratedMilliamps, shared.efficiencyPercent));
    }

    /** What the supply can give in all, in mA. */
    public Supply rated(double milliamps) {
        return withFeed(new Feed(shared.ohms, shared.otherMilliamps,
            OptionalDouble.of(Checks.positive("rated current in mA", milliamps)), shared.efficiencyPercent));
    }

    /** Efficiency of the units in percent, at their terminals: for the heat they make and the mains. */
    public Supply efficiency(double percent) {
        return withFeed(new Feed(shared.ohms, shared.otherMilliamps, shared.ratedMilliamps,
            OptionalDouble.of(percent)));
    }

    /** With the other loops on it drawing exactly this. */
    Supply withOthers(double milliamps) {
        return withFeed(new Feed(shared.ohms, Toleranced.exactly(milliamps), shared.ratedMilliamps,
            shared.efficiencyPercent));
    }

    /** At the lower limit of its voltage, at the trough of the ripple. */
    Supply atMinimum() {
        return withUnits(
            u -> new Unit(Toleranced.exactly(u.volts.least() - u.rippleVolts), 0, u.diodeVolts, u.ohms));
    }

    /** What is left when one of the units in parallel is lost. */
    Supply withoutUnit(int unit) {
        final List<Unit> left = new ArrayList<>(units);
        left.remove(unit);
        return new Supply(name, left.size() == 1 ? Arrangement.SINGLE : arrangement, left, shared);
    }

    /** Every unit at another nominal voltage, limits kept in proportion. */
    Supply scaledTo(double nominalVolts) {
        final double factor = nominalVolts / nominalVolts();
        return withUnits(u -> new Unit(u.volts.times(factor), u.rippleVolts, u.diodeVolts, u.ohms));
    }

    /** Nominal voltage: of the highest unit in parallel, of all units together where it is split. */
    public double nominalVolts() {
        return arrangement == Arrangement.SPLIT ? units.stream().mapToDouble(u -> u.volts.nominal()).sum()
            : units.stream().mapToDouble(u -> u.volts.nominal()).max().orElseThrow();
    }

    private Supply withFeed(Feed feed) {
        return new Supply(name, arrangement, units, feed);
    }

    private Supply withUnits(java.util.function.UnaryOperator<Unit> change) {
        return new Supply(name, arrangement, units.stream().map(change).toList(), shared);
    }

    @Override
    public String toString() {
        return name + (name.startsWith(NumberText.plain(nominalVolts(), 6)) ? ""
            : ", " + NumberText.plain(nominalVolts(), 6) + " V")
            + (arrangement == Arrangement.SINGLE ? "" : " (" + units.size() + " units, "
                + (arrangement == Arrangement.PARALLEL ? "in parallel" : "in series") + ")");
    }
}
