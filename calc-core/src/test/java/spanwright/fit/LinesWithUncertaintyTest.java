package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.reference.AsPrinted;
import spanwright.reference.PublishedData;

/**
 * Inverse use of a line, and both variables uncertain: test-data/published/r_lines.R made the numbers by
 * search.
 */
class LinesWithUncertaintyTest {
    private static final double[] X = {4, 8, 12, 16, 20, 20, 16, 12, 8, 4};
    private static final double[] Y = {4.02, 7.93, 12.11, 16.05, 19.9, 20.08, 15.97, 12.2, 8.03, 3.91};

    private static double fromR(String name, String what) {
        return PublishedData.load("r_lines").rows().stream()
            .filter(r -> r.get(0).equals(name) && r.get(1).equals(what))
            .mapToDouble(r -> Double.parseDouble(r.get(2))).findFirst().orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"6, 1", "12, 1", "21, 1", "6, 3", "12, 3", "21, 3"})
    void theInverseIntervalIsWhereTheLineIsJustRejected(double y, int readings) {
        final InverseInterval inverse = CalibrationLine.fit(X, Y).stimulusFor(y, readings, 0.95);
        final String name = "fieller y=" + (int) y + " k=" + readings;
        assertThat(inverse.stimulus().orElseThrow()).isCloseTo(fromR(name, "x"), within(1e-11));
        assertThat(inverse.interval().orElseThrow().lower()).isCloseTo(fromR(name, "lower"), within(1e-10));
        assertThat(inverse.interval().orElseThrow().upper()).isCloseTo(fromR(name, "upper"), within(1e-10));
        assertThat(inverse.reason()).isEmpty();
    }

    @Test
    void aSlopeNotToldFromZeroHasNoBoundedInterval() {
        final CalibrationLine noise = CalibrationLine.fit(new double[] {4, 8, 12, 16, 20},
            new double[] {12.1, 11.9, 12.0, 12.2, 11.9});
        final InverseInterval inverse = noise.stimulusFor(12, 1, 0.95);
        assertThat(inverse.interval()).isEmpty();
        assertThat(inverse.stimulus()).isPresent();
        assertThat(inverse.reason()).contains("is not told from zero with a coverage of 0.95");
        assertThat(inverse.toString()).contains("no bounded interval");
        // With less coverage asked, the same slope may be told from zero.
        assertThat(CalibrationLine.fit(X, Y).stimulusFor(12, 1, 0.5).interval()).isPresent();
    }

    @Test
    void aLevelLineHasNoStimulusAtAll() {
        final CalibrationLine level = CalibrationLine.fit(new double[] {4, 12, 20}, new double[] {7, 7, 7});
        final InverseInterval inverse = level.stimulusFor(7, 1, 0.95);
        assertThat(inverse.stimulus()).isEmpty();
        assertThat(inverse.reason()).startsWith("the line is level");
    }

    @Test
    void anExactLineHasAnExactInverse() {
        final InverseInterval inverse = CalibrationLine.fit(new double[] {4, 12, 20},
            new double[] {8, 24, 40})
            .stimulusFor(30, 1, 0.95);
        assertThat(inverse.interval().orElseThrow().lower()).isCloseTo(15, within(1e-12));
        assertThat(inverse.interval().orElseThrow().upper()).isCloseTo(15, within(1e-12));
        assertThatThrownBy(() -> CalibrationLine.fit(X, Y).stimulusFor(12, 0, 0.95))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("at least 1");
        assertThatThrownBy(() -> CalibrationLine.fit(X, Y).stimulusFor(12, 1, 1))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("coverage");
    }

    /**
     * Pearson's data with York's weights: slope -0.4805, intercept 5.4799, chi squared 1.483 (from memory).
     */
    @Test
    void yorksLineOfPearsonsData() {
        final double[] x = {0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4};
        final double[] y = {5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5};
        final double[] wx = {1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1};
        final double[] wy = {1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500};
        final LineWithBothUncertain line = LineWithBothUncertain.fit(x, y,
            Arrays.stream(wx).map(w -> 1 / Math.sqrt(w)).toArray(),
            Arrays.stream(wy).map(w -> 1 / Math.sqrt(w)).toArray());
        AsPrinted.assertAsPrinted("-0.4805", line.slope().value());
        AsPrinted.assertAsPrinted("5.4799", line.intercept().value());
        AsPrinted.assertAsPrinted("1.483", line.chiSquaredByDof());
        assertThat(line.slope().value()).isCloseTo(fromR("pearson-york", "slope"), within(1e-10));
        assertThat(line.intercept().value()).isCloseTo(fromR("pearson-york", "intercept"), within(1e-9));
        // York et al. 2004, table II (from memory): standard errors 0.0579 and 0.2949 before scaling by chi.
        AsPrinted.assertAsPrinted("0.058", line.slope().u());
        AsPrinted.assertAsPrinted("0.295", line.intercept().u());
    }

    @Test
    void demingsLineAgreesWithASearchAndWithThePrincipalAxis() {
        final LineWithBothUncertain unequal = LineWithBothUncertain.deming(X, Y, 0.02, 0.05);
        assertThat(unequal.slope().value()).isCloseTo(fromR("loop", "slope"), within(1e-10));
        assertThat(unequal.intercept().value()).isCloseTo(fromR("loop", "intercept"), within(1e-9));
        assertThat(unequal.chiSquaredByDof()).isCloseTo(fromR("loop", "chi2_by_dof"), within(1e-9));
        final LineWithBothUncertain equal = LineWithBothUncertain.deming(X, Y, 0.05, 0.05);
        assertThat(equal.slope().value()).isCloseTo(fromR("loop equal", "principal_axis"), within(1e-12));
    }

    @Test
    void withoutUncertaintyOfTheStimulusItIsTheOrdinaryLineWithAStatedScatter() {
        final LineWithBothUncertain line = LineWithBothUncertain.deming(X, Y, 0, 0.05);
        final CalibrationLine ordinary = CalibrationLine.fit(X, Y);
        assertThat(line.slope().value()).isCloseTo(ordinary.slope().value(), within(1e-14));
        assertThat(line.at(7).value()).isCloseTo(ordinary.at(7).value(), within(1e-13));
        final double ratio = 0.05 / ordinary.residualSd();
        assertThat(line.slope().u()).isCloseTo(ordinary.slope().u() * ratio, within(1e-14));
        assertThat(line.at(7).u()).isCloseTo(ordinary.at(7).u() * ratio, within(1e-14));
        assertThat(line.chiSquaredByDof()).isCloseTo(1 / (ratio * ratio), within(1e-10));
        assertThat(line.slope().dof().isUnlimited()).isTrue();
    }

    @Test
    void refusesUncertaintiesThatAreNone() {
        assertThatThrownBy(() -> LineWithBothUncertain.deming(X, Y, 0.1, 0))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("uy[0]");
        assertThatThrownBy(() -> LineWithBothUncertain.deming(X, Y, -0.1, 1))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("ux[0]");
        assertThatThrownBy(
            () -> LineWithBothUncertain.deming(new double[] {4, 4, 4}, new double[] {1, 2, 3}, 1, 1))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("all 3 stimuli equal");
    }

    /** Exchange of the roles of x and y turns the slope over: the line is one and the same. */
    @Test
    void isTheSameLineWithTheRolesExchanged() {
        final LineWithBothUncertain line = LineWithBothUncertain.deming(X, Y, 0.02, 0.05);
        final LineWithBothUncertain turned = LineWithBothUncertain.deming(Y, X, 0.05, 0.02);
        assertThat(turned.slope().value()).isCloseTo(1 / line.slope().value(), within(1e-11));
        assertThat(turned.at(line.at(9).value()).value()).isCloseTo(9, within(1e-10));
    }
}
