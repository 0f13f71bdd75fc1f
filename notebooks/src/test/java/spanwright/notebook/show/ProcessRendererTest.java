package spanwright.notebook.show;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.notebook.show.InventedChannel.html;
import static spanwright.notebook.show.InventedChannel.text;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spanwright.error.CalibrationStandard;
import spanwright.error.MeasurementProcess;
import spanwright.error.PointUncertainty;
import spanwright.quantity.Tolerance;

/** By hand: U / k of a certificate, half width / sqrt(3) of a drift (JCGM 100:2008, 4.3). */
class ProcessRendererTest {
    private static final CalibrationStandard SOURCE =
        CalibrationStandard.of("S-01", 0.02, 2, Tolerance.Basis.PERCENT_OF_SPAN);
    private static final CalibrationStandard READER =
        CalibrationStandard.of("S-02", 0.004, 2, Tolerance.Basis.OUTPUT_UNIT).withDrift(0.003, 0.5);
    private static final MeasurementProcess BARE = MeasurementProcess.of(SOURCE, READER);
    private static final MeasurementProcess FULL = MeasurementProcess.of(SOURCE.withDrift(0.01, 1), READER)
        .withRepeatability(0.01, 20);

    private static List<PointUncertainty> points(MeasurementProcess process) {
        return process.of(InventedChannel.with(p -> 0.03, 1, Optional.empty()));
    }

    @Test
    void whatIsMissingIsSaidFirst() {
        assertThat(text(BARE)).startsWith("Not complete: the drift of S-01 since its certificate is not "
            + "stated. Input by S-01, output by S-02.").contains("left to the record");
        assertThat(text(points(BARE))).startsWith("Not complete, so U is too small: repeatability: ")
            .contains("(at every point)").contains("the drift of a standard since its certificate was not");
        assertThat(text(points(BARE).get(0))).startsWith("Not complete, so U is too small: ");
    }

    @Test
    void nothingIsMissedWhereAllIsStated() {
        assertThat(text(FULL)).startsWith("Input by S-01, output by S-02.").doesNotContain("Not complete")
            .containsPattern("(?m)^ +S-02 +output +0\\.004 +2 +0\\.003 +0\\.5 +0\\.0015 ")
            .contains("0.010 % of span for a single reading with 20 degrees of freedom");
        assertThat(text(points(FULL))).startsWith("Largest U: ").doesNotContain("too small");
    }

    /** The output standard gives 0.002 mA of 16 mA, 0.0125 % of span, and is the largest term everywhere. */
    @Test
    void eachPointHasItsErrorAndWhereItComesFrom() {
        final String shown = html("process-points", points(FULL));
        assertThat(shown).contains("most of it from output standard S-02", "test.csv", "What makes U at",
            "+0.03", "do not average them");
        assertThat(shown.split("<svg", -1)).as("the errors and the contributions").hasSize(3);
        assertThat(text(points(FULL).get(2))).contains("50 % up: error ")
            .containsPattern("(?m)^> output standard S-02 +0\\.01[23] +");
    }
}
