package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What a receiver reads over the current the transmitter asks for. Short of compliance the reading is right
 * up to a knee and level from there, so that its error falls with slope -1: no span error, and no case for
 * the trim.
 *
 * @param receiver its name
 * @param points   by ascending current asked for
 * @param knee     where it goes level; empty if it does not up to the last point
 */
public record KneeCurve(String receiver, List<Point> points, Optional<LoopReach.End> knee) {
    /**
     * One point.
     *
     * @param askedMilliamps current the transmitter asks for
     * @param readMilliamps  current through the receiver
     */
    public record Point(double askedMilliamps, double readMilliamps) {
        /** Checks the components. */
        public Point {
            Checks.finite("current asked for in mA", askedMilliamps);
            Checks.finite("current read in mA", readMilliamps);
        }

        /** Error in percent of the 16 mA span. */
        public double errorPercentOfSpan() {
            return (readMilliamps - askedMilliamps) / 16 * 100;
        }
    }

    /** Checks the components and copies the list. */
    public KneeCurve {
        Checks.notBlank("receiver", receiver);
        points = List.copyOf(points);
        Objects.requireNonNull(knee, "knee");
    }

    static KneeCurve of(CurrentLoop loop, String receiver, Corner corner) {
        final List<Point> points = new ArrayList<>();
        final double last = loop.transmitter().limits().failHighMilliamps();
        for (int i = 0; i <= 40; i++) {
            point(loop, receiver, corner, 4 + i * 0.4).ifPresent(points::add);
        }
        for (double current : new double[] {20.5, 21, 21.5, 22, 22.5}) {
            if (current <= last) {
                point(loop, receiver, corner, current).ifPresent(points::add);
            }
        }
        final Optional<Point> level = points.stream().filter(p -> p.readMilliamps < p.askedMilliamps - 1e-9)
            .findFirst();
        final Optional<LoopReach.End> knee = level.isEmpty() ? Optional.empty()
            : Optional.of(new LoopReach.End(level.get().readMilliamps, LoopReach.placeBefore(loop, receiver,
                corner),
                "it runs out of voltage; the reading stays level from here"));
        return new KneeCurve(receiver, points, knee);
    }

    private static Optional<Point> point(CurrentLoop loop, String receiver, Corner corner, double current) {
        final LoopState state = loop.at(current, corner);
        return state.isSolved()
            ? Optional.of(new Point(current, state.reading(receiver).milliamps().orElseThrow()))
                : Optional.empty();
    }

    @Override
    public String toString() {
        return knee.map(k -> receiver + " reads right up to " + NumberText.fixed(k.milliamps(), 2) + " mA, "
            + NumberText.fixed(k.percentOfSpan(), 1) + " % of span, and stays level above: " + k.limitedBy()
            + " runs out of voltage. Error 0 to the knee, then falling: this is no span error.")
            .orElse(receiver + " reads right up to "
                + (points.isEmpty() ? "no current at all"
                    : NumberText.plain(points.get(points.size() - 1).askedMilliamps, 4) + " mA") + ".");
    }
}
