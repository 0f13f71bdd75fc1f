package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/** 200 random designs against R's lm, anova and predict: test-data/published/r_designs.R made the numbers. */
class AgreesWithRTest {
    private static final double RELATIVE = 1e-10;

    private final Map<String, Double> expected = new LinkedHashMap<>();
    private final Map<Integer, List<double[]>> rows = new LinkedHashMap<>();
    private final Map<Integer, String> kinds = new LinkedHashMap<>();
    private final Set<String> compared = new HashSet<>();

    @Test
    void in200Designs() {
        PublishedData.load("r_designs_results").rows()
            .forEach(r -> expected.put(r.get(0) + " " + r.get(1), Double.parseDouble(r.get(2))));
        PublishedData.load("r_designs_data").rows().forEach(r -> {
            final int design = Integer.parseInt(r.get(0));
            kinds.put(design, r.get(1));
            rows.computeIfAbsent(design, k -> new ArrayList<>())
                .add(r.stream().skip(2).mapToDouble(Double::parseDouble).toArray());
        });
        kinds.forEach((design, kind) -> compare(design, kind, rows.get(design)));
        assertThat(kinds).hasSize(200);
        assertThat(compared).isEqualTo(expected.keySet());
    }

    private void compare(int design, String kind, List<double[]> data) {
        final double[] x = column(data, 0);
        final double[] y = column(data, 4);
        switch (kind) {
            case "line" -> {
                line(design, CalibrationLine.fit(x, y));
                // The same design once more through the general regression.
                regression(design, LinearRegression.fit(regressors(data, 1), y), 11.5);
            }
            case "weighted" -> {
                line(design, CalibrationLine.fitWeighted(x, y, column(data, 3)));
                regression(design, LinearRegression.fitWeighted(regressors(data, 1), y, column(data, 3)),
                    11.5);
            }
            case "origin" -> origin(design, x, y, data);
            case "quadratic" -> polynomial(design, PolynomialCurve.fit(x, y, 2));
            case "cubic" -> polynomial(design, PolynomialCurve.fit(x, y, 3));
            case "three" -> regression(design, LinearRegression.fit(regressors(data, 3), y), 11.5, 23,
                250);
            case "replicates" -> lackOfFit(design, LackOfFit.of(x, y, 1).analysis());
            case "oneway" -> oneWay(design, x, y);
            case "nested" -> nested(design, x, column(data, 1), y);
            default -> throw new AssertionError(kind);
        }
    }

    private void line(int design, CalibrationLine line) {
        coefficients(design, 2, k -> k == 0 ? line.intercept() : line.slope());
        equal(design, "sigma", line.residualSd());
        equal(design, "df", line.slope().dof().count());
        bands(design, line.at(11.5), line.confidenceBand(11.5, 0.95), line.predictionBand(11.5, 0.95));
    }

    private void origin(int design, double[] x, double[] y, List<double[]> data) {
        final LineThroughPoint line = LineThroughPoint.fit(x, y, 0, 0);
        coefficients(design, 1, k -> line.slope());
        equal(design, "sigma", line.residualSd());
        equal(design, "df", line.slope().dof().count());
        bands(design, line.at(11.5), line.confidenceBand(11.5, 0.95), line.predictionBand(11.5, 0.95));
        final LinearRegression r = LinearRegression.fitThroughOrigin(regressors(data, 1), y);
        coefficients(design, 1, k -> r.coefficient(1));
        common(design, r.residualSd(), r.rSquared(), r.dof());
        bands(design, r.at(11.5), r.confidenceBand(0.95, 11.5), r.predictionBand(0.95, 11.5));
    }

    private void polynomial(int design, PolynomialCurve curve) {
        coefficients(design, curve.degree() + 1, curve::coefficient);
        common(design, curve.residualSd(), curve.rSquared(), curve.dof());
        bands(design, curve.at(11.5), curve.confidenceBand(11.5, 0.95), curve.predictionBand(11.5, 0.95));
    }

    private void regression(int design, LinearRegression r, double... at) {
        coefficients(design, at.length + 1, k -> k == 0 ? r.intercept() : r.coefficient(k));
        common(design, r.residualSd(), r.rSquared(), r.dof());
        bands(design, r.at(at), r.confidenceBand(0.95, at), r.predictionBand(0.95, at));
    }

