package spanwright.verdict;

import spanwright.quantity.NumberText;

/** What the rules that rest on a test uncertainty ratio have in common. */
final class Ratios {
    private Ratios() { }

    static String figure(TestUncertaintyRatio ratio) {
        return NumberText.plain(ratio.value(), 3);
    }

    static Acceptance needsTwoSides(ToleranceInterval limit) {
        return Acceptance.notApplicable(limit, "a two-sided limit (the rule rests on a test uncertainty"
            + " ratio, which a limit of " + limit + " alone does not have)");
    }
}
