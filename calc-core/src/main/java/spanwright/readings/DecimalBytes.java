package spanwright.readings;

/**
 * Reads plain decimal numbers straight from bytes. A number of at most 15 digits and 22 decimals is one exact
 * whole number divided by one exact power of ten, so the one rounding of the division gives the nearest
 * double, as a full parser would; everything else is left to the full parser.
 *
 * <p>Not thread safe: the decimals of the last number stand in a field, so that no object is made per cell.
 */
final class DecimalBytes {
    private static final int EXACT_DIGITS = 15;
    private static final double[] POWERS = new double[EXACT_DIGITS + 1];

    static {
        double p = 1;
        for (int i = 0; i < POWERS.length; i++) {
            POWERS[i] = p;
            p *= 10;
        }
    }

    private final byte decimalSign;
    private int decimals;
    private int end;

    DecimalBytes(DecimalSign sign) {
        decimalSign = (byte) sign.sign();
    }

    /** Decimals of the last number that was read. */
    int decimals() {
        return decimals;
    }

    /** Where the last number ended: the first byte that does not belong to it. */
    int end() {
        return end;
    }

    /**
     * The number that begins here, or NaN if it is no number in the plain form: an optional minus, digits
     * without a leading zero that is not the only whole digit, and decimals. The text of such a number can be
     * written again from its value and its decimals.
     *
     * @param b bytes in which something other than a digit follows the number
     */
    double read(byte[] b, int from) {
        int i = from;
        final boolean negative = b[i] == '-';
        i += negative ? 1 : 0;
        final int first = i;
        long digits = 0;
        int d = b[i] - '0';
        while (d >= 0 && d <= 9) {
            digits = digits * 10 + d;
            d = b[++i] - '0';
        }
        final int whole = i - first;
        int places = 0;
        if (b[i] == decimalSign) {
            final int after = ++i;
            d = b[i] - '0';
            while (d >= 0 && d <= 9) {
                digits = digits * 10 + d;
                d = b[++i] - '0';
            }
            places = i - after;
            if (places == 0) {
                return Double.NaN;
            }
        }
        end = i;
        if (whole == 0 || whole + places > EXACT_DIGITS || b[first] == '0' && whole > 1
            || negative && digits == 0) {
            return Double.NaN;
        }
        decimals = places;
        final double value = digits / POWERS[places];
        return negative ? -value : value;
    }
}
