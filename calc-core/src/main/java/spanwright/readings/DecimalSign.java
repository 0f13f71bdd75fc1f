package spanwright.readings;

/** What separates whole and decimal digits; one of them for a whole file. */
public enum DecimalSign {
    /** As in 4.012. */
    POINT('.'),
    /** As in 4,012 for a little over four. */
    COMMA(',');

    private final char sign;

    DecimalSign(char sign) {
        this.sign = sign;
    }

    char sign() {
        return sign;
    }

    DecimalSign other() {
        return this == POINT ? COMMA : POINT;
    }
}
