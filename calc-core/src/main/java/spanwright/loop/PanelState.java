package spanwright.loop;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A panel at a current: every loop on the voltage its supply has with all others on it, the current of every
 * supply, and where every watt goes.
 *
 * <p>The loops are solved on a supply that holds its voltage as it is at the feed; what happens before the
 * feed is in {@link #power()}.
 *
 * @param panel    its name
 * @param corner   which limits of the parameters count
 * @param channels solved loops; empty where there is no steady state
 * @param modules  power of every module
 * @param power    where every watt comes from and goes: the modules, the devices outside them, the supplies
 * @param sentence what to know first
 */
public record PanelState(String panel, Corner corner, List<Channel> channels, List<Module> modules,
                         PowerBalance power, String sentence) {
    /**
     * A channel.
     *
     * @param channel which
     * @param module  the module it runs through, if any
     * @param state   of its loop
     */
    public record Channel(PanelChannel channel, Optional<String> module, LoopState state) {
        /** Checks the components. */
        public Channel {
            Objects.requireNonNull(channel, "channel");
            Objects.requireNonNull(module, "module");
            Objects.requireNonNull(state, "state");
        }

        /** Name of its loop. */
        public String name() {
            return channel.name();
        }

        /** Whether it carries what it is asked for, in every circuit. */
        public boolean isReached() {
            return state.isSolved() && state.circuits().stream().noneMatch(CircuitState::isShort);
        }
    }

    /**
     * Power of a module.
     *
     * @param name               of the module
     * @param isolators          power of the isolator of each channel
     * @param drawnMilliwatts    taken from the supply for all channels; empty if it has separately powered
     *                           channels and neither says what they draw
     */
    public record Module(String name, List<ElementPower> isolators, OptionalDouble drawnMilliwatts) {
        /** Checks the components and copies the list. */
        public Module {
            Checks.notBlank("name of the module", name);
            isolators = List.copyOf(isolators);
            Objects.requireNonNull(drawnMilliwatts, "drawnMilliwatts");
        }

        /** Heat in it, in mW; empty if what it draws is not stated. */
        public OptionalDouble heatMilliwatts() {
            return drawnMilliwatts.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(drawnMilliwatts
                .getAsDouble() + isolators.stream().mapToDouble(ElementPower::netMilliwatts).sum());
        }

        @Override
        public String toString() {
            return name + ": heat " + PowerBalance.watts(heatMilliwatts());
        }
    }

    /** Checks the components and copies the lists. */
    public PanelState {
        Checks.notBlank("name of the panel", panel);
        Objects.requireNonNull(corner, "corner");
        channels = List.copyOf(channels);
        modules = List.copyOf(modules);
        Objects.requireNonNull(power, "power");
        Checks.notBlank("sentence", sentence);
    }

    /** Whether there is a steady state; {@link #sentence()} says why not. */
    public boolean isSolved() {
        return !channels.isEmpty();
    }

    /** Channels that do not carry what they are asked for. */
    public List<Channel> shortOfVoltage() {
        return channels.stream().filter(c -> !c.isReached()).toList();
    }

    /** A channel, by the name of its loop. */
    public Channel channel(String loop) {
        return channels.stream().filter(c -> c.name().equals(loop)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no loop of " + panel + " is named " + loop));
    }

    /** A supply, by name. */
    public SupplyPower supply(String name) {
        return power.supplies().stream().filter(s -> s.supply().equals(name)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no supply of " + panel + " is named " + name));
    }

    /** A module, by name. */
    public Module module(String name) {
        return modules.stream().filter(m -> m.name().equals(name)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no module of " + panel + " is named " + name));
    }

    /** Heat in the cabinet, supplies included, in mW; empty if a part is not determined. */
    public OptionalDouble cabinetHeatMilliwatts() {
        return power.cabinetHeatMilliwatts();
    }

    /** Heat in the field, in mW; empty if a part is not determined. */
    public OptionalDouble fieldHeatMilliwatts() {
        return power.fieldHeatMilliwatts();
    }

    @Override
    public String toString() {
        return sentence + "\n" + "heat in the cabinet " + PowerBalance.watts(cabinetHeatMilliwatts())
            + ", in the field " + PowerBalance.watts(fieldHeatMilliwatts()) + ", taken in all "
            + PowerBalance.watts(power.inMilliwatts())
            + power.supplies().stream().map(s -> "\n  " + s).collect(Collectors.joining())
            + modules.stream().map(m -> "\n  " + m).collect(Collectors.joining())
            + channels.stream().map(c -> "\n  " + c.name() + ": " + (c.state.isSolved()
                ? NumberText.fixed(c.state.primary().milliamps(), 2) + " mA, "
                    + NumberText.signed(c.state.primary().budget().marginVolts(), 2) + " V to spare"
                : c.state.sentence())).collect(Collectors.joining());
    }
}
