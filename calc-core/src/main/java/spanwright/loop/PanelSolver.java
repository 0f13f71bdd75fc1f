package spanwright.loop;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import spanwright.quantity.NumberText;

/**
 * Solves a panel: what the loops draw sinks the voltage of their supply, and a loop that is short of voltage
 * draws less. Drawn current falls as the total assumed rises, so that the two meet once; where the drawn
 * current jumps past the total there is no steady state. Used once.
 */
final class PanelSolver {
    private static final int SWEEPS = 100;

    private final Panel panel;
    private final ToDoubleFunction<CurrentLoop> asked;
    private final Corner corner;
    private final Pick pick;
    private final Map<String, Double> totals = new LinkedHashMap<>();

    PanelSolver(Panel panel, ToDoubleFunction<CurrentLoop> asked, Corner corner) {
        this.panel = panel;
        this.asked = asked;
        this.corner = corner;
        this.pick = Pick.of(corner);
    }

    PanelState solve() {
        panel.supplies().forEach(s -> totals.put(s.name(), most(s)));
        for (int sweep = 0; sweep < SWEEPS; sweep++) {
            double change = 0;
            for (Supply supply : panel.supplies()) {
                final OptionalDouble total = balance(supply);
                if (total.isEmpty()) {
                    return unsolved(supply);
                }
                change = Math.max(change, Math.abs(totals.put(supply.name(), total.getAsDouble())
                    - total.getAsDouble()));
            }
            if (change <= 1e-9) {
                return state();
            }
        }
        return unsolved(panel.supplies().get(0));
    }

    /** What the panel would draw from a supply if every circuit carried what it is asked for. */
    private double most(Supply supply) {
        return panel.channels().stream().mapToDouble(c -> asked.applyAsDouble(c.loop())
            * c.loop().circuit().all().filter(i -> i.source().filter(supply::equals).isPresent()).count())
            .sum() + draws(supply);
    }

    private double draws(Supply supply) {
        return panel.modules().stream().flatMap(m -> m.draw().stream())
            .filter(d -> d.supply().equals(supply))
            .mapToDouble(d -> pick.drop("current of a module", d.milliamps())).sum();
    }

