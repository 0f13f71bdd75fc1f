package spanwright.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;

/**
 * Compares with a published figure: its printed digits set the tolerance, so that nobody picks an epsilon.
 */
public final class AsPrinted {
    private AsPrinted() { }

    /** Agrees to half a unit of the last printed place, asking no finer than 1e-11 of the value. */
    public static void assertAsPrinted(String printed, double actual) {
        assertAsPrinted(printed, actual, "");
    }

    /** As the other, with words that say what was compared. */
    public static void assertAsPrinted(String printed, double actual, String what) {
        final BigDecimal p = new BigDecimal(printed);
        final double floor = 1e-11 * Math.abs(p.doubleValue());
        assertEquals(p.doubleValue(), actual, Math.max(p.ulp().doubleValue() / 2 * (1 + 1e-9), floor), what);
    }
}
