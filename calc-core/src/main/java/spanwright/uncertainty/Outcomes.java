package spanwright.uncertainty;

/**
 * The distribution of the trials as counts in bins. A quantile is interpolated within its bin, so that it is
 * off by less than the width of that bin.
 */
final class Outcomes {
    private final Grid grid;
    private final long[] upTo;
    private final double least;
    private final double greatest;

    Outcomes(Grid grid, Counts total, double mean, double spread) {
        this.grid = grid;
        final long[] counts = total.bins();
        this.upTo = new long[counts.length + 1];
        for (int i = 0; i < counts.length; i++) {
            upTo[i + 1] = upTo[i] + counts[i];
        }
        if (spread == 0) {
            least = mean;
            greatest = mean;
            return;
        }
        int first = 0;
        while (counts[first] == 0) {
            first++;
        }
        int last = counts.length - 1;
        while (counts[last] == 0) {
            last--;
        }
        this.least = first < Grid.TAIL ? total.least() : grid.edge(first);
        this.greatest = last >= Grid.TAIL + Grid.CORE ? total.greatest() : grid.edge(last + 1);
    }

    long trials() {
        return upTo[upTo.length - 1];
    }

    double least() {
        return least;
    }

    double greatest() {
        return greatest;
    }

    /** Bound of the error that binning makes in the quantile of p. */
    double binWidthAt(double p) {
        final int bin = binOf(p * trials());
        return Math.min(greatest, grid.edge(bin + 1)) - Math.max(least, grid.edge(bin));
    }

    double quantile(double p) {
        final double rank = p * trials();
        return within(binOf(rank), rank);
    }

    /** The first bin at the end of which at least so many trials are counted. */
    private int binOf(double rank) {
        int low = 0;
        int high = upTo.length - 2;
        while (low < high) {
            final int middle = (low + high) >>> 1;
            if (upTo[middle + 1] >= rank) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    private double within(int bin, double rank) {
        final long count = upTo[bin + 1] - upTo[bin];
        final double share = count == 0 ? 0 : (rank - upTo[bin]) / count;
        final double from = Math.max(least, grid.edge(bin));
        final double to = Math.min(greatest, grid.edge(bin + 1));
        return Math.min(greatest, Math.max(least, from + share * (to - from)));
    }

    /** The probability below the shortest interval that covers p. */
    double belowShortest(double p) {
        final double covered = p * trials();
        double narrowest = Double.POSITIVE_INFINITY;
        long below = 0;
        int end = 0;
        for (int start = 0; start + 1 < upTo.length; start++) {
            if (upTo[start] == upTo[start + 1] || upTo[start] + covered > trials()) {
                continue;
            }
            final double rank = upTo[start] + covered;
            while (upTo[end + 1] < rank) {
                end++;
            }
            final double width = within(end, rank) - Math.max(least, grid.edge(start));
            if (width < narrowest) {
                narrowest = width;
                below = upTo[start];
            }
        }
        return (double) below / trials();
    }

    /** Trials at most x, interpolated within a bin. */
    double cumulative(double x) {
        if (x < least) {
            return 0;
        }
        if (x >= greatest) {
            return 1;
        }
        int low = 0;
        int high = upTo.length - 2;
        while (low < high) {
            final int middle = (low + high) >>> 1;
            if (grid.edge(middle + 1) > x) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        final double from = Math.max(least, grid.edge(low));
        final double to = Math.min(greatest, grid.edge(low + 1));
        final double share = to > from ? Math.min(1, Math.max(0, (x - from) / (to - from))) : 1;
        return (upTo[low] + share * (upTo[low + 1] - upTo[low])) / trials();
    }
}
