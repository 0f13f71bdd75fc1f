package spanwright.loop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spanwright.quantity.Checks;

/**
 * Channels in a cabinet: loops that run through multi-channel isolator modules and share supplies.
 *
 * <p>Two loops share a supply if they name the same one. The loops of the panel are each other's "other
 * loops"; {@link Supply#alsoFeeding} states only what hangs on the supply besides the panel.
 *
 * @param name    of the panel
 * @param modules isolator modules with their channels
 * @param direct  loops that run through no module
 */
public record Panel(String name, List<IsolatorModule> modules, List<PanelChannel> direct) {
    /** Checks the names and copies the lists. */
    public Panel {
        Checks.notBlank("name of the panel", name);
        modules = List.copyOf(modules);
        direct = List.copyOf(direct);
        requireUnique(name, "modules", modules.stream().map(IsolatorModule::name));
        requireUnique(name, "loops", channels(modules, direct).map(PanelChannel::name));
        if (channels(modules, direct).findAny().isEmpty()) {
            throw new IllegalArgumentException(name + " has no channel");
        }
        supplies(name, modules, direct);
    }

    private static void requireUnique(String panel, String what, Stream<String> names) {
        final Set<String> seen = new HashSet<>();
        names.filter(n -> !seen.add(n)).findFirst().ifPresent(n -> {
            throw new IllegalArgumentException(panel + " has two " + what + " named " + n);
        });
    }

    private static Stream<PanelChannel> channels(List<IsolatorModule> modules, List<PanelChannel> direct) {
        return Stream.concat(modules.stream().flatMap(m -> m.channels().values().stream()), direct.stream());
    }

    private static Map<String, Supply> supplies(String panel, List<IsolatorModule> modules,
                                                List<PanelChannel> direct) {
        final Map<String, Supply> byName = new LinkedHashMap<>();
        Stream.concat(channels(modules, direct).flatMap(c -> c.loop().circuit().all())
                .flatMap(c -> c.source().stream()),
            modules.stream().flatMap(m -> m.draw().stream()).map(IsolatorModule.Draw::supply)).forEach(s -> {
                final Supply other = byName.putIfAbsent(s.name(), s);
                if (other != null && !other.equals(s)) {
                    throw new IllegalArgumentException(panel + " has two supplies named " + s.name()
                        + " that differ: the same name means the same supply");
                }
            });
        return byName;
    }

    /** A panel of modules. */
    public static Panel of(String name, IsolatorModule... modules) {
        return new Panel(name, Arrays.asList(modules), List.of());
    }

    /** A panel of loops that run through no module. */
    public static Panel of(String name, CurrentLoop... loops) {
        return new Panel(name, List.of(), Stream.of(loops).map(PanelChannel::of).toList());
    }

    /** With more loops that run through no module. */
    public Panel withDirect(CurrentLoop... loops) {
        final List<PanelChannel> more = new ArrayList<>(direct);
        Stream.of(loops).map(PanelChannel::of).forEach(more::add);
        return new Panel(name, modules, more);
    }

    /** Every channel: module by module, then those of none. */
    public List<PanelChannel> channels() {
        return channels(modules, direct).toList();
    }

    /** A channel by the name of its loop. */
    public PanelChannel channel(String loop) {
        return channels().stream().filter(c -> c.name().equals(loop)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no loop of " + name + " is named " + loop));
    }

    /** The module a loop runs through, if any. */
    public Optional<IsolatorModule> moduleOf(String loop) {
        return modules.stream().filter(m -> m.channels().values().stream()
            .anyMatch(c -> c.name().equals(loop))).findFirst();
    }

    /** The supplies of the loops and modules. */
    public List<Supply> supplies() {
        return List.copyOf(supplies(name, modules, direct).values());
    }

    /** This panel with a supply exchanged wherever it feeds. */
    Panel exchanging(Supply from, Supply to) {
        final UnaryOperator<Supply> change = s -> s.equals(from) ? to : s;
        final UnaryOperator<PanelChannel> loop = c -> new PanelChannel(c.loop().exchangingSupplies(change),
            c.isolator(), c.inField());
        return new Panel(name, modules.stream().map(m -> m.exchanging(change, loop)).toList(),
            direct.stream().map(loop).toList());
    }

    /** Every loop at a current, all parameters nominal. */
    public PanelState at(double milliamps) {
        return at(milliamps, Corner.NOMINAL);
    }

    /** Every loop at a current of 0 to 50 mA, at a corner. */
    public PanelState at(double milliamps, Corner corner) {
        Checks.within("current in mA", milliamps, 0, PiecewiseLine.END);
        return new PanelSolver(this, l -> milliamps, corner).solve();
    }

    /** Every loop at its upscale failure current, at a corner. */
    public PanelState atAlarm(Corner corner) {
        return new PanelSolver(this, l -> l.transmitter().limits().failHighMilliamps(), corner).solve();
    }

    /** What the panel draws from each supply, and what is left of the rating. */
    public PanelLoad load() {
        return PanelLoad.of(this);
    }

    /** Heat in cabinet and field over the currents that matter and the corners: where it is largest. */
    public PanelHeat heat() {
        return PanelHeat.of(this);
    }

    /** Which channels fall together, the process asking for a current: with a supply, with a module. */
    public List<CommonCause> commonCauses(double milliamps) {
        return CommonCause.of(this, milliamps);
    }

    @Override
    public String toString() {
        return name + ": " + channels().size() + " loops"
            + modules.stream().map(m -> "\n  " + m).collect(Collectors.joining())
            + (direct.isEmpty() ? "" : "\n  without module: "
                + direct.stream().map(PanelChannel::name).collect(Collectors.joining(", ")))
            + supplies().stream().map(s -> "\n  supply " + s).collect(Collectors.joining());
    }
}
