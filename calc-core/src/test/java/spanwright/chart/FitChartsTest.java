package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import spanwright.fit.CalibrationLine;
import spanwright.fit.InverseInterval;
import spanwright.fit.LackOfFit;
import spanwright.fit.LineThroughPoint;
import spanwright.fit.LineWithBothUncertain;
import spanwright.fit.LinearRegression;
import spanwright.fit.MinimaxAdjustment;
import spanwright.fit.PolynomialCurve;
import spanwright.fit.ReferenceLine;
import spanwright.quantity.NumberText;
import spanwright.reference.FromR;
import spanwright.reference.PublishedData;

/** The pictures of fits, and what they say; figures from R (test-data/published/r_statistics.R). */
class FitChartsTest {
    private static final double[] X = {4, 8, 12, 16, 20, 20, 16, 12, 8, 4};
    private static final double[] Y = {4.02, 7.93, 12.11, 16.05, 19.9, 20.08, 15.97, 12.2, 8.03, 3.91};

    static void keep(String name, Picture picture) throws IOException {
        if (System.getProperty("spanwright.pictures") != null) {
            Files.write(Path.of(System.getProperty("spanwright.pictures"), name + ".png"), picture.png());
            Files.writeString(Path.of(System.getProperty("spanwright.pictures"), name + ".svg"),
                picture.svg());
        }
    }

    private static CalibrationLine gumH3() {
        final PublishedData d = PublishedData.load("gum_h3");
        return CalibrationLine.fit(Arrays.stream(d.numbers("t_degC")).map(t -> t - 20).toArray(),
            d.numbers("b_degC")).named("temperature less 20 \u00b0C (K)", "correction (\u00b0C)");
    }

