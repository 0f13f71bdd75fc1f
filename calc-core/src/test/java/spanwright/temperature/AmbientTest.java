package spanwright.temperature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.quantity.Celsius.degC;
import static spanwright.quantity.Kelvin.kelvin;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import spanwright.uncertainty.Triangular;

class AmbientTest {

    @Test
    void aRiseCountsOnlyWhereItIsFelt() {
        final Ambient a = Ambient.between(degC(-10), degC(45)).withCabinetRise(kelvin(8))
            .withSunInTheField(kelvin(12)).withSunOnTheCabinet(kelvin(5));
        assertEquals(degC(-10), a.lowestAt(Place.FIELD));
        assertEquals(degC(57), a.highestAt(Place.FIELD));
        assertEquals(degC(-2), a.lowestAt(Place.CABINET));
        assertEquals(degC(58), a.highestAt(Place.CABINET));
    }

    @Test
    void aRiseThatVariesWidensTheRange() {
        final Ambient a = Ambient.between(degC(-10), degC(45)).withCabinetRise(kelvin(2), kelvin(8));
        assertEquals(degC(-8), a.lowestAt(Place.CABINET));
        assertEquals(degC(53), a.highestAt(Place.CABINET));
    }

    @Test
    void excursionsCountFromTheTemperatureAtCalibrationOnBothSides() {
        final Excursion e = Ambient.between(degC(-10), degC(45)).withCabinetRise(kelvin(8))
            .excursionAt(Place.CABINET, degC(23));
        assertEquals(25, e.kelvinBelow());
        assertEquals(30, e.kelvinAbove());
        assertEquals(30, e.largestKelvin());
        assertEquals(degC(-2), e.lowest());
        assertEquals(degC(53), e.highest());
        assertEquals("\u22122 \u00b0C to 53 \u00b0C about 23 \u00b0C at calibration", e.toString());
    }

    @Test
    void aRangeMustHoldAtEveryTemperatureAndADistributionForAShareOfTheTime() {
        final Ambient range = Ambient.between(degC(-10), degC(45));
        assertEquals(Ambient.Basis.EVERY_TEMPERATURE, range.basis());
        final Ambient swing = Ambient.swingingBetween(degC(-10), degC(45));
        assertEquals(Ambient.Basis.SHARE_OF_TIME, swing.basis());
        assertEquals("U-shaped", swing.distribution().orElseThrow().kind());
        assertEquals(Ambient.Basis.SHARE_OF_TIME, Ambient.evenlyBetween(degC(-10), degC(45)).basis());
        assertEquals(range, swing.atEveryTemperature());
        assertTrue(range.toString().contains("at every temperature"), range::toString);
        assertEquals(degC(20), Ambient.always(degC(20)).highest());
    }

    @Test
    void aDistributionMustBelongToItsRange() {
        final Ambient a = Ambient.spread(degC(0), degC(40), new Triangular(0, 40));
        assertEquals(Ambient.Basis.SHARE_OF_TIME, a.basis());
        assertTrue(a.toString().contains("weighted by time (triangular)"), a::toString);
        final var e = assertThrows(IllegalArgumentException.class,
            () -> Ambient.spread(degC(0), degC(40), new Triangular(40, 80)));
        assertEquals("mean temperature in degC is 60.0: out of range [0.0, 40.0]", e.getMessage());
    }

    @Test
    void refusesAnEmptyRange() {
        final var e = assertThrows(IllegalArgumentException.class,
            () -> Ambient.between(degC(45), degC(-10)));
        assertEquals("lowest ambient temperature 45 \u00b0C is above the highest \u221210 \u00b0C",
            e.getMessage());
        final var f = assertThrows(IllegalArgumentException.class,
            () -> Ambient.between(degC(0), degC(1)).withCabinetRise(kelvin(8), kelvin(2)));
        assertTrue(f.getMessage().startsWith("largest rise in K is 2.0"), f::getMessage);
        assertThrows(IllegalArgumentException.class, () -> Excursion.of(degC(20), degC(30), degC(10)));
        assertThrows(IllegalArgumentException.class,
            () -> Ambient.between(degC(0), degC(1)).withSunInTheField(kelvin(-1)));
        assertThrows(IllegalArgumentException.class,
            () -> Ambient.between(degC(0), degC(1)).withSunOnTheCabinet(kelvin(-1)));
    }

    @Test
    @DisplayName("burden 3.5 V: 0.07 W at 20 mA, 0.014 W at 4 mA [power = voltage x current]")
    void neighboursHeatWithTheCurrentTheyCarry() {
        final SelfHeating h = new SelfHeating(3.5, 0, 0, 40, 2, 0.5);
        assertAsPrinted("0.070", h.dissipationWatts(20));
        assertAsPrinted("0.014", h.dissipationWatts(4));
        assertEquals(0.07 * 40 * 2 * 0.5, h.riseByNeighbours(20).value(), 1e-12);
        final SelfHeating powered = new SelfHeating(1, 50, 0.5, 40, 1, 1);
        assertEquals((1 + 50 * 0.02) * 0.02 + 0.5, powered.dissipationWatts(20), 1e-12);
        final Ambient a = Ambient.between(degC(0), degC(40)).withNeighbours(h, 4, 20);
        assertEquals(0.014 * 40, a.leastRise(Place.CABINET), 1e-12);
        assertEquals(0.07 * 40, a.mostRise(Place.CABINET), 1e-12);
        assertEquals(0, a.mostRise(Place.FIELD));
        assertEquals(a, Ambient.between(degC(0), degC(40)).withNeighbours(h, 20, 4));
        assertThrows(IllegalArgumentException.class, () -> h.dissipationWatts(26));
    }

    @Property(tries = 200)
    void bothSidesOfAnExcursionMakeTheRange(@ForAll @DoubleRange(min = -60, max = 60) double low,
            @ForAll @DoubleRange(min = 0, max = 80) double width,
            @ForAll @DoubleRange(min = -20, max = 60) double calibration) {
        final Excursion e = Excursion.of(degC(calibration), degC(low), degC(low + width));
        assertEquals(width, e.kelvinBelow() + e.kelvinAbove(), 1e-9);
        assertTrue(e.largestKelvin() >= width / 2 - 1e-9);
    }
}
