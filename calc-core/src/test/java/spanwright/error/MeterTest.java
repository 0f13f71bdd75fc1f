package spanwright.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.quantity.Celsius;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;

/**
 * Expected figures were worked independently before the code was written, or follow by hand where it says so.
 */
class MeterTest {
    private static final Span LOOP = Span.milliamps4to20();
    private static final Celsius ROOM = new Celsius(23);
    private static final SenseResistor TEN = SenseResistor.ofTolerance(10, 0.1, 0);

    private static VoltmeterAcrossResistor handheld(double percent, double counts, double step) {
        return VoltmeterAcrossResistor.of("handheld", MeterRange.of(0.4, percent, counts, step), TEN, 0);
    }

    /** 10 ohm, limits of the voltmeter alone in percent of the 16 mA span at 4, 12 and 20 mA. */
    @ParameterizedTest(name = "{0} % + {1} counts of {2} V")
    @CsvSource({"0.5, 2, 1e-4, 0.25, 0.50, 0.75", "0.09, 2, 1e-4, 0.15, 0.19, 0.24",
        "0.05, 3, 1e-5, 0.031, 0.056, 0.081", "0.025, 2, 1e-5, 0.019, 0.031, 0.044"})
    void percentOfReadingPlusCountsAcrossTenOhm(double percent, double counts, double step, String at4,
                                                String at12, String at20) {
        final VoltmeterAcrossResistor meter = handheld(percent, counts, step);
        final String[] printed = {at4, at12, at20};
        for (int i = 0; i < 3; i++) {
            assertAsPrinted(printed[i], meter.at(4 + 8 * i, ROOM, LOOP).limitOf("meter accuracy").value());
        }
    }

    @Test
    void theResistorsToleranceGrowsWithTheCurrent() {
        final MeterReading top = handheld(0.025, 2, 1e-5).at(20, ROOM, LOOP);
        assertAsPrinted("0.125", top.limitOf("resistor value").value());
        assertThat(handheld(0.025, 2, 1e-5).at(4, ROOM, LOOP).limitOf("resistor value").value())
            .isCloseTo(0.025, within(1e-12));
        // 250 ohm of 1 % is 1.25 % of span at the top.
        final VoltmeterAcrossResistor coarse = VoltmeterAcrossResistor.of("card",
            MeterRange.of(6, 0.025, 2, 1e-4), SenseResistor.ofTolerance(250, 1, 50), 0);
        assertAsPrinted("1.25", coarse.at(20, ROOM, LOOP).limitOf("resistor value").value());
        // 50 ppm/K over 40 K is 0.25 % of span at the top.
        assertAsPrinted("0.25", coarse.at(20, new Celsius(65), LOOP).limitOf("resistor temperature").value());
    }

    @Test
    void aWrongResistorIsAPercentageOfReading() {
        final SenseResistor assumed = SenseResistor.ofTolerance(250, 0.1, 0);
        assertAsPrinted("-0.50", assumed.errorPercentOfSpan(249, 20, 16));
        assertAsPrinted("-0.10", assumed.errorPercentOfSpan(249, 4, 16));
        assertThatThrownBy(() -> assumed.errorPercentOfSpan(0, 20, 16))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("true resistance");
    }

    @Test
    void loadingByTenMegohmIsNegligible() {
        final MeterReading ten = handheld(0.025, 2, 1e-5).at(20, ROOM, LOOP);
        // 1 ppm of 20 mA on 10 ohm.
        assertThat(ten.limitOf("meter loading").value()).isCloseTo(100 * 20e-6 / 16, within(1e-12));
        final MeterReading card = VoltmeterAcrossResistor.of("card", MeterRange.of(6, 0, 1, 1e-4),
            SenseResistor.ofTolerance(250, 0.1, 0), 0).at(20, ROOM, LOOP);
        // 25 ppm.
        assertThat(card.limitOf("meter loading").value()).isCloseTo(100 * 20 * 25e-6 / 16, within(1e-12));
    }

