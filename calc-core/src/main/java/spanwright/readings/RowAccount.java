package spanwright.readings;

import spanwright.quantity.Checks;

/**
 * Where every row of a file went. Blank rows are not counted; what is counted adds up.
 *
 * @param comments lines that begin with #
 * @param header   header lines and rows of column names
 * @param accepted rows of readings taken as written
 * @param repaired rows of readings taken after a listed repair
 * @param refused  rows that were not taken
 */
public record RowAccount(int comments, int header, int accepted, int repaired, int refused) {
    /** Checks the components. */
    public RowAccount {
        Checks.atLeast("comments", comments, 0);
        Checks.atLeast("header rows", header, 0);
        Checks.atLeast("accepted rows", accepted, 0);
        Checks.atLeast("repaired rows", repaired, 0);
        Checks.atLeast("refused rows", refused, 0);
    }

    /** All rows that are not blank. */
    public int rows() {
        return comments + header + accepted + repaired + refused;
    }

    /** Rows of readings: accepted, repaired and refused. */
    public int readingRows() {
        return accepted + repaired + refused;
    }

    @Override
    public String toString() {
        return readingRows() + " rows of readings: " + accepted + " as written, " + repaired
            + " repaired, " + refused + " refused";
    }
}
