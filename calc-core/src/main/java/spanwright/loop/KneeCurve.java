package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
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
 * @param withoutSolution currents asked for at which there is no steady state, in mA
 */
public record KneeCurve(String receiver, List<Point> points, Optional<LoopReach.End> knee,
                        List<Double> withoutSolution) {
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
        withoutSolution = List.copyOf(withoutSolution);
    }

    static KneeCurve of(CurrentLoop loop, String receiver, Corner corner) {
        final List<Point> points = new ArrayList<>();
        final List<Double> missing = new ArrayList<>();
        for (double current : currents(loop.transmitter().limits().failHighMilliamps())) {
            final LoopState state = loop.at(current, corner);
            if (state.isSolved()) {
                points.add(new Point(current, state.reading(receiver).milliamps().orElseThrow()));
            } else {
                missing.add(current);
            }
        }
        final Optional<Point> level = points.stream().filter(p -> p.readMilliamps < p.askedMilliamps - 1e-9)
            .findFirst();
        final Optional<LoopReach.End> knee = level.isEmpty() ? Optional.empty()
            : Optional.of(
                new LoopReach.End(level.get().readMilliamps, LoopReach.placeBefore(loop, receiver, corner),
                    "it runs out of voltage; the reading stays level from here"));
        return new KneeCurve(receiver, points, knee, missing);
    }

    private static List<Double> currents(double last) {
        return DoubleStream.concat(IntStream.rangeClosed(0, 40).mapToDouble(i -> 4 + i * 0.4),
            DoubleStream.of(20.5, 21, 21.5, 22, 22.5).filter(c -> c <= last)).boxed().toList();
    }

    @Override
    public String toString() {
        return knee.map(k -> receiver + " reads right up to " + NumberText.fixed(k.milliamps(), 2) + " mA, "
            + NumberText.fixed(k.percentOfSpan(), 1) + " % of span, and stays level above: " + k.limitedBy()
            + " runs out of voltage. Error 0 to the knee, then falling: this is no span error.")
            .orElse(receiver + " reads right up to "
                + (points.isEmpty() ? "no current at all"
                        : NumberText.plain(points.get(points.size() - 1).askedMilliamps, 4) + " mA") + ".")
            + (withoutSolution.isEmpty() ? "" : " No steady state at "
                + NumberText.plain(withoutSolution.get(0), 4) + " to " + NumberText.plain(
                    withoutSolution.get(withoutSolution.size() - 1), 4) + " mA.");
    }
}