    @Test
    void aLineStandsAboveItsResidualsWithBothBandsNamed() throws IOException {
        final Picture h3 = FitCharts.curve(gumH3(), 0.95);
        keep("line-h3", h3);
        assertThat(h3.title()).isEqualTo("11 of 11 readings lie within the 95 % prediction band; largest"
            + " residual +" + NumberText.significant(FromR.value("gum h3", "worst"), 3) + " \u00b0C.");
        assertThat(h3.svg()).contains(">dotted: 95 % confidence band of the curve<",
            ">dashed: 95 % prediction band of one more reading<");
        final PublishedData d = PublishedData.load("nist-strd/Norris");
        final Picture norris = FitCharts.curve(CalibrationLine.fit(d.numbers("x"), d.numbers("y")), 0.95);
        keep("line-norris", norris);
        assertThat(norris.title()).startsWith((int) FromR.value("norris", "within") + " of 36 readings")
            .endsWith("largest residual \u22122.35.");
        assertThatThrownBy(() -> FitCharts.curve(gumH3(), 1)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("coverage");
    }

    @Test
    void theBandsWidenWithTheCoverage() {
        assertThat(FitCharts.curve(gumH3(), 0.5).title()).doesNotStartWith("11 of 11");
        assertThat(FitCharts.curve(gumH3(), 0.99).svg()).contains("99 % prediction band");
    }

    @Test
    void aLineHeldAtAPointMarksIt() throws IOException {
        final Picture picture = FitCharts.curve(LineThroughPoint.fit(X, Y, 0, 0)
            .named("applied (mA)", "indicated (mA)"), 0.95);
        keep("through", picture);
        assertThat(picture.svg()).contains(">held here<");
        assertThat(picture.title()).startsWith("10 of 10 readings");
    }

    @Test
    void aLineWithBothUncertainShowsTheStatedUncertainties() throws IOException {
        final double[] px = {0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4};
        final double[] py = {5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5};
        final double[] wx = {1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1};
        final double[] wy = {1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500};
        final Picture york = FitCharts.curve(LineWithBothUncertain.fit(px, py,
            Arrays.stream(wx).map(w -> 1 / Math.sqrt(w)).toArray(),
            Arrays.stream(wy).map(w -> 1 / Math.sqrt(w)).toArray()), 0.95);
        keep("york", york);
        assertThat(york.title()).startsWith("Largest residual ");
        assertThat(york.svg()).contains("bars: stated uncertainty, k = 1").doesNotContain("prediction");
    }

    @Test
    void aCurveIsDrawnLikeALine() throws IOException {
        final PublishedData d = PublishedData.load("nist-strd/Pontius");
        final Picture picture = FitCharts.curve(PolynomialCurve.fit(d.numbers("x"), d.numbers("y"), 2)
            .named("load (lb)", "deflection (in)"), 0.95);
        keep("pontius", picture);
        assertThat(picture.title()).isEqualTo((int) FromR.value("pontius", "within")
            + " of 40 readings lie within the 95 % prediction band; largest residual \u22120.000447 in.");
    }

    @Test
    void anExactLevelLineHasAPictureToo() throws IOException {
        final Picture picture = FitCharts.curve(CalibrationLine.fit(new double[] {4, 12, 20},
            new double[] {7, 7, 7}), 0.95);
        keep("exact", picture);
        assertThat(picture.title()).endsWith("largest residual 0.");
    }

    @Test
    void lackOfFitSaysWhichCurveDoesNotDescribeTheReadings() throws IOException {
        final PublishedData d = PublishedData.load("nist-strd/Pontius");
        final Picture line = FitCharts.lackOfFit(LackOfFit.of(d.numbers("x"), d.numbers("y"), 1)
            .named("load (lb)", "deflection (in)"));
        keep("lack", line);
        assertThat(line.title()).isEqualTo("The straight line does not describe the readings: means lie up"
            + " to 0.0041 in off the straight line, repeated readings scatter by 0.00021 in.");
        assertThat(FromR.value("pontius line", "departure")).isCloseTo(0.0041, within(5e-5));
        assertThat(FromR.value("pontius line", "replicates_sd")).isCloseTo(0.00021, within(5e-6));
        final Picture curve = FitCharts.lackOfFit(LackOfFit.of(d.numbers("x"), d.numbers("y"), 2));
        keep("lack2", curve);
        assertThat(curve.title()).startsWith("No lack of fit is shown: ")
            .contains("polynomial of degree 2");
        assertThat(curve.svg()).contains("mean of a point");
    }

    @Test
    void theLargestResidualOfARegressionIsNamed() throws IOException {
        final PublishedData d = PublishedData.load("nist-strd/Longley");
        final double[][] rows = new double[16][6];
        for (int j = 0; j < 6; j++) {
            final double[] column = d.numbers("x" + (j + 1));
            for (int i = 0; i < 16; i++) {
                rows[i][j] = column[i];
            }
        }
        final Picture picture = FitCharts.residuals(LinearRegression.fit(rows, d.numbers("y"))
            .named("employed (thousands)", "a", "b", "c", "d", "e", "f"));
        keep("longley", picture);
        // NIST StRD: residual standard deviation 304.854073561965.
        assertThat(picture.title())
            .isEqualTo("The largest residual is +455 thousands, of reading 10 of 16; the"
            + " residual standard deviation is 300 thousands.");
        assertThat(FromR.value("longley", "worst")).isCloseTo(455, within(0.5));
        assertThat(FromR.value("longley", "worst_number")).isEqualTo(10);
        assertThat(picture.svg()).contains(">reading 10<",
            "dashed: residual standard deviation 300 thousands<");
    }

    @Test
    void anIndicationIsReadOffTheBand() throws IOException {
        final InverseInterval answer = gumH3().stimulusFor(-0.163, 1, 0.95);
        final Picture picture = FitCharts.inverse(answer);
        keep("inverse-h3", picture);
        assertThat(answer.stimulus().orElseThrow()).isCloseTo(FromR.value("gum h3", "x"), within(1e-11));
        assertThat(answer.interval().orElseThrow().lower()).isCloseTo(FromR.value("gum h3", "lower"),
            within(1e-9));
        assertThat(answer.interval().orElseThrow().upper()).isCloseTo(FromR.value("gum h3", "upper"),
            within(1e-9));
        assertThat(picture.title()).isEqualTo("The indication \u22120.163 \u00b0C belongs to 3.8 K, 95 %"
            + " interval [\u22121.7, 8.8].");
        assertThat(picture.height()).as("a wide interval needs no panel of its own").isLessThan(500);
    }

    /** The interval: r_lines.csv, Fieller by search, 11.7372591816449 to 12.2228139742254. */
    @Test
    void aNarrowIntervalIsDrawnOnceMore() throws IOException {
        final CalibrationLine line = CalibrationLine.fit(X, Y).named("applied (mA)", "indicated (mA)");
        final Picture narrow = FitCharts.inverse(line.stimulusFor(12, 1, 0.95));
        keep("inverse-12", narrow);
        assertThat(narrow.title()).isEqualTo("The indication 12 mA belongs to 11.98 mA, 95 % interval"
            + " [11.74, 12.22].");
        assertThat(narrow.height()).isGreaterThan(600);
        assertThat(FitCharts.inverse(line.stimulusFor(21, 1, 0.95)).title()).endsWith(
            ", beyond the readings.");
        final Picture crossing = FitCharts.inverse(line.crossing(12, 0.95));
        keep("inverse-crossing", crossing);
        assertThat(crossing.title()).startsWith("The value 12 mA of the line is reached at 11.980 mA, ");
    }

    @Test
    void whereThereIsNoIntervalThePictureSaysWhy() throws IOException {
        final CalibrationLine noise = CalibrationLine.fit(new double[] {4, 8, 12, 16, 20},
            new double[] {12.1, 11.9, 12.0, 12.2, 11.9});
        final Picture none = FitCharts.inverse(noise.stimulusFor(12, 1, 0.95));
        keep("inverse-none", none);
        assertThat(none.title()).startsWith("The indication 12 has no bounded interval: the slope")
            .contains("is not told from zero");
        final Picture level = FitCharts.inverse(CalibrationLine.fit(new double[] {4, 12, 20},
            new double[] {7, 7, 7}).stimulusFor(7, 1, 0.95));
        keep("inverse-level", level);
        assertThat(level.title()).contains("the line is level");
    }

    /** Terminal-based deviations as printed in the TU Dublin exercise: 0, -0.06, -0.42, -0.08, +0.06, 0. */
    @Test
    void aReferenceLineRingsThePointsThatFixIt() throws IOException {
        final PublishedData d = PublishedData.load("tu_dublin_temperature_current");
        final double[] x = d.numbers("t_degC");
        final double[] y = d.numbers("i_mA");
        final Picture terminal = ReferenceCharts.line(ReferenceLine.terminalBased(x, y)
            .named("temperature (\u00b0C)", "current (mA)"));
        keep("ref-terminal", terminal);
        assertThat(terminal.title()).isEqualTo("Terminal-based line: largest deviation \u22120.420 mA at"
            + " 40 \u00b0C; fixed by the points at 0, 100 \u00b0C.");
        assertThat(terminal.svg()).contains("fixes the line", "dashed: largest deviation 0.420 mA");
        final Picture absolute = ReferenceCharts.line(ReferenceLine.absolute(x, y, 0.064, 5));
        keep("ref-absolute", absolute);
        assertThat(absolute.title()).startsWith("Specified characteristic (absolute): ")
            .endsWith("; no single points fix it.");
        assertThat(absolute.svg()).doesNotContain("fixes the line");
        final Picture independent = ReferenceCharts.line(ReferenceLine.independent(x, y));
        keep("ref-independent", independent);
        assertThat(independent.title()).contains("fixed by the points at 0, 40, 80.");
        final Picture zero = ReferenceCharts.line(ReferenceLine.zeroBased(x, y));
        keep("ref-zero", zero);
        assertThat(zero.title()).startsWith("Zero-based line: ").contains("fixed by the points at 0, ");
    }

    /** By hand: errors 0, 0.3, 0 with limits 1, 2, 1 leave 0.1 of the limit (MinimaxAdjustmentTest). */
    @Test
    void anAdjustmentShowsBeforeAndAfterWithTheLimits() throws IOException {
        final MinimaxAdjustment a = MinimaxAdjustment.of(new double[] {0, 50, 100},
            new double[] {0, 0.3, 0}, new double[] {0.1, 0.2, 0.1});
        final Picture picture = ReferenceCharts.adjustment(a.named("input (%)", "error (% of span)"));
        keep("adjust", picture);
        assertThat(picture.title()).isEqualTo(
            "The best correction brings the largest error from 1.50 to 1.00 of its limit.");
        assertThat(a.fixedBy()).containsExactly(0, 1, 2);
        assertThat(picture.svg()).contains(">dashed: limit<", "before<", "fixes the correction<");
        final Picture lost = ReferenceCharts.adjustment(MinimaxAdjustment.of(new double[] {100, 50, 0},
            new double[] {0, 0.9, 0}, new double[] {0.1, 0.2, 0.1}));
        assertThat(lost.title()).endsWith("no correction of zero and span is enough.");
    }
}
