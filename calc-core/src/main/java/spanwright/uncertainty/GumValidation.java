package spanwright.uncertainty;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Whether a GUM interval may be used, judged by a Monte Carlo one (JCGM 101:2008, clause 8): both ends must
 * agree within the numerical tolerance of the standard uncertainty.
 *
 * @param gum       interval of the GUM budget
 * @param reference probabilistically symmetric interval of the Monte Carlo run, of the same probability
 * @param tolerance numerical tolerance, above 0
 */
public record GumValidation(ExpandedUncertainty gum, CoverageInterval reference, double tolerance) {
    /** Checks the components. */
    public GumValidation {
        Objects.requireNonNull(gum, "gum");
        Objects.requireNonNull(reference, "reference");
        Checks.positive("numerical tolerance", tolerance);
        if (gum.probability() != reference.probability()) {
            throw new IllegalArgumentException("coverage probabilities differ: " + gum.probability() + " and "
                + reference.probability());
        }
    }

    /**
     * Compares the two.
     *
     * @param budget      GUM budget
     * @param result      Monte Carlo result of the same model
     * @param probability coverage probability, in (0, 1)
     * @param digits      significant digits of the standard uncertainty regarded as meaningful, 1 or 2 as a
     *                    rule
     */
    public static GumValidation of(Budget budget, MonteCarloResult result, double probability, int digits) {
        return new GumValidation(budget.expanded(probability, CoverageRule.STUDENT),
            result.interval(probability),
            NumericalTolerance.of(result.u(), digits));
    }

    /** Distance of the lower ends. */
    public double lowerDifference() {
        return Math.abs(gum.lower() - reference.lower());
    }

    /** Distance of the upper ends. */
    public double upperDifference() {
        return Math.abs(gum.upper() - reference.upper());
    }

    /** Whether both ends agree within the tolerance. */
    public boolean isValidated() {
        return lowerDifference() <= tolerance && upperDifference() <= tolerance;
    }

    /**
     * Whether the Monte Carlo error of the ends is small enough for the question: within a fifth of the
     * tolerance, at two standard errors (JCGM 101:2008, 8.2 note).
     */
    public boolean isSharp() {
        return 2 * Math.max(reference.lowerError(), reference.upperError()) <= tolerance / 5;
    }

    @Override
    public String toString() {
        return "The GUM interval is " + (isValidated() ? "" : "not ")
            + "validated by Monte Carlo: its ends differ by "
            + NumberText.uncertainty(lowerDifference()) + " and " + NumberText.uncertainty(upperDifference())
            + ", tolerance " + NumberText.uncertainty(tolerance)
            + (isSharp() ? "" : "; the Monte Carlo error of the ends is not small against it");
    }
}
