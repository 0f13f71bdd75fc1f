package spanwright.chain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import spanwright.uncertainty.Correlation;

/**
 * Parts of the variance of {@code sum w q (s + t)}, exact since coefficients are independent of temperatures:
 * shared out over the causes with their covariances; or taken apart, of each group of correlated
 * coefficients, of each temperature that is spread over time, and of each pair of the two. They are
 * orthogonal and add up to the whole, since groups and temperatures are independent. Percent of span,
 * squared.
 */
final class VarianceParts {
    private final List<ErrorRow> rows;
    private final List<TemperatureVariable> variables;
    private final double[] means;
    private final Map<List<String>, Double> correlation = new HashMap<>();
    private final List<List<ErrorRow>> groups = new ArrayList<>();

    private VarianceParts(ErrorModel model, double[] temperatures) {
        this.rows = model.rows();
        this.variables = model.layout().variables();
        this.means = temperatures.clone();
        for (int v = 0; v < means.length; v++) {
            if (variables.get(v).isRandom()) {
                means[v] = variables.get(v).distribution().orElseThrow().mean();
            }
        }
        for (Correlation c : model.correlations()) {
            correlation.put(List.of(c.first(), c.second()), c.coefficient());
            correlation.put(List.of(c.second(), c.first()), c.coefficient());
        }
        rows.forEach(this::sort);
    }

    static VarianceParts of(ErrorModel model, double[] temperatures) {
        return new VarianceParts(model, temperatures);
    }

    /** Puts a row into the group of those it is correlated with, joining groups where it is with several. */
    private void sort(ErrorRow row) {
        final List<ErrorRow> joined = new ArrayList<>();
        final List<List<ErrorRow>> touching = groups.stream()
            .filter(g -> g.stream().anyMatch(other -> r(row, other) != 0)).toList();
        touching.forEach(joined::addAll);
        joined.add(row);
        groups.removeAll(touching);
        groups.add(joined);
    }

    private double r(ErrorRow a, ErrorRow b) {
        return a == b ? 1 : correlation.getOrDefault(List.of(a.label(), b.label()), 0.0);
    }

    List<List<ErrorRow>> groups() {
        return groups;
    }

    String label(int group) {
        return groups.get(group).stream().map(ErrorRow::label).collect(Collectors.joining(" with "));
    }

    String temperatureName(int variable) {
        return variables.get(variable).name();
    }

    /** Indices of the temperatures that are spread over time. */
    List<Integer> spread() {
        return IntStream.range(0, variables.size()).filter(v -> variables.get(v).isRandom()).boxed().toList();
    }

    /** Standard uncertainty that a cause adds, its temperature included. */
    double u(ErrorRow row) {
        return Math.sqrt(Math.max(0, covariance(row, row)));
    }

    /** Variance of a cause and its covariances with all others: what it has of the whole. */
    double shareOf(ErrorRow row) {
        return rows.stream().mapToDouble(other -> covariance(row, other)).sum();
    }

    private double covariance(ErrorRow a, ErrorRow b) {
        final double common = spread().stream().filter(v -> uses(a, v) && uses(b, v))
            .mapToDouble(this::variance).sum() * a.weight() * b.weight();
        return r(a, b) * a.distribution().standardUncertainty() * b.distribution().standardUncertainty()
            * (a.factor(means) * b.factor(means) + common)
            + a.distribution().mean() * b.distribution().mean() * common;
    }

    double ofGroup(int group) {
        return sumOfPairs(groups.get(group), (a, b) -> a.factor(means) * b.factor(means));
    }

    double ofTemperature(int variable) {
        final double slope = rows.stream().filter(r -> uses(r, variable))
            .mapToDouble(r -> r.weight() * r.distribution().mean()).sum();
        return slope * slope * variance(variable);
    }

    double interactionsOfGroup(int group) {
        return spread().stream().mapToDouble(v -> interaction(group, v)).sum();
    }

    double interactionsOfTemperature(int variable) {
        return IntStream.range(0, groups.size()).mapToDouble(g -> interaction(g, variable)).sum();
    }

    double whole() {
        return IntStream.range(0, groups.size()).mapToDouble(g -> ofGroup(g) + interactionsOfGroup(g)).sum()
            + spread().stream().mapToDouble(this::ofTemperature).sum();
    }

    private double interaction(int group, int variable) {
        return variance(variable) * sumOfPairs(
            groups.get(group).stream().filter(r -> uses(r, variable)).toList(),
            (a, b) -> a.weight() * b.weight());
    }

    private double sumOfPairs(List<ErrorRow> list, ToDoubleBiFunction<ErrorRow, ErrorRow> weight) {
        double sum = 0;
        for (ErrorRow a : list) {
            for (ErrorRow b : list) {
                sum += weight.applyAsDouble(a, b) * r(a, b) * a.distribution().standardUncertainty()
                    * b.distribution().standardUncertainty();
            }
        }
        return Math.max(0, sum);
    }

    private static boolean uses(ErrorRow row, int variable) {
        return row.temperature().map(t -> t.variables().contains(variable)).orElse(false);
    }

    private double variance(int variable) {
        final double u = variables.get(variable).distribution().orElseThrow().standardUncertainty();
        return u * u;
    }
}
