package spanwright.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.quantity.PercentOfReading.percentOfReading;
import static spanwright.quantity.PercentOfSpan.percentOfSpan;
import static spanwright.quantity.PercentOfUpperRangeValue.percentOfUpperRangeValue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance.Basis;

class LimitTest {
    private static final Span MILLIAMPS = Span.milliamps4to20();

    // 1 % of reading is 1.25 % of span at 20 mA and 0.25 % at 4 mA; of upper range value 1.25 % everywhere:
    // arithmetic of the 4-20 mA range. 0.16 mA is 1 % of 16 mA.
    @ParameterizedTest(name = "{0} at {1} % of the range is {2} % of span")
    @CsvSource({
        "PERCENT_OF_SPAN, 0, 1", "PERCENT_OF_SPAN, 100, 1", "PERCENT_OF_READING, 100, 1.25",
        "PERCENT_OF_READING, 0, 0.25", "PERCENT_OF_UPPER_RANGE_VALUE, 0, 1.25", "OUTPUT_UNIT, 50, 6.25"})
    void carriesEveryBasisToPercentOfSpan(Basis basis, double percent, double expected) {
        final ToleranceInterval at = Limit.of(PermissibleError.plusMinus(1, basis)).at(MILLIAMPS, percent);
        assertEquals(expected, at.upper().orElseThrow(), 1e-12);
        assertEquals(-expected, at.lower().orElseThrow(), 1e-12);
    }

    @Test
    void factoriesNameTheirBasis() {
        assertEquals("\u00b10.5 % of span", Limit.plusMinus(percentOfSpan(0.5)).toString());
        assertEquals("\u00b10.5 % of reading", Limit.plusMinus(percentOfReading(0.5)).toString());
        assertEquals("\u00b10.5 % of upper range value",
            Limit.plusMinus(percentOfUpperRangeValue(0.5)).toString());
    }

    @Test
    void inputUnitNeedsTheSlopeAndTurnsRoundWhenReverseActing() {
        final Limit limit = Limit.of(PermissibleError.between(-0.02, 0.04, Basis.INPUT_UNIT));
        final ToleranceInterval at = limit.at(MILLIAMPS, 50, OptionalDouble.of(-2)); // 8 m to 0 m
        assertEquals(-0.5, at.lower().orElseThrow(), 1e-12);
        assertEquals(0.25, at.upper().orElseThrow(), 1e-12);
        final var e = assertThrows(IllegalArgumentException.class, () -> limit.at(MILLIAMPS, 50));
        assertEquals("the slope of the characteristic at 50 % of the range (the limit is in the unit of the"
            + " input)", e.getMessage());
    }

    @Test
    void oneSidedStaysOneSided() {
        final ToleranceInterval at = Limit.of(PermissibleError.atMost(0.2, Basis.PERCENT_OF_SPAN))
            .at(MILLIAMPS, 10);
        assertTrue(at.lower().isEmpty());
        assertTrue(at.contains(-50));
        assertFalse(at.contains(0.21));
    }

    @Test
    void theTighterOfTwoNeighboursHoldsOnABreakpoint() {
        final Limit limit = Limit.of(PermissibleError.plusMinus(0.4, Basis.PERCENT_OF_SPAN))
            .above(25, PermissibleError.plusMinus(0.1, Basis.PERCENT_OF_SPAN))
            .above(75, PermissibleError.between(-0.3, 0.2, Basis.PERCENT_OF_SPAN));
        assertEquals(0.4, limit.at(MILLIAMPS, 24.9).upper().orElseThrow());
        assertEquals(0.1, limit.at(MILLIAMPS, 25).upper().orElseThrow());
        assertEquals(0.1, limit.at(MILLIAMPS, 75).upper().orElseThrow());
        assertEquals(-0.3, limit.at(MILLIAMPS, 75.1).lower().orElseThrow());
        assertEquals(0.4, limit.at(MILLIAMPS, -1).upper().orElseThrow());
    }

    @Test
    void breakpointsMustRise() {
        final PermissibleError p = PermissibleError.plusMinus(0.4, Basis.PERCENT_OF_SPAN);
        final var e = assertThrows(IllegalArgumentException.class,
            () -> new Limit(List.of(p, p, p), List.of(50.0, 50.0)));
        assertEquals("breakpoint 50.0 % does not lie above the one before, 50.0 %", e.getMessage());
        assertThrows(IllegalArgumentException.class, () -> new Limit(List.of(p, p), List.of()));
    }

    @Test
    void percentOfReadingAllowsNothingAtZeroAndSaysSo() {
        final var e = assertThrows(IllegalArgumentException.class,
            () -> Limit.plusMinus(percentOfReading(0.5)).at(Span.of(0, 10, "V"), 0));
        assertEquals("a limit at 0 % of the range, where \u00b10.5 % of reading allows no error at all",
            e.getMessage());
    }

    // A data sheet that adds two bases. Plain arithmetic: at 0 % of the range the reading is 25 % of span.
    @ParameterizedTest(name = "0.10 % of reading plus 0.05 % of span at {0} % of the range is {1} % of span")
    @CsvSource({"0, 0.075", "50, 0.125", "100, 0.175"})
    void figuresOfTwoBasesAddUpPointByPoint(double percent, double expected) {
        final Limit limit = Limit.of(PermissibleError.plusMinus(0.10, Basis.PERCENT_OF_READING)
            .plus(PermissibleError.plusMinus(0.05, Basis.PERCENT_OF_SPAN)));
        assertEquals(expected, limit.at(MILLIAMPS, percent).upper().orElseThrow(), 1e-12);
        assertEquals(-expected, limit.at(MILLIAMPS, percent).lower().orElseThrow(), 1e-12);
        assertTrue(limit.toString().contains("of reading plus"), limit.toString());
    }

    @Test
    void aSumAllowsSomethingWhereTheReadingIsZeroAndNeedsTwoSides() {
        final PermissibleError ofReading = PermissibleError.plusMinus(0.1, Basis.PERCENT_OF_READING);
        final Span zeroToTen = Span.of(0, 10, "V");
        assertEquals(0.05, Limit.of(ofReading.plus(PermissibleError.plusMinus(0.05, Basis.PERCENT_OF_SPAN)))
            .at(zeroToTen, 0).upper().orElseThrow(), 1e-12);
        final PermissibleError oneSide = PermissibleError.atMost(0.1, Basis.PERCENT_OF_SPAN);
        final IllegalArgumentException e = assertThrows(IllegalArgumentException.class,
            () -> ofReading.plus(oneSide));
        assertTrue(e.getMessage().contains("both sides of zero"), e.getMessage());
    }

    @Test
    void settingToleranceMustLeaveRoomInsideTheAcceptanceLimit() {
        final Limit wide = Limit.plusMinus(percentOfSpan(0.5));
        final Limit narrow = Limit.plusMinus(percentOfReading(0.3));
        assertTrue(CalibrationLimits.of(wide, narrow).leavesRoomAt(MILLIAMPS, 100));
        assertFalse(CalibrationLimits.of(narrow, wide).leavesRoomAt(MILLIAMPS, 100));
        assertEquals(narrow, CalibrationLimits.of(wide, narrow).forUse(LimitUse.SETTING).orElseThrow());
        assertEquals(wide, CalibrationLimits.of(wide, narrow).forUse(LimitUse.ACCEPTANCE).orElseThrow());
    }
}
