package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import spanwright.reference.FromR;
import spanwright.reference.PublishedData;
import spanwright.uncertainty.Estimate;

/** What the tables of fits state beside the fit itself, against R: test-data/published/r_statistics.R. */
class TablesAgreeWithRTest {
    private static void agrees(String name, String what, double actual, double relative) {
        final double r = FromR.value(name, what);
        assertThat(actual).as(name + " " + what).isCloseTo(r, within(relative * Math.abs(r)));
    }

    private static double[][] columns(PublishedData d, String... names) {
        final double[][] rows = new double[d.rows().size()][names.length];
        for (int j = 0; j < names.length; j++) {
            final double[] column = d.numbers(names[j]);
            for (int i = 0; i < rows.length; i++) {
                rows[i][j] = column[i];
            }
        }
        return rows;
    }

    /** confint of lm on NIST StRD Longley. */
    @Test
    void theIntervalsOfTheCoefficients() {
        final PublishedData d = PublishedData.load("nist-strd/Longley");
        final LinearRegression fit = LinearRegression.fit(columns(d, "x1", "x2", "x3", "x4", "x5", "x6"),
            d.numbers("y"));
        for (int k = 0; k <= 6; k++) {
            final Estimate e = k == 0 ? fit.intercept() : fit.coefficient(k);
            agrees("longley", "lower" + k, Interval.about(e, 0.95).lower(), 1e-9);
            agrees("longley", "upper" + k, Interval.about(e, 0.95).upper(), 1e-9);
        }
        agrees("longley", "worst", fit.residual(9), 1e-9);
        assertThat(fit.fitted(9) + fit.residual(9)).isEqualTo(fit.observed().get(9));
    }

    @Test
    void theReadingsWithinThePredictionBand() {
        final PublishedData n = PublishedData.load("nist-strd/Norris");
        final CalibrationLine norris = CalibrationLine.fit(n.numbers("x"), n.numbers("y"));
        assertThat(norris.readingsWithin(0.95)).isEqualTo((int) FromR.value("norris", "within"));
        final PublishedData p = PublishedData.load("nist-strd/Pontius");
        final PolynomialCurve pontius = PolynomialCurve.fit(p.numbers("x"), p.numbers("y"), 2);
        assertThat(pontius.readingsWithin(0.95)).isEqualTo((int) FromR.value("pontius", "within"));
        assertThat(Math.abs(pontius.residual(3))).isLessThanOrEqualTo(
            Math.abs(FromR.value("pontius", "worst")));
        final List<List<String>> rows = PublishedData.load("r_designs_data").rows();
        final String first = rows.stream().filter(r -> r.get(1).equals("weighted")).findFirst().orElseThrow()
            .get(0);
        final double[][] design = rows.stream().filter(r -> r.get(0).equals(first)).map(r ->
            r.stream().skip(2).mapToDouble(Double::parseDouble).toArray()).toArray(double[][]::new);
        final CalibrationLine weighted = CalibrationLine.fitWeighted(column(design, 0), column(design, 4),
            column(design, 3));
        assertThat(weighted.readingsWithin(0.95)).isEqualTo((int) FromR.value("weighted", "within"));
    }

    private static double[] column(double[][] rows, int index) {
        return Arrays.stream(rows).mapToDouble(r -> r[index]).toArray();
    }

    /** pchisq of the sum that York's line leaves on Pearson's data. */
    @Test
    void theProbabilityOfChiSquared() {
        final double[] wx = {1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1};
        final double[] wy = {1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500};
        agrees("pearson-york", "p", LineWithBothUncertain.fit(
            new double[] {0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4},
            new double[] {5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5},
            Arrays.stream(wx).map(w -> 1 / Math.sqrt(w)).toArray(),
            Arrays.stream(wy).map(w -> 1 / Math.sqrt(w)).toArray()).probabilityOfChiSquared(), 1e-9);
    }

    @Test
    void theDeparturesOfTheMeans() {
        final PublishedData d = PublishedData.load("nist-strd/Pontius");
        final LackOfFit test = LackOfFit.of(d.numbers("x"), d.numbers("y"), 1);
        final LackOfFit.Point worst = test.points().stream().reduce((a, b) ->
            Math.abs(b.departure()) > Math.abs(a.departure()) ? b : a).orElseThrow();
        agrees("pontius line", "departure", Math.abs(worst.departure()), 1e-9);
        assertThat(worst.x()).isEqualTo(FromR.value("pontius line", "departure_at"));
        agrees("pontius line", "replicates_sd", test.replicatesSd(), 1e-9);
        agrees("pontius line", "p", test.analysis().probability(LackOfFit.LACK_OF_FIT).orElseThrow(), 1e-6);
    }
}
