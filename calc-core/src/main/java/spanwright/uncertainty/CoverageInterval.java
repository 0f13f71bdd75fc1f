package spanwright.uncertainty;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Interval that covers the measurand with a stated probability, from a Monte Carlo run.
 *
 * @param lower       lower end
 * @param upper       upper end, at least {@code lower}
 * @param probability coverage probability, in (0, 1)
 * @param kind        which of the many intervals of this probability
 * @param lowerError  standard error of the lower end from the number of trials
 * @param upperError  standard error of the upper end
 */
public record CoverageInterval(double lower, double upper, double probability, Kind kind, double lowerError,
                               double upperError) {
    /** Which interval of a probability. */
    public enum Kind {
        /** As much probability below as above. */
        SYMMETRIC("probabilistically symmetric"),
        /** The narrowest there is. */
        SHORTEST("shortest");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The kind in words. */
        public String words() {
            return words;
        }
    }

    /** Checks the components. */
    public CoverageInterval {
        Checks.finite("lower end", lower);
        Checks.within("upper end", upper, lower, Double.MAX_VALUE);
        Checks.inside("coverage probability", probability, 0, 1);
        Objects.requireNonNull(kind, "kind");
        Checks.notNegative("error of the lower end", lowerError);
        Checks.notNegative("error of the upper end", upperError);
    }

    /** Width of the interval. */
    public double width() {
        return upper - lower;
    }

    /** The larger distance of an end from a value: the limit a two-sided claim must keep. */
    public double halfWidthAbout(double value) {
        return Math.max(upper - value, value - lower);
    }

    @Override
    public String toString() {
        final int decimals = NumberText.decimalsFor(width() / 2);
        return "[" + NumberText.fixed(lower, decimals) + ", " + NumberText.fixed(upper, decimals) + "] ("
            + NumberText.plain(100 * probability, 4) + " % coverage, " + kind.words() + ")";
    }
}
