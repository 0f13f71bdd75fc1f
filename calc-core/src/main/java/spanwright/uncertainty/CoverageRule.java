package spanwright.uncertainty;

/** How the coverage factor of an expanded uncertainty is found. */
public enum CoverageRule {
    /**
     * By the shape that dominates, in the manner of EA-4/02: one rectangular input, or two, against which the
     * rest stays within 0.3, make the measurand rectangular or trapezoidal; otherwise as {@link #STUDENT}.
     */
    BY_DOMINANCE,
    /**
     * From Student's t at the effective degrees of freedom (JCGM 100:2008, G.6.4), whatever the inputs'
     * shapes.
     */
    STUDENT
}
