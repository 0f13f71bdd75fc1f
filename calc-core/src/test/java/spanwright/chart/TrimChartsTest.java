package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import spanwright.error.ChannelAnalysis;
import spanwright.error.ServiceConditions;
import spanwright.error.Trim;
import spanwright.error.TrimAdvice;
import spanwright.error.TrimPivot;
import spanwright.quantity.Kelvin;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Tolerance;

class TrimChartsTest {
    private static final Optional<Tolerance> TENTH = Optional.of(Tolerance.plusMinus(new PercentOfSpan(0.1)));

    private static double offsetAndBow(double p) {
        return 0.07 + 0.07 * p * (100 - p) / 2500;
    }

    private static ChannelAnalysis found(Optional<Tolerance> tolerance) {
        return InventedRun.with(TrimChartsTest::offsetAndBow, tolerance);
    }

    @Test
    void beforeAndAfterStandAgainstTheTolerance() {
        final TrimAdvice advice = Trim.gainAbout(0).advise(found(TENTH));
        final Picture picture = Sight.of("trim-before-after", TrimCharts.beforeAndAfter(advice));
        assertThat(picture.title()).startsWith("LT-102B, the gain trim (pivot 0 mA): apply 20.000 mA, set ")
            .contains("the largest error goes from 0.14", " to 0.07").endsWith(" % of span.");
        assertThat(picture.svg()).contains("as found: largest 0.14", "after the best setting: largest 0.07",
            "tolerance +0.10", "tolerance \u22120.10").doesNotContain("in service");
    }

    @Test
    void theServiceTemperaturesAreNamed() {
        final TrimAdvice advice = Trim.gainAbout(0).serving(ServiceConditions.AS_CALIBRATED
            .overTemperature(new Kelvin(-20), new Kelvin(30), 0.0005, 0.001)).advise(found(TENTH));
        assertThat(Sight.of("trim-service", TrimCharts.beforeAndAfter(advice)).svg())
            .contains("in service, \u221220.0 K and +30.0 K from the calibration");
    }

    @Test
    void whereNothingHelpsTheTitleSaysSo() {
        final TrimAdvice advice = Trim.gainAbout(0).advise(InventedRun.with(p ->
            p == 50 ? 0.3 : -0.05, TENTH));
        assertThat(Sight.of("trim-cannot", TrimCharts.beforeAndAfter(advice)).title())
            .contains("adjustment cannot help; even the best setting leaves ", " times the tolerance");
        final TrimAdvice fine = Trim.gainAbout(0).settableTo(0.01).advise(InventedRun.with(p ->
            0.02, TENTH));
        assertThat(TrimCharts.beforeAndAfter(fine).title()).contains("do not touch");
    }

    @Test
    void aMissOfTheTargetHasItsPrice() {
        final TrimAdvice advice = Trim.gainAbout(0).settableTo(0.004).advise(found(TENTH));
        final Picture picture = Sight.of("trim-setting", TrimCharts.setting(advice).orElseThrow());
        assertThat(picture.title()).startsWith("LT-102B: no other reading at 20.000 mA leaves less than 0.07")
            .contains("; a miss of 0.0040 mA leaves up to 0.0");
        assertThat(picture.svg()).contains("reads now: 0.14", "target 19.9", "tolerance 0.1 % of span",
            "can be set to \u00b10.0040 mA");
    }

    @Test
    void aToleranceOfReadingCountsInTolerances() {
        final TrimAdvice advice = Trim.gainAbout(0).advise(found(Optional.of(
            Tolerance.plusMinus(0.1, Tolerance.Basis.PERCENT_OF_READING))));
        assertThat(Sight.of("trim-setting-reading", TrimCharts.setting(advice).orElseThrow()).svg())
            .contains("target 19.9", " tolerances<", ">tolerance<");
        assertThat(TrimCharts.setting(Trim.gainAbout(0).advise(found(Optional.empty()))).orElseThrow().svg())
            .contains(" % of span<").doesNotContain(">tolerance", " tolerances<");
    }

    @Test
    void zeroAndSpanHaveNoOneTarget() {
        final TrimAdvice advice = Trim.zeroAndSpan().advise(found(TENTH));
        assertThat(TrimCharts.setting(advice).reason()).isEqualTo("zero and span have two targets, not one");
        assertThat(Sight.of("trim-zero-span", TrimCharts.beforeAndAfter(advice)).title())
            .contains("zero and span: apply 4.000 mA, set ", "; then apply 20.000 mA");
    }

    @Test
    void thePivotIsWhereTheTurnChangesNothing() {
        final TrimPivot pivot = TrimPivot.between(found(TENTH), InventedRun.with(p -> offsetAndBow(p)
            - 0.0011 * (p + 25) + 0.001 * (p % 50 == 0 ? 1 : -1), TENTH)).orElseThrow();
        final Picture picture = Sight.of("trim-pivot", TrimCharts.pivot(pivot));
        assertThat(picture.title()).startsWith("LT-102B: the turn multiplied by 0.9989")
            .endsWith("the trim may pivot at 0 mA.");
        assertThat(picture.svg()).contains(">pivot ", ", 95 % [");
        final TrimPivot odd = TrimPivot.between(found(TENTH), InventedRun.with(p -> offsetAndBow(p)
            - 0.0011 * (p - 50), TENTH)).orElseThrow();
        assertThat(TrimCharts.pivot(odd).title()).endsWith("the trim pivots neither at 0 nor at 4 mA.");
    }
}
