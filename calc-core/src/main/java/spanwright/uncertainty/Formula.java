package spanwright.uncertainty;

/**
 * A measurement model as ordinary arithmetic: the measurand from the values of the inputs, in the order
 * declared.
 */
@FunctionalInterface
public interface Formula {
    /**
     * The measurand.
     *
     * @param x one value for each input; not to be changed or kept
     */
    double value(double[] x);
}
