package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * A table as a person reads it: caption, heads with units, rows, some of them marked. Shown as HTML with
 * scoped heads and as aligned text; a long one folds, with the count.
 *
 * @param caption above the table
 * @param columns heads, left to right
 * @param rows    cells of each row, as many as there are columns
 */
public record Grid(String caption, List<Column> columns, List<Row> rows) implements Block {
    private static final int FOLD = 40;

    /**
     * The head of a column.
     *
     * @param head    what stands in the column, with its unit
     * @param numbers whether figures are aligned on the right
     */
    public record Column(String head, boolean numbers) {
        /** Checks the components. */
        public Column {
            Objects.requireNonNull(head, "head");
        }
    }

    /**
     * One row.
     *
     * @param cells  texts, as many as there are columns
     * @param marked whether this is the row that decides
     * @param hover  full precision or source of the row, empty if none
     */
    public record Row(List<String> cells, boolean marked, String hover) {
        /** Copies the list. */
        public Row {
            cells = List.copyOf(cells);
            Objects.requireNonNull(hover, "hover");
        }
    }

    /** Checks the components and copies the lists. */
    public Grid {
        Objects.requireNonNull(caption, "caption");
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        Checks.atLeast("number of columns", columns.size(), 1);
        for (Row row : rows) {
            if (row.cells().size() != columns.size()) {
                throw new IllegalArgumentException("table \"" + caption + "\": a row has " + row.cells()
                    .size()
                    + " cells, the head has " + columns.size());
            }
        }
    }

    /**
     * Starts a table.
     *
     * @param heads each head; one that begins with {@code #} holds numbers
     */
    public static Builder of(String caption, String... heads) {
        return new Builder(caption, heads);
    }

    /** Gathers rows. */
    public static final class Builder {
        private final String caption;
        private final List<Column> columns = new ArrayList<>();
        private final List<Row> rows = new ArrayList<>();

        private Builder(String caption, String... heads) {
            this.caption = Objects.requireNonNull(caption, "caption");
            for (String head : heads) {
                columns.add(
                    head.startsWith("#") ? new Column(head.substring(1), true) : new Column(head, false));
            }
        }

        /** Adds a row. */
        public Builder row(String... cells) {
            return row(List.of(cells), false, "");
        }

        /** Adds the row that decides. */
        public Builder deciding(String... cells) {
            return row(List.of(cells), true, "");
        }

        /** Adds a row with a mark and a hover text. */
        public Builder row(List<String> cells, boolean marked, String hover) {
            rows.add(new Row(cells, marked, hover));
            return this;
        }

        /** The finished table. */
        public Grid build() {
            return new Grid(caption, columns, rows);
        }
    }

    @Override
    public String html() {
        final StringBuilder out = new StringBuilder(256 + rows.size() * 120);
        if (rows.size() > FOLD) {
            out.append("<details><summary>").append(Html.escape(caption)).append(" (").append(rows.size())
                .append(" rows)</summary>");
        }
        out.append("<div style=\"overflow-x:auto\"><table style=\"border-collapse:collapse;margin:.5em 0;")
            .append("font-variant-numeric:tabular-nums\"><caption style=\"text-align:left;font-weight:600;")
            .append("caption-side:top\">").append(Html.escape(caption)).append("</caption><thead><tr>");
        for (Column column : columns) {
            out.append("<th scope=\"col\" style=\"").append(style(column, false))
                .append("border-bottom:1px solid\">")
                .append(Html.escape(column.head())).append("</th>");
        }
        out.append("</tr></thead><tbody>");
        rows.forEach(row -> appendRow(out, row));
        out.append("</tbody></table></div>");
        if (rows.size() > FOLD) {
            out.append("</details>");
        }
        return out.toString();
    }

    private void appendRow(StringBuilder out, Row row) {
        out.append("<tr");
        if (!row.hover().isEmpty()) {
            out.append(" title=\"").append(Html.escape(row.hover())).append('"');
        }
        out.append('>');
        for (int i = 0; i < columns.size(); i++) {
            final String tag = i == 0 ? "th scope=\"row\"" : "td";
            out.append('<').append(tag).append(" style=\"").append(style(columns.get(i), row.marked()))
                .append("\">");
            if (i == 0 && row.marked()) {
                out.append("\u25b6 ");
            }
            out.append(Html.escape(row.cells().get(i))).append(i == 0 ? "</th>" : "</td>");
        }
        out.append("</tr>");
    }

    private static String style(Column column, boolean marked) {
        return "padding:.2em .7em;vertical-align:top;text-align:" + (column.numbers() ? "right" : "left")
            + ";font-weight:" + (marked ? "700" : "400") + ";" + (column.numbers() ? "white-space:nowrap;"
                : "");
    }

    @Override
    public String text() {
        final int[] widths = new int[columns.size()];
        for (int i = 0; i < widths.length; i++) {
            final int at = i;
            widths[i] = Math.max(columns.get(i).head().length(),
                rows.stream().mapToInt(r -> r.cells().get(at).length()).max().orElse(0));
        }
        final StringBuilder out = new StringBuilder(caption).append('\n');
        appendLine(out, widths, columns.stream().map(Column::head).toList(), false);
        rows.forEach(row -> appendLine(out, widths, row.cells(), row.marked()));
        return out.toString().stripTrailing();
    }

    private void appendLine(StringBuilder out, int[] widths, List<String> cells, boolean marked) {
        out.append(marked ? "> " : "  ");
        for (int i = 0; i < widths.length; i++) {
            final String pad = " ".repeat(widths[i] - cells.get(i).length());
            out.append(columns.get(i).numbers() ? pad + cells.get(i) : cells.get(i) + pad).append("  ");
        }
        while (out.charAt(out.length() - 1) == ' ') {
            out.setLength(out.length() - 1);
        }
        out.append('\n');
    }
}
