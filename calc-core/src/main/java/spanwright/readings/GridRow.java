package spanwright.readings;

import java.util.List;

/**
 * One row of a file.
 *
 * @param number  line or row, from 1
 * @param comment whether it is a line that begins with #
 * @param cells   its cells, at least one
 */
record GridRow(int number, boolean comment, List<GridCell> cells) {
    GridRow {
        cells = List.copyOf(cells);
    }

    /** The cell of a column counted from 0; empty beyond the end. */
    GridCell cell(int column) {
        return column < cells.size() ? cells.get(column) : GridCell.EMPTY;
    }

    boolean isBlank() {
        return cells.stream().allMatch(GridCell::isBlank);
    }

    /** Index of the last cell that is not blank, -1 if all are. */
    int lastFilled() {
        int i = cells.size() - 1;
        while (i >= 0 && cells.get(i).isBlank()) {
            i--;
        }
        return i;
    }
}
