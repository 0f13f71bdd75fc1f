package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.fit.CalibrationLine;
import spanwright.fit.Interval;
import spanwright.fit.InverseInterval;
import spanwright.quantity.NumberText;

/**
 * The output that a gain trim leaves where it is, found from a record before and one after a turn.
 *
 * <p>A turn changes the output by {@code (gain - 1)(y - pivot)}: a line over the output that crosses zero at
 * the pivot.
 *
 * @param pivot    output at which the line crosses zero, in the output's unit
 * @param interval 95 % interval of the pivot
 * @param gain     by how much the turn multiplied
 * @param unit     symbol of the output's unit
 */
public record TrimPivot(double pivot, Interval interval, double gain, String unit) {
    private static final double COVERAGE = 0.95;

    /** Checks the components. */
    public TrimPivot {
        Objects.requireNonNull(interval, "interval");
        Objects.requireNonNull(unit, "unit");
    }

    /**
     * Finds the pivot; not determined where fewer than three points were read both times, or where the turn
     * is not told from the scatter.
     *
     * @throws IllegalArgumentException if the records have different output ranges
     */
    public static Finding<TrimPivot> between(ChannelAnalysis before, ChannelAnalysis after) {
        if (!before.run().output().equals(after.run().output())) {
            throw new IllegalArgumentException("the records have different output ranges: "
                + before.run().output() + " and " + after.run().output());
        }
        final List<double[]> pairs = new ArrayList<>();
        for (PointErrors b : before.points()) {
            for (PointErrors a : after.points()) {
                if (Math.abs(a.position() - b.position()) <= 1) {
                    final double y = before.run().output().valueAt(b.expectedPercent() + b.average());
                    pairs.add(new double[] {y, before.run().output()
                        .width() / 100 * (a.average() - b.average())});
                }
            }
        }
        if (pairs.size() < 3) {
            return Finding.notDetermined("a pivot needs three points read before and after the turn; "
                + "there are "
                + pairs.size());
        }
        final CalibrationLine change = CalibrationLine.fit(pairs.stream().mapToDouble(p -> p[0]).toArray(),
            pairs.stream().mapToDouble(p -> p[1]).toArray());
        // The zero crossing of the line itself: its own uncertainty alone, not that of one more reading.
        final InverseInterval crossing = change.crossing(0, COVERAGE);
        if (crossing.interval().isEmpty()) {
            return Finding.notDetermined("the turn is not told from the scatter: " + crossing.reason());
        }
        return Finding.of(new TrimPivot(crossing.stimulus().orElseThrow(), crossing.interval().get(),
            1 + change.slope().value(), before.run().output().symbol()));
    }

    /** Whether the records agree with a trim about the given output. */
    public boolean agreesWith(double output) {
        return interval.contains(output);
    }

    @Override
    public String toString() {
        return "pivot " + NumberText.fixed(pivot, 2) + " " + unit + ", 95 % interval " + interval + "; gain "
            + NumberText.significant(gain, 6);
    }
}
