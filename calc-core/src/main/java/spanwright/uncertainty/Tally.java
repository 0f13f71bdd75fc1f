package spanwright.uncertainty;

import java.util.Arrays;

/**
 * Counts outcomes in the bins of a grid and sums them about a reference. Constant memory, no allocation per
 * block. Not thread safe: one for each thread.
 */
final class Tally {
    private final Grid grid;
    private final double reference;
    private final int[] core = new int[Grid.CORE + 2];
    private final long[] tails = new long[2 * Grid.TAIL];
    private long[] flushed = {};
    private final double[] sums = new double[RandomStream.BLOCK];
    private final double[] squares = new double[RandomStream.BLOCK];
    private double least = Double.POSITIVE_INFINITY;
    private double greatest = Double.NEGATIVE_INFINITY;
    private long sinceFlush;

    Tally(Grid grid, double reference) {
        this.grid = grid;
        this.reference = reference;
    }

    /**
     * Counts n outcomes.
     *
     * @return the index of the first that is not finite, or -1
     */
    int add(double[] y, int n) {
        if (sinceFlush > Integer.MAX_VALUE - n) {
            flush();
        }
        sinceFlush += n;
        sum(y, n, reference, sums, squares);
        return count(y, n);
    }

    /**
     * Counts without a branch: the first and the last counter take all that lies outside the core, and only
     * where they moved is the block looked through again.
     */
    private int count(double[] y, int n) {
        final int outside = core[0] + core[Grid.CORE + 1];
        countCore(y, n, grid.low(), grid.binsPerUnit(), core);
        return core[0] + core[Grid.CORE + 1] == outside ? -1 : countTails(y, n);
    }

    private static void countCore(double[] y, int n, double low, double scale, int[] core) {
        for (int t = 0; t < n; t++) {
            final int bin = (int) ((y[t] - low) * scale + 1);
            core[Math.max(0, Math.min(bin, Grid.CORE + 1))]++;
        }
    }

    private int countTails(double[] y, int n) {
        for (int t = 0; t < n; t++) {
            final double position = (y[t] - grid.low()) * grid.binsPerUnit() + 1;
            if (position >= 1 && position < Grid.CORE + 1) {
                continue;
            }
            if (!(Math.abs(y[t]) <= Double.MAX_VALUE)) {
                return t;
            }
            final int bin = grid.tailBin(y[t]);
            tails[bin < Grid.TAIL ? bin : bin - Grid.CORE]++;
            least = Math.min(least, y[t]);
            greatest = Math.max(greatest, y[t]);
        }
        return -1;
    }

    private static void sum(double[] y, int n, double reference, double[] sums, double[] squares) {
        for (int t = 0; t < n; t++) {
            final double d = y[t] - reference;
            sums[t] += d;
            squares[t] += d * d;
        }
    }

    /** Sum of the outcomes since the last call less the reference, and of its squares. */
    double[] takeSums() {
        double sum = 0;
        double square = 0;
        for (int t = 0; t < sums.length; t++) {
            sum += sums[t];
            square += squares[t];
            sums[t] = 0;
            squares[t] = 0;
        }
        return new double[] {sum, square};
    }

    private void flush() {
        if (flushed.length == 0) {
            flushed = new long[grid.size()];
        }
        addCore(flushed);
        Arrays.fill(core, 0);
        sinceFlush = 0;
    }

    private void addCore(long[] counts) {
        for (int i = 0; i < Grid.CORE; i++) {
            counts[Grid.TAIL + i] += core[i + 1];
        }
    }

    /** Adds the counts of each bin into {@code counts}, one for each bin of the grid. */
    void addInto(long[] counts) {
        addCore(counts);
        for (int i = 0; i < Grid.TAIL; i++) {
            counts[i] += tails[i];
            counts[Grid.TAIL + Grid.CORE + i] += tails[Grid.TAIL + i];
        }
        for (int i = 0; i < flushed.length; i++) {
            counts[i] += flushed[i];
        }
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