    @Test
    void thermalVoltagesAreTakenOutByReversal() {
        final VoltmeterAcrossResistor meter = VoltmeterAcrossResistor.of("handheld",
            MeterRange.of(0.4, 0.025, 2, 1e-5), TEN, 50e-6);
        // 50 uV on 10 ohm is 5 uA: 0.031 % of span.
        assertAsPrinted("0.031", meter.at(4, ROOM, LOOP).limitOf("thermal voltage").value());
        final MeterReading reversed = meter.reversed().at(4, ROOM, LOOP);
        assertThatThrownBy(() -> reversed.limitOf("thermal voltage"))
            .isInstanceOf(IllegalArgumentException.class);
        assertThat(reversed.expandedOfSpan().value()).isLessThan(meter.at(4, ROOM, LOOP).expandedOfSpan()
            .value());
        assertThat(meter.reversed().notes()).anySatisfy(n -> assertThat(n).contains("cancel only if"));
        assertThat(meter.notes()).hasSize(1);
        assertThat(handheld(0.5, 2, 1e-4).notes()).contains("thermal voltages were taken as none");
    }

    @Test
    void outsideTheBandTheLimitsGrow() {
        final MeterRange range = MeterRange.of(0.4, 0.05, 3, 1e-5);
        final double inside = range.limitAt(0.2, new Celsius(28));
        assertThat(inside).isCloseTo(0.2 * 0.0005 + 3e-5, within(1e-15));
        assertThat(range.limitAt(0.2, new Celsius(18))).isEqualTo(inside);
        assertThat(range.limitAt(0.2, new Celsius(38))).isCloseTo(2 * inside, within(1e-15));
        assertThat(range.limitAt(0.2, new Celsius(8))).isCloseTo(2 * inside, within(1e-15));
        assertThat(range.within(new Celsius(13), new Celsius(33), 0.2).limitAt(-0.2, new Celsius(38)))
            .isCloseTo(2 * inside, within(1e-15));
        assertThat(range.outside(new Celsius(-2))).isEqualTo(20);
    }

    @Test
    void withoutCountsHalfAStepStandsForTheResolution() {
        assertThat(MeterRange.of(20, 0, 0, 0.01).limitAt(12, ROOM)).isCloseTo(0.005, within(1e-15));
    }

    /**
     * JCGM 100:2008 (GUM), 4.3.7 example 2: 14e-6 of the reading and 2e-6 of the 1 V range, 15 uV, u 8.7 uV.
     */
    @Test
    void theVoltmeterOfTheGum() {
        final MeterRange range = MeterRange.of(1, 14e-4, 2, 1e-6);
        final double half = range.limitAt(0.928571, ROOM);
        assertAsPrinted("15", half * 1e6);
        assertAsPrinted("8.7", half * 1e6 / Math.sqrt(3));
    }

    /** One step of an input card of 0-20 mA in percent of the 16 mA span, worked independently. */
    @ParameterizedTest(name = "{0} bits")
    @CsvSource({"10, 0.122", "12, 0.0305", "14, 0.0076", "16, 0.0019"})
    void theStepOfAnInputCard(int bits, String printed) {
        final MeterRange card = MeterRange.ofBits(20, bits);
        assertAsPrinted(printed, LOOP.ofSpan(card.step()).value());
        assertThat(card.limitAt(12, ROOM)).isCloseTo(card.step() / 2, within(1e-15));
    }

    @Test
    void aReadingBeyondTheRangeIsRefused() {
        assertThatThrownBy(() -> handheld(0.5, 2, 1e-4).at(41, ROOM, LOOP))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage("a reading of 0.41 is beyond the range, which ends at 0.4");
        assertThat(handheld(0.5, 2, 1e-4).at(40, ROOM, LOOP).milliamps()).isEqualTo(40);
        assertThatThrownBy(() -> MeterRange.of(0.4, 0.5, 2, 1e-4).within(ROOM, new Celsius(20), 0.1))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("must rise");
    }

