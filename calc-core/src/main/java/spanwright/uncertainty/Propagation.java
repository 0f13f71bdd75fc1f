package spanwright.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/** Law of propagation of uncertainty, first and second order (JCGM 100:2008, 5.1 and 5.2). */
final class Propagation {
    private final MeasurementModel model;
    private final int n;
    private final double[] x;
    private final double[] u;
    private final double value;
    private final Sensitivity[] sensitivities;
    private final double[] contributions;
    private final double firstOrderVariance;

    Propagation(MeasurementModel model) {
        this.model = model;
        this.n = model.inputs().size();
        this.x = model.inputs().stream().mapToDouble(InputQuantity::value).toArray();
        this.u = model.inputs().stream().mapToDouble(InputQuantity::u).toArray();
        this.value = Checks.finite(model.measurand() + " at the best estimates", model.formula()
            .value(x.clone()));
        this.sensitivities = sensitivities();
        this.contributions = new double[n];
        for (int i = 0; i < n; i++) {
            contributions[i] = sensitivities[i].value() * u[i];
        }
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += contributions[i] * correlatedSum(i);
        }
        this.firstOrderVariance = Math.max(0, sum);
    }

    /** Sum of all contributions, each times its correlation with input i. */
    private double correlatedSum(int i) {
        if (model.matrix().isIndependent()) {
            return contributions[i];
        }
        double sum = 0;
        for (int j = 0; j < n; j++) {
            sum += model.matrix().at(i, j) * contributions[j];
        }
        return sum;
    }

    private Sensitivity[] sensitivities() {
        final Sensitivity[] all = new Sensitivity[n];
        if (model.gradient().isPresent()) {
            final double[] exact = model.gradient().get().at(x.clone());
            if (exact.length != n) {
                throw new IllegalArgumentException(exact.length + " sensitivities for " + n
                    + " input quantities");
            }
            for (int i = 0; i < n; i++) {
                all[i] = new Sensitivity(Checks.finite("sensitivity to " + name(i), exact[i]), 0);
            }
            return all;
        }
        final Differences differences = new Differences(model.formula());
        for (int i = 0; i < n; i++) {
            final double step = Math.max(u[i], Math.abs(x[i]) / 32);
            final Derivative d = differences.first(x, i, step == 0 ? 1 : step);
            if (!(Math.abs(d.value()) <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException(
                    model.measurand() + " has no finite sensitivity to " + name(i) + " at " + x[i]);
            }
            all[i] = new Sensitivity(d.value(), d.error());
        }
        return all;
    }

    private String name(int i) {
        return model.inputs().get(i).name();
    }

    /**
     * The order that the model needs: second where it moves u by more than its second significant digit
     * shows.
     */
    Budget budget() {
        final SecondOrder second = new SecondOrder(model, contributions);
        final double tolerance = firstOrderVariance == 0 ? 0 : tolerance(Math.sqrt(firstOrderVariance));
        final double variance = firstOrderVariance + second.variance();
        final List<String> warnings = new ArrayList<>();
        if (!second.isDetermined()) {
            warnings.add("The model bends or jumps within the uncertainty of " + second.undetermined()
                + ": neither first nor second order can be relied on. Use Monte Carlo.");
        }
        if (variance < 0) {
            warnings.add("The second-order variance is negative: the Taylor series does not describe "
                + "the model within the uncertainties. First order is shown. Use Monte Carlo.");
            return assemble(Order.FIRST, second, warnings);
        }
        if (Math.abs(Math.sqrt(variance) - Math.sqrt(firstOrderVariance)) <= tolerance) {
            return assemble(Order.FIRST, second, warnings);
        }
        warnings.add(whySecond(second, variance));
        return assemble(Order.SECOND, second, warnings);
    }

    private String whySecond(SecondOrder second, double variance) {
        final String first = firstOrderVariance == 0 ? "0"
            : NumberText.uncertainty(Math.sqrt(firstOrderVariance));
        final String cause = second.terms().isEmpty() ? ""
            : " Largest term: " + second.terms().get(0).label() + ".";
        return "First order would give u = " + first + "; with second-order terms u = "
            + NumberText.uncertainty(Math.sqrt(variance)) + "." + cause
            + (firstOrderVariance == 0 ? " At these estimates every sensitivity is zero." : "")
            + " The distribution is not normal: prefer a Monte Carlo interval.";
    }

    /** Numerical tolerance of a standard uncertainty at two significant digits (JCGM 101:2008, 7.9.2). */
    private static double tolerance(double u) {
        return NumericalTolerance.of(u, 2);
    }

    /** The order asked for. */
    Budget budget(Order order) {
        final SecondOrder second = new SecondOrder(model, contributions);
        if (order == Order.SECOND && firstOrderVariance + second.variance() < 0) {
            throw new IllegalArgumentException("the second-order variance of " + model.measurand()
                + " is negative: the Taylor series does not describe the model within the uncertainties");
        }
        return assemble(order, second, List.of());
    }

    private Budget assemble(Order order, SecondOrder second, List<String> reasons) {
        final double variance = firstOrderVariance + (order == Order.SECOND ? second.variance() : 0);
        final int[] groups = model.matrix().groups();
        final List<BudgetLine> lines = new ArrayList<>();
        final List<String> warnings = new ArrayList<>(reasons);
        for (int i = 0; i < n; i++) {
            final double share = variance == 0 ? 0 : 100 * contributions[i] * correlatedSum(i) / variance;
            final Optional<String> group = groups[i] == 0 ? Optional.empty()
                : Optional.of("group " + groups[i]);
            lines
                .add(new BudgetLine(model.inputs().get(i), sensitivities[i], contributions[i], share, group));
            if (sensitivities[i].error() * u[i] > 1e-3 * Math.sqrt(variance)) {
                warnings.add("The sensitivity to " + name(i) + " is known only within "
                    + NumberText.uncertainty(sensitivities[i].error())
                    + ": the model is not smooth there. Use Monte Carlo.");
            }
        }
        final Optional<DegreesOfFreedom> dof = effectiveDof(variance);
        if (dof.isEmpty()) {
            warnings.add("Effective degrees of freedom are not determined: inputs of "
                + "finite degrees of freedom are correlated, and the Welch-Satterthwaite formula holds for "
                + "independent ones only.");
        }
        return new Budget(model.measurand(), model.unit(), order, value, Math.sqrt(variance),
            second.meanShift(),
            dof, lines, second.terms(), warnings);
    }

    /** Welch-Satterthwaite formula (JCGM 100:2008, G.4.1); second-order terms count as exactly known. */
    private Optional<DegreesOfFreedom> effectiveDof(double variance) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            final double reciprocal = model.inputs().get(i).dof().reciprocal();
            final double share = variance == 0 ? 0 : contributions[i] * contributions[i] / variance;
            if (share * reciprocal > 0 && model.matrix().isCorrelated(i)) {
                return Optional.empty();
            }
            sum += share * share * reciprocal;
        }
        return Optional.of(sum == 0 ? DegreesOfFreedom.UNLIMITED : DegreesOfFreedom.of(1 / sum));
    }
}
