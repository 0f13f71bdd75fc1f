package spanwright.temperature;

import java.util.List;
import java.util.stream.Stream;
import spanwright.error.ChannelAnalysis;
import spanwright.error.PointErrors;
import spanwright.error.ReadingError;
import spanwright.fit.Sample;
import spanwright.quantity.NumberText;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.Reading;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * Zero and span error of one record by the line through its lowest and highest point, percent of span.
 *
 * @param zero  error of that line at the lower range value
 * @param span  its change from the lower to the upper range value
 * @param cells the indications behind both
 */
record EndPoints(Estimate zero, Estimate span, List<CellAddress> cells) {
    /** The points must lie apart by more than this, percent of the output range. */
    private static final double LEAST_DISTANCE = 50;

    static EndPoints of(CalibrationRun run) {
        final List<PointErrors> points = ChannelAnalysis.of(run).points();
        final double distance = points.isEmpty() ? 0
            : points.get(points.size() - 1).expectedPercent() - points.get(0).expectedPercent();
        if (!(distance > LEAST_DISTANCE)) {
            throw new IllegalArgumentException("channel " + run.channel() + ", record at "
                + run.readings().get(0).indicated().cell() + ": the points lie "
                + NumberText.plain(distance, 4) + " % of the output range apart; zero and span need more"
                + " than " + LEAST_DISTANCE + " %");
        }
        final PointErrors low = points.get(0);
        final PointErrors high = points.get(points.size() - 1);
        final Estimate atLow = meanError(run, low);
        final Estimate atHigh = meanError(run, high);
        final double shareOfHigh = -low.expectedPercent() / distance;
        return new EndPoints(combine(1 - shareOfHigh, atLow, shareOfHigh, atHigh),
            combine(-100 / distance, atLow, 100 / distance, atHigh),
            Stream.concat(low.all().stream(), high.all().stream()).map(ReadingError::cell).toList());
    }

    private static Estimate combine(double a, Estimate x, double b, Estimate y) {
        return Estimate.of(a * x.value() + b * y.value(), Math.hypot(a * x.u(), b * y.u()));
    }

    /** Mean error of a point; u from the spread of its readings and, once, from the displayed resolution. */
    private static Estimate meanError(CalibrationRun run, PointErrors point) {
        final Reading first = point.all().get(0).reading();
        final double step = Math.hypot(
            run.output().ofSpan(first.indicated().resolutionUncertainty()).value(),
            run.input().ofSpan(first.applied().resolutionUncertainty()).value());
        final double[] errors = point.all().stream().mapToDouble(e -> e.ofSpan().value()).toArray();
        if (errors.length == 1) {
            return Estimate.of(point.average(), step);
        }
        final Sample sample = Sample.of(errors);
        return new Estimate(point.average(), Math.hypot(sample.sd() / Math.sqrt(sample.count()), step),
            DegreesOfFreedom.of(sample.count() - 1.0));
    }
}