    @Test
    void theBudgetCombinesTheTerms() {
        final MeterReading r = handheld(0.5, 2, 1e-4).at(20, ROOM, LOOP);
        // Rectangles of 0.12, 0.02 and 0.00002 mA.
        final double u = Math.sqrt((0.12 * 0.12 + 0.02 * 0.02 + 4e-10) / 3);
        assertThat(r.budget().u()).isCloseTo(u, within(1e-12));
        assertThat(r.standardOfSpan().value()).isCloseTo(100 * u / 16, within(1e-12));
        // One rectangle dominates: k = 0.95 sqrt(3).
        assertThat(r.expanded().expanded()).isCloseTo(0.95 * Math.sqrt(3) * u, within(1e-9));
        assertThat(r.worstCase().value()).isCloseTo(100 * 0.14002 / 16, within(1e-9));
        assertThat(r.ratioTo(new PercentOfSpan(0.1))).isLessThan(2);
        assertThat(r.burdenVolts()).isCloseTo(0.2, within(1e-15));
        assertThat(r.toString())
            .startsWith("handheld at 20 mA: U 0.12 mA = 0.72 % of span (95 %), at worst 0.88");
    }

    @Test
    void aCertificateReplacesTheTolerance() {
        final SenseResistor certified = SenseResistor.certified(10.0023, 0.0005, 2, 5, new Celsius(20));
        final VoltmeterAcrossResistor meter = VoltmeterAcrossResistor.of("bench",
            MeterRange.of(0.4, 0.01, 2, 1e-6), certified, 0);
        final MeterReading r = meter.at(20, new Celsius(20), LOOP);
        assertThat(r.budget().line("resistor value").contribution())
            .isCloseTo(20 * 0.00025 / 10.0023, within(1e-12));
        assertThat(r.limitOf("resistor value").value()).isCloseTo(100 * 20 * 0.0005 / 10.0023 / 16,
            within(1e-9));
        assertThat(meter.notes()).noneSatisfy(n -> assertThat(n).contains("nominal"));
        // 5 ppm/K over 15 K of 20 mA.
        assertThat(meter.at(20, new Celsius(35), LOOP).limitOf("resistor temperature").value())
            .isCloseTo(100 * 20 * 75e-6 / 16, within(1e-9));
        assertThat(certified.toString()).isEqualTo("10.0023 ohm, certified, 5 ppm/K");
    }

    @Test
    void atNoCurrentOnlyTheCountsRemain() {
        final MeterReading r = handheld(0.5, 2, 1e-4).at(0, ROOM, LOOP);
        assertThat(r.budget().lines()).hasSize(1);
        assertThat(r.limitOf("meter accuracy").value()).isCloseTo(100 * 0.02 / 16, within(1e-12));
    }

    @Test
    void aMilliammeterTakesVoltageFromTheLoop() {
        final MilliammeterInLoop meter = new MilliammeterInLoop("mA range", MeterRange.of(30, 0.2, 2, 0.01),
            10);
        assertThat(meter.burdenVolts(20)).isCloseTo(0.2, within(1e-15));
        assertThat(meter.at(20, ROOM, LOOP).limitOf("meter accuracy").value())
            .isCloseTo(100 * (0.04 + 0.02) / 16, within(1e-12));
        assertThat(meter.notes().get(0)).startsWith("the meter takes 0.20 V of the loop at 20 mA");
    }

    @Test
    void setUpsSideBySide() {
        final MilliammeterInLoop milliamps = new MilliammeterInLoop("mA range",
            MeterRange.of(30, 0.02, 2, 0.001), 10);
        final MeterComparison c = MeterComparison.of(List.of(handheld(0.5, 2, 1e-4), milliamps), LOOP, ROOM,
            new PercentOfSpan(0.25), 4);
        assertThat(c.rows().get(0).meter()).isEqualTo(milliamps);
        assertThat(c.willDo()).containsExactly(milliamps);
        assertThat(c.rows().get(0).readings()).hasSize(3);
        // The worst is the top: (0.004 + 0.002) mA half width, k u = 0.95 of it.
        assertThat(c.rows().get(0).ratio()).isCloseTo(0.25 / (0.95 * 100 * 0.006 / 16), within(1e-9));
        assertThat(c.rows().get(1).willDo()).isFalse();
        assertThat(c.toString())
            .startsWith("For a tolerance of \u00b10.25 % of span and a ratio of 4: mA range will do")
            .contains("handheld: 0.24 / 0.48 / 0.72 % of span at 4 / 12 / 20 mA; ratio 0.3");
        assertThat(MeterComparison.of(List.of(handheld(0.5, 2, 1e-4)), LOOP, ROOM, new PercentOfSpan(0.1), 4)
            .toString()).contains("none will do");
        assertThatThrownBy(() -> MeterComparison.of(List.of(milliamps), Span.of(0, 8, "m"), ROOM,
            new PercentOfSpan(0.1), 4)).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("the range must be in mA, not in m");
    }

