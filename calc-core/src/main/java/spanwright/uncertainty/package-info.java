/**
 * Uncertainty in the sense of the GUM (JCGM 100:2008) and its Supplement 1 (JCGM 101:2008): estimates with
 * their standard uncertainty and degrees of freedom, distributions of input quantities, budgets, propagation
 * and Monte Carlo.
 *
 * <p>Standard uncertainties are k = 1. An unknown uncertainty is absent, never zero; a constant has u = 0.
 */
package spanwright.uncertainty;
