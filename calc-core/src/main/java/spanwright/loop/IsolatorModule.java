package spanwright.loop;

import java.util.Collection;
import java.util.Collections;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import spanwright.quantity.Checks;

/**
 * An isolator with several channels in one housing, which share what it draws from a supply.
 *
 * @param name     of the module
 * @param places   how many channels it has
 * @param draw     what it draws from a supply for all its channels; empty if it lives on the loops or if
 *                 nothing is stated
 * @param channels by place, the first being 1; a place that is missing is spare
 */
public record IsolatorModule(String name, int places, Optional<Draw> draw,
                             SortedMap<Integer, PanelChannel> channels) {
    /**
     * What a module draws.
     *
     * @param supply    from which
     * @param milliamps all of it at the voltage of the supply, with what its outputs give
     * @param inrushMilliamps peak when it is switched on, if stated
     */
    public record Draw(Supply supply, Toleranced milliamps, OptionalDouble inrushMilliamps) {
        /** Checks the components. */
        public Draw {
            Objects.requireNonNull(supply, "supply");
            milliamps.requireNotNegative("current of the module in mA");
            Objects.requireNonNull(inrushMilliamps, "inrushMilliamps");
        }
    }

    /** Checks the components and copies the map. */
    public IsolatorModule {
        Checks.notBlank("name of the module", name);
        Checks.atLeast("number of channels of " + name, places, 1);
        Objects.requireNonNull(draw, "draw");
        channels = Collections.unmodifiableSortedMap(new TreeMap<>(channels));
        for (int place : channels.keySet()) {
            if (place < 1 || place > places) {
                throw new IllegalArgumentException("channel " + place + " of " + name
                    + ": it has channels 1 to " + places);
            }
        }
        for (PanelChannel channel : channels.values()) {
            final Isolator isolator = channel.inModule(name);
            if (draw.isPresent() && isolator.traits().ownMilliwatts().orElse(0) > 0) {
                throw new IllegalArgumentException(isolator.name() + " of " + channel.name()
                    + " states a power of its own and " + name
                    + " a current for all its channels: the power would count twice");
            }
        }
    }

    /** A module with so many channels, all spare so far. */
    public static IsolatorModule of(String name, int places) {
        return new IsolatorModule(name, places, Optional.empty(), new TreeMap<>());
    }

    /** What it draws from a supply for all its channels together, in mA at the supply's voltage. */
    public IsolatorModule drawing(Supply supply, double milliamps) {
        return drawing(supply, Toleranced.exactly(milliamps));
    }

    /** What it draws from a supply for all its channels together, with limits, in mA. */
    public IsolatorModule drawing(Supply supply, Toleranced milliamps) {
        return new IsolatorModule(name, places, Optional.of(new Draw(supply, milliamps,
            OptionalDouble.empty())), channels);
    }

    /**
     * Peak of its current when it is switched on, in mA.
     *
     * @throws IllegalStateException if it has not been said what it draws
     */
    public IsolatorModule inrush(double milliamps) {
        final Draw drawn = draw.orElseThrow(() -> new IllegalStateException(
            "say by drawing(...) what " + name + " draws before its inrush"));
        return new IsolatorModule(name, places, Optional.of(new Draw(drawn.supply, drawn.milliamps,
            OptionalDouble.of(Checks.positive("inrush current in mA", milliamps)))), channels);
    }

    /** With a loop on a channel. */
    public IsolatorModule channel(int place, CurrentLoop loop) {
        return channel(place, PanelChannel.of(loop));
    }

    /**
     * With a loop on a channel.
     *
     * @throws IllegalArgumentException if the channel is taken, or the module has none of this number
     */
    public IsolatorModule channel(int place, PanelChannel channel) {
        final SortedMap<Integer, PanelChannel> more = new TreeMap<>(channels);
        final PanelChannel taken = more.put(place, channel);
        if (taken != null) {
            throw new IllegalArgumentException("channel " + place + " of " + name + " is taken by "
                + taken.name() + ": " + channel.name() + " needs another");
        }
        return new IsolatorModule(name, places, draw, more);
    }

    /** With loops on the first channels that are spare. */
    public IsolatorModule channels(Collection<CurrentLoop> loops) {
        IsolatorModule module = this;
        int place = 1;
        for (CurrentLoop loop : loops) {
            while (module.channels.containsKey(place)) {
                place++;
            }
            module = module.channel(place, loop);
        }
        return module;
    }

    IsolatorModule exchanging(UnaryOperator<Supply> supply, UnaryOperator<PanelChannel> channel) {
        final SortedMap<Integer, PanelChannel> changed = new TreeMap<>();
        channels.forEach((place, c) -> changed.put(place, channel.apply(c)));
        return new IsolatorModule(name, places, draw.map(d -> new Draw(supply.apply(d.supply),
            d.milliamps, d.inrushMilliamps)), changed);
    }

    /** How many channels are spare. */
    public int spare() {
        return places - channels.size();
    }

    @Override
    public String toString() {
        return name + ": " + channels.size() + " of " + places + " channels used"
            + draw.map(d -> ", draws " + d.milliamps() + " mA from " + d.supply().name()).orElse("");
    }
}
