package spanwright.uncertainty;

/**
 * Bins for outcomes of which only a pilot sample is known: many equal ones over the range where nearly all
 * will lie, and on either side tails of bins that widen with the distance, by 1/64 of it, so that no outcome
 * falls outside.
 */
final class Grid {
    /** Equal bins. */
    static final int CORE = 1 << 16;
    private static final int PER_OCTAVE = 64;
    private static final int OCTAVES = 64;
    /** Bins of each tail. */
    static final int TAIL = PER_OCTAVE * OCTAVES;
    private static final int DROPPED_BITS = 52 - 6;
    private static final long ONE = Double.doubleToRawLongBits(1) >>> DROPPED_BITS;
    private static final double REACH = 2.2;
    private static final double ROUNDING = 1e-15;

    private final double low;
    private final double width;

    private Grid(double low, double width) {
        this.low = low;
        this.width = width;
    }

    /**
     * The grid for outcomes like these: the core reaches from the median 2.2 times as far as the outer
     * percentiles, which is past five standard deviations of a normal distribution.
     *
     * @param sorted pilot sample, ascending
     */
    static Grid around(double[] sorted) {
        final int percent = sorted.length / 100;
        final double median = sorted[sorted.length / 2];
        final double below = median - sorted[percent];
        final double above = sorted[sorted.length - 1 - percent] - median;
        final double least = Math.max(Math.abs(median) * ROUNDING * CORE, Double.MIN_NORMAL * CORE);
        final double from = median - Math.max(REACH * below, least);
        final double to = median + Math.max(REACH * above, least);
        return new Grid(from, to - from);
    }

    /** Number of bins, tails and core. */
    int size() {
        return CORE + 2 * TAIL;
    }

    /** Left edge of the core. */
    double low() {
        return low;
    }

    /** Equal bins in one unit of the outcome. */
    double binsPerUnit() {
        return CORE / width;
    }

    /** Width of an equal bin: the bound of a quantile that falls into the core. */
    double binWidth() {
        return width / CORE;
    }

    /**
     * The bin of an outcome outside the core: 0 the farthest below, {@code size() - 1} the farthest above.
     */
    int tailBin(double y) {
        final double beyond = y < low ? (low - y) / width : (y - low - width) / width;
        final long octave = (Double.doubleToRawLongBits(1 + Math.max(0, beyond)) >>> DROPPED_BITS) - ONE;
        final int step = (int) Math.min(octave, TAIL - 1);
        return y < low ? TAIL - 1 - step : TAIL + CORE + step;
    }

    /** Lower edge of a bin; {@code edge(size())} is the upper edge of the last. */
    double edge(int bin) {
        if (bin < TAIL) {
            return low - width * beyond(TAIL - bin);
        }
        if (bin <= TAIL + CORE) {
            return low + width * (bin - TAIL) / CORE;
        }
        return low + width + width * beyond(bin - TAIL - CORE);
    }

    private static double beyond(int step) {
        return Double.longBitsToDouble(ONE + step << DROPPED_BITS) - 1;
    }
}
