package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import spanwright.error.ChannelAnalysis;
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

class ChannelChartsTest {
    /** A channel with an offset, a bow and some hysteresis; invented, for looking only. */
    static CalibrationRun run(Optional<Tolerance> tolerance) {
        final List<Reading> readings = new ArrayList<>();
        int row = 1;
        for (int cycle = 1; cycle <= 3; cycle++) {
            for (Direction d : Direction.values()) {
                for (int p : d == Direction.UPSCALE ? new int[] {0, 25, 50, 75, 100}
                    : new int[] {75, 50, 25, 0}) {
                    final double x = 4 + 0.16 * p;
                    final double y = x + 0.004 + 0.008 * (p / 100.0) * (1 - p / 100.0) * 4
                        + (d == Direction.UPSCALE ? 0 : 0.003) + 0.0004 * ((row * 7) % 5);
                    row++;
                    readings
                        .add(new Reading(OptionalDouble.of(p), entry(x, row, 1), entry(y, row, 2), d, cycle));
                }
            }
        }
        final Span span = Span.milliamps4to20();
        return new CalibrationRun("LT-101A", "KF-0001", Phase.AS_FOUND, Transfer.LINEAR, span, span,
            tolerance, Conditions.NOT_RECORDED, readings);
    }

    private static Entry entry(double value, int row, int column) {
        return new Entry(value, 0.001, Double.toString(value), new CellAddress("test.csv", "", row, column));
    }

    private static void keep(String name, Picture picture) throws IOException {
        if (System.getProperty("spanwright.pictures") != null) {
            Files.write(Path.of(System.getProperty("spanwright.pictures"), name + ".png"), picture.png());
        }
    }

    @Test
    void showsEachReadingByDirectionWithTheToleranceOfTheRecord() throws IOException {
        final ChannelAnalysis channel = ChannelAnalysis.of(run(Optional.of(Tolerance.plusMinus(
            PercentOfSpan.percentOfSpan(0.1)))));
        final Picture picture = ChannelCharts.errors(channel);
        keep("errors", picture);
        assertThat(picture.title()).startsWith("LT-101A, as found: errors from ").contains("% of span at ",
            "tolerance \u00b10.1 % of span");
        assertThat(picture.svg()).contains("upscale, 15 readings", "downscale, 12 readings",
            "tolerance +0.10",
            "tolerance \u22120.10");
    }

    @Test
    void aRecordWithoutToleranceSaysSo() {
        final Picture picture = ChannelCharts.errors(ChannelAnalysis.of(run(Optional.empty())));
        assertThat(picture.title()).contains("no tolerance stated");
        assertThat(picture.svg()).doesNotContain(">tolerance");
    }

    @Test
    void aToleranceInPercentOfReadingIsWiderAtTheUpperEnd() throws IOException {
        final Picture picture = ChannelCharts.errors(ChannelAnalysis.of(run(Optional.of(
            Tolerance.plusMinus(0.2, Tolerance.Basis.PERCENT_OF_READING)))));
        keep("errors-reading", picture);
        assertThat(picture.svg()).as("the live-zero factor 1.25 at 20 mA").contains("tolerance +0.25");
    }

    @Test
    void showsTheDeviationsFromAllReferenceLines() throws IOException {
        final Picture picture = ChannelCharts.linearity("LT-101A",
            ChannelAnalysis.of(run(Optional.empty())).nonLinearity().orElseThrow());
        keep("linearity", picture);
        assertThat(picture.title()).contains("independent", "zero-based", "terminal-based", "absolute");
    }
}
