package spanwright.verdict;

import org.apache.commons.statistics.distribution.BetaDistribution;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * How often something happened in a simulation, with the simulation's own error. Nothing seen is not nothing:
 * {@link #upper95} is above 0 even for a count of 0.
 *
 * @param count  how often, 0 to {@code trials}
 * @param trials of how many, at least 1
 */
public record Proportion(int count, int trials) {
    /** Checks the components. */
    public Proportion {
        Checks.atLeast("trials", trials, 1);
        Checks.within("count", count, 0, trials);
    }

    /** The proportion, 0 to 1. */
    public double value() {
        return (double) count / trials;
    }

    /** Standard error of {@link #value} by the binomial distribution; 0 for a count of 0 or of all. */
    public double standardError() {
        return Math.sqrt(value() * (1 - value()) / trials);
    }

    /** Lower end of the exact (Clopper-Pearson) 95 % confidence interval. */
    public double lower95() {
        return count == 0 ? 0 : BetaDistribution.of(count, trials - count
            + 1.0).inverseCumulativeProbability(0.025);
    }

    /** Upper end of the exact (Clopper-Pearson) 95 % confidence interval. */
    public double upper95() {
        return count == trials ? 1
            : BetaDistribution.of(count + 1.0, trials - count).inverseSurvivalProbability(0.025);
    }

    @Override
    public String toString() {
        return count == 0 ? "below " + NumberText.significant(100 * upper95(), 2) + " % (none in " + trials
            + ")"
            : NumberText.significant(100 * value(), 3) + " % (" + NumberText.significant(100 * lower95(), 3)
                + " to "
                + NumberText.significant(100 * upper95(), 3) + " %)";
    }
}
