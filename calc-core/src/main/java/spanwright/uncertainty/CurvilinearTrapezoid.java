package spanwright.uncertainty;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import spanwright.quantity.Checks;

/**
 * Rectangular distribution whose limits are themselves known only within +-d (JCGM 101:2008, 6.4.3). Its
 * degrees of freedom follow from the reliability d / half-width of the limits (JCGM 100:2008, G.4.2): 10 %
 * gives 50.
 *
 * @param lower   nominal lower limit a
 * @param upper   nominal upper limit b
 * @param inexact d: half-width of the doubt of each limit, above 0 and below half of {@code upper - lower}
 */
public record CurvilinearTrapezoid(double lower, double upper, double inexact) implements Distribution {
    /** Checks the components. */
    public CurvilinearTrapezoid {
        Limits.check(lower, upper);
        Checks.inside("inexactness of the limits", inexact, 0, Limits.halfWidth(lower, upper));
    }

    @Override
    public double mean() {
        return Limits.centre(lower, upper);
    }

    @Override
    public double standardUncertainty() {
        final double half = Limits.halfWidth(lower, upper);
        return Math.sqrt(half * half / 3 + inexact * inexact / 9);
    }

    @Override
    public DegreesOfFreedom dof() {
        final double ratio = Limits.halfWidth(lower, upper) / inexact;
        return DegreesOfFreedom.of(ratio * ratio / 2);
    }

    @Override
    public double quantile(double p) {
        Checks.inside("p", p, 0, 1);
        return p <= 0.5 ? mean() - distance(p) : mean() + distance(1 - p);
    }

    private double distance(double tail) {
        final double half = Limits.halfWidth(lower, upper);
        final double inner = half - inexact;
        final double outer = half + inexact;
        final double slope = Math.log(outer / inner) / (4 * inexact);
        final double tailAtInner = tail(inner);
        if (tail >= tailAtInner) {
            return (0.5 - tail) / slope;
        }
        final UnivariateFunction excess = t -> tail(t) - tail;
        return new BracketingNthOrderBrentSolver(1e-14, 1e-15 * outer, 1e-18, 5)
            .solve(200, excess, inner, outer);
    }

    /** Probability beyond the distance t from the centre, on one side. */
    private double tail(double t) {
        final double half = Limits.halfWidth(lower, upper);
        final double inner = half - inexact;
        final double outer = half + inexact;
        if (t >= outer) {
            return 0;
        }
        if (t <= inner) {
            return 0.5 - t * Math.log(outer / inner) / (4 * inexact);
        }
        return (outer - t - t * Math.log(outer / t)) / (4 * inexact);
    }

    @Override
    public double cumulative(double x) {
        final double t = x - mean();
        return t < 0 ? tail(-t) : 1 - tail(t);
    }

    @Override
    public String kind() {
        return "curvilinear trapezoid";
    }
}
