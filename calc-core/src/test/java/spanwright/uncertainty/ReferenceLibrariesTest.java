package spanwright.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

/** The engine beside general-purpose libraries; the scripts that made the values lie beside the files. */
class ReferenceLibrariesTest {

    @Test
    @DisplayName("First-order uncertainty of 100 random models as the Python package uncertainties, to 1e-9")
    void firstOrderModels() {
        final PublishedData data = PublishedData.load("first_order_models");
        final List<String> formulas = data.texts("model");
        final List<String> values = data.texts("values");
        final List<String> us = data.texts("u");
        final List<String> correlations = data.texts("correlations");
        final double[] value = data.numbers("value");
        final double[] u = data.numbers("standard_uncertainty");
        assertEquals(100, formulas.size());
        for (int k = 0; k < formulas.size(); k++) {
            final String[] words = formulas.get(k).split(" ");
            final double[] x = numbers(values.get(k));
            final double[] ux = numbers(us.get(k));
            final List<InputQuantity> inputs = IntStream.range(0, x.length)
                .mapToObj(i -> InputQuantity.of("x" + i, new Normal(x[i], ux[i]))).toList();
            final Budget budget = MeasurementModel.of("y", "", inputs, v -> postfix(words, v))
                .withCorrelations(pairs(x.length, numbers(correlations.get(k)))).budget(Order.FIRST);
            assertEquals(value[k], budget.value(), 1e-12 * Math.max(1, Math.abs(value[k])), formulas.get(k));
            assertEquals(u[k], budget.u(), 1e-9 * u[k], formulas.get(k));
            double percent = 0;
            for (final BudgetLine line : budget.lines()) {
                percent += line.percentOfVariance();
                assertTrue(line.sensitivity().error() * line.u() < 1e-7 * budget.u(), line::toString);
            }
            assertEquals(100, percent, 1e-6);
        }
    }

    private static List<Correlation> pairs(int n, double[] triangle) {
        final List<Correlation> pairs = new ArrayList<>();
        int k = 0;
        for (int i = 0; i < n && triangle.length > 0; i++) {
            for (int j = i + 1; j < n; j++) {
                pairs.add(new Correlation("x" + i, "x" + j, triangle[k++]));
            }
        }
        return pairs;
    }

    private static double[] numbers(String text) {
        return text.isEmpty() ? new double[0]
            : java.util.Arrays.stream(text.split(";")).mapToDouble(Double::parseDouble).toArray();
    }

    private static double postfix(String[] words, double[] x) {
        final Deque<Double> stack = new ArrayDeque<>();
        for (final String word : words) {
            if (word.startsWith("x")) {
                stack.push(x[Integer.parseInt(word.substring(1))]);
                continue;
            }
            final double top = stack.pop();
            stack.push(switch (word) {
                case "sqrt" -> Math.sqrt(top);
                case "exp" -> Math.exp(top);
                case "log" -> Math.log(top);
                case "sin" -> Math.sin(top);
                case "neg" -> -top;
                case "+" -> stack.pop() + top;
                case "-" -> stack.pop() - top;
                case "*" -> stack.pop() * top;
                case "/" -> stack.pop() / top;
                default -> throw new IllegalArgumentException(word);
            });
        }
        return stack.pop();
    }

    @Test
    @DisplayName("Quantiles of sums as by SciPy, within five standard errors of 4 million trials")
    void quantilesOfSums() {
        final PublishedData data = PublishedData.load("sums_quantiles");
        final List<String> parts = data.texts("parts");
        final double[] p = data.numbers("probability");
        final double[] quantile = data.numbers("quantile");
        MonteCarloResult result = null;
        for (int k = 0; k < parts.size(); k++) {
            if (k == 0 || !parts.get(k).equals(parts.get(k - 1))) {
                result = sum(parts.get(k)).monteCarlo(MonteCarlo.seeded(20260101).trials(1_000_000));
            }
            final double allowed = 5 * result.quantileError(p[k]) + result.quantileBound(p[k]);
            assertEquals(quantile[k], result.quantile(p[k]), allowed, parts.get(k) + " at " + p[k]);
            assertEquals(-quantile[k], result.quantile(1 - p[k]), allowed, parts.get(k) + " at 1 - " + p[k]);
            assertTrue(result.quantileBound(p[k]) < result.quantileError(p[k]));
        }
    }

    private static MeasurementModel sum(String parts) {
        final List<InputQuantity> inputs = new ArrayList<>();
        for (final String part : parts.split(" ")) {
            final String[] fields = part.split(":");
            final double a = Double.parseDouble(fields[1]);
            inputs.add(InputQuantity.of("x" + inputs.size(), switch (fields[0]) {
                case "rect" -> Rectangular.plusMinus(a);
                case "tri" -> Triangular.around(0, a);
                case "ushape" -> UShaped.around(0, a);
                case "normal" -> Normal.ofUncertainty(a);
                default -> new Trapezoidal(-a, a, Double.parseDouble(fields[2]));
            }));
        }
        final double[] ones = new double[inputs.size()];
        java.util.Arrays.fill(ones, 1);
        return MeasurementModel.linear("sum", "", inputs, 0, ones);
    }

    @Test
    @DisplayName("Sum of three equal rectangles, JCGM 100:2008 G.2.2: 95 % at 1.937, 99 % at 2.379 sigma")
    void threeRectangles() {
        final MonteCarloResult result = sum("rect:1 rect:1 rect:1")
            .monteCarlo(MonteCarlo.seeded(3).trials(4_000_000));
        assertEquals(1, result.u(), 0.002);
        assertEquals(1.937, result.interval(0.95).upper(), 0.0005 + 4 * result.quantileError(0.975));
        assertEquals(2.379, result.interval(0.99).upper(), 0.0005 + 4 * result.quantileError(0.995));
    }
}
