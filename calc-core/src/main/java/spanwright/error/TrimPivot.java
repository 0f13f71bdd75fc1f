package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.fit.CalibrationLine;
import spanwright.fit.Interval;
import spanwright.fit.InverseInterval;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The output that a gain trim leaves where it is, found from a record before and one after a turn.
 *
 * <p>A turn changes the output by {@code (gain - 1)(y - pivot)}: a line over the output that crosses zero at
 * the pivot.
 *
 * @param channel  the channel
 * @param pivot    output at which the line crosses zero, in the output's unit
 * @param interval 95 % interval of the pivot
 * @param line     the change against the output before, both in the output's unit
 * @param changes  what the line was fitted to, from the lowest output
 * @param unit     symbol of the output's unit
 */
public record TrimPivot(String channel, double pivot, Interval interval, CalibrationLine line,
                        List<Change> changes, String unit) {
    private static final double COVERAGE = 0.95;

    /**
     * What the turn did at one point, in the output's unit.
     *
     * @param output average output before the turn, for the nominal input
     * @param change by how much the turn moved it
     */
    public record Change(double output, double change) {
        /** Checks the components. */
        public Change {
            Checks.finite("output", output);
            Checks.finite("change", change);
        }
    }

    /** Checks the components and copies the list. */
    public TrimPivot {
        Checks.notBlank("channel", channel);
        Checks.finite("pivot", pivot);
        Objects.requireNonNull(interval, "interval");
        Objects.requireNonNull(line, "line");
        changes = List.copyOf(changes);
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
        final List<Change> pairs = new ArrayList<>();
        for (PointErrors b : before.points()) {
            for (PointErrors a : after.points()) {
                if (Math.abs(a.position() - b.position()) <= 1) {
                    final double y = before.run().output().valueAt(b.expectedPercent() + b.average());
                    pairs.add(new Change(y, before.run().output()
                        .width() / 100 * (a.average() - b.average())));
                }
            }
        }
        if (pairs.size() < 3) {
            return Finding.notDetermined("a pivot needs three points read before and after the turn; "
                + "there are "
                + pairs.size());
        }
        final CalibrationLine change = CalibrationLine.fit(
            pairs.stream().mapToDouble(Change::output).toArray(),
            pairs.stream().mapToDouble(Change::change).toArray());
        // The zero crossing of the line itself: its own uncertainty alone, not that of one more reading.
        final InverseInterval crossing = change.crossing(0, COVERAGE);
        if (crossing.interval().isEmpty()) {
            return Finding.notDetermined("the turn is not told from the scatter: " + crossing.reason());
        }
        return Finding.of(new TrimPivot(before.run().channel(), crossing.stimulus().orElseThrow(),
            crossing.interval().get(), change, pairs, before.run().output().symbol()));
    }

    /** By how much the turn multiplied. */
    public double gain() {
        return 1 + line.slope().value();
    }

    /** Whether the records agree with a trim about the given output. */
    public boolean agreesWith(double output) {
        return interval.contains(output);
    }

    @Override
    public String toString() {
        return "pivot " + NumberText.fixed(pivot, 2) + " " + unit + ", 95 % interval " + interval + "; gain "
            + NumberText.significant(gain(), 6);
    }
}
