package spanwright.quantity;

import java.util.Objects;
import javax.measure.Unit;

/**
 * A calibrated range: from the lower to the upper range value, in one unit. Its width is the span (in the
 * manner of IEC 61298-2 and ISA-51.1) that percentages of span refer to: 16 mA for 4-20 mA.
 *
 * <p>Unless otherwise noted, arguments and results are in {@link #unit()}.
 *
 * @param lower lower range value
 * @param upper upper range value, above {@code lower}
 * @param unit  unit of both
 */
public record Span(double lower, double upper, Unit<?> unit) {
    /** Checks the components. */
    public Span {
        Checks.finite("lower range value", lower);
        Checks.finite("upper range value", upper);
        Objects.requireNonNull(unit, "unit");
        if (!(upper > lower)) {
            throw new IllegalArgumentException(
                "upper range value " + upper + " must be above lower range value " + lower);
        }
        Checks.finite("width of the span", upper - lower);
    }

    /**
     * The range from lower to upper in a unit given by its symbol, for example {@code Span.of(0, 8, "m")}.
     *
     * @throws IllegalArgumentException if the unit is not known or the range is empty
     */
    public static Span of(double lower, double upper, String unit) {
        return new Span(lower, upper, UnitSymbols.parse(unit));
    }

    /** The usual current signal, 4 mA to 20 mA (in the manner of IEC 60381-1). */
    public static Span milliamps4to20() {
        return of(4, 20, "mA");
    }

    /** Upper minus lower range value. */
    public double width() {
        return upper - lower;
    }

    /** Where a value lies in the range, in percent of span: 0 at the lower, 100 at the upper range value. */
    public double percentAt(double value) {
        return 100 * (value - lower) / width();
    }

    /** The value at a percentage of the range; the inverse of {@link #percentAt}. */
    public double valueAt(double percent) {
        return lower + percent / 100 * width();
    }

    /** A difference (an error, a tolerance) in percent of span. */
    public PercentOfSpan ofSpan(double difference) {
        return new PercentOfSpan(100 * difference / width());
    }

    /** A difference, stated in percent of span, in the unit of the range. */
    public double difference(PercentOfSpan percent) {
        return percent.value() / 100 * width();
    }

    /** A difference, stated in percent of reading, in the unit of the range, at the given reading. */
    public double difference(PercentOfReading percent, double reading) {
        return percent.value() / 100 * reading;
    }

    /** A difference, stated in percent of the upper range value, in the unit of the range. */
    public double difference(PercentOfUpperRangeValue percent) {
        return percent.value() / 100 * upper;
    }

    /**
     * Percent of reading as percent of span at a reading. For 4-20 mA the factor is 1.25 at 20 mA and 0.25
     * at 4 mA.
     */
    public PercentOfSpan toPercentOfSpan(PercentOfReading percent, double reading) {
        return ofSpan(difference(percent, reading));
    }

    /** Percent of the upper range value as percent of span; for 4-20 mA the factor is 1.25. */
    public PercentOfSpan toPercentOfSpan(PercentOfUpperRangeValue percent) {
        return ofSpan(difference(percent));
    }

    /**
     * Percent of span as percent of reading.
     *
     * @throws IllegalArgumentException if the reading is zero
     */
    public PercentOfReading toPercentOfReading(PercentOfSpan percent, double reading) {
        if (reading == 0) {
            throw new IllegalArgumentException(
                "percent of reading is not defined at a reading of 0 " + symbol());
        }
        return new PercentOfReading(100 * difference(percent) / reading);
    }

    /** The symbol of the unit. */
    public String symbol() {
        return UnitSymbols.symbol(unit);
    }

    @Override
    public String toString() {
        return NumberText.plain(lower, 6) + " to " + NumberText.plain(upper, 6) + " " + symbol();
    }
}
