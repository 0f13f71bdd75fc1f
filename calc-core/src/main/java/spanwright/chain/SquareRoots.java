package spanwright.chain;

import java.util.ArrayList;
import java.util.List;
import spanwright.quantity.NumberText;
import spanwright.readings.Transfer;

/** Where a square root makes the error depend on the signal more than its slope tells. */
final class SquareRoots {
    /** Difference between the root and its slope that is worth a warning, as a share of the error. */
    private static final double WORTH_SAYING = 0.1;

    private SquareRoots() { }

    /**
     * Warnings for a chain with a square root.
     *
     * @param lowestInput where the figures begin, percent
     * @param largest     largest error of the chain, percent of its output span
     */
    static List<String> warnings(MeasuringChain chain, double lowestInput, double largest) {
        final List<String> warnings = new ArrayList<>();
        for (ChainElement e : chain.elements()) {
            if (e.transfer() == Transfer.SQUARE_ROOT) {
                warnings.add(e.name() + " takes a square root: its slope grows without bound towards 0 %, and"
                    + " below "
                    + NumberText.plain(lowestInput, 3) + " % input nothing is stated");
                final double root = Math.sqrt(lowestInput / 100);
                // An output error e of the root comes from an input error 2 root e + e^2; the slope knows 2
                // root e.
                if (largest / 100 > 2 * WORTH_SAYING * root) {
                    warnings.add("at " + NumberText.plain(lowestInput, 3) + " % input the error is large"
                        + " against the curvature of " + e.name() + ": the linear figures are rough there");
                }
            }
        }
        return warnings;
    }
}
