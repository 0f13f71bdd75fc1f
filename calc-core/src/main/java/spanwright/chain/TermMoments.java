package spanwright.chain;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spanwright.uncertainty.Correlation;

/**
 * Variances and covariances of the causes of error, exact for coefficient times excursion: of two products
 * that share a temperature, {@code cov = wi wj (E[qi qj] E[ti tj] - E[qi]E[ti]E[qj]E[tj])}, coefficients
 * being independent of temperatures. Used to share out the variance; what is claimed comes from the budget
 * and from Monte Carlo.
 */
final class TermMoments {
    private final List<ErrorRow> rows;
    private final List<TemperatureVariable> variables;
    private final double[] temperatures;
    private final Map<List<String>, Double> correlation = new HashMap<>();

    TermMoments(ErrorModel model, double[] temperatures) {
        this.rows = model.rows();
        this.variables = model.layout().variables();
        this.temperatures = temperatures.clone();
        for (int v = 0; v < variables.size(); v++) {
            if (variables.get(v).isRandom()) {
                this.temperatures[v] = variables.get(v).distribution().orElseThrow().mean();
            }
        }
        for (Correlation c : model.correlations()) {
            correlation.put(List.of(c.first(), c.second()), c.coefficient());
            correlation.put(List.of(c.second(), c.first()), c.coefficient());
        }
    }

    /** Standard uncertainty that a cause adds. */
    double u(int i) {
        return Math.sqrt(Math.max(0, covariance(i, i)));
    }

    /** Variance of the whole. */
    double variance() {
        double sum = 0;
        for (int i = 0; i < rows.size(); i++) {
            sum += shared(i);
        }
        return sum;
    }

    /** Variance of a cause and its covariances with all others. */
    double shared(int i) {
        double sum = 0;
        for (int j = 0; j < rows.size(); j++) {
            sum += covariance(i, j);
        }
        return sum;
    }

    private double covariance(int i, int j) {
        final ErrorRow a = rows.get(i);
        final ErrorRow b = rows.get(j);
        final double r = i == j ? 1 : correlation.getOrDefault(List.of(a.label(), b.label()), 0.0);
        final double means = a.distribution().mean() * b.distribution().mean();
        final double products = means
            + r * a.distribution().standardUncertainty() * b.distribution().standardUncertainty();
        final double excursions = a.factor(temperatures) * b.factor(temperatures);
        return products * (excursions + a.weight() * b.weight() * commonVariance(a, b)) - means * excursions;
    }

    /** Variance of the temperatures that multiply both. */
    private double commonVariance(ErrorRow a, ErrorRow b) {
        if (a.temperature().isEmpty() || b.temperature().isEmpty()) {
            return 0;
        }
        return a.temperature().get().variables().stream()
            .filter(v -> b.temperature().get().variables().contains(v) && variables.get(v).isRandom())
            .mapToDouble(v -> variables.get(v).distribution().orElseThrow().standardUncertainty())
            .map(u -> u * u).sum();
    }
}
