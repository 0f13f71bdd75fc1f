package spanwright.chart;

/** Round steps for axes: 1, 2 or 5 times a power of ten. */
final class Steps {
    private Steps() { }

    /** The smallest round step not below the given one; 1 for 0. */
    static double round(double atLeast) {
        if (!(atLeast > 0)) {
            return 1;
        }
        final double power = Math.pow(10, Math.floor(Math.log10(atLeast)));
        for (double factor : new double[] {1, 2, 5}) {
            if (factor * power >= atLeast * (1 - 1e-12)) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    /** A symmetric range that holds the value with some air, ending on a round step. */
    static double symmetricRange(double largest) {
        final double step = round(Math.abs(largest) / 4);
        return step * Math.ceil(Math.abs(largest) * 1.15 / step);
    }
}
