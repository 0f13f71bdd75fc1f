package spanwright.verdict;

import java.util.function.ToDoubleFunction;
import spanwright.quantity.NumberText;

/** What the rules that rest on a test uncertainty ratio have in common. */
final class Ratios {
    private Ratios() { }

    static String figure(TestUncertaintyRatio ratio) {
        return NumberText.plain(ratio.value(), 3);
    }

    /** The acceptance by a guard band that follows from the ratio; not applicable where there is none. */
    static Acceptance guarded(ToleranceInterval limit, MeasurementUncertainty uncertainty,
                              ToDoubleFunction<TestUncertaintyRatio> guardBand) {
        return TestUncertaintyRatio.of(limit, uncertainty).map(guardBand::applyAsDouble)
            .map(w -> Acceptance.guarded(limit, w, w)).orElseGet(() -> needsTwoSides(limit));
    }

    static Acceptance needsTwoSides(ToleranceInterval limit) {
        return Acceptance.notApplicable(limit, "a two-sided limit (the rule rests on a test uncertainty"
            + " ratio, which a limit of " + limit + " alone does not have)");
    }
}
