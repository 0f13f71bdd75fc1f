package spanwright.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.Locale;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.AxesChartStyler;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/** An x-y chart in our look, built step by step. Mutable and not shared. */
final class Plot {
    static final int WIDTH = 720;
    static final int HEIGHT = 420;
    private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
    private static final Font AXIS = new Font(Font.SANS_SERIF, Font.PLAIN, 13);

    private final XYChart chart;

    Plot(String xAxis, String yAxis) {
        this(xAxis, yAxis, HEIGHT);
    }

    Plot(String xAxis, String yAxis, int height) {
        chart = new XYChartBuilder().width(WIDTH).height(height).xAxisTitle(xAxis).yAxisTitle(yAxis).build();
        final XYStyler style = chart.getStyler();
        style.setChartTitleVisible(false);
        style.setLegendVisible(false);
        style.setChartBackgroundColor(Color.WHITE);
        style.setPlotBackgroundColor(Color.WHITE);
        style.setPlotBorderVisible(true);
        style.setPlotBorderColor(Ink.QUIET);
        style.setPlotGridLinesColor(Ink.QUIET);
        style.setPlotGridLinesStroke(new BasicStroke(0.7f));
        style.setAxisTickLabelsFont(TEXT);
        style.setAxisTitleFont(AXIS);
        style.setLegendFont(TEXT);
        style.setLegendBorderColor(Color.WHITE);
        style.setLegendPosition(Styler.LegendPosition.OutsideS);
        style.setLegendLayout(Styler.LegendLayout.Horizontal);
        style.setLegendSeriesLineLength(18);
        style.setLegendPadding(6);
        style.setXAxisTickMarkSpacingHint(100);
        style.setLocale(Locale.ROOT);
        style.setMarkerSize(9);
        style.setPlotContentSize(0.96);
        style.setYAxisLabelAlignment(AxesChartStyler.TextAlignment.Right);
        style.setXAxisTickLabelsFormattingFunction(Plot::tick);
        style.setYAxisTickLabelsFormattingFunction(Plot::tick);
    }

    /** A tick without the noise of binary fractions, and with a true minus sign. */
    private static String tick(double value) {
        return NumberText.plain(Math.abs(value) < 1e-12 ? 0 : value, 6);
    }

    Plot xRange(double min, double max) {
        chart.getStyler().setXAxisMin(Checks.finite("x min", min)).setXAxisMax(Checks.finite("x max", max));
        return this;
    }

    Plot yRange(double min, double max) {
        chart.getStyler().setYAxisMin(Checks.finite("y min", min)).setYAxisMax(Checks.finite("y max", max));
        return this;
    }

    /** The x axis of places in a list, from 1: figures so far apart that all are whole. */
    Plot xPlaces(int count) {
        chart.getStyler().setXAxisTickMarkSpacingHint(Math.max(60, (WIDTH - 120) / (count + 1)));
        return xRange(0, count + 1.0);
    }

    Plot yLogarithmic() {
        chart.getStyler().setYAxisLogarithmic(true);
        return this;
    }

    Plot withLegend() {
        chart.getStyler().setLegendVisible(true);
        return this;
    }

    Plot line(String name, double[] x, double[] y, Ink ink) {
        return line(name, x, y, ink, new BasicStroke(2f));
    }

    Plot line(String name, double[] x, double[] y, Ink ink, BasicStroke stroke) {
        chart.addSeries(name, x, y).setMarker(SeriesMarkers.NONE).setLineColor(ink.colour())
            .setLineStyle(stroke);
        return this;
    }

    /** Data that are not drawn, for plots made of notes alone. */
    Plot unseen(double[] x, double[] y) {
        chart.addSeries("unseen", x, y).setMarker(SeriesMarkers.NONE).setLineStyle(SeriesLines.NONE);
        return this;
    }

    /** A limit that is not the same everywhere. */
    Plot dashed(String name, double[] x, double[] y, Ink ink) {
        return line(name, x, y, ink,
            new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {6, 4}, 0));
    }

    /** A bound that is no limit. */
    Plot dotted(String name, double[] x, double[] y, Ink ink) {
        return line(name, x, y, ink,
            new BasicStroke(1.2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, new float[] {1, 5}, 0));
    }

    Plot lineWithMarks(String name, double[] x, double[] y, Ink ink, Marker marker) {
        chart.addSeries(name, x, y).setMarker(marker).setMarkerColor(ink.colour()).setLineColor(ink.colour())
            .setLineStyle(new BasicStroke(1.3f));
        return this;
    }

    Plot marks(String name, double[] x, double[] y, Ink ink, Marker marker) {
        final XYSeries series = chart.addSeries(name, x, y);
        series.setMarker(marker).setMarkerColor(ink.colour()).setLineColor(ink.colour());
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        return this;
    }

    Plot area(String name, double[] x, double[] y, Ink ink) {
        final XYSeries series = chart.addSeries(name, x, y);
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.StepArea);
        series.setMarker(SeriesMarkers.NONE).setLineColor(ink.tint(0.6)).setFillColor(ink.tint(0.35));
        return this;
    }

    /** An area under a line, down to 0. */
    Plot filled(String name, double[] x, double[] y, Ink ink) {
        final XYSeries series = chart.addSeries(name, x, y);
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Area);
        series.setMarker(SeriesMarkers.NONE).setLineColor(ink.colour()).setFillColor(ink.tint(0.4));
        return this;
    }

    Plot note(PlotNote note) {
        chart.addAnnotation(note);
        return this;
    }

    XYChart chart() {
        return chart;
    }
}