    private void lackOfFit(int design, AnalysisOfVariance a) {
        equal(design, "lack_ss", a.source(LackOfFit.LACK_OF_FIT).sumOfSquares());
        equal(design, "lack_df", a.source(LackOfFit.LACK_OF_FIT).degreesOfFreedom());
        equal(design, "pure_ss", a.last().sumOfSquares());
        equal(design, "pure_df", a.last().degreesOfFreedom());
        equal(design, "f", a.ratio(LackOfFit.LACK_OF_FIT).orElseThrow());
        equal(design, "p", a.probability(LackOfFit.LACK_OF_FIT).orElseThrow());
    }

    private void oneWay(int design, double[] x, double[] y) {
        final double[][] groups = Arrays.stream(x).distinct()
            .mapToObj(g -> IntStream.range(0, x.length).filter(i -> x[i] == g)
                .mapToDouble(i -> y[i]).toArray()).toArray(double[][]::new);
        final AnalysisOfVariance a = AnalysisOfVariance.oneWay("group", groups);
        equal(design, "between_ss", a.source("group").sumOfSquares());
        equal(design, "between_df", a.source("group").degreesOfFreedom());
        equal(design, "within_ss", a.last().sumOfSquares());
        equal(design, "within_df", a.last().degreesOfFreedom());
        equal(design, "f", a.ratio("group").orElseThrow());
        equal(design, "p", a.probability("group").orElseThrow());
    }

    private void nested(int design, double[] day, double[] direction, double[] y) {
        final Map<String, List<String>> factors = new LinkedHashMap<>();
        factors.put("day", Arrays.stream(day).mapToObj(Double::toString).toList());
        factors.put("direction", Arrays.stream(direction).mapToObj(Double::toString).toList());
        final AnalysisOfVariance a = AnalysisOfVariance.nested(y, factors);
        for (int k = 0; k < 3; k++) {
            equal(design, "ss" + (k + 1), a.sources().get(k).sumOfSquares());
            equal(design, "df" + (k + 1), a.sources().get(k).degreesOfFreedom());
        }
        equal(design, "f1", a.ratio("day").orElseThrow());
        equal(design, "p1", a.probability("day").orElseThrow());
        equal(design, "f2", a.ratio("direction").orElseThrow());
        equal(design, "p2", a.probability("direction").orElseThrow());
    }

    private void coefficients(int design, int count, IntFunction<Estimate> b) {
        for (int k = 0; k < count; k++) {
            equal(design, "b" + k, b.apply(k).value());
            equal(design, "u" + k, b.apply(k).u());
        }
    }

    private void common(int design, double sigma, double rSquared, DegreesOfFreedom dof) {
        equal(design, "sigma", sigma);
        equal(design, "r2", rSquared);
        equal(design, "df", dof.count());
    }

    private void bands(int design, Estimate at, Interval confidence, Interval prediction) {
        equal(design, "at", at.value());
        equal(design, "se", at.u());
        equal(design, "conf_lower", confidence.lower());
        equal(design, "conf_upper", confidence.upper());
        equal(design, "pred_lower", prediction.lower());
        equal(design, "pred_upper", prediction.upper());
    }

    private void equal(int design, String what, double actual) {
        final double r = expected.get(design + " " + what);
        assertThat(actual).as("design %d (%s), %s", design, kinds.get(design), what)
            .isCloseTo(r, within(RELATIVE * Math.abs(r)));
        compared.add(design + " " + what);
    }

    private static double[] column(List<double[]> data, int index) {
        return data.stream().mapToDouble(r -> r[index]).toArray();
    }

    private static double[][] regressors(List<double[]> data, int count) {
        return data.stream().map(r -> Arrays.copyOf(r, count)).toArray(double[][]::new);
    }

    @Test
    void everyKindOfDesignIsThere() {
        assertThat(new TreeSet<>(PublishedData.load("r_designs_data").texts("kind"))).containsExactly("cubic",
            "line", "nested", "oneway", "origin", "quadratic", "replicates", "three", "weighted");
    }
}
