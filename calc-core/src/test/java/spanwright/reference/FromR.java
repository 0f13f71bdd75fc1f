package spanwright.reference;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Span;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.Conditions;
import spanwright.readings.Direction;
import spanwright.readings.Entry;
import spanwright.readings.Phase;
import spanwright.readings.Reading;
import spanwright.readings.Transfer;

/** What test-data/published/r_statistics.R found, and the run it made. */
public final class FromR {
    private FromR() { }

    /** The value that R found for a case. */
    public static double value(String name, String what) {
        return PublishedData.load("r_statistics").rows().stream()
            .filter(r -> r.get(0).equals(name) && r.get(1).equals(what))
            .mapToDouble(r -> Double.parseDouble(r.get(2))).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("r_statistics has no " + name + " " + what));
    }

    /** The run of r_run_data.csv on a 4-20 mA channel. */
    public static CalibrationRun run() {
        final Span span = Span.milliamps4to20();
        final List<Reading> readings = new ArrayList<>();
        for (List<String> r : PublishedData.load("r_run_data").rows()) {
            final double percent = Double.parseDouble(r.get(0));
            final double applied = span.valueAt(percent);
            final double indicated = applied + Double.parseDouble(r.get(3)) / 100 * span.width();
            readings.add(new Reading(OptionalDouble.of(percent), entry(applied, readings.size() + 2, 2),
                entry(indicated, readings.size() + 2, 3), r.get(1).equals("up") ? Direction.UPSCALE
                    : Direction.DOWNSCALE, Integer.parseInt(r.get(2))));
        }
        return new CalibrationRun("LT-101A", "", Phase.AS_FOUND, Transfer.LINEAR, span, span,
            Optional.empty(), Conditions.NOT_RECORDED, readings);
    }

    private static Entry entry(double value, int row, int column) {
        return new Entry(value, 0.0001, Double.toString(value), new CellAddress("run.csv", "", row, column));
    }
}
