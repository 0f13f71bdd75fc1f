package spanwright.uncertainty;

/**
 * Derivatives of a model by central differences, extrapolated to a step of zero (Richardson's method, in the
 * manner of Ridders): steps are halved, and the entry of the table with the least difference to its
 * neighbours is taken. The error estimate is that difference and the rounding noise of the model's values at
 * that step.
 */
final class Differences {
    private static final int LEVELS = 14;
    private static final int FEW_LEVELS = 7;
    private static final double ROUNDING = Math.ulp(1.0);

    private final Formula formula;

    Differences(Formula formula) {
        this.formula = formula;
    }

    /** A difference quotient of one step. */
    @FunctionalInterface
    private interface Quotient {
        double at(double step);
    }

    /**
     * First derivative in one input; NaN with infinite error where the model is nowhere finite around x.
     *
     * @param x    where; not modified
     * @param i    which input
     * @param step largest step to try, above 0
     */
    Derivative first(double[] x, int i, double step) {
        final double noise = ROUNDING * Math.abs(formula.value(x));
        final double[] at = x.clone();
        return extrapolate(LEVELS, step, h -> {
            at[i] = x[i] + h;
            final double up = formula.value(at);
            at[i] = x[i] - h;
            final double width = x[i] + h - at[i];
            return (up - formula.value(at)) / width;
        }, h -> noise / h);
    }

    /** Second derivative along directions d and e; the unit of the step is one length of d and e. */
    Derivative second(double[] x, double[] d, double[] e) {
        final double noise = 4 * ROUNDING * Math.abs(formula.value(x));
        return extrapolate(FEW_LEVELS, 1, h -> secondQuotient(x, d, e, h), h -> noise / (4 * h * h));
    }

    /** Third derivative: once along d, twice along e. */
    Derivative third(double[] x, double[] d, double[] e) {
        final double noise = 8 * ROUNDING * Math.abs(formula.value(x));
        return extrapolate(FEW_LEVELS, 1, h -> {
            final double up = secondQuotient(moved(x, d, h), e, e, h);
            final double down = secondQuotient(moved(x, d, -h), e, e, h);
            return (up - down) / (2 * h);
        }, h -> noise / (8 * h * h * h));
    }

    private double secondQuotient(double[] x, double[] d, double[] e, double h) {
        final double[] up = moved(x, d, h);
        final double[] down = moved(x, d, -h);
        final double alike = formula.value(moved(up, e, h)) + formula.value(moved(down, e, -h));
        final double unlike = formula.value(moved(up, e, -h)) + formula.value(moved(down, e, h));
        return (alike - unlike) / (4 * h * h);
    }

    private static double[] moved(double[] x, double[] direction, double by) {
        final double[] moved = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            moved[i] = x[i] + by * direction[i];
        }
        return moved;
    }

    private static Derivative extrapolate(int levels, double largest, Quotient quotient, Quotient noise) {
        final double[][] table = new double[levels][];
        Derivative best = new Derivative(Double.NaN, Double.POSITIVE_INFINITY);
        double step = largest;
        for (int level = 0; level < levels; level++, step /= 2) {
            final double[] row = new double[level + 1];
            table[level] = row;
            row[0] = quotient.at(step);
            final double rounding = noise.at(step);
            double factor = 1;
            for (int k = 1; k <= level; k++) {
                factor *= 4;
                final double older = table[level - 1][k - 1];
                row[k] = row[k - 1] + (row[k - 1] - older) / (factor - 1);
                final double doubt = Math.max(Math.abs(row[k] - row[k - 1]), Math.abs(row[k] - older));
                if (doubt + rounding < best.error()) {
                    best = new Derivative(row[k], doubt + rounding);
                }
            }
        }
        return best;
    }
}
