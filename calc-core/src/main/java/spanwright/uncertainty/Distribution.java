package spanwright.uncertainty;

/**
 * What is known of an input quantity, as a probability distribution (JCGM 101:2008, clause 6). The unit is
 * that of the quantity.
 *
 * <p>The standard uncertainty is the one a GUM budget uses. It is the standard deviation of the
 * distribution, but for
 * {@link ScaledT}: there it is the scale, and the finite number of readings is carried by {@link #dof()}.
 *
 * <p>A width of zero is allowed where a limit may turn out as zero; a negative one never is.
 */
public sealed interface Distribution permits Constant, Normal, ScaledT, Rectangular, Triangular, Trapezoidal,
    CurvilinearTrapezoid, UShaped, LogNormal, Empirical {

    /** Expectation. */
    double mean();

    /** Standard uncertainty (k = 1) for a GUM budget, at least 0. */
    double standardUncertainty();

    /** How well the standard uncertainty is known. */
    default DegreesOfFreedom dof() {
        return DegreesOfFreedom.UNLIMITED;
    }

    /**
     * The value below which the quantity lies with probability p.
     *
     * @param p in the open interval (0, 1)
     * @throws IllegalArgumentException if p is not
     */
    double quantile(double p);

    /** Probability that the quantity is at most x. */
    double cumulative(double x);

    /** The kind, as a budget names it: "rectangular". */
    String kind();

    /** Expectation, standard uncertainty and degrees of freedom together. */
    default Estimate estimate() {
        return new Estimate(mean(), standardUncertainty(), dof());
    }
}
