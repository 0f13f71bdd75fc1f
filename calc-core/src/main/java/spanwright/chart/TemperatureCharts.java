package spanwright.chart;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.quantity.NumberText;
import spanwright.temperature.ChamberPoint;
import spanwright.temperature.CoefficientMethod;
import spanwright.temperature.TemperatureCoefficient;
import spanwright.temperature.TemperatureSeries;
import spanwright.temperature.TemperatureTest;

/**
 * Pictures of what temperature does to a channel. Errors are in percent of span, temperatures in degrees
 * Celsius.
 */
public final class TemperatureCharts {
    private TemperatureCharts() { }

    /**
     * Error of zero and of span against ambient temperature, in the order of the test, with the bow-tie
     * through the calibration temperature that bounds each.
     */
    public static Picture errors(TemperatureTest test) {
        Objects.requireNonNull(test, "test");
        final TemperatureSeries zero = test.zero();
        final TemperatureSeries span = test.span();
        final Plot plot = new Plot("ambient temperature (\u00b0C)", "error (% of span)");
        final double[] degC = Stream.concat(zero.points().stream(), span.points().stream())
            .mapToDouble(p -> p.temperature().value()).sorted().toArray();
        final double coldest = degC[0];
        final double hottest = degC[degC.length - 1];
        final double air = 0.04 * (hottest - coldest);
        final double largest = Stream.of(zero, span).mapToDouble(TemperatureCharts::largest).max()
            .orElseThrow();
        final double range = Steps.symmetricRange(largest == 0 ? 0.01 : largest);
        plot.xRange(coldest - air, hottest + air).yRange(-range, range);
        add(plot, zero, Ink.BLUE, SeriesMarkers.CIRCLE, coldest, hottest);
        add(plot, span, Ink.VERMILION, SeriesMarkers.DIAMOND, coldest, hottest);
        plot.note(PlotNote.verticalLimit(zero.reference().value(), "calibrated at " + zero.reference(),
            Ink.BLACK.colour(), true, 0));
        plot.note(PlotNote.text("\u25cf zero    \u25c6 span    dotted: bow-tie", coldest, -range * 0.95,
            PlotNote.Anchor.LEFT, Ink.SOFT_TEXT, 0));
        return Picture.of(
            zero.channel() + ": zero moves by up to " + figure(zero) + " and span by up to " + figure(span)
                + " of span per kelvin (bow-tie through " + zero.reference() + ").",
            "Error of zero and span in percent of span at " + zero.points().size() + " visits from "
                + NumberText.plain(coldest, 4) + " to " + NumberText.plain(hottest, 4) + " degrees Celsius.",
            plot.chart());
    }

    private static String figure(TemperatureSeries series) {
        final TemperatureCoefficient c = series.coefficient(CoefficientMethod.BOW_TIE);
        return NumberText.significant(Math.abs(c.perKelvin().value()), 2) + " %";
    }

    private static double largest(TemperatureSeries series) {
        final double at = series.errorAtReference();
        final double slope = Math.abs(series.coefficient(CoefficientMethod.BOW_TIE).perKelvin().value());
        return series.points().stream().mapToDouble(p -> Math.max(Math.abs(p.error().value()),
            Math.abs(at) + slope * Math.abs(p.temperature().minus(series.reference()).value()))).max()
                .orElseThrow();
    }

    private static void add(Plot plot, TemperatureSeries series, Ink ink, Marker marker, double coldest,
                            double hottest) {
        final List<ChamberPoint> points = series.points();
        plot.lineWithMarks(series.effect().toString(), points.stream().mapToDouble(p -> p.temperature()
            .value())
            .toArray(), points.stream().mapToDouble(p -> p.error().value()).toArray(), ink, marker);
        final double slope = series.coefficient(CoefficientMethod.BOW_TIE).perKelvin().value();
        final double at = series.errorAtReference();
        final double reference = series.reference().value();
        for (int sign : new int[] {-1, 1}) {
            plot.dotted(series.effect() + (sign < 0 ? " falling" : " rising"),
                new double[] {coldest, hottest}, new double[] {at + sign * slope * (coldest - reference),
                    at + sign * slope * (hottest - reference)},
                ink);
        }
    }
}
