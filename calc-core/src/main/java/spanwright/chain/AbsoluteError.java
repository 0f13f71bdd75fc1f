package spanwright.chain;

import java.util.function.DoubleUnaryOperator;
import spanwright.uncertainty.MonteCarloResult;

/** Questions about the size of the error, without its sign, put to a Monte Carlo result. */
final class AbsoluteError {
    private static final int STEPS = 60;

    private final MonteCarloResult result;
    private final double least;

    AbsoluteError(MonteCarloResult result) {
        this.result = result;
        this.least = 0.5 / result.trials();
    }

    /**
     * The size that a share of the trials does not exceed: the interval [-q, q] holds the share. Found from
     * quantiles: of all intervals with the share, the one that is symmetric about 0.
     */
    double quantile(double share) {
        final double below = tail(share);
        return Math.max(Math.abs(result.quantile(clamp(below))),
            Math.abs(result.quantile(clamp(below + share))));
    }

    /**
     * Standard error of {@link #quantile} from the number of trials: the binomial standard deviation of the
     * share, times the slope of the quantile over three of these on either side. Not the larger of the two
     * ends' errors: where the error lies on one side of 0, the other end stands in a tail that decides
     * nothing.
     */
    double quantileError(double share) {
        final double deviation = Math.sqrt(share * (1 - share) / result.trials());
        final double upper = Math.max(share, Math.min(share + 3 * deviation, 1 - least));
        final double lower = Math.min(share, Math.max(share - 3 * deviation, least));
        return deviation * (quantile(upper) - quantile(lower)) / (upper - lower);
    }

    /** Share of the trials with a size of at most the limit. */
    double shareWithin(double limit) {
        return cumulative(limit) - cumulative(-limit);
    }

    /** Share of the trials with an error of at most x. */
    double cumulative(double x) {
        if (result.quantile(clamp(0)) > x) {
            return 0;
        }
        return result.quantile(clamp(1)) <= x ? 1 : root(p -> result.quantile(clamp(p)) - x, 0, 1);
    }

    /** Probability below the lower end of the interval that is symmetric about 0. */
    private double tail(double share) {
        final DoubleUnaryOperator sum = p -> result.quantile(clamp(p)) + result.quantile(clamp(p + share));
        if (sum.applyAsDouble(0) >= 0) {
            return 0;
        }
        return sum.applyAsDouble(1 - share) <= 0 ? 1 - share : root(sum, 0, 1 - share);
    }

    private double clamp(double p) {
        return Math.min(Math.max(p, least), 1 - least);
    }

    /** Where a rising function passes 0. */
    private static double root(DoubleUnaryOperator rising, double from, double to) {
        double low = from;
        double high = to;
        for (int i = 0; i < STEPS; i++) {
            final double middle = (low + high) / 2;
            if (rising.applyAsDouble(middle) <= 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
