package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.Table;

/** Shows Tablesaw tables, every value escaped; of a long one the first rows, with the count. */
public final class TableRenderer implements Renderer {
    private static final int ROWS_SHOWN = 100;

    /** For the service loader. */
    public TableRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        return value instanceof Table table ? Optional.of(sheet(table).bundle()) : Optional.empty();
    }

    private static Sheet sheet(Table table) {
        final String size = table.rowCount() + " rows, " + table.columnCount() + " columns";
        final String name = table.name() == null || table.name().isBlank() ? "Table" : table.name();
        if (table.columnCount() == 0) {
            return Sheet.saying(name + ": " + size + ".");
        }
        final int rows = Math.min(ROWS_SHOWN, table.rowCount());
        final Grid.Builder grid = Grid.of(rows < table.rowCount() ? "The first " + rows + " rows" : name,
            table.columns().stream().map(c -> (c instanceof NumericColumn ? "#" : "") + c.name())
                .toArray(String[]::new));
        for (int i = 0; i < rows; i++) {
            final int row = i;
            final List<String> cells = table.columns().stream().map(c -> c.getString(row)).toList();
            grid.row(cells, false, "");
        }
        return Sheet.saying(name + ": " + size + ".").with(grid.build());
    }
}
