package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import spanwright.fit.CalibrationLine;
import spanwright.fit.LackOfFit;
import spanwright.fit.LineThroughPoint;
import spanwright.fit.LineWithBothUncertain;
import spanwright.fit.LinearRegression;
import spanwright.fit.MinimaxAdjustment;
import spanwright.fit.PolynomialCurve;
import spanwright.fit.ReferenceLine;

/** What a cell shows of fits and reference lines: the sentence, the table a person would print, the chart. */
class FitRendererTest {
    private static final double[] X = {4, 8, 12, 16, 20, 20, 16, 12, 8, 4};
    private static final double[] Y = {4.02, 7.93, 12.11, 16.05, 19.9, 20.08, 15.97, 12.2, 8.03, 3.91};
    private static final double[] CELSIUS = {0, 20, 40, 60, 80, 100};
    private static final double[] MILLIAMPS = {5.2, 6.4, 7.3, 8.9, 10.3, 11.5};

    private static String html(String name, Object value) {
        final String html = InventedChannel.html(name, value);
        assertThat(html).contains("<svg", "<table", "scope=\"col\"").doesNotContain("NaN", "Infinity");
        return html;
    }

    /** Least squares of the TU Dublin data in R 4.2: 5.066667 + 0.064 T, largest residual -0.3267 at 40. */
    @Test
    void aLineShowsItsParametersBandsAndReadings() {
        final String html = html("line", CalibrationLine.fit(CELSIUS, MILLIAMPS)
            .named("temperature (\u00b0C)", "current (mA)"));
        assertThat(html).contains("current (mA) changes by 0.0640 per unit of temperature (\u00b0C)",
            "4 degrees of freedom", ">5.07<", "one more reading within \u00b1", "\u22120.327",
            "x is taken as exact and all readings as equally uncertain",
            "correlation of intercept and slope", "Beyond the readings nothing supports the curve.");
        assertThat(html).containsOnlyOnce("\u25b6 ");
    }

    @Test
    void namesAreEscapedAndCannotBeBlank() {
        final CalibrationLine line = CalibrationLine.fit(X, Y);
        assertThat(html("names", line.named("<b>x</b>", "y & \"z\""))).contains("&lt;b&gt;x&lt;/b&gt;")
            .doesNotContain("<b>x");
        assertThatThrownBy(() -> line.named(" ", "y")).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("name of x is blank");
        assertThatThrownBy(() -> CalibrationLine.fit(new double[] {4, 12, Double.NaN}, new double[3]))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("x[2] is NaN");
    }

    @Test
    void weightsHaveAColumn() {
        assertThat(html("weighted", CalibrationLine.fitWeighted(X, Y,
            new double[] {1, 1, 1, 4, 4, 4, 4, 1, 1, 1})))
            .contains(">weight<", "only the ratios of the weights count");
    }

    /** NIST StRD NoInt2: slope 0.727272727272727 (0.420827318078432E-01), residual sd 0.369274472937998. */
    @Test
    void aLineThroughAPoint() {
        assertThat(
            html("through", LineThroughPoint.fit(new double[] {4, 5, 6}, new double[] {3, 4, 4}, 0, 0)))
            .contains("The line through (0, 0)", ">0.727<", ">0.042<", ">0.37<", "taken as exact");
    }

    /** Pearson's data with York's weights, from memory: slope -0.4805 (0.058), chi squared 1.483 by dof. */
    @Test
    void aLineWithBothUncertainSaysWhetherTheStatedUncertaintiesAgree() {
        final double[] wx = {1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1};
        final double[] wy = {1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500};
        final String html = html("york", LineWithBothUncertain.fit(
            new double[] {0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4},
            new double[] {5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5},
            Arrays.stream(wx).map(w -> 1 / Math.sqrt(w)).toArray(),
            Arrays.stream(wy).map(w -> 1 / Math.sqrt(w)).toArray()));
        // pchisq(8 * 1.483..., 8, lower.tail = FALSE) in R 4.2: 0.157267 (r_statistics.csv).
        assertThat(html).contains("\u22120.481", ">0.058<", ">1.48<", ">0.16<", ">u of x<", ">u of y<")
            .doesNotContain("one more reading");
    }

