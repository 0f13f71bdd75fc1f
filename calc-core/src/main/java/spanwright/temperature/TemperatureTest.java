package spanwright.temperature;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.readings.CalibrationRun;

/**
 * A chamber test of one channel: the errors of zero and of span at several temperatures, from calibration
 * records that state the ambient.
 *
 * <p>Zero and span are those of the straight line through the lowest and the highest point of a record (mean
 * of all readings there), as practice takes zero and span from the end points: the zero error is the line's
 * error at the lower range value, the span error its change up to the upper range value.
 *
 * @param zero     error of the zero, percent of span
 * @param span     error of the span, percent of span
 * @param warnings what a reader of the figures should know
 */
public record TemperatureTest(TemperatureSeries zero, TemperatureSeries span, List<String> warnings) {
    /** Checks the components and copies the list. */
    public TemperatureTest {
        Objects.requireNonNull(zero, "zero");
        Objects.requireNonNull(span, "span");
        warnings = List.copyOf(warnings);
    }

    /**
     * A test whose first record was taken at the calibration temperature, as the usual sequence does.
     *
     * @param runs records of one channel in the order of the test, each with its ambient, at two
     *             temperatures or more
     * @throws IllegalArgumentException if there are fewer than two, the channels differ, or an ambient is
     * missing
     */
    public static TemperatureTest of(List<CalibrationRun> runs) {
        Checks.atLeast("number of records of the temperature test", runs.size(), 2);
        return of(runs, ambient(runs.get(0)));
    }

    /**
     * A test with a stated calibration temperature.
     *
     * @param runs      records of one channel in the order of the test, each with its ambient
     * @param reference temperature at calibration; one record must lie within 2 K of it
     * @throws IllegalArgumentException if there are fewer than two, the channels differ, an ambient is
     *     missing, or none was taken at the calibration temperature
     */
    public static TemperatureTest of(List<CalibrationRun> runs, Celsius reference) {
        Checks.atLeast("number of records of the temperature test", runs.size(), 2);
        final Set<String> channels = runs.stream().map(CalibrationRun::channel)
            .collect(Collectors.toCollection(LinkedHashSet::new));
        if (channels.size() > 1) {
            throw new IllegalArgumentException("a temperature test is of one channel, not of " + channels);
        }
        final String channel = runs.get(0).channel();
        final List<ChamberPoint> zeros = new ArrayList<>();
        final List<ChamberPoint> spans = new ArrayList<>();
        for (CalibrationRun run : runs) {
            final Celsius at = ambient(run);
            final EndPoints ends = EndPoints.of(run);
            zeros.add(new ChamberPoint(at, ends.zero(), ends.cells()));
            spans.add(new ChamberPoint(at, ends.span(), ends.cells()));
        }
        final TemperatureSeries zero =
            new TemperatureSeries(channel, TemperatureEffect.ZERO, reference, zeros);
        return new TemperatureTest(zero,
            new TemperatureSeries(channel, TemperatureEffect.SPAN, reference, spans), remarks(zero));
    }

    private static List<String> remarks(TemperatureSeries zero) {
        return zero.nonReturn().isPresent() ? List.of()
            : List.of("the test does not come back to " + zero.reference()
                + ": non-return is not determined");
    }

    /** Coefficients of zero, then of span, by every method. */
    public List<TemperatureCoefficient> coefficients() {
        final List<TemperatureCoefficient> all = new ArrayList<>(zero.coefficients());
        all.addAll(span.coefficients());
        return List.copyOf(all);
    }

    private static Celsius ambient(CalibrationRun run) {
        return run.conditions().ambient().orElseThrow(() -> new IllegalArgumentException("channel "
            + run.channel() + ", record at " + run.readings().get(0).indicated().cell()
            + ": no ambient temperature recorded, so it has no place in a temperature test"));
    }

    @Override
    public String toString() {
        final String lines = coefficients().stream().map(TemperatureCoefficient::toString)
            .collect(Collectors.joining("\n"));
        return lines + "\n" + nonReturnText(zero) + "\n" + nonReturnText(span);
    }

    private static String nonReturnText(TemperatureSeries series) {
        return "non-return of " + series.effect() + ": " + series.nonReturn()
            .map(e -> NumberText.fixed(e.value(), 3) + " % of span").orElse("not determined");
    }
}
