/**
 * Quantities as a loop technician writes them: a range with its unit, a percentage that says of what, a
 * temperature.
 *
 * <p>A bare percentage of error is a defect: 1 % of reading at 20 mA is 1.25 % of the 16 mA span, and at 4 mA
 * it is 0.25 %. So {@link spanwright.quantity.PercentOfSpan}, {@link spanwright.quantity.PercentOfReading}
 * and
 * {@link spanwright.quantity.PercentOfUpperRangeValue} are different types, and only a {@link
 * spanwright.quantity.Span} turns one into another.
 *
 * <p>Valid input is finite. Everything here is immutable.
 */
package spanwright.quantity;
