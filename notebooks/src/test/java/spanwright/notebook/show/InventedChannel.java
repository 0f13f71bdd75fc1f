package spanwright.notebook.show;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import spanwright.error.ChannelAnalysis;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderers;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.Conditions;
import spanwright.readings.Direction;
import spanwright.readings.Entry;
import spanwright.readings.Phase;
import spanwright.readings.Reading;
import spanwright.readings.Transfer;

/**
 * Upscale traverses of a 4-20 mA channel, invented; and what a cell shows of a value, by the service loader.
 */
final class InventedChannel {
    private InventedChannel() { }

    /** One traverse at 0, 25, ... 100 % with errors in percent of span and a tolerance of 0.1 % of span. */
    static ChannelAnalysis with(DoubleUnaryOperator error) {
        return with(error, 1, Optional.of(Tolerance.plusMinus(new PercentOfSpan(0.1))));
    }

    static ChannelAnalysis with(DoubleUnaryOperator error, int cycles, Optional<Tolerance> tolerance) {
        final Span span = Span.milliamps4to20();
        final List<Reading> readings = new ArrayList<>();
        for (int cycle = 1; cycle <= cycles; cycle++) {
            for (int p = 0; p <= 100; p += 25) {
                readings.add(new Reading(OptionalDouble.of(p), entry(span.valueAt(p), readings.size(), 1),
                    entry(span.valueAt(p + error.applyAsDouble(p)), readings.size(), 2), Direction.UPSCALE,
                    cycle));
            }
        }
        return ChannelAnalysis.of(new CalibrationRun("LT-102B", "KF-0002", Phase.AS_FOUND, Transfer.LINEAR,
            span, span, tolerance, Conditions.NOT_RECORDED, readings));
    }

    private static Entry entry(double value, int row, int column) {
        return new Entry(value, 0.001, Double.toString(value),
            new CellAddress("test.csv", "", row + 2, column));
    }

    /** The HTML a cell shows; left in a folder to look at where {@code -Dspanwright.pictures} names one. */
    static String html(String name, Object value) {
        final MimeBundle bundle = Renderers.of(InventedChannel.class.getClassLoader()).render(value);
        final String html = String.valueOf(bundle.data().get(MimeBundle.HTML));
        final String folder = System.getProperty("spanwright.pictures");
        if (folder != null) {
            try {
                java.nio.file.Files.writeString(Path.of(folder, name + ".html"),
                    "<meta charset='utf-8'><body style='font-family:sans-serif;width:760px'>" + html);
            } catch (java.io.IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }
        return html;
    }

    /** The plain text a cell shows. */
    static String text(Object value) {
        return String.valueOf(Renderers.of(InventedChannel.class.getClassLoader()).render(value).data()
            .get(MimeBundle.TEXT));
    }
}
