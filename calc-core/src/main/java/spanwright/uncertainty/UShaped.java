package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * Arcsine (U-shaped) distribution: a quantity that cycles sinusoidally between limits, as a room temperature
 * does (JCGM 101:2008, 6.4.6).
 *
 * @param lower lower limit
 * @param upper upper limit, at least {@code lower}
 */
public record UShaped(double lower, double upper) implements Distribution {
    /** Checks the limits. */
    public UShaped {
        Limits.check(lower, upper);
    }

    /** Limits on both sides of a centre; {@code halfWidth} at least 0. */
    public static UShaped around(double centre, double halfWidth) {
        Checks.notNegative("half-width", halfWidth);
        return new UShaped(centre - halfWidth, centre + halfWidth);
    }

    @Override
    public double mean() {
        return Limits.centre(lower, upper);
    }

    @Override
    public double standardUncertainty() {
        return Limits.halfWidth(lower, upper) / Math.sqrt(2);
    }

    @Override
    public double quantile(double p) {
        Checks.inside("p", p, 0, 1);
        return mean() + Limits.halfWidth(lower, upper) * Math.sin(Math.PI * (p - 0.5));
    }

    @Override
    public double cumulative(double x) {
        if (x >= upper) {
            return 1;
        }
        return x <= lower ? 0 : 0.5 + Math.asin((x - mean()) / Limits.halfWidth(lower, upper)) / Math.PI;
    }

    @Override
    public String kind() {
        return "U-shaped";
    }
}
