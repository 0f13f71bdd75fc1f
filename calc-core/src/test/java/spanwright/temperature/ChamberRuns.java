package spanwright.temperature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Celsius;
import spanwright.quantity.Span;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.Conditions;
import spanwright.readings.Direction;
import spanwright.readings.Entry;
import spanwright.readings.Phase;
import spanwright.readings.Reading;
import spanwright.readings.Transfer;

/** Calibration records at stated ambients, for tests. */
public final class ChamberRuns {
    private ChamberRuns() { }

    /** A 4-20 mA record read upscale once at these points (percent), with these errors (percent of span). */
    public static CalibrationRun upscale(double degC, double[] percents, double[] errors) {
        return run(degC, percents, errors, new double[0], 0.001);
    }

    /** The same read down again, from the last error to the first. */
    public static CalibrationRun run(double degC, double[] percents, double[] up, double[] down,
                                     double step) {
        final Span range = Span.milliamps4to20();
        final List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < up.length; i++) {
            readings.add(reading(range, percents[i], up[i], Direction.UPSCALE, step, readings.size()));
        }
        for (int i = down.length - 1; i >= 0; i--) {
            readings.add(reading(range, percents[i], down[i], Direction.DOWNSCALE, step, readings.size()));
        }
        return new CalibrationRun("LT-101A", "", Phase.AS_FOUND, Transfer.LINEAR, range, range,
            Optional.empty(), new Conditions(Optional.of(new Celsius(degC)), OptionalDouble.empty(),
            OptionalDouble.empty()), readings);
    }

    /** The record without its ambient. */
    public static CalibrationRun withoutAmbient(CalibrationRun r) {
        return new CalibrationRun(r.channel(), r.serial(), r.phase(), r.transfer(), r.input(), r.output(),
            r.tolerance(), Conditions.NOT_RECORDED, r.readings());
    }

    private static Reading reading(Span range, double percent, double error, Direction side, double step,
                                   int row) {
        final double applied = range.valueAt(percent);
        return new Reading(OptionalDouble.of(percent), entry(applied, step, row, 2),
            entry(applied + error / 100 * range.width(), step, row, 3), side, 1);
    }

    private static Entry entry(double value, double step, int row, int column) {
        return new Entry(value, step, Double.toString(value),
            new CellAddress("chamber.csv", "", row + 2, column));
    }
}
