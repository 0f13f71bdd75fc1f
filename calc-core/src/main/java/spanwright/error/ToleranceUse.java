package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.verdict.ToleranceInterval;

/**
 * How much of the record's tolerance the single readings use. This compares figures with limits and no more:
 * whether the channel meets them needs the measurement uncertainty and a rule ({@link MeasurementProcess} and
 * a verdict).
 *
 * @param readings one for each reading within the range
 */
public record ToleranceUse(List<Row> readings) {
    /**
     * One reading against its limits.
     *
     * @param error  the reading's error
     * @param limits what is permitted there, percent of the output span
     * @param share  how far the error has gone from the middle of the limits to the limit: 1 is on it
     */
    public record Row(ReadingError error, ToleranceInterval limits, double share) {
        /** Checks the components. */
        public Row {
            Objects.requireNonNull(error, "error");
            Objects.requireNonNull(limits, "limits");
            Checks.notNegative("share of the tolerance", share);
        }
    }

    /** Checks the component and copies the list. */
    public ToleranceUse {
        readings = List.copyOf(readings);
        Checks.atLeast("number of readings", readings.size(), 1);
    }

    static Finding<ToleranceUse> of(ChannelAnalysis analysis) {
        final List<Row> rows = new ArrayList<>();
        for (ReadingError e : analysis.errorsWithinRange()) {
            final Finding<ToleranceInterval> limits = PermissibleErrors.at(analysis.run(),
                e.expectedPercent());
            if (!limits.isDetermined()) {
                return Finding.notDetermined(limits.reason());
            }
            final double lower = limits.orElseThrow().lower().orElseThrow();
            final double upper = limits.orElseThrow().upper().orElseThrow();
            rows.add(new Row(e, limits.orElseThrow(),
                Math.abs(e.percentOfSpan() - (lower + upper) / 2) / ((upper - lower) / 2)));
        }
        return rows.isEmpty() ? Finding.notDetermined("no reading lies within the range")
            : Finding.of(new ToleranceUse(rows));
    }

    /** The reading that uses most. */
    public Row largest() {
        Row largest = readings.get(0);
        for (Row r : readings) {
            largest = r.share() > largest.share() ? r : largest;
        }
        return largest;
    }

    /** The readings beyond a limit; one exactly on it is not. */
    public List<Row> beyond() {
        // A reading written on the limit comes back a rounding beyond it.
        return readings.stream().filter(r -> r.share() > 1 + 1e-9).toList();
    }

    @Override
    public String toString() {
        final Row r = largest();
        return NumberText.fixed(100 * r.share(), 0) + " % of the tolerance used, at " + r.error() + "; "
            + (beyond().isEmpty() ? "no reading" : beyond().size() + " of " + readings.size() + " readings")
            + " beyond it (measurement uncertainty not counted)";
    }
}
