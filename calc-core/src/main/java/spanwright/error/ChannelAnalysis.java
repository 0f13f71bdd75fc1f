package spanwright.error;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spanwright.fit.CalibrationLine;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Direction;

/**
 * The analysis of one calibration run of one channel: errors and the metrics made from them, in percent of
 * the output span, in the manner of IEC 61298-2 and ISA-51.1.
 *
 * <p>Readings belong to one point when they have the same nominal point; where a reading has none, when they
 * were applied within 1 % of the input span of the next one. Readings more than 1 % of the span outside the
 * range (over-range, clamped) take no part in the metrics and are listed apart.
 *
 * @param run          the run
 * @param points       the points within the range, from the lowest
 * @param outsideRange the points outside the range
 */
public record ChannelAnalysis(CalibrationRun run, List<PointErrors> points, List<PointErrors> outsideRange) {
    private static final double SAME_POINT_PERCENT = 1;
    private static final double BEYOND_RANGE_PERCENT = 1;

    /** Checks the components and copies the lists. */
    public ChannelAnalysis {
        Objects.requireNonNull(run, "run");
        points = List.copyOf(points);
        outsideRange = List.copyOf(outsideRange);
    }

    /** The analysis of a run. */
    public static ChannelAnalysis of(CalibrationRun run) {
        final List<PointErrors> points = grouped(
            run.readings().stream().map(r -> ReadingError.of(run, r)).toList());
        return new ChannelAnalysis(run, points.stream().filter(ChannelAnalysis::isWithinRange).toList(),
            points.stream().filter(p -> !isWithinRange(p)).toList());
    }

    /** The error of every reading, in the order of the record, with those outside the range. */
    public List<ReadingError> errors() {
        return run.readings().stream().map(r -> ReadingError.of(run, r)).toList();
    }

    /** The errors of the readings within the range, point by point from the lowest. */
    public List<ReadingError> errorsWithinRange() {
        return points.stream().flatMap(p -> p.all().stream()).toList();
    }

    /**
     * Inaccuracy (IEC 61298-2), measured accuracy (ISA-51.1): the largest positive and negative error of any
     * single reading, over all cycles and both directions.
     */
    public Finding<SignedPair> inaccuracy() {
        return pair(errorsWithinRange().stream().map(e ->
            new Extreme(e.ofSpan(), e.position(), e.direction(), List.of(e.cell()))).toList());
    }

    /**
     * Measured error (IEC 61298-2): as the inaccuracy, but of the mean upscale and the mean downscale reading
     * at each point, so never beyond it.
     */
    public Finding<SignedPair> measuredError() {
        return pair(points.stream().flatMap(p -> Stream.of(Direction.values())
            .filter(d -> !p.in(d).isEmpty())
            .map(d -> new Extreme(new PercentOfSpan(p.mean(d).orElseThrow()), p.position(), d,
                PointErrors.cells(p.in(d))))).toList());
    }

    /** Error at the lower range value. */
    public Shift zeroShift() {
        return new Shift("zero shift", end(0).map(p -> new PercentOfSpan(p.average())),
            errorLine().map(line -> line.at(0)));
    }

    /**
     * Change of the error from the lower to the upper range value: by how much the output span is too wide.
     */
    public Shift spanShift() {
        final Finding<PointErrors> lower = end(0);
        return new Shift("span shift", lower.isDetermined()
            ? end(100).map(p -> new PercentOfSpan(p.average() - lower.orElseThrow().average()))
            : lower.map(p -> new PercentOfSpan(p.average())),
            errorLine().map(line -> line.slope().times(100)));
    }

    /** Hysteresis, dead band included. */
    public Finding<Hysteresis> hysteresis() {
        return Hysteresis.of(points);
    }

    /**
     * Non-repeatability (IEC), repeatability (ISA): spread at one point from the same side over the cycles.
     */
    public Finding<NonRepeatability> nonRepeatability() {
        return NonRepeatability.of(points, run.cycles());
    }

    /** Departure from straightness against the four reference lines, with least squares beside them. */
    public Finding<NonLinearity> nonLinearity() {
        return NonLinearity.of(points, notes());
    }

    /** Dead band: an ordinary record does not tell. */
    public Finding<PercentOfSpan> deadBand() {
        return Finding.notDetermined(
            "a dead band needs small reversals of the input at some points, which a traverse does not have");
    }

