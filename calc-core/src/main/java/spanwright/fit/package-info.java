/**
 * Lines and curves through calibration readings.
 *
 * <p>Two kinds that must not be confused. A <em>fitted</em> line or curve ({@link
 * spanwright.fit.CalibrationLine}) comes from least squares and carries standard uncertainties; it serves to
 * correct and to predict. A <em>reference</em> line ({@link spanwright.fit.ReferenceLine}: independent,
 * zero-based, terminal-based, absolute) is exact, carries no uncertainty, and serves to state how far a
 * characteristic departs from straightness.
 *
 * <p>Valid input is finite; x must take at least two different values. What cannot be fitted is refused with
 * the reason, as {@link java.lang.IllegalArgumentException} where an argument is at fault and as
 * {@link spanwright.fit.NoFitException} where the data have no solution. Everything here is immutable.
 */
package spanwright.fit;
