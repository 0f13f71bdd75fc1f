package spanwright.chain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import spanwright.quantity.Celsius;
import spanwright.quantity.NumberText;
import spanwright.readings.Transfer;
import spanwright.temperature.DurationCurve;
import spanwright.temperature.HourlyHistory;
import spanwright.uncertainty.Budget;
import spanwright.uncertainty.CoverageInterval;
import spanwright.uncertainty.ExpandedUncertainty;
import spanwright.uncertainty.MonteCarlo;
import spanwright.uncertainty.MonteCarloResult;

/** Works out the error of one chain at one coverage. */
final class Evaluation {
    private static final int INPUT_STEPS = 20;
    private static final int TEMPERATURE_STEPS = 22;

    private final MeasuringChain chain;
    private final Coverage coverage;
    private final TemperatureLayout layout;

    /** One input at one corner of the temperatures of which only the range is known, with its GUM figures. */
    private record Case(ErrorModel model, double[] corner, double knownError, double expanded) {
        double gum() {
            return Math.abs(knownError) + expanded;
        }
    }

    Evaluation(MeasuringChain chain, Coverage coverage) {
        this.chain = chain;
        this.coverage = coverage;
        this.layout = TemperatureLayout.of(chain.elements(), chain.ambient());
        if (chain.elements().stream().allMatch(e -> e.terms().isEmpty())) {
            throw new IllegalArgumentException("no element of the chain has an error term: " + chain);
        }
    }

    /** What must be known before anything can be said. */
    List<String> missing() {
        return layout.missing();
    }

    /** The largest known error plus expanded uncertainty over all inputs and temperatures. */
    double largestGum() {
        requireComplete();
        return worst().gum();
    }

    /** The largest worst case over all inputs and temperatures. */
    double largestWorstCase() {
        requireComplete();
        return inputs().stream().map(x -> ErrorModel.of(chain, layout, x))
            .mapToDouble(m -> layout.corners(false).stream().mapToDouble(m::worstCase).max().orElseThrow())
            .max().orElseThrow();
    }

    ChainError error() {
        requireComplete();
        final List<Case> cases = cases();
        final Case worst = worst(cases);
        final Budget budget = worst.model().at(worst.corner()).budget();
        final MonteCarloResult trials = worst.model().at(worst.corner())
            .monteCarlo(MonteCarlo.seeded(chain.run().seed()).trials(chain.run().trials()));
        final List<String> warnings = new ArrayList<>(budget.warnings());
        warnings.addAll(Reservations.ofCoefficients(chain));
        warnings.addAll(SquareRoots.warnings(chain, cases.get(0).model().inputPercent(),
            largest(cases, Case::gum)));
        final VarianceParts parts = VarianceParts.of(worst.model(), worst.corner());
        final ChainError.Detail detail = new ChainError.Detail(contributions(worst, parts),
            SobolIndex.of(parts), cases.stream().map(this::inputError).toList(), byTemperature(worst),
            Register.of(chain, worst.model()), warnings);
        return new ChainError(chain, coverage, point(worst), methods(worst, budget, trials), budget, trials,
            detail);
    }

    /**
     * The GUM figure at each hour's temperature, joined by straight lines on a grid. Between grid points the
     * figure is convex in the temperature, so the line is not below it.
     */
    DurationCurve durationCurve(HourlyHistory history) {
        requireComplete();
        final List<TemperatureError> grid = byTemperature(worst());
        if (grid.isEmpty()) {
            throw new IllegalArgumentException("the error of the chain does not depend on the outdoor"
                + " temperature: " + chain);
        }
        final double low = history.lowest().value();
        final double step = (history.highest().value() - low) / TEMPERATURE_STEPS;
        return new DurationCurve(history.hours().stream().map(h -> {
            final double place = (h.temperature().value() - low) / step;
            final int below = (int) Math.min(Math.floor(place), TEMPERATURE_STEPS - 1);
            final double share = place - below;
            return grid.get(below).largest() * (1 - share) + grid.get(below + 1).largest() * share;
        }).toList());
    }

    private static double largest(List<Case> cases, ToDoubleFunction<Case> figure) {
        return cases.stream().mapToDouble(figure).max().orElseThrow();
    }

    private void requireComplete() {
        if (!missing().isEmpty()) {
            throw new IllegalArgumentException("the error of the chain is not determined; missing: "
                + String.join("; ", missing()));
        }
    }

    /** The worst corner at each input, inputs rising. */
    private List<Case> cases() {
        final List<Case> cases = new ArrayList<>();
        for (double input : inputs()) {
            final ErrorModel model = ErrorModel.of(chain, layout, input);
            cases.add(layout.corners(true).stream().map(corner -> gum(model, corner))
                .max(Comparator.comparingDouble(Case::gum)).orElseThrow());
        }
        return cases;
    }

    private Case worst() {
        return worst(cases());
    }

    /** The case with the largest figure; of equal ones that with the largest input. */
    private static Case worst(List<Case> cases) {
        Case worst = cases.get(0);
        for (Case c : cases) {
            worst = c.gum() >= worst.gum() * (1 - 1e-12) ? c : worst;
        }
        return worst;
    }

