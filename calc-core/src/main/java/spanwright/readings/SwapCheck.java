package spanwright.readings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spanwright.quantity.Span;

/**
 * Looks for exchanged columns and exchanged readings where the units cannot tell.
 *
 * <p>Exchanged columns show in two ways only: the numbers follow the characteristic when they are exchanged
 * and do not as they stand (the gain is the reciprocal one), or the outputs stand exactly on the points and
 * the inputs do not. Between two equal ranges with a linear characteristic, where neither column is exactly
 * on the points, nothing in the numbers tells: an error only changes its sign, the correlation is the same
 * both ways, and a coarse input is as often a nominal value as an exchanged display. Then no question is
 * asked.
 */
final class SwapCheck {
    private static final int FEWEST = 5;
    private static final int MOST_SUSPECTS = 20;
    static final double WRONG = 5.0;
    private static final double RIGHT = 2.0;
    private static final double LARGE = 2.0;
    private static final double SMALL = 0.5;

    private SwapCheck() { }

    /**
     * Whether the output stands exactly on the points of the grid and the input does not: the value that was
     * set is written under output. A coarse display of the output alone is no sign of it.
     */
    static boolean onPoints(List<Point> points, BlockHeader header) {
        if (points.size() < FEWEST) {
            return false;
        }
        final boolean finer = points.stream().allMatch(p -> p.indicated().resolution() / header.output()
            .width()
            <= p.applied().resolution() / header.input().width() * 1.0001);
        final long inputs = points.stream().filter(p -> onGrid(p.applied().value(), header.input())
            || onPoint(p, p.applied(), header)).count();
        return finer && 2 * inputs < points.size() && points.stream().allMatch(p ->
            (onGrid(p.indicated().value(), header.output()) || onPoint(p, p.indicated(), header))
            && near(p, header));
    }

    /**
     * Whether the readings miss the characteristic as they stand, and all follow it when the columns are
     * exchanged.
     *
     * @param exchanged the same readings with the columns exchanged
     */
    static boolean reciprocal(List<Point> points, List<Point> exchanged, BlockHeader header) {
        final double asTheyStand = rms(points, header);
        return points.size() >= FEWEST && exchanged.size() == points.size() && asTheyStand > WRONG
            && exchanged.stream().allMatch(p -> Math.abs(error(p, header)) <= RIGHT)
            && asTheyStand > 10 * rms(exchanged, header);
    }

    /** Root mean square of the errors, in percent of span. */
    static double rms(List<Point> points, BlockHeader header) {
        return Math.sqrt(points.stream().mapToDouble(p -> error(p, header)).map(e -> e * e).average()
            .orElse(0));
    }

    private static double error(Point p, BlockHeader h) {
        final double ideal = h.transfer().ideal(h.input(), h.output(), p.applied().value());
        return 100 * (p.indicated().value() - ideal) / h.output().width();
    }

    /** Two readings whose errors are large as they stand and small when they are exchanged. */
    static Optional<int[]> readings(List<Reading> readings, BlockHeader header) {
        final double[] errors = new double[readings.size()];
        final List<Integer> large = new ArrayList<>();
        final double[] others = readings.stream().mapToDouble(r -> Math.abs(error(r, r.indicated(), header)))
            .sorted().toArray();
        if (others.length < FEWEST) {
            return Optional.empty();
        }
        final double usual = others[(others.length - 1) / 2];
        for (int i = 0; i < errors.length; i++) {
            errors[i] = error(readings.get(i), readings.get(i).indicated(), header);
            if (Math.abs(errors[i]) > Math.max(LARGE, 10 * usual)) {
                large.add(i);
            }
        }
        if (large.size() > MOST_SUSPECTS) {
            return Optional.empty();
        }
        final double small = Math.max(SMALL, 3 * usual);
        for (int i : large) {
            for (int j : large) {
                if (i < j && Math.abs(error(readings.get(i), readings.get(j).indicated(), header)) <= small
                    && Math.abs(error(readings.get(j), readings.get(i).indicated(), header)) <= small) {
                    return Optional.of(new int[] {i, j});
                }
            }
        }
        return Optional.empty();
    }

    /** The readings with the indications of two of them exchanged. */
    static List<Reading> exchanged(List<Reading> readings, int i, int j) {
        final Reading[] out = readings.toArray(Reading[]::new);
        out[i] = with(readings.get(i), readings.get(j).indicated());
        out[j] = with(readings.get(j), readings.get(i).indicated());
        return Arrays.asList(out);
    }

    private static Reading with(Reading r, Entry indicated) {
        return new Reading(r.nominalPercent(), r.applied(), indicated, r.direction(), r.cycle(), r.time(),
            r.ambient());
    }

    private static double error(Reading r, Entry indicated, BlockHeader h) {
        final double ideal = h.transfer().ideal(h.input(), h.output(), r.applied().value());
        return 100 * (indicated.value() - ideal) / h.output().width();
    }

    private static boolean near(Point p, BlockHeader h) {
        return Math.abs(error(p, h)) < 10;
    }

    /** Whether a number is what the nominal point stated in its row asks for, to its last digit. */
    private static boolean onPoint(Point p, Entry e, BlockHeader h) {
        if (p.nominalPercent().isEmpty()) {
            return false;
        }
        final double input = h.input().valueAt(p.nominalPercent().getAsDouble());
        final double wanted = e == p.applied() ? input : h.transfer().ideal(h.input(), h.output(), input);
        return Math.abs(e.value() - wanted) < 0.51 * e.resolution();
    }

    private static boolean onGrid(double value, Span range) {
        final double fives = range.percentAt(value) / 5;
        return Math.abs(fives - Math.rint(fives)) < 1e-7;
    }
}
