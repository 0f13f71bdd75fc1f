package spanwright.chain;

import java.util.ArrayList;
import java.util.List;
import spanwright.quantity.Checks;
import spanwright.uncertainty.MonteCarloResult;

/**
 * One bin of a histogram.
 *
 * @param from  lower end, percent of span
 * @param to    upper end
 * @param share share of the trials in it
 */
public record Bin(double from, double to, double share) {
    /** Share of the trials beyond each end of the picture. */
    private static final double TAIL = 1e-4;

    /** Checks the components. */
    public Bin {
        Checks.finite("lower end", from);
        Checks.within("upper end", to, from, Double.MAX_VALUE);
        Checks.within("share", share, 0, 1);
    }

    static List<Bin> histogram(MonteCarloResult result, int bins) {
        Checks.atLeast("number of bins", bins, 1);
        final AbsoluteError errors = new AbsoluteError(result);
        final double low = result.quantile(TAIL);
        final double high = result.quantile(1 - TAIL);
        final List<Bin> all = new ArrayList<>();
        double below = 0;
        for (int i = 1; i <= bins; i++) {
            final double edge = low + (high - low) * i / bins;
            final double upTo = i == bins ? 1 : Math.max(below, errors.cumulative(edge));
            all.add(new Bin(low + (high - low) * (i - 1) / bins, edge, upTo - below));
            below = upTo;
        }
        return List.copyOf(all);
    }

    /** Share for each percent of span: the height of a density. */
    public double density() {
        return to == from ? 0 : share / (to - from);
    }
}
