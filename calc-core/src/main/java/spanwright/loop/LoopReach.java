package spanwright.loop;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * How far down and up the current of a loop can go, and what limits it at either end.
 *
 * @param loop   its name
 * @param corner which limits of the parameters count; the low end asks for the opposite corner of voltage
 * @param low    lowest current; empty if the loop carries none
 * @param high   largest current; empty if the loop carries none
 */
public record LoopReach(String loop, Corner corner, Optional<End> low, Optional<End> high) {
    /**
     * An end.
     *
     * @param milliamps the current, in mA
     * @param limitedBy the device that limits it
     * @param because   why, in words
     */
    public record End(double milliamps, String limitedBy, String because) {
        /** Checks the components. */
        public End {
            Checks.finite("current in mA", milliamps);
            Checks.notBlank("limiting device", limitedBy);
            Checks.notBlank("reason", because);
        }

        /** Where it lies in the span of 4 to 20 mA, in percent of span. */
        public double percentOfSpan() {
            return (milliamps - 4) / 16 * 100;
        }

        @Override
        public String toString() {
            return NumberText.fixed(milliamps, 2) + " mA (" + NumberText.fixed(percentOfSpan(), 1)
                + " % of span), limited by " + limitedBy + ": " + because;
        }
    }

    /** Checks the components. */
    public LoopReach {
        Checks.notBlank("name of the loop", loop);
        Objects.requireNonNull(corner, "corner");
        Objects.requireNonNull(low, "low");
        Objects.requireNonNull(high, "high");
    }

    static LoopReach of(CurrentLoop loop, Corner corner) {
        final Pick pick = Pick.of(corner);
        final List<Circuit.Headroom> places = loop.circuit().all().flatMap(c -> c.headrooms(pick)).toList();
        final Transmitter transmitter = loop.transmitter();
        double high = transmitter.limits().failHighMilliamps();
        Circuit.Headroom tight = null;
        for (Circuit.Headroom place : places) {
            final OptionalDouble reach = place.margin().largestNotNegative(high);
            if (reach.isEmpty()) {
                return new LoopReach(loop.name(), corner, Optional.empty(), Optional.empty());
            }
            if (reach.getAsDouble() < high) {
                high = reach.getAsDouble();
                tight = place;
            }
        }
        return new LoopReach(loop.name(), corner, Optional.of(low(loop, corner, places, high)),
            Optional.of(high(transmitter, tight, high, pick)));
    }

    private static End high(Transmitter transmitter, Circuit.Headroom tight, double high, Pick pick) {
        if (tight == null) {
            return new End(high, transmitter.name(), "it gives no more than its upscale failure current");
        }
        final Circuit circuit = tight.circuit();
        final List<LoopElement> takers = tight.at().equals(circuit.driver().name())
            ? circuit.ring().stream().filter(e -> e != circuit.driver()).toList()
            : circuit.isolators().filter(i -> i.name().equals(tight.at())).findFirst().orElseThrow()
                .output().fed();
        final Optional<LoopElement> most = takers.stream()
            .max(Comparator.comparingDouble(e -> Drops.of(e, pick).at(high)));
        final String what = circuit.isActive() ? " has no more voltage to give"
            : tight.at().equals(circuit.driver().name()) ? " has only its lift-off voltage left"
            : " is at the limit of its output voltage";
        return new End(high, tight.at(), tight.at() + what + most.map(m -> "; the most is taken by "
            + m.name() + ", "
            + NumberText.fixed(Drops.of(m, pick).at(high), 2) + " V").orElse(""));
    }

    private static End low(CurrentLoop loop, Corner corner, List<Circuit.Headroom> places, double high) {
        double low = loop.transmitter().limits().failLowMilliamps();
        String by = loop.transmitter().name();
        String because = "it gives no less than its downscale failure current";
        for (Circuit.Headroom place : places) {
            final double connected = place.margin().lowestConnected(high);
            if (connected > low) {
                low = connected;
                by = place.at();
                because = "below this it needs more voltage than there is";
            }
        }
        final Circuit circuit = loop.circuit();
        final OptionalDouble maximum = loop.transmitter().limits().maximumVolts();
        if (maximum.isPresent() && !circuit.isActive()) {
            final Pick most = Pick.of(corner == Corner.NOMINAL ? Corner.NOMINAL : Corner.MOST_VOLTAGE);
            final PiecewiseLine spare = PiecewiseLine.line(maximum.getAsDouble(), 0)
                .minus(circuit.available(most).minus(circuit.burden(most)));
            if (spare.at(high) < 0) {
                return new End(high, loop.transmitter().name(), "even at this current it has "
                    + NumberText.fixed(maximum.getAsDouble() - spare.at(high), 2)
                        + " V across it, more than its "
                    + NumberText.plain(maximum.getAsDouble(), 5) + " V");
            }
            final double allowed = spare.lowestConnected(high);
            if (allowed > low) {
                low = allowed;
                by = loop.transmitter().name();
                because = "below this more than its maximum of " + NumberText.plain(maximum.getAsDouble(), 5)
                    + " V is across it";
            }
        }
        return new End(low, by, because);
    }

    /** The device that first runs out of voltage on the way to a receiver. */
    static String placeBefore(CurrentLoop loop, String receiver, Corner corner) {
        final Pick pick = Pick.of(corner);
        final double end = loop.transmitter().limits().failHighMilliamps();
        return loop.circuit().all().flatMap(c -> c.headrooms(pick))
            .filter(h -> h.at().equals(loop.transmitter().name()) || isBehind(h, receiver))
            .min(Comparator.comparingDouble(h -> h.margin().largestNotNegative(end).orElse(0)))
            .orElseThrow().at();
    }

    private static boolean isBehind(Circuit.Headroom place, String receiver) {
        final Circuit circuit = place.circuit();
        return place.at().equals(circuit.driver().name())
            ? Pairing.all(circuit.ring()).anyMatch(e -> e.name().equals(receiver))
            : circuit.isolators().filter(i -> i.name().equals(place.at())).flatMap(Isolator::behind)
                .anyMatch(e -> e.name().equals(receiver));
    }

    /** Whether the loop carries every current between two, both included. */
    public boolean covers(double fromMilliamps, double toMilliamps) {
        return high.isPresent() && low.isPresent() && low.get().milliamps() <= fromMilliamps
            && high.get().milliamps() >= toMilliamps;
    }

    @Override
    public String toString() {
        return high.isEmpty() || low.isEmpty() ? loop + " carries no current at all (" + corner + ")"
            : loop + " (" + corner + "): up to " + high.get() + "; down to " + low.get();
    }
}
