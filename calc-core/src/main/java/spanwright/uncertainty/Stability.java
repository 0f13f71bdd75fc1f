package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * When a Monte Carlo run has done enough (JCGM 101:2008, 7.9).
 *
 * @param digits      significant digits of the standard uncertainty that are meant to hold, 1 to 6
 * @param probability coverage probability of the interval, in (0, 1)
 */
public record Stability(int digits, double probability) {
    private static final int LEAST_LENGTH = 10_000;

    /** Checks the components. */
    public Stability {
        Checks.within("significant digits", digits, 1, 6);
        Checks.inside("coverage probability", probability, 0, 1);
    }

    /** Trials of a sequence (JCGM 101:2008, 7.9.4 b): 100 / (1 - p), at least 10 000. */
    long sequenceLength() {
        return Math.max(LEAST_LENGTH, (long) Math.ceil(100 / (1 - probability)));
    }
}