    @Test
    void aPolynomialShowsACoefficientOfAnySizeWithItsDigits() {
        final double[] x = {150000, 300000, 450000, 600000, 750000, 900000, 1050000};
        final double[] y = {0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562};
        final String html = html("polynomial", PolynomialCurve.fit(x, y, 2));
        assertThat(html).contains("coefficient of x^2", "e\u2212", "strongly correlated");
    }

    @Test
    void aRegressionShowsCoefficientsAndItsAnalysis() {
        final double[][] rows = {{1, 5}, {2, 3}, {3, 8}, {4, 1}, {5, 9}, {6, 2}};
        final String html = html("regression", LinearRegression.fit(rows, new double[] {1, 2, 2, 4, 4, 6})
            .named("error (% of span)", "load (\u03a9)", "supply (V)"));
        assertThat(html).contains("error (% of span) by 2 regressors", ">load (\u03a9)<", ">supply (V)<",
            "Analysis of variance", ">intercept<", "residual");
        assertThatThrownBy(() -> LinearRegression.fit(rows, new double[] {1, 2, 2, 4, 4, 6})
            .named("y", "one")).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("1 names given, 2 regressors fitted");
    }

    @Test
    void lackOfFitShowsTheTestAndTheMeans() {
        final double[] x = {0, 0, 1, 1, 2, 2};
        final String html = html("lack", LackOfFit.of(x, new double[] {0, 0.01, 5, 5.01, 0, 0.01}, 1));
        assertThat(html).contains("The straight line does not describe the readings", "Means of each point",
            "lack of fit", "replicates");
        assertThat(InventedChannel.text(LackOfFit.of(x, new double[] {0, 1, 1.1, 2, 2, 3}, 1)))
            .contains("No lack of fit of the straight line is shown", "[Chart]");
    }

    /** r_lines.csv, by search in R: 11.9800399, 11.7372592 to 12.2228140. */
    @Test
    void theInverseShowsItsIntervalOrWhyThereIsNone() {
        final CalibrationLine line = CalibrationLine.fit(X, Y).named("applied (mA)", "indicated (mA)");
        assertThat(html("inverse", line.stimulusFor(12, 1, 0.95)))
            .contains("The indication 12 mA belongs to 11.98 mA", ">11.74 to 12.22<", "95 % interval",
                "The stimulus lies within the readings.");
        final String none = html("no-inverse", CalibrationLine.fit(new double[] {4, 8, 12, 16, 20},
            new double[] {12.1, 11.9, 12.0, 12.2, 11.9}).stimulusFor(12, 1, 0.95));
        assertThat(none).contains(">no bounded interval<", "Why there is no interval",
            "is not told from zero");
    }

    /** Terminal-based deviations as printed: 0, -0.06, -0.42, -0.08, +0.06, 0. */
    @Test
    void aReferenceLineNamesThePointsThatFixIt() {
        final String html = html("reference", ReferenceLine.terminalBased(CELSIUS, MILLIAMPS)
            .named("temperature (\u00b0C)", "current (mA)"));
        assertThat(html).contains("terminal-based line: largest deviation 0.420", "\u22120.420", "0.060",
            "Through the points of the lowest and the highest x.");
        assertThat(html.split("\u25ef yes", -1)).hasSize(3);
        assertThat(html("absolute", ReferenceLine.absolute(CELSIUS, MILLIAMPS, 0.064, 5)))
            .contains("The specified characteristic").doesNotContain("\u25ef yes");
        assertThat(html("independent", ReferenceLine.independent(CELSIUS, MILLIAMPS)).split("\u25ef yes", -1))
            .hasSize(4);
        assertThat(html("zero", ReferenceLine.zeroBased(CELSIUS, MILLIAMPS)))
            .contains("zero-based line", "the slope makes the largest deviation the least");
        assertThat(html("squares", ReferenceLine.leastSquares(CELSIUS, MILLIAMPS)))
            .contains("none of the four lines of linearity");
    }

    /** By hand: errors 0, 0.3, 0 with limits 0.1, 0.2, 0.1 leave the whole limit at each point. */
    @Test
    void anAdjustmentShowsWhatIsLeft() {
        final String html = html("adjustment", MinimaxAdjustment.of(new double[] {0, 50, 100},
            new double[] {0, 0.3, 0}, new double[] {0.1, 0.2, 0.1}).named("input (%)", "error (% of span)"));
        assertThat(html).contains("from 1.50 to 1.00 of its limit", ">1.50<", "fixes the correction");
        assertThat(html.split("\u25ef yes", -1)).hasSize(4);
    }
}
