package spanwright.chart;

import java.util.stream.IntStream;
import org.knowm.xchart.style.markers.SeriesMarkers;
import spanwright.fit.OutlierTest;
import spanwright.quantity.NumberText;

/** The values of an outlier test in their order, the limit beyond which one is suspected, and the suspect. */
final class OutlierPlot {
    private final OutlierTest test;
    private final String yName;
    private final String suspect;
    private final boolean isCochran;

    OutlierPlot(OutlierTest test, String yName, String suspect) {
        this.test = test;
        this.yName = yName;
        this.suspect = suspect;
        isCochran = test.kind() == OutlierTest.Kind.COCHRAN;
    }

    Picture picture() {
        final int n = test.values().size();
        final double[] x = IntStream.rangeClosed(1, n).asDoubleStream().toArray();
        final double[] y = IntStream.range(0, n).mapToDouble(i -> isCochran ? test.shareOfVariance(i)
            : test.values().get(i)).toArray();
        double low = isCochran ? 0 : test.lowerLimit().orElse(y[0]);
        double high = isCochran ? test.critical() : test.upperLimit().orElse(y[0]);
        for (double v : y) {
            low = Math.min(low, v);
            high = Math.max(high, v);
        }
        final double air = 0.1 * (high - low);
        final Plot plot = new Plot(isCochran ? "group, in the order given" : "reading, in the order given",
            isCochran ? "share of the sum of variances" : yName)
            .xPlaces(n).yRange(low - (isCochran ? 0 : air), high + 2 * air)
            .marks("values", x, y, Ink.BLUE, SeriesMarkers.CIRCLE);
        if (isCochran) {
            limit(plot, test.critical());
        } else {
            final double mean = IntStream.range(0, n).mapToDouble(i -> y[i]).average().orElseThrow();
            plot.line("mean", new double[] {0.7, n + 0.3}, new double[] {mean, mean}, Ink.BLACK);
            test.lowerLimit().ifPresent(v -> limit(plot, v));
            test.upperLimit().ifPresent(v -> limit(plot, v));
            plot.note(PointNote.key("line: mean", Ink.BLACK.colour(), true, 0));
        }
        final Ink ink = test.isSuspected() ? Ink.VERMILION : Ink.BLACK;
        plot.note(PointNote.key("dashed: suspected beyond", Ink.BLACK.colour(), false, 0))
            .note(PointNote.ring(x[test.suspect()], y[test.suspect()], ink.colour()))
            .note(PointNote.label(x[test.suspect()], y[test.suspect()], suspect + (test.isSuspected()
                ? ": suspected, kept" : ": most apart, not suspected"), ink.colour(), 4));
        return Picture.of(sentence(n), (isCochran ? "Share of each of " + n + " groups in all variances"
            : n + " readings with their mean") + ", the limit of suspicion and the value that stands out"
                + " most. None is left out.", plot.chart());
    }

    private static void limit(Plot plot, double at) {
        plot.note(PlotNote.horizontalLimit(at, "", Ink.BLACK.colour(), true));
    }

    private String sentence(int n) {
        return test.kind() + ", " + n + (isCochran ? " groups: " : " readings: ") + suspect
            + (test.isSuspected() ? " is suspected, " : " stands out most, not more than chance explains, ")
            + NumberText.fixed(test.statistic(), 3) + (test.isSuspected() ? " above " : " against ")
            + NumberText.fixed(test.critical(), 3) + " at a significance of "
            + NumberText.plain(test.significance(), 3) + (test.isSuspected() ? "; it is kept." : ".");
    }
}
