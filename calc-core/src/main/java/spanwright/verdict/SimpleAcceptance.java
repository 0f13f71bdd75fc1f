package spanwright.verdict;

import java.util.Objects;
import java.util.Optional;

/**
 * Accepts every result inside the limit, on the condition that the test uncertainty ratio is large enough.
 * The risk of a false acceptance is up to 50 % for a result on the limit (ILAC-G8:09/2019, from a secondary
 * copy).
 *
 * @param leastRatio the ratio below which the rule does not apply
 */
public record SimpleAcceptance(TestUncertaintyRatio leastRatio) implements DecisionRule {
    /** Checks the component. */
    public SimpleAcceptance {
        Objects.requireNonNull(leastRatio, "leastRatio");
    }

    /** The rule with its condition as a number, for example 4. */
    public static SimpleAcceptance withRatioAtLeast(double ratio) {
        return new SimpleAcceptance(new TestUncertaintyRatio(ratio));
    }

    @Override
    public String sentence() {
        return "Simple acceptance: a result inside the limit is accepted, provided the test uncertainty"
            + " ratio is at"
            + " least " + Ratios.figure(leastRatio) + "; on the limit itself the risk is up to 50 %.";
    }

    @Override
    public Acceptance acceptance(ToleranceInterval limit, MeasurementUncertainty uncertainty) {
        final Optional<TestUncertaintyRatio> ratio = TestUncertaintyRatio.of(limit, uncertainty);
        if (ratio.isEmpty()) {
            return Ratios.needsTwoSides(limit);
        }
        // Half a part in 1e9: a ratio of exactly 4 must not fail by the rounding of a division.
        if (ratio.get().value() >= leastRatio.value() * (1 - 1e-9)) {
            return Acceptance.guarded(limit, 0, 0);
        }
        return Acceptance.notApplicable(limit, "a test uncertainty ratio of at least "
            + Ratios.figure(leastRatio)
            + " (it is " + Ratios.figure(ratio.get()) + ")");
    }
}
