package spanwright.uncertainty;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import spanwright.quantity.Checks;

/**
 * A measurand as a function of named input quantities (JCGM 100:2008, 4.1; JCGM 101:2008, clause 5). From it
 * come the
 * {@link #budget() budget} and the {@link #monteCarlo(MonteCarlo) Monte Carlo} result.
 *
 * <p>Immutable, and safe for use by several threads if the formula is.
 */
public final class MeasurementModel {
    private final String measurand;
    private final String unit;
    private final List<InputQuantity> inputs;
    private final List<String> names;
    private final List<Correlation> correlations;
    private final CorrelationMatrix matrix;
    private final Formula formula;
    private final Optional<BlockFormula> blocks;
    private final Optional<Gradient> gradient;

    private MeasurementModel(String measurand, String unit, List<InputQuantity> inputs,
                             List<Correlation> correlations, Functions functions) {
        this.measurand = Checks.notBlank("measurand", measurand);
        this.unit = Objects.requireNonNull(unit, "unit");
        this.inputs = List.copyOf(inputs);
        this.correlations = List.copyOf(correlations);
        this.names = checkedNames(this.inputs);
        this.matrix = CorrelationMatrix.of(names, this.correlations);
        this.formula = functions.formula;
        this.blocks = functions.blocks;
        this.gradient = functions.gradient;
    }

    private record Functions(Formula formula, Optional<BlockFormula> blocks, Optional<Gradient> gradient) { }

    private static List<String> checkedNames(List<InputQuantity> inputs) {
        Checks.atLeast("number of input quantities", inputs.size(), 1);
        final Set<String> seen = new LinkedHashSet<>();
        for (final InputQuantity input : inputs) {
            if (!seen.add(input.name())) {
                throw new IllegalArgumentException("two input quantities are named " + input.name());
            }
        }
        return List.copyOf(seen);
    }

    /**
     * A model of independent inputs.
     *
     * @param measurand what is measured, as a budget names it
     * @param unit      its unit, as text; may be empty
     * @param inputs    at least 1, with different names
     * @param formula   the measurand from the inputs, in the order of the list
     * @throws IllegalArgumentException if there is no input or two have the same name
     */
    public static MeasurementModel of(String measurand, String unit, List<InputQuantity> inputs,
        Formula formula) {
        Objects.requireNonNull(formula, "formula");
        return new MeasurementModel(measurand, unit, inputs, List.of(),
            new Functions(formula, Optional.empty(), Optional.empty()));
    }

    /**
     * A model of independent inputs whose formula asks for them by name: readable, and slower in Monte Carlo
     * than one over an array.
     *
     * @throws IllegalArgumentException if there is no input or two have the same name; when the formula asks
     *     for a name that no input has
     */
    public static MeasurementModel named(String measurand, String unit, List<InputQuantity> inputs,
                                         NamedFormula formula) {
        Objects.requireNonNull(formula, "formula");
        final Map<String, Integer> places = new HashMap<>();
        inputs.forEach(input -> places.put(input.name(), places.size()));
        return of(measurand, unit, inputs, x -> formula.value(name -> {
            final Integer place = places.get(name);
            if (place == null) {
                throw new IllegalArgumentException("no input is named " + name + "; there are "
                    + places.keySet());
            }
            return x[place];
        }));
    }

    /**
     * A linear model: {@code offset} plus the sum of coefficient times input. Its sensitivities are exact.
     *
     * @param coefficients one for each input, in the order of the list; not modified
     * @throws IllegalArgumentException if their number differs from that of the inputs, or one is not finite
     */
    public static MeasurementModel linear(String measurand, String unit, List<InputQuantity> inputs,
        double offset,
                                          double... coefficients) {
        final LinearModel sum = new LinearModel(offset, Checks.finiteAll("coefficients", coefficients, 1));
        if (coefficients.length != inputs.size()) {
            throw new IllegalArgumentException(
                coefficients.length + " coefficients for " + inputs.size() + " input quantities");
        }
        return new MeasurementModel(measurand, unit, inputs, List.of(),
            new Functions(sum, Optional.of(sum), Optional.of(sum)));
    }

    /**
     * This model with correlated inputs; pairs not mentioned stay uncorrelated. Replaces earlier ones.
     *
     * @throws IllegalArgumentException if a name is unknown, a pair is given twice, or the coefficients are
     *     not possible together (not positive semi-definite); the pair is named
     */
    public MeasurementModel withCorrelations(List<Correlation> pairs) {
        return new MeasurementModel(measurand, unit, inputs, pairs, new Functions(formula, blocks, gradient));
    }

    /** As the other. */
    public MeasurementModel withCorrelations(Correlation... pairs) {
        return withCorrelations(List.of(pairs));
    }

    /** This model with exact sensitivity coefficients in place of differences. */
    public MeasurementModel withGradient(Gradient exact) {
        return new MeasurementModel(measurand, unit, inputs, correlations,
            new Functions(formula, blocks, Optional.of(exact)));
    }

    /**
     * This model with a formula for many trials at once. It must agree with the scalar one: this is checked
     * on the first trials of every Monte Carlo run.
     */
    public MeasurementModel withBlocks(BlockFormula fast) {
        return new MeasurementModel(measurand, unit, inputs, correlations,
            new Functions(formula, Optional.of(fast), gradient));
    }

    /** This model with one input replaced by another distribution, for what-if questions. */
    public MeasurementModel withInput(String name, Distribution distribution) {
        final List<InputQuantity> changed = new ArrayList<>(inputs);
        final int i = indexOf(name);
        changed.set(i, InputQuantity.of(name, distribution));
        return new MeasurementModel(measurand, unit, changed, correlations,
            new Functions(formula, blocks, gradient));
    }

    /** Position of an input. */
    int indexOf(String name) {
        final int i = names().indexOf(name);
        if (i < 0) {
            throw new IllegalArgumentException("no input is named " + name + "; there are " + names());
        }
        return i;
    }

    /** GUM budget, of first or second order as the model needs (JCGM 100:2008, 5.1.2). */
    public Budget budget() {
        return new Propagation(this).budget();
    }

    /** GUM budget of the order asked for. */
    public Budget budget(Order order) {
        return new Propagation(this).budget(order);
    }

    /** Runs the Monte Carlo method (JCGM 101:2008) with these settings. */
    public MonteCarloResult monteCarlo(MonteCarlo settings) {
        return settings.run(this);
    }

    /** What is measured. */
    public String measurand() {
        return measurand;
    }

    /** Unit of the measurand; empty for a pure number. */
    public String unit() {
        return unit;
    }

    /** The inputs in the order of the formula. */
    public List<InputQuantity> inputs() {
        return inputs;
    }

    /** The correlations stated. */
    public List<Correlation> correlations() {
        return correlations;
    }

    /** Names of the inputs in the order of the formula. */
    public List<String> names() {
        return names;
    }

    /** The formula over one trial. */
    public Formula formula() {
        return formula;
    }

    /** The formula over many trials, where there is one. */
    public Optional<BlockFormula> blocks() {
        return blocks;
    }

    /** Exact sensitivities, where they are known. */
    public Optional<Gradient> gradient() {
        return gradient;
    }

    CorrelationMatrix matrix() {
        return matrix;
    }

    @Override
    public String toString() {
        return measurand + (unit.isEmpty() ? "" : " in " + unit) + " from " + String.join(", ", names());
    }
}
