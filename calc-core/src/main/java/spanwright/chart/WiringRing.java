package spanwright.chart;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spanwright.loop.Burden;
import spanwright.loop.CircuitState;
import spanwright.loop.CurrentLoop;
import spanwright.loop.ElementState;
import spanwright.loop.Isolator;
import spanwright.loop.LoopElement;
import spanwright.loop.LoopState;
import spanwright.loop.Supply;
import spanwright.loop.Transmitter;

/**
 * One circuit as it is to be drawn: a ring run through clockwise, its source at the left edge (or, behind an
 * isolator, at the upper wire), what comes first in the upper wire, the transmitter at the right edge if it
 * can stand there, the rest in the lower wire. Isolators stand in the lower wire only, so that the ring
 * behind each hangs below it and no wires cross.
 *
 * @param circuit  as solved
 * @param source   at the left edge, if there is one
 * @param ownInput whether an isolator's output takes its voltage from this ring
 * @param upper    stations of the upper wire, left to right
 * @param right    station at the right edge
 * @param lower    stations of the lower wire, left to right: against the current
 */
record WiringRing(CircuitState circuit, Optional<Source> source, boolean ownInput, List<Station> upper,
                  Optional<Station> right, List<Station> lower) {
    /**
     * A symbol in the ring.
     *
     * @param state  which element, or core of a cable
     * @param symbol what is drawn
     * @param text   what is written at it
     * @param behind ring at the output of an isolator
     */
    record Station(ElementState state, WiringSymbol symbol, WiringText text, Optional<WiringRing> behind) {
        boolean isCore(ElementState.Part part) {
            return state.part() == part;
        }
    }

    /**
     * What gives the voltage.
     *
     * @param symbol what is drawn
     * @param text   what is written at it
     */
    record Source(WiringSymbol symbol, WiringText text) { }

    WiringRing {
        upper = List.copyOf(upper);
        lower = List.copyOf(lower);
    }

    static WiringRing of(CurrentLoop loop, LoopState state) {
        final CircuitState circuit = state.primary();
        final Builder builder = new Builder(state);
        builder.gather(loop.elements());
        final Transmitter transmitter = loop.transmitter();
        final Source source = transmitter.kind().isActive()
            ? new Source(WiringSymbol.OWN_SUPPLY_TRANSMITTER, WiringText.of(transmitter, circuit))
            : supply(loop.supply(), loop.elements(), circuit);
        return builder.ring(circuit, Optional.of(source), false);
    }

    private static Source supply(Optional<Supply> own, List<LoopElement> elements, CircuitState circuit) {
        final Optional<Burden> powering = elements.stream().filter(Burden.class::isInstance)
            .map(Burden.class::cast).filter(b -> b.traits().ownSupply().isPresent()).findFirst();
        return own.map(s -> new Source(WiringSymbol.SUPPLY, WiringText.of(s, Optional.empty(), circuit)))
            .orElseGet(() -> new Source(WiringSymbol.SUPPLY, WiringText.of(
                powering.orElseThrow().traits().ownSupply().orElseThrow(),
                powering.map(Burden::name), circuit)));
    }

    /** Builds rings from the outside inward. */
    private static final class Builder {
        private final Map<String, LoopElement> elements = new HashMap<>();
        private final Map<String, CircuitState> circuits = new HashMap<>();

        Builder(LoopState state) {
            state.circuits().forEach(c -> circuits.put(c.name(), c));
        }

        void gather(List<LoopElement> list) {
            for (LoopElement element : list) {
                elements.put(element.name(), element);
                if (element instanceof Isolator isolator) {
                    gather(isolator.output().fed());
                }
            }
        }

        WiringRing ring(CircuitState circuit, Optional<Source> source, boolean ownInput) {
            final List<Station> all = circuit.elements().stream().skip(ownInput ? 1 : 0).map(this::station)
                .toList();
            final int isolator = first(all, s -> s.symbol().isIsolator());
            final int transmitter = first(all, s -> s.symbol() == WiringSymbol.TRANSMITTER
                || s.symbol() == WiringSymbol.OWN_SUPPLY_TRANSMITTER);
            if (transmitter < Math.min(isolator, all.size())) {
                return new WiringRing(circuit, source, ownInput, all.subList(0, transmitter),
                    Optional.of(all.get(transmitter)), reversed(all.subList(transmitter + 1, all.size())));
            }
            final int turn = turn(all, isolator);
            return new WiringRing(circuit, source, ownInput, all.subList(0, turn), Optional.empty(),
                reversed(all.subList(turn, all.size())));
        }

        /** How many stations go into the upper wire: about half, and no core out beside its core back. */
        private static int turn(List<Station> all, int isolator) {
            final int back = first(all, s -> s.isCore(ElementState.Part.CORE_BACK));
            final int most = Math.min(Math.min(isolator, back), all.size());
            int least = 0;
            for (int i = 0; i < most; i++) {
                if (all.get(i).isCore(ElementState.Part.CORE_OUT)) {
                    least = i + 1;
                }
            }
            return Math.max(least, Math.min(most, all.size() > 3 ? all.size() / 2 : 0));
        }

        private static int first(List<Station> all, java.util.function.Predicate<Station> what) {
            for (int i = 0; i < all.size(); i++) {
                if (what.test(all.get(i))) {
                    return i;
                }
            }
            return Integer.MAX_VALUE;
        }

        private static List<Station> reversed(List<Station> flow) {
            final List<Station> out = new ArrayList<>(flow);
            Collections.reverse(out);
            return out;
        }

        private Station station(ElementState state) {
            final LoopElement element = elements.get(state.element());
            if (element == null) {
                throw new IllegalArgumentException("the state has an element " + state.element()
                    + " that the loop has not: they do not belong together");
            }
            final Optional<CircuitState> output = element instanceof Isolator
                ? Optional.of(circuits.get("output of " + element.name())) : Optional.empty();
            return new Station(state, WiringSymbol.of(element), WiringText.of(element, state, output),
                output.map(c -> behind((Isolator) element, c)));
        }

        private WiringRing behind(Isolator isolator, CircuitState circuit) {
            final boolean ownInput = isolator.kind() == Isolator.Kind.OUTPUT_LOOP_POWERED;
            return ring(circuit, ownInput ? Optional.of(supply(isolator.output().supply(),
                isolator.output().fed(), circuit)) : Optional.empty(), ownInput);
        }
    }
}
