package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * Symmetric triangular distribution: limits are known and the middle is the likeliest; the difference of two
 * equal rectangular ones (JCGM 101:2008, 6.4.5).
 *
 * @param lower lower limit
 * @param upper upper limit, at least {@code lower}
 */
public record Triangular(double lower, double upper) implements Distribution {
    /** Checks the limits. */
    public Triangular {
        Limits.check(lower, upper);
    }

    /** Limits on both sides of a centre; {@code halfWidth} at least 0. */
    public static Triangular around(double centre, double halfWidth) {
        Checks.notNegative("half-width", halfWidth);
        return new Triangular(centre - halfWidth, centre + halfWidth);
    }

    @Override
    public double mean() {
        return Limits.centre(lower, upper);
    }

    @Override
    public double standardUncertainty() {
        return Limits.halfWidth(lower, upper) / Math.sqrt(6);
    }

    @Override
    public double quantile(double p) {
        return trapezoid().quantile(p);
    }

    @Override
    public double cumulative(double x) {
        return trapezoid().cumulative(x);
    }

    @Override
    public String kind() {
        return "triangular";
    }

    private Trapezoidal trapezoid() {
        return new Trapezoidal(lower, upper, 0);
    }
}
