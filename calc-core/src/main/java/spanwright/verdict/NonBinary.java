package spanwright.verdict;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Four answers by a guard band w = r U: pass inside T - w, conditional pass from there to T, conditional fail
 * from T to T + w, fail beyond (in the manner of ILAC-G8:09/2019, non-binary statement, from a secondary
 * copy).
 *
 * @param ratio r, above 0
 */
public record NonBinary(double ratio) implements DecisionRule {
    /** Checks the component. */
    public NonBinary {
        Checks.positive("ratio of guard band and expanded uncertainty", ratio);
    }

    /** Four answers with w = U. */
    public static NonBinary wholeUncertainty() {
        return new NonBinary(1);
    }

    @Override
    public String sentence() {
        return "Pass, conditional pass, conditional fail or fail, parted at T \u2212 w, T and T + w with w = "
            + (ratio == 1 ? "" : NumberText.plain(ratio, 4) + " ") + "U.";
    }

    @Override
    public Acceptance acceptance(ToleranceInterval limit, MeasurementUncertainty uncertainty) {
        return new GuardBand(ratio).acceptance(limit, uncertainty).with(Answers.FOUR);
    }
}