    /** A diode of 0.65 V at 20 mA, n k T / q about 46 mV: 0.065, 0.56 and, at 70 degC, 0.95 % of span. */
    @Test
    void aDiodeTerminalLosesCurrentWhenTheBurdenNearsItsVoltage() {
        final DiodeTerminal diode = DiodeTerminal.usual();
        assertThat(diode.errorPercentOfSpan(0.3, new Celsius(25), 16)).isCloseTo(-0.065, within(0.001));
        assertThat(diode.errorPercentOfSpan(0.4, new Celsius(25), 16)).isCloseTo(-0.56, within(0.005));
        assertThat(diode.errorPercentOfSpan(0.3, new Celsius(70), 16)).isCloseTo(-0.95, within(0.015));
        assertThat(diode.leakageMilliamps(0, new Celsius(25))).isZero();
        assertThat(diode.leakageMilliamps(0.65, new Celsius(25))).isCloseTo(20, within(1e-12));
        final double volts = diode.largestBurdenVolts(0.0016, new Celsius(25));
        assertThat(diode.errorPercentOfSpan(volts, new Celsius(25), 16)).isCloseTo(-0.01, within(1e-9));
        assertThatThrownBy(() -> diode.leakageMilliamps(-0.1, ROOM))
            .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> diode.leakageMilliamps(0.1, new Celsius(400)))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("forward voltage at");
        assertThatThrownBy(() -> new DiodeTerminal(0.65, 20, ROOM, 2.5, -0.002))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("ideality");
    }

    /**
     * 15 ohm and leads at 20 mA leave 0.3 V across the diode: 0.065 % of span stays in it (worked
     * independently).
     */
    @Test
    void aMilliammeterAtATestTerminalLacksWhatTheDiodeKeeps() {
        final MilliammeterAtTerminal meter = new MilliammeterAtTerminal("at the terminal",
            MeterRange.of(30, 0.05, 2, 0.001), 15, DiodeTerminal.usual());
        final Celsius reference = DiodeTerminal.usual().reference();
        final MeterReading top = meter.at(20, reference, LOOP);
        assertThat(top.limitOf("leakage of the diode").value()).isCloseTo(0.065, within(0.001));
        assertThat(top.limitOf("meter accuracy").value()).isCloseTo(100 * 0.012 / 16, within(1e-12));
        // At 4 mA the meter leaves 0.06 V: next to nothing stays.
        assertThat(meter.at(4, reference, LOOP).limitOf("leakage of the diode").value()).isLessThan(0.001);
        assertThat(meter.burdenVolts(20)).isCloseTo(0.3, within(1e-15));
        assertThat(meter.notes().get(0))
            .startsWith("the reading is low by what stays in the diode, 0.010 mA");
        // A burden far beyond the diode's voltage: the diode takes all there is, not more.
        assertThat(new MilliammeterAtTerminal("resistive", MeterRange.of(30, 0, 1, 0.001), 60,
            DiodeTerminal.usual()).leakageMilliamps(20, reference)).isEqualTo(20);
    }

    @Test
    void aSetUpThatCannotReadAPointIsNamedWithTheReason() {
        final VoltmeterAcrossResistor small = VoltmeterAcrossResistor.of("small range",
            MeterRange.of(0.15, 0.05, 2, 1e-5), TEN, 0);
        final MeterComparison c = MeterComparison.of(List.of(small, handheld(0.5, 2, 1e-4)), LOOP, ROOM,
            new PercentOfSpan(0.25), 4, List.of(0.0, 25.0, 75.0, 100.0));
        assertThat(c.rows()).hasSize(1);
        assertThat(c.rows().get(0).readings()).hasSize(4);
        assertThat(c.unfit().get(0).meter()).isEqualTo(small);
        // 75 % is 16 mA, 0.16 V on 10 ohm.
        assertThat(c.unfit().get(0).reason())
            .isEqualTo("at 16 mA a reading of 0.16 is beyond the range, which ends at 0.15");
        assertThat(c.toString()).contains("small range cannot read it: at 16 mA");
    }
}
