package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * Symmetric trapezoidal distribution: the sum of two rectangular ones (JCGM 101:2008, 6.4.4).
 *
 * @param lower lower limit
 * @param upper upper limit, at least {@code lower}
 * @param beta  width of the top over width of the base, in [0, 1]; 0 is a triangle, 1 a rectangle
 */
public record Trapezoidal(double lower, double upper, double beta) implements Distribution {
    /** Checks the components. */
    public Trapezoidal {
        Limits.check(lower, upper);
        Checks.within("beta", beta, 0, 1);
    }

    /** Sum of two rectangular quantities with these half-widths, about a centre. */
    public static Trapezoidal ofSum(double centre, double firstHalfWidth, double secondHalfWidth) {
        final double sum = Checks.notNegative("half-width", firstHalfWidth)
            + Checks.notNegative("half-width", secondHalfWidth);
        final double beta = sum == 0 ? 1 : Math.abs(firstHalfWidth - secondHalfWidth) / sum;
        return new Trapezoidal(centre - sum, centre + sum, beta);
    }

    @Override
    public double mean() {
        return Limits.centre(lower, upper);
    }

    @Override
    public double standardUncertainty() {
        return Limits.halfWidth(lower, upper) * Math.sqrt((1 + beta * beta) / 6);
    }

    @Override
    public double quantile(double p) {
        Checks.inside("p", p, 0, 1);
        final double half = Limits.halfWidth(lower, upper);
        return p <= 0.5 ? mean() - half * standardUpper(p) : mean() + half * standardUpper(1 - p);
    }

    /** Distance from the centre, in half-widths, that is passed on one side with probability {@code tail}. */
    private double standardUpper(double tail) {
        final double tailOfSlope = (1 - beta) / (1 + beta) / 2;
        if (tail <= tailOfSlope) {
            return 1 - Math.sqrt(2 * tail * (1 - beta * beta));
        }
        return (1 + beta) * (0.5 - tail);
    }

    @Override
    public double cumulative(double x) {
        if (x >= upper) {
            return 1;
        }
        if (x <= lower) {
            return 0;
        }
        final double t = (x - mean()) / Limits.halfWidth(lower, upper);
        final double distance = Math.abs(t);
        final double tail = distance >= beta
            ? square(1 - distance) / (2 * (1 - beta * beta))
            : 0.5 - distance / (1 + beta);
        return t < 0 ? tail : 1 - tail;
    }

    private static double square(double x) {
        return x * x;
    }

    @Override
    public String kind() {
        return "trapezoidal";
    }
}
