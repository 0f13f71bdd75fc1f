package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import spanwright.error.ChannelAnalysis;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.Conditions;
import spanwright.readings.Direction;
import spanwright.readings.Entry;
import spanwright.readings.Phase;
import spanwright.readings.Reading;
import spanwright.readings.Transfer;

/** Three traverses of a 4-20 mA channel with errors of a given shape; invented, for looking only. */
final class InventedRun {
    private static final int[] POINTS = {0, 25, 50, 75, 100};
    /** A few thousandths of the span, of no shape. */
    private static final double[] SCATTER = {0.002, -0.003, 0.001, -0.001, 0.003, -0.002, 0.001};

    private InventedRun() { }

    /** Errors in percent of span over the place in percent; downscale 0.004 % of span above upscale. */
    static ChannelAnalysis with(DoubleUnaryOperator error, Optional<Tolerance> tolerance) {
        final List<Reading> readings = new ArrayList<>();
        for (int cycle = 1; cycle <= 3; cycle++) {
            for (int p : POINTS) {
                readings.add(reading(p, error.applyAsDouble(p), Direction.UPSCALE, cycle, readings.size()));
            }
            for (int k = POINTS.length - 2; k >= 0; k--) {
                readings.add(reading(POINTS[k], error.applyAsDouble(POINTS[k]) + 0.004, Direction.DOWNSCALE,
                    cycle, readings.size()));
            }
        }
        final Span span = Span.milliamps4to20();
        return ChannelAnalysis.of(new CalibrationRun("LT-102B", "KF-0002", Phase.AS_FOUND, Transfer.LINEAR,
            span, span, tolerance, Conditions.NOT_RECORDED, readings));
    }

    private static Reading reading(int percent, double error, Direction direction, int cycle, int row) {
        final double x = 4 + 0.16 * percent;
        final double y = x + 0.16 * (error + SCATTER[row % SCATTER.length]);
        return new Reading(OptionalDouble.of(percent), entry(x, row, 1), entry(y, row, 2), direction, cycle);
    }

    private static Entry entry(double value, int row, int column) {
        return new Entry(value, 0.001, Double.toString(value),
            new CellAddress("test.csv", "", row + 2, column));
    }
}
