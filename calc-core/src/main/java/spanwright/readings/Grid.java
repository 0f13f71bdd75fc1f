package spanwright.readings;

import java.util.List;

/**
 * A file as cells, before anything is understood of it.
 *
 * @param file      name of the file
 * @param sheet     name of the sheet, empty for text
 * @param delimiter what separates the cells, as a word
 * @param rows      rows in the order of the file, blank ones left out
 * @param findings  what was found while the cells were separated
 */
record Grid(String file, String sheet, String delimiter, List<GridRow> rows, List<RecordFinding> findings) {
    Grid {
        rows = List.copyOf(rows);
        findings = List.copyOf(findings);
    }

    /** Where a cell stands, the column counted from 0. */
    CellAddress at(GridRow row, int column) {
        return new CellAddress(file, sheet, row.number(), column + 1);
    }

    /** The start of the file. */
    CellAddress start() {
        return new CellAddress(file, sheet, 1, 1);
    }
}
