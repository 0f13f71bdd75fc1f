package spanwright.chain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import spanwright.uncertainty.Constant;
import spanwright.uncertainty.Correlation;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.MeasurementModel;
import spanwright.uncertainty.Normal;

/**
 * The error of a chain at one input as a measurement model, percent of the chain's output span. Elements are
 * linearised about their ideal signal; coefficient times excursion is kept as a product.
 */
final class ErrorModel {
    private static final String MEASURAND = "error of the chain";
    private static final String UNIT = "% of span";

    private final double inputPercent;
    private final TemperatureLayout layout;
    private final List<ErrorRow> rows;
    private final List<Known> known;
    private final List<SharedCause> shared;

    /** A known error: {@code weight * value}, times an excursion if it acts per kelvin. */
    private record Known(double weighted, Optional<ModuleTemperature> temperature) {
        double at(double[] temperatures) {
            return weighted * temperature.map(t -> t.excursion(temperatures)).orElse(1.0);
        }
    }

    private ErrorModel(double inputPercent, TemperatureLayout layout, List<ErrorRow> rows, List<Known> known,
                       List<SharedCause> shared) {
        this.inputPercent = inputPercent;
        this.layout = layout;
        this.rows = rows;
        this.known = known;
        this.shared = shared;
    }

    static ErrorModel of(MeasuringChain chain, TemperatureLayout layout, double inputPercent) {
        final SignalPath path = SignalPath.of(chain.elements(), inputPercent);
        final Map<String, ErrorRow> rows = new LinkedHashMap<>();
        final List<Known> known = new ArrayList<>();
        for (int i = 0; i < chain.elements().size(); i++) {
            final ChainElement element = chain.elements().get(i);
            for (ErrorTerm term : element.terms()) {
                final double weight = path.gains().get(i) * term.profile().at(path.positions().get(i));
                final Optional<ModuleTemperature> temperature = term.basis().perKelvin()
                    ? layout.module(element.name()) : Optional.empty();
                if (term.distribution() instanceof Constant c) {
                    known.add(new Known(weight * c.mean(), temperature));
                } else {
                    final ErrorRow row = row(element, term, weight, temperature);
                    rows.merge(row.label(), row, ErrorModel::merge);
                }
            }
        }
        return new ErrorModel(inputPercent, layout, List.copyOf(rows.values()), known, chain.shared());
    }

    /** The name of a term's cause in the chain: that of the standard where it is shared. */
    static String label(ChainElement element, ErrorTerm term) {
        return term.basis().standardId().map(id -> "standard " + id)
            .orElseGet(() -> element.name() + ": " + term.name());
    }

    private static ErrorRow row(ChainElement element, ErrorTerm term, double weight,
                                Optional<ModuleTemperature> temperature) {
        if (term.basis().standardId().isPresent()) {
            return new ErrorRow(label(element, term), List.of(element.name()),
                term.influence(), new Normal(0, 1), weight * term.u(), ErrorTerm.FACTOR_WITHOUT_LIMIT,
                Optional.empty(), term.basis());
        }
        return new ErrorRow(label(element, term), List.of(element.name()), term.influence(),
            term.distribution(), weight, term.limit(), temperature, term.basis());
    }

    /** Two elements with one standard: one error, with the sum of the weights. */
    private static ErrorRow merge(ErrorRow a, ErrorRow b) {
        return new ErrorRow(a.label(), Stream.concat(a.elements().stream(), b.elements().stream()).toList(),
            a.influence(), a.distribution(), a.weight() + b.weight(), a.limit(), a.temperature(), a.basis());
    }

    double inputPercent() {
        return inputPercent;
    }

    List<ErrorRow> rows() {
        return rows;
    }

    TemperatureLayout layout() {
        return layout;
    }

    /** Known part of the error at these temperatures: with its sign. */
    double bias(double[] temperatures) {
        return known.stream().mapToDouble(k -> k.at(temperatures)).sum()
            + rows.stream().mapToDouble(r -> r.factor(temperatures) * r.distribution().mean()).sum();
    }

    /** Known part outside the rows, at these temperatures. */
    private double offset(double[] temperatures) {
        return known.stream().mapToDouble(k -> k.at(temperatures)).sum();
    }

    /** Worst case at these temperatures: the known error with its sign, and every limit against the claim. */
    double worstCase(double[] temperatures) {
        return Math.abs(bias(temperatures))
            + rows.stream().mapToDouble(r -> Math.abs(r.factor(temperatures)) * r.limit()).sum();
    }

    /** Known error and the root of the sum of the squared limits, as if all were independent. */
    double rootSumOfSquares(double[] temperatures) {
        return Math.abs(bias(temperatures)) + Math.sqrt(rows.stream()
            .mapToDouble(r -> Math.pow(r.factor(temperatures) * r.limit(), 2)).sum());
    }

    /**
     * The measurement model at these temperatures. Linear where no temperature is spread over time; else with
     * the temperatures as inputs.
     */
    MeasurementModel at(double[] temperatures) {
        return at(temperatures, false);
    }

    /** The measurement model with every temperature fixed, also those that are spread over time. */
    MeasurementModel atFixed(double[] temperatures) {
        return at(temperatures, true);
    }

    private MeasurementModel at(double[] temperatures, boolean fixAll) {
        final List<InputQuantity> inputs = new ArrayList<>();
        rows.forEach(r -> inputs.add(InputQuantity.of(r.label(), r.distribution())));
        final List<TemperatureVariable> variables = layout.variables();
        final int[] inputOf = new int[variables.size()];
        for (int v = 0; v < inputOf.length; v++) {
            final int index = v;
            inputOf[v] = -1;
            if (!fixAll && variables.get(v).isRandom() && rows.stream().anyMatch(r -> uses(r, index))) {
                inputOf[v] = inputs.size();
                inputs.add(InputQuantity.of(variables.get(v).name(),
                    variables.get(v).distribution().orElseThrow()));
            }
        }
        final MeasurementModel model;
        if (inputs.size() == rows.size()) {
            model = MeasurementModel.linear(MEASURAND, UNIT, inputs, offset(temperatures),
                rows.stream().mapToDouble(r -> r.factor(temperatures)).toArray());
        } else {
            final ChainFormula f = new ChainFormula(offset(temperatures), rows, temperatures, inputOf);
            model = MeasurementModel.of(MEASURAND, UNIT, inputs, f).withGradient(f).withBlocks(f);
        }
        return model.withCorrelations(correlations());
    }

    private static boolean uses(ErrorRow row, int variable) {
        return row.temperature().map(t -> t.variables().contains(variable)).orElse(false);
    }

    /**
     * Pairs of rows that a shared cause correlates: same influence, same term name, different elements; a row
     * without spread has nothing to correlate.
     */
    List<Correlation> correlations() {
        final List<Correlation> pairs = new ArrayList<>();
        for (SharedCause cause : shared) {
            final List<ErrorRow> concerned = rows.stream().filter(r -> r.influence() == cause.influence()
                && r.distribution().standardUncertainty() > 0 && r.elements().size() == 1 && cause.elements()
                    .contains(r.elements().get(0))).toList();
            for (int i = 0; i < concerned.size(); i++) {
                for (int j = i + 1; j < concerned.size(); j++) {
                    if (suffix(concerned.get(i)).equals(suffix(concerned.get(j)))) {
                        pairs.add(new Correlation(concerned.get(i).label(), concerned.get(j).label(),
                            cause.coefficient()));
                    }
                }
            }
        }
        return pairs;
    }

    private static String suffix(ErrorRow row) {
        return row.label().substring(row.elements().get(0).length());
    }
}
