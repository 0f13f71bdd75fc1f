package spanwright.readings;

import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * Where a value stands: file, sheet where there is one, row and column as a person counts them.
 *
 * @param file   name of the file
 * @param sheet  name of the sheet, empty for text files
 * @param row    line or row, from 1
 * @param column column, from 1
 */
public record CellAddress(String file, String sheet, int row, int column) {
    /** Checks the components. */
    public CellAddress {
        Checks.notBlank("file", file);
        Objects.requireNonNull(sheet, "sheet");
        Checks.atLeast("row", row, 1);
        Checks.atLeast("column", column, 1);
    }

    @Override
    public String toString() {
        return file + (sheet.isEmpty() ? "" : ":" + sheet) + ":" + row + ":" + column;
    }
}
