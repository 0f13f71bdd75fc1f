package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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

/**
 * Runs for tests, one reading at a time; a reading stands in line n + 1 of run.csv, applied before indicated.
 */
final class Runs {
    private final List<Reading> readings = new ArrayList<>();
    private Span input = Span.milliamps4to20();
    private Span output = Span.milliamps4to20();
    private Transfer transfer = Transfer.LINEAR;
    private Optional<Tolerance> tolerance = Optional.empty();
    private Conditions conditions = Conditions.NOT_RECORDED;
    private String channel = "LT-101A";

    static Runs milliamps() {
        return new Runs();
    }

    /** A 4-20 mA to 4-20 mA run at 0, 25, ... % with errors in percent of span, up and then down. */
    static Runs withErrors(double[] up, double[] down) {
        final Runs runs = new Runs();
        return runs.cycle(1, up, down);
    }

    Runs cycle(int cycle, double[] up, double[] down) {
        for (int i = 0; i < up.length; i++) {
            at(100.0 * i / (up.length - 1), up[i], Direction.UPSCALE, cycle);
        }
        for (int i = down.length - 1; i >= 0; i--) {
            at(100.0 * i / (up.length - 1), down[i], Direction.DOWNSCALE, cycle);
        }
        return this;
    }

    Runs at(double percent, double errorPercent, Direction direction, int cycle) {
        return read(OptionalDouble.of(percent), input.valueAt(percent), transfer.ideal(input, output,
            input.valueAt(percent)) + errorPercent / 100 * output.width(), direction, cycle);
    }

    Runs read(OptionalDouble nominal, double applied, double indicated, Direction direction, int cycle) {
        readings.add(
            new Reading(nominal, entry(applied, 0.001, 2), entry(indicated, 0.001, 3), direction, cycle));
        return this;
    }

    private Entry entry(double value, double resolution, int column) {
        return new Entry(value, resolution, Double.toString(value),
            new CellAddress("run.csv", "", readings.size() + 2, column));
    }

    Runs from(Span newInput) {
        input = newInput;
        return this;
    }

    Runs to(Span newOutput) {
        output = newOutput;
        return this;
    }

    Runs squareRoot() {
        transfer = Transfer.SQUARE_ROOT;
        return this;
    }

    Runs within(Tolerance newTolerance) {
        tolerance = Optional.of(newTolerance);
        return this;
    }

    Runs under(Conditions newConditions) {
        conditions = newConditions;
        return this;
    }

    Runs named(String newChannel) {
        channel = newChannel;
        return this;
    }

    CalibrationRun run() {
        return new CalibrationRun(channel, "", Phase.AS_FOUND, transfer, input, output, tolerance, conditions,
            readings);
    }

    ChannelAnalysis analysis() {
        return ChannelAnalysis.of(run());
    }
}
