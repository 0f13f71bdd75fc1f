package spanwright.temperature;

import java.util.List;
import java.util.stream.Stream;
import spanwright.quantity.Checks;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.Entry;
import spanwright.readings.Reading;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * Zero and span error of one record by the line through its lowest and highest point, percent of span.
 */
record EndPoints(Estimate zero, Estimate span, List<CellAddress> cells) {
    /** Readings this close to the lowest or highest input, percent of the output range, are of that point. */
    private static final double SAME_POINT = 1;

    static EndPoints of(CalibrationRun run) {
        final double low = run.readings().stream().mapToDouble(r -> position(run, r)).min().orElseThrow();
        final double high = run.readings().stream().mapToDouble(r -> position(run, r)).max().orElseThrow();
        if (!(high - low > 50)) {
            throw new IllegalArgumentException("channel " + run.channel() + ": readings from " + low + " to "
                + high + " % of the output range tell no zero and span; more than half of it is needed");
        }
        final List<Reading> lows = near(run, low);
        final List<Reading> highs = near(run, high);
        final Estimate atLow = meanError(run, lows);
        final Estimate atHigh = meanError(run, highs);
        final double pLow = lows.stream().mapToDouble(r -> position(run, r)).average().orElseThrow();
        final double pHigh = highs.stream().mapToDouble(r -> position(run, r)).average().orElseThrow();
        final double width = pHigh - pLow;
        final double zeroFromHigh = -pLow / width;
        final Estimate zero = combine(1 - zeroFromHigh, atLow, zeroFromHigh, atHigh);
        return new EndPoints(zero, combine(-100 / width, atLow, 100 / width, atHigh),
            Stream.concat(lows.stream(), highs.stream())
                .map(r -> r.indicated().cell()).toList());
    }

    private static double position(CalibrationRun run, Reading r) {
        return run.output().percentAt(run.expected(r));
    }

    private static List<Reading> near(CalibrationRun run, double percent) {
        return run.readings().stream()
            .filter(r -> Math.abs(position(run, r) - percent) <= SAME_POINT).toList();
    }

    private static Estimate combine(double a, Estimate x, double b, Estimate y) {
        return Estimate.of(a * x.value() + b * y.value(), Math.hypot(a * x.u(), b * y.u()));
    }

    /**
     * Mean error of the readings at a point; u from their spread and, once, from the displayed resolution.
     */
    private static Estimate meanError(CalibrationRun run, List<Reading> readings) {
        final int n = Checks.atLeast("number of readings at a point", readings.size(), 1);
        final double[] e = readings.stream().mapToDouble(
            r -> run.output().ofSpan(r.indicated().value() - run.expected(r)).value()).toArray();
        double mean = 0;
        for (double v : e) {
            mean += v / n;
        }
        double squares = 0;
        for (double v : e) {
            squares += (v - mean) * (v - mean);
        }
        final Entry indicated = readings.get(0).indicated();
        final Entry applied = readings.get(0).applied();
        final double step = Math.hypot(
            run.output().ofSpan(indicated.resolutionUncertainty()).value(),
            run.input().ofSpan(applied.resolutionUncertainty()).value());
        if (n == 1) {
            return Estimate.of(mean, step);
        }
        final double typeA = Math.sqrt(squares / (n - 1) / n);
        return new Estimate(mean, Math.hypot(typeA, step), DegreesOfFreedom.of(n - 1));
    }
}
