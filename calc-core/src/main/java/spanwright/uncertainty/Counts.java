package spanwright.uncertainty;

/** How many outcomes fell into each bin of a grid, from all threads. Thread safe while it is added to. */
final class Counts {
    private final long[] bins;
    private double least = Double.POSITIVE_INFINITY;
    private double greatest = Double.NEGATIVE_INFINITY;

    Counts(Grid grid) {
        this.bins = new long[grid.size()];
    }

    /** Adds what a thread has counted. */
    synchronized void add(Tally tally) {
        tally.addInto(bins);
        least = Math.min(least, tally.least());
        greatest = Math.max(greatest, tally.greatest());
    }

    /** The counts of each bin; not a copy. */
    long[] bins() {
        return bins;
    }

    /** The smallest outcome outside the core; infinity where there is none. */
    double least() {
        return least;
    }

    /** The greatest outcome outside the core; minus infinity where there is none. */
    double greatest() {
        return greatest;
    }
}