    /**
     * Inputs in percent; a square root has no slope at the lower range value, so such a chain starts above
     * it.
     */
    private List<Double> inputs() {
        final boolean root = chain.elements().stream().anyMatch(e -> e.transfer() == Transfer.SQUARE_ROOT);
        final List<Double> inputs = new ArrayList<>();
        for (int i = root ? 1 : 0; i <= INPUT_STEPS; i++) {
            inputs.add(100.0 * i / INPUT_STEPS);
        }
        return inputs;
    }

    private Case gum(ErrorModel model, double[] corner) {
        final Budget budget = model.at(corner).budget();
        return new Case(model, corner, budget.value(), expanded(budget).expanded());
    }

    private ExpandedUncertainty expanded(Budget budget) {
        if (coverage.fixedFactor().isPresent()) {
            final double k = coverage.fixedFactor().getAsDouble();
            return new ExpandedUncertainty(budget.value(), k * budget.u(), k, coverage.probability(),
                "agreed factor");
        }
        return budget.expanded(coverage.forFactor());
    }

    private InputError inputError(Case c) {
        double worstCase = 0;
        double root = 0;
        for (double[] corner : layout.corners(false)) {
            worstCase = Math.max(worstCase, c.model().worstCase(corner));
            root = Math.max(root, c.model().rootSumOfSquares(corner));
        }
        return new InputError(c.model().inputPercent(), c.knownError(), worstCase, root, c.gum());
    }

    private FourMethods methods(Case c, Budget budget, MonteCarloResult trials) {
        final InputError limits = inputError(c);
        final ExpandedUncertainty u = expanded(budget);
        final AbsoluteError size = new AbsoluteError(trials);
        final CoverageInterval shortest = trials.shortest(coverage.probability());
        return new FourMethods(c.knownError(),
            new MethodFigure(MethodFigure.Method.WORST_CASE, limits.worstCase(), "all limits at once"),
            new MethodFigure(MethodFigure.Method.ROOT_SUM_OF_SQUARES, limits.rootSumOfSquares(),
                "as if independent; covers no stated share"),
            new MethodFigure(MethodFigure.Method.GUM, c.gum(), "u = " + NumberText.uncertainty(budget.u())
                + ", k = " + NumberText.fixed(u.k(), 2) + ", " + u.basis()),
            new MethodFigure(MethodFigure.Method.MONTE_CARLO, size.quantile(coverage.probability()),
                NumberText.plain(100 * coverage.probability(), 4) + " % of " + trials.trials()
                    + " trials, seed " + trials.seed() + ", numerical error "
                    + NumberText.uncertainty(size.quantileError(coverage.probability()))
                    + ", shortest interval " + NumberText.fixed(shortest.lower(), 3) + " to "
                    + NumberText.fixed(shortest.upper(), 3)));
    }

    private List<Contribution> contributions(Case c, VarianceParts parts) {
        final double variance = parts.whole();
        final List<Contribution> all = new ArrayList<>();
        for (ErrorRow row : c.model().rows()) {
            final List<double[]> corners = row.isProduct(layout.variables()) ? layout.corners(false)
                : List.<double[]>of(c.corner());
            final double reach = corners.stream()
                .mapToDouble(t -> Math.abs(row.factor(t)) * row.limit()).max().orElseThrow();
            all.add(new Contribution(row.label(), row.elements(), row.influence(), row.distribution().kind(),
                row.factor(c.corner()) * row.distribution().mean(), reach, parts.u(row),
                variance == 0 ? 0 : 100 * parts.shareOf(row) / variance, row.basis()));
        }
        all.sort(Comparator.comparingDouble((Contribution k) -> -Math.abs(k.percentOfVariance()))
            .thenComparing(Contribution::label));
        return all;
    }

    /**
     * Error against the outdoor temperature of the chain's ambient, other temperatures as in the worst case.
     */
    private List<TemperatureError> byTemperature(Case c) {
        final int outdoor = layout.variables().stream().map(TemperatureVariable::name).toList()
            .indexOf(TemperatureLayout.OUTDOOR);
        if (outdoor < 0 || layout.variables().get(outdoor).isSteady()) {
            return List.of();
        }
        final TemperatureVariable range = layout.variables().get(outdoor);
        final List<TemperatureError> curve = new ArrayList<>();
        for (int i = 0; i <= TEMPERATURE_STEPS; i++) {
            final double[] at = c.corner().clone();
            at[outdoor] = range.low() + (range.high() - range.low()) * i / TEMPERATURE_STEPS;
            final Budget budget = c.model().atFixed(at).budget();
            curve.add(new TemperatureError(new Celsius(at[outdoor]), budget.value(),
                expanded(budget).expanded(), c.model().worstCase(at)));
        }
        return curve;
    }

    private OperatingPoint point(Case c) {
        final Map<String, Double> fixed = new LinkedHashMap<>();
        for (int v = 0; v < layout.variables().size(); v++) {
            if (!layout.variables().get(v).isRandom()) {
                fixed.put(layout.variables().get(v).name(), c.corner()[v]);
            }
        }
        return OperatingPoint.of(c.model().inputPercent(), fixed);
    }
}
