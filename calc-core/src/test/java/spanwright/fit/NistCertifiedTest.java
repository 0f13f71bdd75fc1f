package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.reference.PublishedData;
import spanwright.uncertainty.Estimate;

/** NIST StRD linear regression and analysis of variance: certified values. */
class NistCertifiedTest {
    private static final PublishedData CERTIFIED = PublishedData.load("nist-strd/certified");

    private static double[] certified(String dataset, String parameter) {
        final List<String> row = CERTIFIED.rows().stream()
            .filter(r -> r.get(0).equals(dataset) && r.get(1).equals(parameter)).findFirst().orElseThrow();
        return new double[] {Double.parseDouble(row.get(2)),
            row.get(3).isBlank() ? Double.NaN : Double.parseDouble(row.get(3))};
    }

    private static void assertCoefficients(String dataset, int from, int to, IntFunction<Estimate> actual,
                                           double relative) {
        for (int k = from; k <= to; k++) {
            final double[] b = certified(dataset, "B" + k);
            assertThat(actual.apply(k).value()).as(dataset + " B" + k)
                .isCloseTo(b[0], within(relative * Math.abs(b[0])));
            // Where the certified deviation is 0, rounding leaves something far below any coefficient.
            assertThat(actual.apply(k).u()).as(dataset + " sd of B" + k)
                .isCloseTo(b[1], within(b[1] == 0 ? relative : relative * b[1]));
        }
    }

    private static void assertAnalysis(String dataset, AnalysisOfVariance a, double relative) {
        final String[] names = {"regression", "residual"};
        for (String name : names) {
            final double ss = certified(dataset, name + "_ss")[0];
            assertThat(a.source(name).sumOfSquares()).as(dataset + " " + name)
                .isCloseTo(ss, within(relative * ss));
            assertThat(a.source(name).degreesOfFreedom()).isEqualTo((int) certified(dataset, name
                + "_df")[0]);
            final double ms = certified(dataset, name + "_ms")[0];
            assertThat(a.source(name).meanSquare()).isCloseTo(ms, within(relative * ms));
        }
        final double f = certified(dataset, "f_statistic")[0];
        assertThat(a.ratio("regression").orElseThrow()).isCloseTo(f, within(relative * f));
    }

    @Test
    void norris() {
        final PublishedData d = PublishedData.load("nist-strd/Norris");
        final PolynomialCurve line = PolynomialCurve.fit(d.numbers("x"), d.numbers("y"), 1);
        assertCoefficients("Norris", 0, 1, line::coefficient, 1e-12);
        assertAnalysis("Norris", line.analysisOfVariance(), 1e-11);
        assertThat(line.rSquared()).isCloseTo(certified("Norris", "r_squared")[0], within(1e-14));
    }

    @Test
    void pontius() {
        final PublishedData d = PublishedData.load("nist-strd/Pontius");
        final PolynomialCurve curve = PolynomialCurve.fit(d.numbers("x"), d.numbers("y"), 2);
        assertCoefficients("Pontius", 0, 2, curve::coefficient, 1e-11);
        assertAnalysis("Pontius", curve.analysisOfVariance(), 1e-10);
        assertThat(curve.residualSd()).isCloseTo(0.205177424076185E-03, within(1e-14));
        assertThat(curve.dof().count()).isEqualTo(37);
        assertThat(curve.rSquared()).isCloseTo(0.999999900178537, within(1e-14));
    }

    @ParameterizedTest
    @CsvSource({"NoInt1, 3.56753034006338, 0.999365492298663",
        "NoInt2, 0.369274472937998, 0.993348115299335"})
    void throughTheOrigin(String name, double residualSd, double rSquared) {
        final PublishedData d = PublishedData.load("nist-strd/" + name);
        final LineThroughPoint line = LineThroughPoint.fit(d.numbers("x"), d.numbers("y"), 0, 0);
        assertCoefficients(name, 1, 1, k -> line.slope(), 1e-12);
        assertThat(line.residualSd()).isCloseTo(residualSd, within(1e-13));
        final double[][] rows = java.util.Arrays.stream(d.numbers("x")).mapToObj(v -> new double[] {v})
            .toArray(double[][]::new);
        final LinearRegression regression = LinearRegression.fitThroughOrigin(rows, d.numbers("y"));
        assertCoefficients(name, 1, 1, regression::coefficient, 1e-12);
        assertAnalysis(name, regression.analysisOfVariance(), 1e-11);
        assertThat(regression.rSquared()).isCloseTo(rSquared, within(1e-14));
    }

    @Test
    void longley() {
        final PublishedData d = PublishedData.load("nist-strd/Longley");
        final double[][] rows = new double[16][6];
        for (int j = 0; j < 6; j++) {
            final double[] column = d.numbers("x" + (j + 1));
            for (int i = 0; i < 16; i++) {
                rows[i][j] = column[i];
            }
        }
        final LinearRegression fit = LinearRegression.fit(rows, d.numbers("y"));
        assertCoefficients("Longley", 0, 6, k -> k == 0 ? fit.intercept() : fit.coefficient(k), 1e-10);
        assertAnalysis("Longley", fit.analysisOfVariance(), 1e-10);
        assertThat(fit.residualSd()).isCloseTo(304.854073561965, within(1e-9));
        assertThat(fit.rSquared()).isCloseTo(0.995479004577296, within(1e-14));
    }

    /** The sixth-digit noise of Wampler 1 and 2 is zero: what remains is rounding. */
    @ParameterizedTest
    @CsvSource({"Wampler1, 1e-7", "Wampler2, 1e-9", "Wampler3, 1e-7"})
    void wampler(String name, double relative) {
        final PublishedData d = PublishedData.load("nist-strd/" + name);
        final PolynomialCurve curve = PolynomialCurve.fit(d.numbers("x"), d.numbers("y"), 5);
        assertCoefficients(name, 0, 5, curve::coefficient, relative);
        assertThat(curve.rSquared()).isCloseTo(certified(name, "r_squared")[0], within(1e-12));
        assertThat(curve.dof().count()).isEqualTo(15);
    }

    /** NIST StRD, SiRstv: five instruments, five days; certified table. */
    @Test
    void siRstv() {
        final PublishedData d = PublishedData.load("nist-strd/SiRstv");
        final AnalysisOfVariance a = AnalysisOfVariance.nested(d.numbers("resistance"),
            java.util.Map.of("instrument", d.texts("instrument")));
        assertThat(a.source("instrument").sumOfSquares()).isCloseTo(5.11462616000000E-02, within(5e-12));
        assertThat(a.source("instrument").degreesOfFreedom()).isEqualTo(4);
        assertThat(a.last().sumOfSquares()).isCloseTo(2.16636560000000E-01, within(2e-11));
        assertThat(a.last().degreesOfFreedom()).isEqualTo(20);
        assertThat(a.ratio("instrument").orElseThrow()).isCloseTo(1.18046237440255, within(1e-9));
        assertThat(a.standardDeviation("within").orElseThrow()).isCloseTo(0.104076068334656, within(1e-11));
    }
}
