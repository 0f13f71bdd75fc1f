package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * A value taken as exactly known.
 *
 * @param mean the value
 */
public record Constant(double mean) implements Distribution {
    /** Checks the value. */
    public Constant {
        Checks.finite("value", mean);
    }

    @Override
    public double standardUncertainty() {
        return 0;
    }

    @Override
    public double quantile(double p) {
        Checks.inside("p", p, 0, 1);
        return mean;
    }

    @Override
    public double cumulative(double x) {
        return x < mean ? 0 : 1;
    }

    @Override
    public String kind() {
        return "constant";
    }
}
