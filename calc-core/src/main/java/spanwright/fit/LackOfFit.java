package spanwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Whether a line or polynomial describes the readings: the scatter of the point means about the curve, tested
 * against the scatter of repeated readings about their own mean.
 *
 * @param analysis sources {@value #LACK_OF_FIT} and {@value #REPLICATES}
 * @param curve    the polynomial that was tested, with the readings
 * @param points   the readings of each stimulus together, from the lowest
 */
public record LackOfFit(AnalysisOfVariance analysis, PolynomialCurve curve, List<Point> points) {
    /** Name of the source that the curve should not leave. */
    public static final String LACK_OF_FIT = "lack of fit";
    /** Name of the source that no curve can take up. */
    public static final String REPLICATES = "replicates";

    /**
     * The readings of one stimulus.
     *
     * @param x        the stimulus
     * @param readings how many there are
     * @param mean     their mean
     * @param onCurve  what the curve gives
     */
    public record Point(double x, int readings, double mean, double onCurve) {
        /** Checks the components. */
        public Point {
            Checks.finite("x", x);
            Checks.atLeast("number of readings", readings, 1);
            Checks.finite("mean", mean);
            Checks.finite("value of the curve", onCurve);
        }

        /** Mean of the readings minus the curve. */
        public double departure() {
            return mean - onCurve;
        }
    }

    /** Checks the components and copies the list. */
    public LackOfFit {
        Objects.requireNonNull(analysis, "analysis");
        Objects.requireNonNull(curve, "curve");
        points = List.copyOf(points);
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
        final Map<Double, List<Double>> readings = new TreeMap<>();
        for (int i = 0; i < x.length; i++) {
            readings.computeIfAbsent(x[i], k -> new ArrayList<>()).add(y[i]);
        }
        final int replicates = x.length - readings.size();
        final int spare = readings.size() - degree - 1;
        if (replicates < 1) {
            throw new NoFitException("no stimulus is repeated: lack of fit cannot be told from scatter");
        }
        if (spare < 1) {
            throw new NoFitException("x takes " + readings.size()
                + " different values: the fit passes through their"
                + " means, a lack of fit needs " + (degree + 2));
        }
        final PolynomialCurve curve = PolynomialCurve.fit(x, y, degree);
        final List<Point> points = new ArrayList<>();
        double lack = 0;
        double pure = 0;
        for (Map.Entry<Double, List<Double>> point : readings.entrySet()) {
            final double[] values = point.getValue().stream().mapToDouble(v -> v).toArray();
            final double mean = Sums.mean(values);
            final Point here = new Point(point.getKey(), values.length, mean,
                curve.at(point.getKey()).value());
            points.add(here);
            lack += values.length * here.departure() * here.departure();
            pure += Sums.ofProducts(values, mean, values, mean);
        }
        return new LackOfFit(AnalysisOfVariance.of(List.of(
            new AnalysisOfVariance.Source(LACK_OF_FIT, lack, spare),
            new AnalysisOfVariance.Source(REPLICATES, pure, replicates))), curve, points);
    }

    /**
     * The same test with names for x and y, which stand at the axes of its chart.
     *
     * @param xName name and unit of x
     * @param yName name and unit of y
     * @throws IllegalArgumentException if a name is blank
     */
    public LackOfFit named(String xName, String yName) {
        return new LackOfFit(analysis, curve.named(xName, yName), points);
    }

    /** Standard deviation of the replicates about their own means: what no curve can take up. */
    public double replicatesSd() {
        return Math.sqrt(analysis.source(REPLICATES).meanSquare());
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
