package spanwright.verdict;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Tolerance of the unit under test over the accuracy of the standard. It leaves out everything else that
 * makes a calibration uncertain, so no rule here accepts it in place of a {@link TestUncertaintyRatio}; it is
 * shown beside that ratio so that the two can be told apart.
 *
 * @param value the ratio, above 0
 */
public record TestAccuracyRatio(double value) {
    /** Checks the component. */
    public TestAccuracyRatio {
        Checks.positive("test accuracy ratio", value);
    }

    /**
     * The ratio of two figures in the same unit.
     *
     * @param tolerance half width of the tolerance, above 0
     * @param accuracy  half width of the standard's accuracy, above 0
     */
    public static TestAccuracyRatio of(double tolerance, double accuracy) {
        Checks.positive("tolerance", tolerance);
        return new TestAccuracyRatio(tolerance / Checks.positive("accuracy of the standard", accuracy));
    }

    @Override
    public String toString() {
        return NumberText.plain(value, 3) + " : 1 (test accuracy ratio, of the standard alone)";
    }
}
