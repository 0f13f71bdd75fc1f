package spanwright.verdict;

/**
 * Guard band w = U M whose multiplier M falls with the test uncertainty ratio so that the false-accept risk
 * stays below 2 % for every spread of a centred normal prior: M = 1.04 - exp(0.38 ln(ratio) - 0.54), and 0
 * where that is negative, which is from a ratio of 4.6.
 *
 * <p>Source: S. Dobbert, NCSLI 2008 (formula from memory and a secondary page, confirmed by our own integral:
 * the largest risk is 1.91 to 1.96 % for ratios of 1.5 to 4). A biased prior can exceed 2 %.
 */
public record TwoPercentGuardBand() implements DecisionRule {

    /** The multiplier at a ratio, at least 0. */
    public static double multiplier(TestUncertaintyRatio ratio) {
        return Math.max(0, 1.04 - Math.exp(0.38 * Math.log(ratio.value()) - 0.54));
    }

    @Override
    public String sentence() {
        return "Guard band w = M U, with M = 1.04 \u2212 exp(0.38 ln(ratio) \u2212 0.54), at least 0:"
            + " holds the"
            + " false-accept risk of a centred normal population below 2 % (S. Dobbert, NCSLI 2008).";
    }

    @Override
    public Acceptance acceptance(ToleranceInterval limit, MeasurementUncertainty uncertainty) {
        return Ratios.guarded(limit, uncertainty, ratio -> uncertainty.expanded() * multiplier(ratio));
    }
}
