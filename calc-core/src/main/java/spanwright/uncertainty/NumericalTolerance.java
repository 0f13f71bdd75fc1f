package spanwright.uncertainty;

import spanwright.quantity.Checks;

/** Numerical tolerance of a result (JCGM 101:2008, 7.9.2): half a unit of the last significant digit. */
public final class NumericalTolerance {
    private NumericalTolerance() { }

    /**
     * Half a unit of the last of the significant digits of a value: 0.5 for 32 at two digits.
     *
     * @param value  above 0
     * @param digits significant digits regarded as meaningful, 1 to 15
     */
    public static double of(double value, int digits) {
        Checks.positive("value", value);
        Checks.within("significant digits", digits, 1, 15);
        final int exponent = (int) Math.floor(Math.log10(value)) - (digits - 1);
        return Math.pow(10, exponent) / 2;
    }
}
