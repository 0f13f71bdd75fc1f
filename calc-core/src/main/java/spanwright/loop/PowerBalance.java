package spanwright.loop;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Where every watt of a loop or panel comes from and where it goes. Each heat is worked out from the voltage
 * and current of its own device, so that the sum of all is a check (Tellegen's theorem): it is 0.
 *
 * @param of       what it is the balance of
 * @param devices  power of every device
 * @param supplies power of every supply
 */
public record PowerBalance(String of, List<ElementPower> devices, List<SupplyPower> supplies) {
    /** Checks the components and copies the lists. */
    public PowerBalance {
        Checks.notBlank("what it is the balance of", of);
        devices = List.copyOf(devices);
        supplies = List.copyOf(supplies);
    }

    /**
     * Whether the circuits close: what supplies and active outputs give less what all devices take, in mW.
     * It is 0, whether or not efficiencies and own powers are stated.
     */
    public double circuitSumMilliwatts() {
        return supplies.stream().mapToDouble(SupplyPower::givenMilliwatts).sum()
            - devices.stream().mapToDouble(ElementPower::netMilliwatts).sum();
    }

    /** What comes in from mains and own supplies of devices, in mW; empty if one is not stated. */
    public OptionalDouble inMilliwatts() {
        return sum(Stream.concat(supplies.stream().map(SupplyPower::mainsMilliwatts),
            devices.stream().map(ElementPower::ownMilliwatts)));
    }

    /** Heat of all devices and supplies, in cabinet and field, in mW; empty if one is not determined. */
    public OptionalDouble heatMilliwatts() {
        return sum(Stream.concat(supplies.stream().map(SupplyPower::heatMilliwatts),
            devices.stream().map(ElementPower::heatMilliwatts)));
    }

    /** Given to others that hang on the same supplies, in mW. */
    public double othersMilliwatts() {
        return supplies.stream().mapToDouble(SupplyPower::givenToOthersMilliwatts).sum();
    }

    /** What comes in less heat less what others get, in mW: 0; empty if a part is not determined. */
    public OptionalDouble sumMilliwatts() {
        return inMilliwatts().isEmpty() || heatMilliwatts().isEmpty() ? OptionalDouble.empty()
            : OptionalDouble.of(inMilliwatts().getAsDouble() - heatMilliwatts().getAsDouble()
                - othersMilliwatts());
    }

    /** Heat in the cabinet, supplies included, in mW; empty if a part is not determined. */
    public OptionalDouble cabinetHeatMilliwatts() {
        return sum(Stream.concat(supplies.stream().map(SupplyPower::heatMilliwatts),
            devices.stream().filter(ElementPower::inCabinet).map(ElementPower::heatMilliwatts)));
    }

    /** Heat in the field, in mW; empty if a part is not determined. */
    public OptionalDouble fieldHeatMilliwatts() {
        return sum(devices.stream().filter(d -> !d.inCabinet()).map(ElementPower::heatMilliwatts));
    }

    /** What is not determined and why, one sentence each. */
    public List<String> notDetermined() {
        return Stream.concat(
            supplies.stream().filter(s -> s.efficiencyPercent().isEmpty())
                .map(s -> "heat and mains power of " + s.supply() + ": its efficiency is not stated"),
            devices.stream().filter(d -> d.ownMilliwatts().isEmpty())
                .map(d -> "heat of " + d.device() + ": the power from its own supply is not stated"))
            .distinct().toList();
    }

    static OptionalDouble sum(Stream<OptionalDouble> parts) {
        final List<OptionalDouble> all = parts.toList();
        return all.stream().allMatch(OptionalDouble::isPresent)
            ? OptionalDouble.of(all.stream().mapToDouble(OptionalDouble::getAsDouble).sum())
            : OptionalDouble.empty();
    }

    static String watts(OptionalDouble milliwatts) {
        return milliwatts.isPresent() ? NumberText.fixed(milliwatts.getAsDouble() / 1000, 3) + " W"
            : "not determined";
    }

    @Override
    public String toString() {
        final StringBuilder out = new StringBuilder(of + ": " + watts(inMilliwatts()) + " in; heat in the "
            + "cabinet " + watts(cabinetHeatMilliwatts()) + ", in the field " + watts(fieldHeatMilliwatts())
            + ", to others on the supply " + watts(OptionalDouble.of(othersMilliwatts())));
        supplies.forEach(s -> out.append("\n  ").append(s));
        devices.forEach(d -> out.append("\n  ").append(d));
        return out.toString();
    }
}
