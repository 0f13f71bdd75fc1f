package spanwright.uncertainty;

import spanwright.quantity.Checks;

/**
 * Log-normal distribution: a positive quantity known by a factor rather than by a difference. Skewed, so that
 * its probabilistically symmetric interval is not the shortest.
 *
 * @param logMean mean of the natural logarithm
 * @param logU    standard deviation of the natural logarithm, at least 0
 */
public record LogNormal(double logMean, double logU) implements Distribution {
    /** Checks the components. */
    public LogNormal {
        Checks.finite("mean of the logarithm", logMean);
        Checks.notNegative("standard deviation of the logarithm", logU);
        Checks.positive("mean of the log-normal quantity", Math.exp(logMean + logU * logU / 2));
        Checks.finite("variance of the log-normal quantity",
            Math.expm1(logU * logU) * Math.exp(2 * logMean + logU * logU));
    }

    /**
     * The log-normal distribution with this expectation and standard deviation.
     *
     * @param mean                above 0
     * @param standardUncertainty at least 0
     */
    public static LogNormal ofMean(double mean, double standardUncertainty) {
        final double relative = Checks.notNegative("standard uncertainty", standardUncertainty)
            / Checks.positive("mean", mean);
        final double logVariance = Math.log1p(relative * relative);
        return new LogNormal(Math.log(mean) - logVariance / 2, Math.sqrt(logVariance));
    }

    @Override
    public double mean() {
        return Math.exp(logMean + logU * logU / 2);
    }

    @Override
    public double standardUncertainty() {
        return mean() * Math.sqrt(Math.expm1(logU * logU));
    }

    @Override
    public double quantile(double p) {
        return Math.exp(logarithm().quantile(p));
    }

    @Override
    public double cumulative(double x) {
        return x <= 0 ? 0 : logarithm().cumulative(Math.log(x));
    }

    private Normal logarithm() {
        return new Normal(logMean, logU);
    }

    @Override
    public String kind() {
        return "log-normal";
    }
}
