package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static spanwright.quantity.Celsius.degC;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.reference.PublishedData;

/** The supply examples worked by hand and the published tables of conductors. */
class LoopVectorsTest {
    /**
     * 24 V, lift-off 12 V, 600 m of 1.0 mm2 at 60 degC, 250 ohm, isolators of 3.5 V each, nested: worked by
     * hand from Ohm's and Kirchhoff's laws with the published 18.1 ohm/km and 0.00393 per K.
     */
    static CurrentLoop nested(int isolators, double supply, double degrees) {
        LoopElement behind = Burden.receiver("card", 250);
        for (int i = isolators; i > 0; i--) {
            behind = Isolator.inputLoopPowered("isolator " + i, 3.5).feeding(behind);
        }
        return CurrentLoop.of("LT-101", Supply.volts(supply), Cable.copper(1.0).metres(600).at(degC(degrees)),
            Transmitter.twoWire("LT-101", 12), behind);
    }

    @ParameterizedTest(name = "{0} isolators at {1} mA need {2} V")
    @CsvSource({"0, 20, 17.50", "0, 20.5, 17.64", "0, 22, 18.05", "1, 20, 21.00", "1, 20.5, 21.14",
        "1, 22, 21.55",
        "2, 20, 24.50", "2, 20.5, 24.64", "2, 22, 25.05"})
    void needsTheVoltageWorkedByHand(int isolators, double milliamps, String volts) {
        assertAsPrinted(volts, nested(isolators, 24, 60).requiredVolts(milliamps, Corner.NOMINAL));
    }

    @Test
    @DisplayName("1.2 km of 18.1 ohm/km is 21.7 ohm at 20 degC and 25.134 ohm at 60 degC")
    void hotCableHasMoreResistance() {
        assertAsPrinted("21.7", Cable.copper(1.0).metres(600).loopOhms());
        assertAsPrinted("25.134", Cable.copper(1.0).metres(600).at(degC(60)).loopOhms());
    }

    @Test
    @DisplayName("one isolator: 2.45 V to spare at 22 mA on 24.0 V, 0.05 V on 21.6 V, -0.09 V at 22.5 mA")
    void marginsOfOneIsolator() {
        assertAsPrinted("2.45", nested(1, 24, 60).marginVolts(22, Corner.NOMINAL));
        assertAsPrinted("0.05", nested(1, 21.6, 60).marginVolts(22, Corner.NOMINAL));
        final CurrentLoop loop = nested(1, 24, 60).on(Supply.volts(24).tolerance(10));
        assertAsPrinted("0.05", loop.marginVolts(22, Corner.LEAST_VOLTAGE));
        assertAsPrinted("-0.09", loop.marginVolts(22.5, Corner.LEAST_VOLTAGE));
    }

    @Test
    @DisplayName("two isolators on 24 V: knee at 18.17 mA, 88.6 % of span, at 60 degC; 18.40 mA at 20 degC")
    void kneeOfTwoIsolators() {
        final LoopReach.End hot = nested(2, 24, 60).reach(Corner.NOMINAL).high().orElseThrow();
        assertAsPrinted("18.17", hot.milliamps());
        assertAsPrinted("88.6", hot.percentOfSpan());
        assertThat(hot.limitedBy()).isEqualTo("LT-101");
        assertThat(hot.because()).contains("lift-off", "isolator 1");
        final LoopReach.End cold = nested(2, 24, 20).reach(Corner.NOMINAL).high().orElseThrow();
        assertAsPrinted("18.40", cold.milliamps());
        assertAsPrinted("90.0", cold.percentOfSpan());
    }

    @Test
    @DisplayName("a fixed 4.9 V and 250 ohm at 21.2 mA are 10.2 V; 5 V is 250 ohm at 20 mA, 1250 at 4 mA")
    void burdenIsNotAResistance() {
        final PiecewiseLine drop = Drops.of(Isolator.inputLoopPowered("isolator", 4.9)
            .feeding(Burden.receiver("card", 250)), Pick.of(Corner.NOMINAL));
        assertAsPrinted("10.2", drop.at(21.2));
        assertAsPrinted("9.93", drop.at(20.12));
        final PiecewiseLine five = Isolator.inputLoopPowered("isolator", 5)
            .inputCurve(Pick.of(Corner.NOMINAL));
        assertThat(five.at(20) / 0.020).isEqualTo(250, within(1e-9));
        assertThat(five.at(4) / 0.004).isEqualTo(1250, within(1e-9));
    }

