package spanwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Whether a line or polynomial describes the readings: the scatter of the point means about the curve, tested
 * against the scatter of repeated readings about their own mean.
 *
 * @param analysis sources {@value #LACK_OF_FIT} and {@value #REPLICATES}
 */
public record LackOfFit(AnalysisOfVariance analysis) {
    /** Name of the source that the curve should not leave. */
    public static final String LACK_OF_FIT = "lack of fit";
    /** Name of the source that no curve can take up. */
    public static final String REPLICATES = "replicates";

    /** Checks the component. */
    public LackOfFit {
        Objects.requireNonNull(analysis, "analysis");
    }

    /**
     * Tests a polynomial; degree 1 is the straight line.
     *
     * @param x      stimulus, equal for replicates; not modified
     * @param y      indication; not modified
     * @param degree 1 to 10
     * @throws IllegalArgumentException if the lengths differ, the degree is out of range, or a value is not
     *     finite
     * @throws NoFitException           if no x is repeated, or x takes no more different values than the
     *     polynomial has coefficients
     */
    public static LackOfFit of(double[] x, double[] y, int degree) {
        Checks.within("degree", degree, 1, 10);
        Checks.finitePairs(x, y, degree + 2);
        final Map<Double, List<Double>> points = new TreeMap<>();
        for (int i = 0; i < x.length; i++) {
            points.computeIfAbsent(x[i], k -> new ArrayList<>()).add(y[i]);
        }
        final int replicates = x.length - points.size();
        final int spare = points.size() - degree - 1;
        if (replicates < 1) {
            throw new NoFitException("no stimulus is repeated: lack of fit cannot be told from scatter");
        }
        if (spare < 1) {
            throw new NoFitException("x takes " + points.size()
                + " different values: the fit passes through their"
                + " means, a lack of fit needs " + (degree + 2));
        }
        final DoubleUnaryOperator curve = curve(x, y, degree);
        double lack = 0;
        double pure = 0;
        for (Map.Entry<Double, List<Double>> point : points.entrySet()) {
            final double[] values = point.getValue().stream().mapToDouble(v -> v).toArray();
            final double mean = Sums.mean(values);
            final double off = mean - curve.applyAsDouble(point.getKey());
            lack += values.length * off * off;
            pure += Sums.ofProducts(values, mean, values, mean);
        }
        return new LackOfFit(AnalysisOfVariance.of(List.of(
            new AnalysisOfVariance.Source(LACK_OF_FIT, lack, spare),
            new AnalysisOfVariance.Source(REPLICATES, pure, replicates))));
    }

    private static DoubleUnaryOperator curve(double[] x, double[] y, int degree) {
        if (degree == 1) {
            final CalibrationLine line = CalibrationLine.fit(x, y);
            return v -> line.at(v).value();
        }
        final PolynomialCurve polynomial = PolynomialCurve.fit(x, y, degree);
        return v -> polynomial.at(v).value();
    }

    /**
     * Whether the curve does not describe the readings, at a level of significance.
     *
     * @param significance in the open interval (0, 1), usually 0.05
     */
    public boolean isShownAt(double significance) {
        Checks.inside("significance", significance, 0, 1);
        final var probability = analysis.probability(LACK_OF_FIT);
        // Replicates without scatter: any departure is more than their scatter.
        return probability.isPresent() ? probability.getAsDouble() < significance
            : analysis.source(LACK_OF_FIT).sumOfSquares() > 0;
    }

    @Override
    public String toString() {
        return (isShownAt(0.05) ? "the curve does not describe the readings" : "no lack of fit is shown")
            + (analysis.probability(LACK_OF_FIT).isPresent() ? " (probability "
            + NumberText.significant(analysis.probability(LACK_OF_FIT).getAsDouble(), 2) + ")" : "");
    }
}
