package spanwright.chart;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.knowm.xchart.internal.chartpart.IChart;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.fit.FittedCurve;
import spanwright.fit.FittedData;
import spanwright.fit.LineThroughPoint;
import spanwright.fit.LineWithBothUncertain;
import spanwright.fit.PredictingCurve;

/**
 * A fitted curve with its readings, and below it what they leave, on the same x. The bands are drawn in the
 * upper panel only where they are wide enough to be told from the curve.
 */
final class CurvePanels {
    private static final int HEIGHT = 300;
    private static final int STEPS = 81;
    /** Share of the height of a panel below which a band cannot be told from its line. */
    private static final double VISIBLE = 0.02;

    private final FittedCurve curve;
    private final FittedData data;
    private final double coverage;
    private final double low;
    private final double high;
    private final double[] x;
    private final double[] readX;
    private final double[] readY;
    private final double[] residual;

    CurvePanels(FittedCurve curve, double coverage) {
        this.curve = curve;
        this.coverage = coverage;
        data = curve.data();
        final boolean held = curve instanceof LineThroughPoint;
        low = held ? Math.min(data.lowestX(), ((LineThroughPoint) curve).throughX()) : data.lowestX();
        high = held ? Math.max(data.highestX(), ((LineThroughPoint) curve).throughX()) : data.highestX();
        x = FitCharts.places(low, high, STEPS);
        readX = IntStream.range(0, data.size()).mapToDouble(data::x).toArray();
        readY = IntStream.range(0, data.size()).mapToDouble(data::y).toArray();
        residual = IntStream.range(0, data.size()).mapToDouble(curve::residual).toArray();
    }

    List<IChart> panels() {
        return AlignedPanel.stack(upper(), lower());
    }

    private double[] over(DoubleUnaryOperator f) {
        return Arrays.stream(x).map(f).toArray();
    }

    private double confidence(double at) {
        return curve.confidenceBand(at, coverage).halfWidth();
    }

    private Plot upper() {
        final double[] y = over(v -> curve.at(v).value());
        final double[] band = over(this::confidence);
        final double height = Arrays.stream(y).max().orElseThrow() - Arrays.stream(y).min().orElseThrow();
        final boolean seen = Arrays.stream(band).max().orElseThrow() > VISIBLE * height && height > 0;
        final double[] shown = seen ? band : new double[STEPS];
        final double[] all = Stream.of(plus(y, shown, -1), plus(y, shown, 1),
            readings(i -> readY[i] - data.yUncertainty(i)), readings(i -> readY[i] + data.yUncertainty(i)))
            .flatMapToDouble(Arrays::stream).toArray();
        final double least = Arrays.stream(all).min().orElseThrow();
        final double most = Arrays.stream(all).max().orElseThrow();
        final double air = most > least ? 0.07 * (most - least) : 1;
        final Plot plot = panel(data.yName()).yRange(least - air, most + air).line("curve", x, y, Ink.BLUE);
        if (seen) {
            plot.dotted("lower", x, plus(y, band, -1), Ink.BLUE).dotted("upper", x, plus(y, band, 1),
                Ink.BLUE);
        }
        plot.note(PointNote.crosses(crosses(readY, data::xUncertainty, data::yUncertainty),
            Ink.BLACK.colour())).marks("readings", readX, readY, Ink.BLACK, SeriesMarkers.CIRCLE);
        if (curve instanceof LineThroughPoint line) {
            plot.note(PointNote.ring(line.throughX(), line.throughY(), Ink.VERMILION.colour()))
                .note(PointNote.label(line.throughX(), line.throughY(), "held here",
                    Ink.VERMILION.colour(), -8));
        }
        return plot;
    }

    private Plot panel(String yName) {
        final double left = Math.min(low, Arrays.stream(readings(i -> readX[i] - data.xUncertainty(i))).min()
            .orElseThrow());
        final double right = Math.max(high, Arrays.stream(readings(i -> readX[i] + data.xUncertainty(i)))
            .max().orElseThrow());
        final double air = 0.03 * (right - left);
        return new Plot(data.xName(), yName, HEIGHT).xRange(left - air, right + air);
    }

    private double[] readings(IntToDoubleFunction figure) {
        return IntStream.range(0, data.size()).mapToDouble(figure).toArray();
    }

    private List<PointNote.Cross> crosses(double[] y, IntToDoubleFunction across, IntToDoubleFunction up) {
        return IntStream.range(0, data.size()).mapToObj(i ->
            new PointNote.Cross(readX[i], y[i], across.applyAsDouble(i), up.applyAsDouble(i))).toList();
    }

    private static double[] plus(double[] y, double[] band, int sign) {
        return IntStream.range(0, y.length).mapToDouble(i -> y[i] + sign * band[i]).toArray();
    }

    private Plot lower() {
        final double[] zero = new double[STEPS];
        final double[] confidence = over(this::confidence);
        final double[] prediction = curve instanceof PredictingCurve p
            ? over(v -> p.predictionBand(v, coverage).halfWidth()) : zero;
        final double largest = Stream.of(confidence, prediction,
            readings(i -> Math.abs(residual[i]) + effective(i))).flatMapToDouble(Arrays::stream).max()
            .orElseThrow();
        // Room above for the key.
        final double range = Steps.symmetricRange(largest == 0 ? 1 : 1.12 * largest);
        final Plot plot = panel(AxisName.sameUnit("residual", data.yName()))
            .yRange(-range, range).line("curve", x, zero, Ink.BLUE)
            .dotted("lower confidence", x, plus(zero, confidence, -1), Ink.BLUE)
            .dotted("upper confidence", x, plus(zero, confidence, 1), Ink.BLUE)
            .note(PointNote.key("dotted: " + FitCharts.percent(coverage) + " confidence band of the curve",
                Ink.BLUE.colour(), true, 0));
        if (curve instanceof PredictingCurve) {
            plot.dashed("lower prediction", x, plus(zero, prediction, -1), Ink.VERMILION)
                .dashed("upper prediction", x, plus(zero, prediction, 1), Ink.VERMILION)
                .note(PointNote.key("dashed: " + FitCharts.percent(coverage)
                    + " prediction band of one more reading", Ink.VERMILION.colour(), false, 0));
        } else {
            plot.note(PointNote.key("bars: stated uncertainty, k = 1", Ink.BLACK.colour(), false, 0))
                .note(PointNote.crosses(crosses(residual, i -> 0, this::effective), Ink.BLACK.colour()));
        }
        return plot.marks("readings", readX, residual, Ink.BLACK, SeriesMarkers.CIRCLE);
    }

    /** Standard uncertainty of a residual by what was stated of the reading; 0 where nothing was. */
    private double effective(int i) {
        return curve instanceof LineWithBothUncertain line
            ? Math.hypot(data.yUncertainty(i), line.slope().value() * data.xUncertainty(i)) : 0;
    }
}