    @Test
    @DisplayName("a 10 ohm sense resistor reads 40 mV at 4 mA and 200 mV at 20 mA")
    void senseResistor() {
        final PiecewiseLine sense = Burden.resistor("sense", 10).curve(Pick.of(Corner.NOMINAL));
        assertThat(sense.at(4)).isEqualTo(0.040, within(1e-12));
        assertThat(sense.at(20)).isEqualTo(0.200, within(1e-12));
    }

    @Test
    @DisplayName("250 ohm added for digital communication cost 5.0 V at 20 mA and 5.6 V at 22.5 mA")
    void addedResistorCostsFiveVolts() {
        final CurrentLoop loop = nested(0, 24, 60);
        final CurrentLoop more = loop.with(Burden.resistor("for the handheld", 250));
        assertAsPrinted("5.0", loop.marginVolts(20, Corner.NOMINAL) - more.marginVolts(20, Corner.NOMINAL));
        assertAsPrinted("5.6", loop.marginVolts(22.5, Corner.NOMINAL) - more.marginVolts(22.5,
            Corner.NOMINAL));
    }

    @Test
    void conductorsAreThoseOfThePublishedTable() {
        final PublishedData table = PublishedData.load("iec60228_resistance");
        final double[] areas = table.numbers("area_mm2");
        assertThat(areas).hasSize(6);
        for (int i = 0; i < areas.length; i++) {
            assertThat(Conductors.largestOhmsPerKm(areas[i], ConductorClass.SOLID))
                .isEqualTo(table.numbers("class1_plain_ohm_per_km")[i]);
            assertThat(Conductors.largestOhmsPerKm(areas[i], ConductorClass.STRANDED))
                .isEqualTo(table.numbers("class2_plain_ohm_per_km")[i]);
            assertThat(Conductors.largestOhmsPerKm(areas[i], ConductorClass.FLEXIBLE))
                .isEqualTo(table.numbers("class5_plain_ohm_per_km")[i]);
            assertThat(Conductors.largestOhmsPerKm(areas[i], ConductorClass.COATED))
                .isEqualTo(table.numbers("class1_2_metal_coated_ohm_per_km")[i]);
            assertThat(Conductors.largestOhmsPerKm(areas[i], ConductorClass.FLEXIBLE_COATED))
                .isEqualTo(table.numbers("class5_metal_coated_ohm_per_km")[i]);
            assertThat(Conductors.idealOhmsPerKm(areas[i])).isLessThan(areas[i] > 0 ? table
                .numbers("class1_plain_ohm_per_km")[i] : 0);
        }
    }

    @Test
    void gaugesAreThoseOfThePublishedTable() {
        final PublishedData table = PublishedData.load("awg_resistance");
        final double[] gauges = table.numbers("awg");
        assertThat(Conductors.gauges()).hasSize(gauges.length);
        for (int i = 0; i < gauges.length; i++) {
            final String printed = table.texts("ohm_per_km_printed").get(i);
            assertThat(Conductors.gauges().get(i)).isEqualTo((int) gauges[i]);
            final double perKm = Conductors.gaugeOhmsPerKm((int) gauges[i]);
            assertThat(perKm).isEqualTo(table.numbers("ohm_per_1000ft_at_20C")[i] / 0.3048, within(1e-9));
            if (!printed.isEmpty()) {
                // The two columns of the public table differ by up to 0.3 %: 10.15 per 1000 ft is 33.30,
                // printed 33.2.
                assertThat(perKm).isCloseTo(Double.parseDouble(printed), withinPercentage(0.5));
            }
        }
    }

    @Test
    void temperatureFactorsAreThoseOfThePublishedTable() {
        final PublishedData table = PublishedData.load("iec60228_temperature_factor");
        final double[] degrees = table.numbers("t_degC");
        assertThat(degrees).hasSize(20);
        final Cable cable = Cable.measured(Toleranced.exactly(10)).metres(500).withIec60228Temperature();
        for (int i = 0; i < degrees.length; i++) {
            final String printed = table.texts("Kt_printed").get(i);
            assertThat(Conductors.toTwentyDegrees(degrees[i])).as("at %s degC", degrees[i])
                .isEqualTo(Double.parseDouble(printed), within(0.00051));
            assertThat(10 / cable.at(degC(degrees[i])).loopOhms())
                .isEqualTo(Conductors.toTwentyDegrees(degrees[i]), within(1e-12));
        }
    }
}
