package spanwright.readings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Finds readings where the output no longer follows the input. Beyond the range that is a clamp, as it must
 * be (in the manner of NAMUR NE 43 signals stay within 3.8 to 20.5 mA); within the range it is an error of
 * the channel, such as a loop whose supply does not suffice.
 */
final class ClampCheck {
    /** Percent of span: beyond the range, and the error that shows a clamp. */
    private static final double MARGIN = 1.0;

    private final BlockHeader header;
    private final List<RecordFinding> findings;
    private final String channel;

    ClampCheck(BlockHeader header, String channel, List<RecordFinding> findings) {
        this.header = header;
        this.channel = channel;
        this.findings = findings;
    }

    /** Readings beyond the range whose output stands at a clamp. */
    List<Reading> clamped(List<Reading> readings) {
        final List<Reading> out = new ArrayList<>();
        for (Reading r : readings) {
            final double percent = header.input().percentAt(r.applied().value());
            if ((percent > 100 + MARGIN || percent < -MARGIN) && Math.abs(error(r)) > MARGIN) {
                out.add(r);
            }
        }
        if (!out.isEmpty()) {
            flag(out, "applied beyond the range, and the output stands at a clamp: not part of errors or"
                + " linearity, kept for diagnosis");
        }
        return out;
    }

    /** Readings at one end of the range where the output stays the same while the input goes on. */
    List<Reading> plateau(List<Reading> readings) {
        final List<Reading> rising = readings.stream().sorted(Comparator.comparingDouble(r ->
            r.applied().value())).collect(Collectors.toCollection(ArrayList::new));
        final List<Reading> out = new ArrayList<>(end(rising));
        java.util.Collections.reverse(rising);
        out.addAll(end(rising));
        if (!out.isEmpty()) {
            flag(out, "the output stays the same while the input goes on: kept as errors, no measure of"
                + " linearity");
        }
        return out;
    }

    /** The last readings of a sorted list that share their output, if they span more than one point. */
    private List<Reading> end(List<Reading> sorted) {
        final List<Reading> same = new ArrayList<>();
        final Reading last = sorted.get(sorted.size() - 1);
        for (int i = sorted.size() - 1; i >= 0; i--) {
            final Reading r = sorted.get(i);
            if (Math.abs(r.indicated().value() - last.indicated().value()) > 2.01 * r.indicated()
                .resolution()) {
                break;
            }
            same.add(r);
        }
        final double width = Math.abs(last.applied().value() - same.get(same.size() - 1).applied().value());
        final boolean severalPoints = same.size() > 1 && same.size() < sorted.size()
            && 100 * width / header.input().width() > 2 * MARGIN;
        return severalPoints && Math.abs(error(last)) > MARGIN ? same : List.of();
    }

    private double error(Reading r) {
        final double ideal = header.transfer().ideal(header.input(), header.output(), r.applied().value());
        return 100 * (r.indicated().value() - ideal) / header.output().width();
    }

    private void flag(List<Reading> readings, String says) {
        final Entry first = readings.get(0).indicated();
        findings.add(RecordFinding.of(Fault.CLAMPED, first.cell(), first.written(), readings.size()
            + " readings: "
            + says).inChannel(channel));
    }
}
