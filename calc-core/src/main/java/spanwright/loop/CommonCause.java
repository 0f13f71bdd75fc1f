package spanwright.loop;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * One thing that fails in a panel, and every channel that falls with it.
 *
 * @param cause   what fails
 * @param kind    of which kind it is
 * @param effects one for each channel that no longer reads what it should
 * @param note    what to know
 */
public record CommonCause(String cause, Kind kind, List<Effect> effects, String note) {
    /** What fails. */
    public enum Kind {
        /** A supply, its fuse or its common return. */
        SUPPLY("supply lost"),
        /** One of the redundant units of a supply. */
        SUPPLY_UNIT("one unit of the supply lost"),
        /** A module that is pulled or broken. */
        MODULE("module out");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * What becomes of a channel.
     *
     * @param channel  name of its loop
     * @param primary  whether the loop of the transmitter lives on
     * @param readings of its receivers and driven devices
     */
    public record Effect(String channel, FaultTable.Survival primary, List<ReceiverReading> readings) {
        /** Checks the components and copies the list. */
        public Effect {
            Checks.notBlank("channel", channel);
            Objects.requireNonNull(primary, "primary");
            readings = List.copyOf(readings);
        }

        /** Whether every reading is flagged as a failure by limits in the manner of NE 43. */
        public boolean isFlagged() {
            return readings.stream().allMatch(r -> r.ne43().filter(Ne43::isFlagged).isPresent());
        }

        @Override
        public String toString() {
            return channel + " (" + readings.stream().map(ReceiverReading::toString)
                .collect(Collectors.joining("; ")) + "; its loop lives on: " + primary + ")";
        }
    }

    /** Checks the components and copies the list. */
    public CommonCause {
        Checks.notBlank("cause", cause);
        Objects.requireNonNull(kind, "kind");
        effects = List.copyOf(effects);
        Objects.requireNonNull(note, "note");
    }

    static List<CommonCause> of(Panel panel, double milliamps) {
        final PanelState sound = panel.at(milliamps);
        if (!sound.isSolved() || !sound.shortOfVoltage().isEmpty()) {
            throw new IllegalArgumentException("common causes of " + panel.name() + " at "
                + NumberText.plain(milliamps, 5) + " mA: the sound panel does not carry it. "
                + sound.sentence());
        }
        final List<CommonCause> causes = new ArrayList<>();
        for (Supply supply : panel.supplies()) {
            causes.add(supplyLost(panel, sound, supply));
            if (supply.arrangement() == Supply.Arrangement.PARALLEL) {
                for (int i = 0; i < supply.units().size(); i++) {
                    causes.add(unitLost(panel, milliamps, supply, i));
                }
            }
        }
        panel.modules().forEach(m -> causes.add(moduleOut(panel, sound, m)));
        return causes;
    }

    /** Circuits it feeds carry nothing; separately powered channels of modules it feeds give nothing. */
    private static CommonCause supplyLost(Panel panel, PanelState sound, Supply supply) {
        final List<Effect> effects = new ArrayList<>();
        for (PanelState.Channel channel : sound.channels()) {
            final Set<String> dark = panel.moduleOf(channel.name()).filter(m -> m.draw()
                    .filter(d -> d.supply().equals(supply)).isPresent())
                .map(m -> Set.of(channel.channel().inModule(m.name()).name())).orElse(Set.of());
            add(effects, channel, c -> c.source().filter(supply::equals).isPresent()
                || c.driver() instanceof Isolator i && c.isActive() && dark.contains(i.name()));
        }
        return new CommonCause(supply.name(), Kind.SUPPLY, effects,
            "Loss of the supply, of its fuse or of its common return.");
    }

    /** Pulled, it opens the circuit of its input and that of its output. */
    private static CommonCause moduleOut(Panel panel, PanelState sound, IsolatorModule module) {
        final List<Effect> effects = new ArrayList<>();
        for (PanelState.Channel channel : sound.channels()) {
            if (module.channels().containsValue(channel.channel())) {
                final Isolator isolator = channel.channel().inModule(module.name());
                add(effects, channel, c -> c.driver() == isolator
                    || c.isolators().anyMatch(i -> i == isolator));
            }
        }
        return new CommonCause(module.name(), Kind.MODULE, effects,
            "Taken as pulled: its inputs open. What a broken one does to its inputs is not determined.");
    }

    private static void add(List<Effect> effects, PanelState.Channel channel, Predicate<Circuit> isDead) {
        final Circuit root = channel.channel().loop().circuit();
        final Set<String> dead = new HashSet<>();
        root.all().filter(isDead).forEach(c -> Pairing.all(c.ring()).forEach(e -> dead.add(e.name())));
        if (channel.state().readings().stream().anyMatch(r -> dead.contains(r.receiver()))) {
            effects.add(new Effect(channel.name(), isDead.test(root) ? FaultTable.Survival.NO
                : FaultTable.Survival.YES, channel.state().readings().stream()
                    .map(r -> dead.contains(r.receiver()) ? ReceiverReading.of(r.receiver(), 0) : r)
                    .toList()));
        }
    }

    /** The panel on the units that are left, every loop at its upscale failure current, worst case. */
    private static CommonCause unitLost(Panel panel, double milliamps, Supply supply, int unit) {
        final Panel left = panel.exchanging(supply, supply.withoutUnit(unit));
        final PanelState state = left.at(milliamps);
        final PanelState alarm = left.atAlarm(Corner.LEAST_VOLTAGE);
        final List<Effect> effects = alarm.shortOfVoltage().stream().map(c -> effect(c, state)).toList();
        return new CommonCause(supply.name() + " unit " + (unit + 1), Kind.SUPPLY_UNIT, effects,
            (!alarm.isSolved() ? alarm.sentence() : effects.isEmpty()
                ? "Every loop still reaches its upscale failure current with every limit against it."
                : "These do not reach their upscale failure current with every limit against them.")
                + " Whether the units left can give the current is not determined: only the rating of all "
                + "together is stated.");
    }

    private static Effect effect(PanelState.Channel channel, PanelState state) {
        if (!state.isSolved() || !state.channel(channel.name()).state().isSolved()) {
            return new Effect(channel.name(), FaultTable.Survival.NO, Pairing.all(channel.channel().loop()
                .elements()).filter(e -> e instanceof Burden b && b.kind().reads())
                .map(e -> ReceiverReading.of(e.name(), 0)).toList());
        }
        return new Effect(channel.name(), FaultTable.Survival.SHORT, state.channel(channel.name()).state()
            .readings());
    }

    /** Names of the channels that fall. */
    public List<String> channels() {
        return effects.stream().map(Effect::channel).toList();
    }

    @Override
    public String toString() {
        return cause + " (" + kind + "): " + (effects.isEmpty() ? "no channel falls"
            : effects.size() + " channels fall: " + effects.stream().map(Effect::toString)
                .collect(Collectors.joining(", "))) + ". " + note;
    }
}
