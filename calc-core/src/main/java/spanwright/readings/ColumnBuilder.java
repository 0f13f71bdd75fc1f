package spanwright.readings;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * One column of a table while it is read: a double and a byte of decimals per number, a code per text. The
 * text of a number is not kept where value and decimals give it back; where they do not, it is kept as
 * written.
 *
 * <p>A column is one of numbers until a cell is none; then it turns into one of text, unless it must hold
 * numbers. Not thread safe.
 */
final class ColumnBuilder {
    /** What a column may hold. */
    enum Need {
        /** Numbers if every cell is one, else text. */
        OPEN,
        /** Numbers, or the table is refused. */
        NUMBERS,
        /** Text, however it looks. */
        TEXT
    }

    private final Need need;
    private final String unit;
    private final DecimalSign sign;
    private final Map<Integer, String> written = new HashMap<>();
    private final TextDictionary dictionary = new TextDictionary();
    private double[] values = new double[0];
    private byte[] decimals = new byte[0];
    private int expected = 1024;
    private int[] codes = new int[0];
    private boolean text;
    private int size;
    private int numbers;
    private Fault noted = Fault.VALUE_MISSING;

    ColumnBuilder(Need need, String unit, DecimalSign sign) {
        this.need = need;
        this.unit = unit;
        this.sign = sign;
        if (need == Need.TEXT) {
            turnToText();
        }
    }

    /** A cell that stops the table; the row and column are known to the caller. */
    static final class Refused extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final transient Fault fault;

        Refused(Fault fault, String message) {
            super(message, null, false, false);
            this.fault = fault;
        }

        Fault fault() {
            return fault;
        }
    }

    /** The bytes need a reader that knows their encoding or their quotation marks. */
    static final class NotPlain extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NotPlain() {
            super("not plain", null, false, false);
        }
    }

    /**
     * Adds the next cell.
     *
     * @return whether it was taken as it stands; else {@link #noted} says what was done
     */
    boolean add(byte[] b, int from, int to) {
        if (text) {
            addCode(dictionary.code(b, from, to));
            return true;
        }
        return addUnusual(b, from, to);
    }

    /** Adds a number that value and decimals give back as it was written. */
    void addPlain(double value, int places) {
        addNumber(value, places);
        numbers++;
    }

    private boolean addUnusual(byte[] b, int from, int to) {
        final String cell = decode(b, from, to);
        final CellContent content = CellContent.of(GridCell.text(cell), sign);
        switch (content.kind()) {
            case NUMBER:
                if (content.unit().isEmpty() || content.unit().equals(unit)) {
                    return addWritten(cell, content);
                }
                break;
            case MISSING:
                addAbsent(cell);
                return note(Fault.VALUE_MISSING);
            case CENSORED, OVERLOAD:
                if (need == Need.NUMBERS) {
                    addAbsent(cell);
                    return note(Fault.VALUE_CENSORED);
                }
                break;
            case OTHER_DECIMAL_SIGN:
                if (numbers > 0 && cell.strip().matches("[+-]?\\d+[.,]\\d+")) {
                    throw new Refused(Fault.MIXED_DECIMAL_SIGN, "the decimal sign of this file is \""
                        + sign.sign()
                        + "\": one file may use the decimal point or the decimal comma, not both");
                }
                break;
            default:
                break;
        }
        if (need == Need.NUMBERS) {
            throw new Refused(content.kind() == CellContent.Kind.DATE ? Fault.DATE_FOR_NUMBER
                : Fault.NOT_A_NUMBER, "no number: digits with one decimal sign \"" + sign.sign()
                    + "\" are allowed");
        }
        turnToText();
        addCode(dictionary.code(b, from, to));
        return true;
    }

    private boolean addWritten(String cell, CellContent content) {
        final BigDecimal number = content.number().orElseThrow();
        final double value = number.doubleValue() + 0.0;
        if (Math.abs(value) > Double.MAX_VALUE) {
            throw new Refused(Fault.OUT_OF_RANGE_NUMBER, "beyond the range of numbers");
        }
        written.put(size, cell);
        addNumber(value, Math.max(-126, Math.min(127, number.scale())));
        numbers++;
        if (Characters.hasSpecial(cell)) {
            return note(Fault.CHARACTER);
        }
        if (!content.unit().isEmpty()) {
            return note(Fault.UNIT_IN_CELL);
        }
        return !(number.signum() == 0 && Characters.plain(cell).startsWith("-")) || note(Fault.NEGATIVE_ZERO);
    }

    private boolean note(Fault fault) {
        noted = fault;
        return false;
    }

    /** What was done with the last cell that was not taken as it stands. */
    Fault noted() {
        return noted;
    }

    private void addAbsent(String cell) {
        written.put(size, cell);
        addNumber(Double.NaN, 0);
    }

    private void addNumber(double value, int places) {
        if (size == values.length) {
            values = Arrays.copyOf(values, Math.max(expected, size + (size >> 1)));
            decimals = Arrays.copyOf(decimals, values.length);
        }
        values[size] = value;
        decimals[size++] = (byte) places;
    }

    private void addCode(int code) {
        if (size == codes.length) {
            codes = Arrays.copyOf(codes, Math.max(expected, size + (size >> 1)));
        }
        codes[size++] = code;
    }

    /** The text of a number of the column, as it was written. */
    static String written(double value, int places, Map<Integer, String> kept, int row, DecimalSign sign) {
        final String own = kept.get(row);
        if (own != null) {
            return own;
        }
        final String text = new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
        return sign == DecimalSign.POINT ? text : text.replace('.', sign.sign());
    }

    /** Turns numbers into the texts they were written as. */
    void turnToText() {
        if (text) {
            return;
        }
        codes = new int[Math.max(expected, size + 1)];
        for (int i = 0; i < size; i++) {
            final byte[] cell = written(values[i], decimals[i], written, i, sign)
                .getBytes(StandardCharsets.UTF_8);
            codes[i] = dictionary.code(cell, 0, cell.length);
        }
        text = true;
        values = new double[0];
        decimals = new byte[0];
        written.clear();
    }

    /** The text of bytes in UTF-8; a malformed byte, or a mark that one was there, is for another reader. */
    static String decode(byte[] b, int from, int to) {
        final String text = new String(b, from, to - from, StandardCharsets.UTF_8);
        if (text.indexOf('\ufffd') >= 0) {
            throw new NotPlain();
        }
        return text;
    }

    /** Whether the column has turned into one of text. */
    boolean isText() {
        return text;
    }

    int size() {
        return size;
    }

    /** Makes room for so many rows, whichever way the column turns out. */
    void expect(int rows) {
        expected = Math.max(1024, rows);
    }

    /** The numbers, with NaN where one is absent. */
    double[] values() {
        return values;
    }

    /** The decimals of the numbers. */
    byte[] decimals() {
        return decimals;
    }

    /** Texts of the cells that value and decimals do not give back, by row. */
    Map<Integer, String> kept() {
        return written;
    }

    /** The codes of the texts. */
    int[] codes() {
        return codes;
    }

    TextDictionary dictionary() {
        return dictionary;
    }

    String unit() {
        return unit;
    }

    DecimalSign sign() {
        return sign;
    }
}
