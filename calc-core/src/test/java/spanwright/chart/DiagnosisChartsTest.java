package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import spanwright.error.Diagnosis;

class DiagnosisChartsTest {
    private static Picture drawn(String name, DoubleUnaryOperator error) {
        return Sight.of(name, DiagnosisCharts.shapes(Diagnosis.of(InventedRun.with(error, Optional.empty()))
            .orElseThrow()));
    }

    @Test
    void theKneeIsDrawnThroughTheErrors() {
        final Picture picture = drawn("diagnosis-knee", p -> Math.min(0, 88.56 - p));
        assertThat(picture.title()).startsWith("LT-102B: the errors speak for compliance knee, flat at 88.");
        assertThat(picture.svg()).contains("compliance knee (100 %) leaves 0.0");
    }

    @Test
    void causesOfOneShapeShareALine() {
        final Picture picture = drawn("diagnosis-zero", p -> 0.3);
        assertThat(picture.title()).contains("the errors speak for zero shift");
        assertThat(picture.svg()).contains("zero shift (", " or ground-loop offset (");
    }

    @Test
    void noneFitsIsAnAnswer() {
        final Picture picture = drawn("diagnosis-none", p -> p % 50 == 0 ? 0.4 : -0.4);
        assertThat(picture.title()).startsWith("LT-102B: none of the known shapes fits; the nearest, ");
        assertThat(picture.svg()).contains("the nearest: bow leaves 0.5").doesNotContain("(100 %)");
    }

    @Test
    void aBowAndItsRivals() {
        assertThat(drawn("diagnosis-bow", p -> 0.03 + 0.09 * p * (100 - p) / 2500).title())
            .contains("the errors speak for bow");
        assertThat(drawn("diagnosis-unsure", p -> 0.02 + 0.00005 * p).svg()).contains(" %) leaves ");
    }
}
