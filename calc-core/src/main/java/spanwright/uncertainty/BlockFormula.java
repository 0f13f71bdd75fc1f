package spanwright.uncertainty;

/**
 * The same model over many trials at once, for speed: plain loops over arrays, which the compiler turns into
 * vector instructions.
 */
@FunctionalInterface
public interface BlockFormula {
    /**
     * Fills {@code out[0..n)} with the measurand.
     *
     * @param inputs one array for each input, in the order declared; {@code inputs[i][t]} is input i in trial
     *               t. They may be used as scratch space
     * @param out    receives the measurand of each trial
     * @param n      number of trials, at most the length of the arrays
     */
    void evaluate(double[][] inputs, double[] out, int n);
}
