package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.reference.PublishedData;
import spanwright.uncertainty.Estimate;

class CalibrationLineTest {
    private static CalibrationLine norris() {
        final PublishedData d = PublishedData.load("nist-strd/Norris");
        return CalibrationLine.fit(d.numbers("x"), d.numbers("y"));
    }

    private static CalibrationLine gumH3() {
        final PublishedData d = PublishedData.load("gum_h3");
        return CalibrationLine.fit(Arrays.stream(d.numbers("t_degC")).map(t -> t - 20).toArray(),
            d.numbers("b_degC"));
    }

    @Test
    void agreesWithTheCertifiedValuesOfNistStrdNorris() {
        final CalibrationLine line = norris();
        assertAsPrinted("-0.262323073774029", line.intercept().value());
        assertAsPrinted("0.232818234301152", line.intercept().u());
        assertAsPrinted("1.00211681802045", line.slope().value());
        assertAsPrinted("0.429796848199937E-03", line.slope().u());
        assertAsPrinted("0.884796396144373", line.residualSd());
        assertThat(line.slope().dof().count()).isEqualTo(34);
        assertThat(line.level().dof().count()).isEqualTo(34);
    }

    /** t0 = 20 degC is x = 0 here. */
    @ParameterizedTest(name = "b({0} degC) = {1}, u = {2}  [{3}]")
    @CsvSource({
        "20, -0.1712, 0.0029, JCGM 100:2008 H.3.3, from memory",
        "20, -0.171203790131, 0.002877597835, recomputed in R 4.2 from Table H.6",
        "30, -0.1494, 0.0041, JCGM 100:2008 H.3.4, from memory",
        "30, -0.149376812732, 0.004138595753, recomputed in R 4.2 from Table H.6"})
    void predictsTheCorrectionOfGumH3(double celsius, String b, String u) {
        final Estimate at = gumH3().at(celsius - 20);
        assertAsPrinted(b, at.value());
        assertAsPrinted(u, at.u());
        assertThat(at.dof().count()).isEqualTo(9);
    }

    /** JCGM 100:2008 H.3.3 (from memory) and the same recomputed in R 4.2 with all digits. */
    @Test
    void hasTheSlopeAndTheCorrelationOfGumH3() {
        final CalibrationLine line = gumH3();
        assertAsPrinted("0.00218", line.slope().value());
        assertAsPrinted("0.00218269773989", line.slope().value());
        assertAsPrinted("0.00067", line.slope().u());
        assertAsPrinted("0.000667938773", line.slope().u());
        assertAsPrinted("-0.930", line.correlationOfInterceptAndSlope());
        assertAsPrinted("-0.930429603", line.correlationOfInterceptAndSlope());
        assertAsPrinted("0.0035", line.residualSd());
        assertAsPrinted("0.00349756396", line.residualSd());
    }

    /** Least squares of the TU Dublin data, computed in R 4.2: lm(I ~ T). */
    @Test
    void agreesWithRForTheTuDublinData() {
        final PublishedData d = PublishedData.load("tu_dublin_temperature_current");
        final CalibrationLine line = CalibrationLine.fit(d.numbers("t_degC"), d.numbers("i_mA"));
        assertAsPrinted("5.066667", line.intercept().value());
        assertAsPrinted("0.064", line.slope().value());
        final String[] residuals = {"0.1333", "0.0533", "-0.3267", "-0.0067", "0.1133", "0.0333"};
        for (int i = 0; i < residuals.length; i++) {
            assertAsPrinted(residuals[i], line.deviation(d.numbers("t_degC")[i], d.numbers("i_mA")[i]));
        }
    }

    @Test
    void theBandsAreStudentTTimesTheirUncertainty() {
        final CalibrationLine line = gumH3();
        // qt(0.975, 9) in R 4.2
        final double t = 2.2621571627982049;
        final Estimate at = line.at(10);
        assertThat(line.confidenceBand(10, 0.95).upper()).isCloseTo(at.value() + t * at.u(), within(1e-14));
        assertThat(line.confidenceBand(10, 0.95).lower()).isCloseTo(at.value() - t * at.u(), within(1e-14));
        final double single = Math.sqrt(at.u() * at.u() + line.residualSd() * line.residualSd());
        assertThat(line.oneReadingAt(10).u()).isCloseTo(single, within(1e-15));
        assertThat(line.predictionBand(10, 0.95).upper()).isCloseTo(at.value() + t * single, within(1e-14));
    }

    @Test
    void equalWeightsGiveTheOrdinaryLine() {
        final PublishedData d = PublishedData.load("nist-strd/Norris");
        final double[] w = new double[36];
        Arrays.fill(w, 7);
        final CalibrationLine line = CalibrationLine.fitWeighted(d.numbers("x"), d.numbers("y"), w);
        assertAsPrinted("-0.262323073774029", line.intercept().value());
        assertAsPrinted("0.429796848199937E-03", line.slope().u());
        assertAsPrinted("0.232818234301152", line.intercept().u());
    }

    @Test
    void refusesEqualStimuliAndSaysWhich() {
        assertThatThrownBy(() -> CalibrationLine.fit(new double[] {4, 4, 4}, new double[] {1, 2, 3}))
            .isInstanceOf(IllegalArgumentException.class).hasMessage("all 3 stimuli equal 4.0: no slope");
        final double[] third = {0.1, 0.1, 0.1};
        assertThatThrownBy(() -> CalibrationLine.fit(third, new double[] {1, 2, 3}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("all 3 stimuli equal 0.1");
    }

    @Test
    void refusesTwoReadingsAndANumberThatIsNone() {
        assertThatThrownBy(() -> CalibrationLine.fit(new double[] {4, 20}, new double[] {4, 20}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("at least 3");
        assertThatThrownBy(() -> CalibrationLine.fit(new double[] {4, 8, Double.NaN}, new double[] {1, 2, 3}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("x[2]");
        assertThatThrownBy(() -> CalibrationLine.fitWeighted(new double[] {4, 8, 12}, new double[] {1, 2, 3},
            new double[] {1, 0, 1})).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("weights[1]");
    }

    /** A change of the unit of x or y, or of the zero of x, changes the line as it must and nothing else. */
    @Property(tries = 200)
    void followsAChangeOfUnits(@ForAll @DoubleRange(min = 0.01, max = 1000) double factor,
                               @ForAll @DoubleRange(min = -1000, max = 1000) double shift) {
        final double[] x = {4, 8.1, 11.9, 16, 20};
        final double[] y = {4.01, 8.08, 11.93, 16.02, 19.97};
        final CalibrationLine line = CalibrationLine.fit(x, y);
        final CalibrationLine moved = CalibrationLine.fit(
            Arrays.stream(x).map(v -> v * factor + shift).toArray(),
            Arrays.stream(y).map(v -> v * 2.5).toArray());
        assertThat(moved.slope().value()).isCloseTo(line.slope().value() * 2.5 / factor,
            within(1e-6 / factor));
        final double at = moved.at(9 * factor + shift).value();
        assertThat(at).isCloseTo(2.5 * line.at(9).value(), within(1e-6));
        assertThat(moved.residualSd()).isCloseTo(2.5 * line.residualSd(), within(1e-6));
    }

    @Test
    void readsAsASentence() {
        assertThat(norris().toString()).startsWith("y = ").contains(", 34 degrees of freedom");
    }
}
