package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spanwright.quantity.NumberText;

/** The rules that are checked without being asked for: load limits, maximum voltages, rated currents. */
final class LimitRules {
    private LimitRules() { }

    static List<LoopChecks.Item> of(CurrentLoop loop) {
        final List<LoopChecks.Item> items = new ArrayList<>();
        Pairing.all(loop.elements()).filter(Isolator.class::isInstance)
            .forEach(e -> items.addAll(load((Isolator) e)));
        Pairing.all(loop.elements()).filter(Burden.class::isInstance).map(Burden.class::cast)
            .filter(b -> b.traits().tappedOhms().isPresent()).forEach(b -> items.add(tapped(b)));
        items.addAll(maximumVolts(loop));
        loop.circuit().all().flatMap(c -> c.supply().stream()).forEach(s -> items.addAll(rated(loop, s)));
        return items;
    }

    private static List<LoopChecks.Item> load(Isolator isolator) {
        if (isolator.output().loadLimitOhms().isEmpty()) {
            return isolator.nests() ? List.of(new LoopChecks.Item("load limit",
                LoopChecks.Outcome.NOT_DETERMINED,
                "the load limit of " + isolator.name() + " is not stated; commonly it is 250 \u03a9"))
                    : List.of();
        }
        final double limit = isolator.output().loadLimitOhms().getAsDouble();
        final double at = 20;
        final double ohms = isolator.loadCurve(Pick.of(Corner.LEAST_VOLTAGE)).at(at) / at * 1000;
        final boolean allowed = ohms <= limit * (1 + 1e-12);
        return List.of(new LoopChecks.Item("load limit",
            allowed ? LoopChecks.Outcome.ALLOWED : LoopChecks.Outcome.REFUSED,
            "the load of " + isolator.name() + " is " + NumberText.plain(ohms, 5) + " \u03a9 at 20 mA, "
                + (allowed ? "within" : "above") + " its limit of " + NumberText.plain(limit, 5)
                + " \u03a9"));
    }

    private static LoopChecks.Item tapped(Burden burden) {
        return new LoopChecks.Item("tapped receiver", LoopChecks.Outcome.ALLOWED, burden.name() + " reads "
            + NumberText.significant(-burden.tapErrorPercentOfReading(), 2)
            + " % of reading low, since a second receiver across it takes its share of the current");
    }

    /** Whether no output has more load than its data sheet allows. */
    static boolean loadsAllowed(CurrentLoop loop) {
        return Pairing.all(loop.elements()).filter(Isolator.class::isInstance)
            .flatMap(e -> load((Isolator) e).stream())
            .noneMatch(i -> i.outcome() == LoopChecks.Outcome.REFUSED);
    }

    private static List<LoopChecks.Item> maximumVolts(CurrentLoop loop) {
        final Transmitter transmitter = loop.transmitter();
        final OptionalDouble maximum = transmitter.limits().maximumVolts();
        final Circuit circuit = loop.circuit();
        if (maximum.isEmpty() || circuit.isActive()) {
            return List.of();
        }
        final Pick most = Pick.of(Corner.MOST_VOLTAGE);
        final double low = transmitter.limits().failLowMilliamps();
        final double volts = circuit.available(most).at(low) - circuit.burden(most).at(low);
        final boolean allowed = volts <= maximum.getAsDouble();
        return List.of(new LoopChecks.Item("maximum voltage", allowed ? LoopChecks.Outcome.ALLOWED
            : LoopChecks.Outcome.REFUSED, transmitter.name() + " has up to " + NumberText.fixed(volts, 2)
            + " V across it at " + NumberText.plain(low, 4) + " mA, " + (allowed ? "within" : "above")
            + " its maximum of " + NumberText.plain(maximum.getAsDouble(), 5) + " V"));
    }

    private static List<LoopChecks.Item> rated(CurrentLoop loop, Supply supply) {
        if (supply.shared().ratedMilliamps().isEmpty()) {
            return List.of();
        }
        final double rated = supply.shared().ratedMilliamps().getAsDouble();
        final double drawn = supply.shared().otherMilliamps().most() + loop.transmitter().limits()
            .failHighMilliamps();
        final boolean allowed = drawn <= rated;
        return List.of(new LoopChecks.Item("rated current", allowed ? LoopChecks.Outcome.ALLOWED
            : LoopChecks.Outcome.REFUSED, supply.name() + " gives up to " + NumberText.plain(drawn, 6)
            + " mA with every loop at its alarm current, " + (allowed ? "within" : "above")
                + " its rating of "
            + NumberText.plain(rated, 6) + " mA"));
    }
}
