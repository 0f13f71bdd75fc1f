package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * Rectangular distribution: only limits are known, and no value between them is favoured (JCGM 101:2008,
 * 6.4.2). The usual reading of a data-sheet limit and of a display's resolution.
 *
 * @param lower lower limit
 * @param upper upper limit, at least {@code lower}
 */
public record Rectangular(double lower, double upper) implements Distribution {
    /** Checks the limits. */
    public Rectangular {
        Limits.check(lower, upper);
    }

    /**
     * Limits on both sides of a centre.
     *
     * @param halfWidth at least 0
     */
    public static Rectangular around(double centre, double halfWidth) {
        Checks.notNegative("half-width", halfWidth);
        return new Rectangular(centre - halfWidth, centre + halfWidth);
    }

    /** Limits on both sides of zero; {@code halfWidth} at least 0. */
    public static Rectangular plusMinus(double halfWidth) {
        return around(0, halfWidth);
    }

    /**
     * A reading rounded to a step: half a step on either side (JCGM 100:2008, F.2.2.1).
     *
     * @param step the least digit of a display or the least step of a converter, at least 0
     */
    public static Rectangular ofResolution(double reading, double step) {
        return around(reading, Checks.notNegative("step", step) / 2);
    }

    @Override
    public double mean() {
        return Limits.centre(lower, upper);
    }

    @Override
    public double standardUncertainty() {
        return Limits.halfWidth(lower, upper) / Math.sqrt(3);
    }

    @Override
    public double quantile(double p) {
        Checks.inside("p", p, 0, 1);
        return lower * (1 - p) + upper * p;
    }

    @Override
    public double cumulative(double x) {
        if (x >= upper) {
            return 1;
        }
        return x <= lower ? 0 : (x - lower) / (upper - lower);
    }

    @Override
    public String kind() {
        return "rectangular";
    }
}
