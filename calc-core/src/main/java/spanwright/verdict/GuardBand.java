package spanwright.verdict;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Draws the limit in by a guard band w = r U on each side. At the acceptance limit and for U = 2 u the risk
 * is below 2.5 % for r = 1, 5 % for 0.83, 0.16 % for 1.5, 1 in a million for 3 (ILAC-G8:09/2019 and ISO
 * 14253-1:2017, from secondary copies; bounds, for one limit).
 *
 * <p>U is what the coverage interval reaches towards the limit, so that an asymmetric interval is honoured.
 *
 * @param ratio r, at least 0
 */
public record GuardBand(double ratio) implements DecisionRule {
    /** Checks the component. */
    public GuardBand {
        Checks.notNegative("ratio of guard band and expanded uncertainty", ratio);
    }

    /** The guard band w = U: the whole coverage interval must lie inside the limit. */
    public static GuardBand wholeUncertainty() {
        return new GuardBand(1);
    }

    @Override
    public String sentence() {
        if (ratio == 1) {
            return "Guard band w = U: a result is accepted if its whole coverage interval lies inside the"
                + " limit.";
        }
        return "Guard band w = " + NumberText.plain(ratio, 4) + " U: a result is accepted if it lies"
            + " inside the limit by at least w.";
    }

    @Override
    public Acceptance acceptance(ToleranceInterval limit, MeasurementUncertainty uncertainty) {
        // A value near the lower limit is threatened by what its interval reaches downwards.
        return Acceptance.guarded(limit, ratio * uncertainty.below(), ratio * uncertainty.above());
    }
}
