/**
 * Measuring chains: from the errors of the elements to a claim about the whole.
 *
 * <p>An {@link spanwright.chain.ChainElement} carries error terms, each with its source and standing; a
 * {@link spanwright.chain.MeasuringChain} puts elements in a row, in an ambient, and says what they have in
 * common: a temperature, a coefficient (same lot, same module), a calibration standard. Its
 * {@link spanwright.chain.MeasuringChain#claim claim} shows four ways of adding side by side: worst case,
 * root sum of squares of the limits, GUM, and Monte Carlo. They differ, and the difference is the point.
 *
 * <p>Temperature terms are kept as coefficient times excursion, two separate quantities, because a product of
 * two quantities that are both zero on average vanishes in first-order propagation (JCGM 100:2008, 5.1.2
 * note).
 *
 * <p>Unless otherwise noted errors are in percent of the output span of the element, and in results of the
 * output span of the chain; inputs are in percent of the range.
 */
package spanwright.chain;
