package spanwright.verdict;

import java.util.Objects;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The smallest guard band, the same on each side, that holds a stated false-accept risk for the plant's own
 * population. No guard band where simple acceptance holds it already.
 *
 * @param falseAccept the risk to hold, of all measured, in (0, 0.5)
 * @param prior       the plant's population, in the unit of the limit (in verdicts percent of span)
 */
public record PlantRiskGuardBand(double falseAccept, Prior prior) implements DecisionRule {
    /** Checks the components. */
    public PlantRiskGuardBand {
        Checks.inside("false-accept risk to hold", falseAccept, 0, 0.5);
        Objects.requireNonNull(prior, "prior");
    }

    @Override
    public String sentence() {
        return "Guard band solved so that at most " + NumberText.plain(100 * falseAccept, 4)
            + " % of all measured are falsely accepted in the plant's own population. " + prior.sentence();
    }

    @Override
    public Acceptance acceptance(ToleranceInterval limit, MeasurementUncertainty uncertainty) {
        if (excess(limit, uncertainty, 0) <= 0) {
            return Acceptance.guarded(limit, 0, 0);
        }
        double high = uncertainty.u();
        while (excess(limit, uncertainty, high) > 0) {
            high *= 2;
        }
        final double guard = new BracketingNthOrderBrentSolver(1e-13, 1e-13 * high, 1e-15, 5).solve(500,
            w -> excess(limit, uncertainty, w), 0, high);
        return Acceptance.guarded(limit, guard, guard);
    }

    private double excess(ToleranceInterval limit, MeasurementUncertainty uncertainty, double guard) {
        return GlobalRisk.of(prior, limit, Acceptance.guarded(limit, guard, guard), uncertainty.u())
            .falseAccept() - falseAccept;
    }
}
