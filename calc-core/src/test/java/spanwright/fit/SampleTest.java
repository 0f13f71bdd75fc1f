package spanwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.reference.PublishedData;

class SampleTest {
    /** Relative tolerance of the standard deviation: a double cannot hold 10 000 000.2 finer than 2e-9. */
    @ParameterizedTest(name = "{0}  [NIST StRD univariate]")
    @CsvSource({"NumAcc1, 1e-15", "NumAcc2, 1e-14", "NumAcc3, 1e-9", "NumAcc4, 2e-8", "Mavro, 1e-12"})
    void agreesWithTheCertifiedValues(String name, double relative) {
        final PublishedData certified = PublishedData.load("nist-strd/univariate_certified");
        final int row = certified.texts("dataset").indexOf(name);
        final double[] y = PublishedData.load("nist-strd/" + name).numbers("y");
        final Sample sample = Sample.of(y);
        final double mean = certified.numbers("mean")[row];
        final double sd = certified.numbers("sd_n_minus_1")[row];
        assertThat(sample.count()).isEqualTo((int) certified.numbers("n")[row]);
        assertThat(sample.mean()).isCloseTo(mean, within(1e-15 * mean));
        assertThat(sample.sd()).isCloseTo(sd, within(relative * sd));
        final double lag = certified.numbers("lag1_autocorrelation")[row];
        assertThat(Sample.lag1Autocorrelation(y)).isCloseTo(lag, within(relative * Math.abs(lag)));
    }

    /** JCGM 100:2008, 4.2 and Table 1. */
    @Test
    void agreesWithGumTable1() {
        final Sample sample = Sample.of(PublishedData.load("gum_table1_temperature").numbers("t_degC"));
        assertAsPrinted("100.145", sample.mean());
        assertAsPrinted("1.489", sample.sd());
        assertAsPrinted("0.333", sample.meanEstimate().u());
        assertThat(sample.meanEstimate().dof().count()).isEqualTo(19);
    }

    /** JCGM 100:2008, 4.3.2 note and E.4.3: 24 % with ten readings, 10 % with fifty. */
    @Test
    void knowsHowWellAStandardDeviationIsKnown() {
        assertAsPrinted("0.24", new Sample(10, 0, 1).relativeUncertaintyOfSd());
        assertAsPrinted("0.10", new Sample(50, 0, 1).relativeUncertaintyOfSd());
    }

    @Test
    void refusesOneReadingAndAnAutocorrelationOfEqualOnes() {
        assertThatThrownBy(() -> Sample.of(1)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("at least 2");
        assertThatThrownBy(() -> Sample.lag1Autocorrelation(3, 3, 3))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("all readings equal 3.0");
    }

    @Test
    void readsAsASentence() {
        assertThat(Sample.of(1, 2, 3).toString())
            .isEqualTo("mean 2.0, standard deviation 1.0 (3 readings)");
    }
}