    /** The total at which a supply has just the voltage at which so much is drawn. */
    private OptionalDouble balance(Supply supply) {
        final double most = most(supply);
        if (drawn(supply, most) >= most * (1 - 1e-12)) {
            return OptionalDouble.of(most);
        }
        double low = 0;
        double high = most;
        for (int i = 0; i < 100 && high - low > 1e-14 * most; i++) {
            final double middle = low + (high - low) / 2;
            if (drawn(supply, middle) > middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Math.abs(drawn(supply, high) - high) <= 1e-9 * Math.max(1, most) ? OptionalDouble.of(high)
            : OptionalDouble.empty();
    }

    /** What is drawn from a supply at the voltage it has with so much drawn. */
    private double drawn(Supply supply, double total) {
        final double volts = volts(supply, total);
        if (volts <= 0) {
            return 0;
        }
        final Map<String, Double> trial = new LinkedHashMap<>(totals);
        trial.put(supply.name(), total);
        return panel.channels().stream()
            .filter(c -> c.loop().circuit().all().anyMatch(i -> i.source().filter(supply::equals)
                .isPresent()))
            .flatMap(c -> loop(c.loop(), trial).power().supplies().stream())
            .filter(s -> s.supply().equals(supply.name())).mapToDouble(s -> s.currents().loopMilliamps())
            .sum() + draws(supply);
    }

    private double outside(Supply supply) {
        return pick.drop(supply.name() + ": current of other loops", supply.shared().otherMilliamps());
    }

    private double volts(Supply supply, double total) {
        return SupplyCurve.of(supply.withOthers(outside(supply) + total), pick).at(0);
    }

    /** A loop on supplies that hold the voltage they have with these totals. */
    private LoopState loop(CurrentLoop loop, Map<String, Double> on) {
        final CurrentLoop held = loop.exchangingSupplies(s -> Supply.volts(Math.max(Double.MIN_NORMAL,
            volts(s, on.get(s.name())))).named(s.name()));
        return new LoopSolver(loop.name(), pick).solve(held.circuit(), asked.applyAsDouble(loop), corner);
    }

    private PanelState unsolved(Supply supply) {
        return new PanelState(panel.name(), corner, List.of(), List.of(),
            new PowerBalance(panel.name(), List.of(), List.of()), "No steady state: " + panel.name()
                + " asks " + supply.name() + " for " + NumberText.fixed(most(supply), 1)
                + " mA, at which it has " + NumberText.fixed(volts(supply, most(supply)), 2)
                + " V; loops that drop out let it rise and come back.");
    }

    private PanelState state() {
        final List<PanelState.Channel> channels = new ArrayList<>();
        for (PanelChannel channel : panel.channels()) {
            channels.add(new PanelState.Channel(channel, panel.moduleOf(channel.name())
                .map(IsolatorModule::name), loop(channel.loop(), totals)));
        }
        final List<SupplyPower> supplies = panel.supplies().stream().map(s -> SupplyCurve.power(s, pick,
            totals.get(s.name()), outside(s), volts(s, totals.get(s.name())))).toList();
        final List<ElementPower> devices = new ArrayList<>();
        final List<PanelState.Module> modules = new ArrayList<>();
        for (IsolatorModule module : panel.modules()) {
            modules.add(module(module, channels));
            devices.add(device(modules.get(modules.size() - 1), module));
        }
        channels.forEach(c -> c.state().powers().stream().filter(p -> !isInModule(c, p))
            .forEach(p -> devices.add(named(c, p))));
        return new PanelState(panel.name(), corner, channels, modules,
            new PowerBalance(panel.name(), devices, supplies), sentence(channels, supplies));
    }

    private boolean isInModule(PanelState.Channel channel, ElementPower power) {
        return channel.module().isPresent()
            && channel.channel().inModule(channel.module().get()).name().equals(power.device());
    }

    private static ElementPower named(PanelState.Channel channel, ElementPower power) {
        return new ElementPower(channel.name() + ", " + power.device(),
            power.inCabinet() && !channel.channel().inField().contains(power.device()),
            power.takenMilliwatts(), power.ownMilliwatts(), power.givenMilliwatts());
    }

    private PanelState.Module module(IsolatorModule module, List<PanelState.Channel> channels) {
        final List<ElementPower> isolators = channels.stream()
            .filter(c -> c.module().equals(Optional.of(module.name())) && c.state().isSolved())
            .map(c -> c.state().power(c.channel().inModule(module.name()).name())).toList();
        return new PanelState.Module(module.name(), isolators, module.draw().isPresent()
            ? OptionalDouble.of(drawnMilliwatts(module.draw().get()))
            : PowerBalance.sum(isolators.stream().map(ElementPower::ownMilliwatts)));
    }

    private double drawnMilliwatts(IsolatorModule.Draw draw) {
        return volts(draw.supply(), totals.get(draw.supply().name()))
            * pick.drop("current of a module", draw.milliamps());
    }

    /** A module as one device: what it draws from a supply of the panel, it takes from a circuit. */
    private static ElementPower device(PanelState.Module power, IsolatorModule module) {
        final double taken = power.isolators().stream().mapToDouble(ElementPower::takenMilliwatts).sum();
        final double given = power.isolators().stream().mapToDouble(ElementPower::givenMilliwatts).sum();
        return module.draw().isPresent()
            ? new ElementPower(module.name(), true, taken + power.drawnMilliwatts().orElseThrow(),
                OptionalDouble.of(0), given)
            : new ElementPower(module.name(), true, taken, power.drawnMilliwatts(), given);
    }

    private String sentence(List<PanelState.Channel> channels, List<SupplyPower> supplies) {
        final List<String> fallen = channels.stream().filter(c -> !c.isReached())
            .map(PanelState.Channel::name).toList();
        return panel.name() + " (" + corner + "): " + supplies.stream().map(s -> s.supply() + " gives "
            + NumberText.fixed(s.currents().totalMilliamps(), 1) + " mA at " + NumberText.fixed(s.volts(), 2)
            + " V").collect(Collectors.joining(", ")) + (fallen.isEmpty()
                ? "; every loop carries what it is asked for."
                : "; short of voltage: " + String.join(", ", fallen) + ".");
    }
}
