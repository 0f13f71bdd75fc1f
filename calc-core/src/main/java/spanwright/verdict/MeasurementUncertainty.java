package spanwright.verdict;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * The uncertainty of a result, as a decision needs it: the standard uncertainty, and how far the coverage
 * interval reaches below and above the value. The coverage factor is whatever the caller's distribution gives
 * (1.65 where one rectangle dominates), never a fixed 2. Unit: that of the result, in verdicts percent of
 * span.
 *
 * @param u        standard uncertainty, above 0: a result without uncertainty is not decided on
 * @param dof      degrees of freedom of {@code u}
 * @param below    how far the coverage interval reaches below the value, above 0
 * @param above    how far it reaches above the value, above 0
 * @param coverage coverage probability of the interval, in (0.5, 1)
 */
public record MeasurementUncertainty(double u, DegreesOfFreedom dof, double below, double above,
                                     double coverage) {
    /** Checks the components. */
    public MeasurementUncertainty {
        Checks.positive("standard uncertainty of a result to be decided on", u);
        Objects.requireNonNull(dof, "dof");
        Checks.positive("reach of the coverage interval below the value", below);
        Checks.positive("reach of the coverage interval above the value", above);
        Checks.inside("coverage probability", coverage, 0.5, 1);
    }

    /**
     * Expanded by a coverage factor to 95 % coverage, with u exactly known.
     *
     * @param u standard uncertainty, above 0
     * @param k coverage factor for 95 %, above 0
     */
    public static MeasurementUncertainty of(double u, double k) {
        return of(Estimate.of(0, u), k);
    }

    /** The uncertainty of an estimate, expanded by a coverage factor to 95 % coverage. */
    public static MeasurementUncertainty of(Estimate estimate, double k) {
        Checks.positive("coverage factor", k);
        final double expanded = k * estimate.u();
        return new MeasurementUncertainty(estimate.u(), estimate.dof(), expanded, expanded, 0.95);
    }

    /** Half the width of the coverage interval. */
    public double expanded() {
        return (below + above) / 2;
    }

    /** Half the width of the coverage interval in standard uncertainties. */
    public double coverageFactor() {
        return expanded() / u;
    }

    /** This uncertainty, so many times larger throughout. */
    public MeasurementUncertainty times(double factor) {
        Checks.positive("factor", factor);
        return new MeasurementUncertainty(u * factor, dof, below * factor, above * factor, coverage);
    }

    @Override
    public String toString() {
        final String reach = below == above ? "\u00b1 " + NumberText.uncertainty(above)
            : NumberText.MINUS + NumberText.uncertainty(below) + " / +" + NumberText.uncertainty(above);
        return reach + " (k = " + NumberText.plain(coverageFactor(), 3) + ", "
            + NumberText.plain(100 * coverage, 4) + " %)";
    }
}
