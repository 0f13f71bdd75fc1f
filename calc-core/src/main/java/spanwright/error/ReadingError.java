package spanwright.error;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfReading;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.PercentOfUpperRangeValue;
import spanwright.quantity.Span;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.Direction;
import spanwright.readings.Reading;

/**
 * The error of one reading: indicated minus the output that the specified characteristic gives for the input
 * actually applied.
 *
 * @param reading  the reading
 * @param output   range of the output
 * @param position where the reading belongs on the scale, in percent of the input span: the nominal point
 *                 where the record states one, else the applied input
 * @param expected output for the applied input, in the output's unit
 * @param error    indicated minus expected, in the output's unit
 */
public record ReadingError(Reading reading, Span output, double position, double expected, double error) {
    /** Checks the components. */
    public ReadingError {
        Objects.requireNonNull(reading, "reading");
        Objects.requireNonNull(output, "output");
        Checks.finite("position", position);
        Checks.finite("expected output", expected);
        Checks.finite("error", error);
    }

    /** The error of a reading of a run. */
    public static ReadingError of(CalibrationRun run, Reading reading) {
        final double expected = run.expected(reading);
        return new ReadingError(reading, run.output(),
            reading.nominalPercent().orElseGet(() -> run.input().percentAt(reading.applied().value())),
            expected, reading.indicated().value() - expected);
    }

    /** The error in percent of the output span. */
    public PercentOfSpan ofSpan() {
        return output.ofSpan(error);
    }

    /** The figure of {@link #ofSpan}. */
    double percentOfSpan() {
        return ofSpan().value();
    }

    /** The error in percent of the expected output; not determined where that is zero. */
    public Finding<PercentOfReading> ofReading() {
        return expected == 0
            ? Finding.notDetermined("percent of reading has no meaning at 0 " + output.symbol())
            : Finding.of(output.toPercentOfReading(ofSpan(), expected));
    }

    /**
     * The error in percent of the upper range value of the output; for 4-20 mA four fifths of the figure in
     * percent of span. Not determined where that value is zero.
     */
    public Finding<PercentOfUpperRangeValue> ofUpperRangeValue() {
        return output.upper() == 0
            ? Finding.notDetermined("percent of upper range value has no meaning where that is 0 "
            + output.symbol())
            : Finding.of(new PercentOfUpperRangeValue(100 * error / Math.abs(output.upper())));
    }

    /** Where the expected output lies, in percent of the output span. */
    public double expectedPercent() {
        return output.percentAt(expected);
    }

    /** From which side the point was approached. */
    public Direction direction() {
        return reading.direction();
    }

    /** Number of the traverse. */
    public int cycle() {
        return reading.cycle();
    }

    /** The cell of the record that holds the indication. */
    public CellAddress cell() {
        return reading.indicated().cell();
    }

    @Override
    public String toString() {
        return NumberText.plain(position, 4) + " % " + direction() + ", cycle " + cycle() + ": "
            + NumberText.signed(percentOfSpan(), 4) + " % of span (" + cell() + ")";
    }
}
