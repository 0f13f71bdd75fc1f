package spanwright.loop;

import java.util.Objects;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Power of a supply: what it takes from the mains is given to loops or becomes heat in the supply, in its
 * decoupling diodes and in the feed that the loops share.
 *
 * <p>The efficiency is that of the units at the output the units have here; it covers the loss in their
 * internal resistance. What a unit takes without load is part of it, and is not known for another load.
 *
 * @param supply         its name
 * @param volts          voltage at the end of the shared feed, in V
 * @param currents       what is drawn from it
 * @param unitMilliwatts what the units give at their terminals, before diodes and feed, in mW
 * @param diodeMilliwatts heat in the diodes, in mW
 * @param feedMilliwatts heat in the shared feed, in mW
 * @param efficiencyPercent of the units, if stated
 */
public record SupplyPower(String supply, double volts, Currents currents, double unitMilliwatts,
                          double diodeMilliwatts, double feedMilliwatts, OptionalDouble efficiencyPercent) {
    /**
     * What is drawn from a supply.
     *
     * @param loopMilliamps   by the loop, or the loops and modules of the panel, asked about
     * @param othersMilliamps by others on it
     */
    public record Currents(double loopMilliamps, double othersMilliamps) {
        /** Checks the components. */
        public Currents {
            Checks.finite("current of the loop in mA", loopMilliamps);
            Checks.finite("current of others in mA", othersMilliamps);
        }

        /** All that is drawn. */
        public double totalMilliamps() {
            return loopMilliamps + othersMilliamps;
        }
    }

    /** Checks the components. */
    public SupplyPower {
        Checks.notBlank("supply", supply);
        Checks.finite("voltage in V", volts);
        Objects.requireNonNull(currents, "currents");
        Checks.finite("power of the units in mW", unitMilliwatts);
        Checks.finite("heat in the diodes in mW", diodeMilliwatts);
        Checks.finite("heat in the feed in mW", feedMilliwatts);
        Objects.requireNonNull(efficiencyPercent, "efficiencyPercent");
    }

    /** Given to the loop or panel asked about, in mW. */
    public double givenMilliwatts() {
        return volts * currents.loopMilliamps;
    }

    /** Given to others on the supply, in mW. */
    public double givenToOthersMilliwatts() {
        return volts * currents.othersMilliamps;
    }

    /** Taken from the mains, in mW; empty if the efficiency is not stated. */
    public OptionalDouble mainsMilliwatts() {
        return efficiencyPercent.isEmpty() ? OptionalDouble.empty()
            : OptionalDouble.of(unitMilliwatts * 100 / efficiencyPercent.getAsDouble());
    }

    /** Heat in the units themselves, in mW; empty if the efficiency is not stated. */
    public OptionalDouble unitHeatMilliwatts() {
        return efficiencyPercent.isEmpty() ? OptionalDouble.empty()
            : OptionalDouble.of(unitMilliwatts * (100 / efficiencyPercent.getAsDouble() - 1));
    }

    /** Heat in units, diodes and feed, in mW; empty if the efficiency is not stated. */
    public OptionalDouble heatMilliwatts() {
        return efficiencyPercent.isEmpty() ? OptionalDouble.empty()
            : OptionalDouble.of(unitHeatMilliwatts().getAsDouble() + diodeMilliwatts + feedMilliwatts);
    }

    @Override
    public String toString() {
        return supply + ": " + NumberText.fixed(currents.totalMilliamps(), 1) + " mA at "
            + NumberText.fixed(volts, 2) + " V, " + (mainsMilliwatts().isEmpty()
                ? "mains power and heat not determined, its efficiency is not stated"
                : NumberText.fixed(mainsMilliwatts().getAsDouble() / 1000, 2) + " W from the mains, "
                    + NumberText.fixed(heatMilliwatts().getAsDouble() / 1000, 2) + " W of it heat");
    }
}
