package spanwright.readings;

import java.util.List;

/**
 * One table of a record with the header lines that hold for it.
 *
 * @param preamble header lines
 * @param head     row of the column names
 * @param columns  what the columns were understood to hold
 * @param rows     rows of readings
 */
record Block(Preamble preamble, GridRow head, List<ColumnMeaning> columns, List<GridRow> rows) {
    Block {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }

    Block withColumns(List<ColumnMeaning> others) {
        return new Block(preamble, head, others, rows);
    }

    List<ColumnMeaning> columns(ColumnRole role) {
        return columns.stream().filter(c -> c.role() == role).toList();
    }
}