    /**
     * Least-squares line through the errors of all readings within the range, both in percent of the output
     * span: the error against the expected output.
     */
    public Finding<CalibrationLine> errorLine() {
        final List<ReadingError> errors = errorsWithinRange();
        final double[] x = errors.stream().mapToDouble(ReadingError::expectedPercent).toArray();
        final double[] y = errors.stream().mapToDouble(ReadingError::percentOfSpan).toArray();
        if (x.length < 3 || Arrays.stream(x).distinct().count() < 2) {
            return Finding.notDetermined("a least-squares line needs three readings at two points; there are "
                + x.length + " readings at " + points.size() + " points within the range");
        }
        return Finding.of(CalibrationLine.fit(x, y)
            .named("expected output (% of span)", "error (% of span)"));
    }

    /**
     * How much of the record's tolerance the readings use; not determined where it states none with its
     * basis.
     */
    public Finding<ToleranceUse> toleranceUse() {
        return ToleranceUse.of(this);
    }

    /** Lack of fit, sources of scatter, suspects. */
    public RunStatistics statistics() {
        return RunStatistics.of(this);
    }

    /** What the shape of the errors speaks for. */
    public Finding<Diagnosis> diagnosis() {
        return Diagnosis.of(this);
    }

    /** What a reader of the metrics must know: points read from one side only, readings left out. */
    public List<String> notes() {
        final List<String> notes = new ArrayList<>();
        final String oneSided = points.stream().filter(p -> !p.hasBothDirections())
            .map(p -> NumberText.plain(p.position(), 4) + " %").collect(Collectors.joining(", "));
        if (!oneSided.isEmpty()) {
            notes.add("read from one side only: " + oneSided);
        }
        outsideRange.forEach(p -> notes.add("outside the range and left out: " + p.all().size()
            + " readings at " + NumberText.plain(p.position(), 4) + " % ("
            + PointErrors.cells(p.all()).get(0) + ")"));
        if (!points.isEmpty() && !(end(0).isDetermined() && end(100).isDetermined())) {
            notes.add("the points run from " + NumberText.plain(points.get(0).position(), 4) + " % to "
                + NumberText.plain(points.get(points.size() - 1).position(), 4) + " % of the range");
        }
        return List.copyOf(notes);
    }

    private Finding<PointErrors> end(double percent) {
        final Optional<PointErrors> at = points.stream()
            .filter(p -> Math.abs(p.position() - percent) <= SAME_POINT_PERCENT).findFirst();
        return at.map(Finding::of).orElseGet(() -> Finding.notDetermined(
            "there is no reading at " + NumberText.plain(percent, 4) + " % of the range"));
    }

    private Finding<SignedPair> pair(List<Extreme> deviations) {
        return deviations.isEmpty() ? Finding.notDetermined("no reading lies within the range")
            : Finding.of(SignedPair.of(deviations));
    }

    private static boolean isWithinRange(PointErrors p) {
        return p.position() >= -BEYOND_RANGE_PERCENT && p.position() <= 100 + BEYOND_RANGE_PERCENT;
    }

    private static List<PointErrors> grouped(List<ReadingError> errors) {
        final List<ReadingError> sorted = errors.stream()
            .sorted(Comparator.comparingDouble(ReadingError::position)).toList();
        final List<PointErrors> points = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= sorted.size(); i++) {
            if (i == sorted.size() || !isSamePoint(sorted.get(i - 1), sorted.get(i))) {
                points.add(point(sorted.subList(from, i)));
                from = i;
            }
        }
        return points;
    }

    private static boolean isSamePoint(ReadingError a, ReadingError b) {
        final boolean bothNominal = a.reading().nominalPercent().isPresent()
            && b.reading().nominalPercent().isPresent();
        return bothNominal ? a.position() == b.position() : b.position() - a.position() <= SAME_POINT_PERCENT;
    }

    private static PointErrors point(List<ReadingError> errors) {
        return new PointErrors(errors.stream().mapToDouble(ReadingError::position).average().orElseThrow(),
            errors.stream().filter(e -> e.direction() == Direction.UPSCALE).toList(),
            errors.stream().filter(e -> e.direction() == Direction.DOWNSCALE).toList());
    }

    @Override
    public String toString() {
        return String.join("\n", "channel " + run.channel() + ", " + run.phase() + ", " + run.cycles()
                + (run.cycles() == 1 ? " cycle" : " cycles"),
            points.stream().map(PointErrors::toString).collect(Collectors.joining("\n")),
            "inaccuracy: " + inaccuracy(), "measured error: " + measuredError(), zeroShift().toString(),
            spanShift().toString(), "hysteresis: " + hysteresis(), "non-repeatability: " + nonRepeatability(),
            "non-linearity: " + nonLinearity(), "dead band: " + deadBand(), "tolerance: " + toleranceUse())
            + notes().stream().map(n -> "\nnote: " + n).collect(Collectors.joining());
    }
}
