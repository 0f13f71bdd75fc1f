package spanwright.uncertainty;

/** Sensitivity coefficients known exactly: the partial derivatives of a model. */
@FunctionalInterface
public interface Gradient {
    /**
     * The partial derivatives.
     *
     * @param x one value for each input; not to be changed or kept
     * @return one derivative for each input, in the same order
     */
    double[] at(double[] x);
}
