package spanwright.chart;

import java.util.Objects;
import java.util.stream.IntStream;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.fit.FittedCurve;
import spanwright.fit.InverseInterval;
import spanwright.fit.LackOfFit;
import spanwright.fit.LinearRegression;
import spanwright.fit.PredictingCurve;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/** Pictures of lines and curves fitted to readings. Units are those of the readings. */
public final class FitCharts {
    private FitCharts() { }

    /**
     * A fitted line or curve: the readings with it, and below it what they leave, on a scale on which the
     * bands can be seen: where the curve itself lies and, where the scatter is known, where one more reading
     * will.
     *
     * @param coverage of the bands at each x, in the open interval (0, 1)
     * @throws IllegalArgumentException if the coverage is out of range
     */
    public static Picture curve(FittedCurve curve, double coverage) {
        Objects.requireNonNull(curve, "curve");
        Checks.inside("coverage", coverage, 0, 1);
        final CurvePanels panels = new CurvePanels(curve, coverage);
        return new Picture(curveSentence(curve, coverage),
            curve.data() + " with the fitted curve, and below what they leave, with the "
                + percent(coverage) + " bands.", panels.panels());
    }

    private static String curveSentence(FittedCurve curve, double coverage) {
        final int n = curve.data().size();
        final String largest = "argest residual " + largestResidual(curve) + ".";
        if (curve instanceof PredictingCurve predicting) {
            return predicting.readingsWithin(coverage) + " of " + n + " readings lie within the "
                + percent(coverage) + " prediction band; l" + largest;
        }
        return "L" + largest;
    }

    private static String largestResidual(FittedCurve curve) {
        double largest = 0;
        for (int i = 0; i < curve.data().size(); i++) {
            largest = Math.abs(curve.residual(i)) > Math.abs(largest) ? curve.residual(i) : largest;
        }
        return signed(largest) + AxisName.unitAfter(curve.data().yName());
    }

    /**
     * The stimulus that belongs to an indication, read off a calibration line: the interval reaches as far as
     * the indication lies within the band about the line; where it never leaves the band there is none.
     */
    public static Picture inverse(InverseInterval answer) {
        return new InversePanels(Objects.requireNonNull(answer, "answer")).picture();
    }

    /**
     * The means of the readings at each stimulus less the curve, with the single readings: whether the curve
     * describes them.
     */
    public static Picture lackOfFit(LackOfFit test) {
        Objects.requireNonNull(test, "test");
        final String yName = test.curve().data().yName();
        final String unit = AxisName.unitAfter(yName);
        final Plot plot = new Plot(test.curve().data().xName(),
            AxisName.sameUnit("departure from the " + degreeWords(test), yName));
        final int n = test.curve().data().size();
        final double[] x = IntStream.range(0, n).mapToDouble(test.curve().data()::x).toArray();
        final double[] left = IntStream.range(0, n).mapToDouble(test.curve()::residual).toArray();
        final double largest = IntStream.range(0, n).mapToDouble(i -> Math.abs(left[i])).max().orElseThrow();
        final double range = Steps.symmetricRange(largest == 0 ? 1 : 1.1 * largest);
        plot.yRange(-range, range);
        plot.lineWithMarks("means", test.points().stream().mapToDouble(LackOfFit.Point::x).toArray(),
            test.points().stream().mapToDouble(LackOfFit.Point::departure).toArray(), Ink.VERMILION,
            SeriesMarkers.DIAMOND).marks("readings", x, left, Ink.BLUE, SeriesMarkers.CROSS);
        plot.line("zero", new double[] {test.curve().data().lowestX(), test.curve().data().highestX()},
            new double[2], Ink.BLACK)
            .note(PointNote.key("\u25c6 mean of a point", Ink.VERMILION.colour(), true, 0))
            .note(PointNote.key("\u2715 reading", Ink.BLUE.colour(), false, 0));
        final double departure = test.points().stream().mapToDouble(p -> Math.abs(p.departure())).max()
            .orElseThrow();
        return Picture.of(
            (test.isShownAt(0.05) ? "The " + degreeWords(test) + " does not describe the" + " readings: means"
                : "No lack of fit is shown: means") + " lie up to " + NumberText.significant(departure, 2)
                + unit + " off the " + degreeWords(test) + ", repeated readings scatter by "
                + NumberText.significant(test.replicatesSd(), 2) + unit + ".",
            "Departure from the " + degreeWords(test) + " of " + n + " readings and of the means of "
                + test.points().size() + " points.",
            plot.chart());
    }

    /** "straight line", or the polynomial by its degree. */
    static String degreeWords(LackOfFit test) {
        return test.curve().degree() == 1 ? "straight line"
            : "polynomial of degree " + test.curve().degree();
    }

    /** What a regression leaves of each reading, against the value it gives, with the readings' scatter. */
    public static Picture residuals(LinearRegression fit) {
        Objects.requireNonNull(fit, "fit");
        final int n = fit.observed().size();
        final double[] x = IntStream.range(0, n).mapToDouble(fit::fitted).toArray();
        final double[] y = IntStream.range(0, n).mapToDouble(fit::residual).toArray();
        final double s = fit.residualSd();
        int worst = 0;
        for (int i = 0; i < n; i++) {
            worst = Math.abs(y[i]) > Math.abs(y[worst]) ? i : worst;
        }
        final double largest = Math.max(Math.abs(y[worst]), s);
        final double range = Steps.symmetricRange(largest == 0 ? 1 : 1.1 * largest);
        final String unit = AxisName.unitAfter(fit.yName());
        final Plot plot = new Plot("fitted " + fit.yName(), AxisName.sameUnit("residual", fit.yName()))
            .yRange(-range, range).marks("residuals", x, y, Ink.BLUE, SeriesMarkers.CIRCLE);
        plot.note(PlotNote.horizontalLimit(s, "", Ink.BLACK.colour(), true))
            .note(PointNote.key("dashed: residual standard deviation " + NumberText.uncertainty(s) + unit,
                Ink.BLACK.colour(), false, 0))
            .note(PlotNote.horizontalLimit(-s, "", Ink.BLACK.colour(), true))
            .note(PointNote.ring(x[worst], y[worst], Ink.VERMILION.colour()))
            .note(PointNote.label(x[worst], y[worst], "reading " + (worst + 1), Ink.VERMILION.colour(), 4));
        return Picture.of(
            "The largest residual is " + signed(y[worst]) + unit + ", of reading " + (worst + 1) + " of " + n
                + "; the residual standard deviation is " + NumberText.uncertainty(s) + unit + ".",
            "Residual of " + n + " readings against the fitted value.", plot.chart());
    }

    static String percent(double coverage) {
        return NumberText.plain(100 * coverage, 4) + " %";
    }

    static String signed(double value) {
        final String text = NumberText.significant(value, 3);
        return value > 0 && !"0".equals(text) ? "+" + text : text;
    }

    /** So many places from low to high, ends included. */
    static double[] places(double low, double high, int count) {
        return IntStream.range(0, count).mapToDouble(i -> low + (high - low) * i / (count - 1)).toArray();
    }
}
