package spanwright.readings;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Unit;
import spanwright.quantity.UnitConversion;
import spanwright.quantity.UnitSymbols;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/**
 * A plain table that was read strictly: columns of numbers or of text, each cell traceable to its place in
 * the file and to what stood there. Immutable.
 *
 * <p>A column is found by its head as written or by the words of its head without the unit. Rows are counted
 * from 0.
 */
public final class ReadingsTable {
    private final String file;
    private final String sheet;
    private final List<TableColumn> columns;
    private final int[] lines;
    private final List<String> comments;
    private final List<RecordFinding> findings;
    private final RowAccount account;

    ReadingsTable(String file, String sheet, List<TableColumn> columns, int[] lines, List<String> comments,
                  List<RecordFinding> findings, RowAccount account) {
        this.file = file;
        this.sheet = sheet;
        this.columns = List.copyOf(columns);
        this.lines = lines;
        this.comments = List.copyOf(comments);
        this.findings = List.copyOf(findings);
        this.account = account;
    }

    /** Name of the file. */
    public String file() {
        return file;
    }

    /** The lines that began with #, without it: the source of the data. */
    public List<String> comments() {
        return comments;
    }

    /** All columns, in the order of the file. */
    public List<TableColumn> columns() {
        return columns;
    }

    /** Number of rows. */
    public int rowCount() {
        return lines.length;
    }

    /**
     * A column by its head or the words of its head.
     *
     * @throws IllegalArgumentException if there is none; the message lists what there is
     */
    public TableColumn column(String name) {
        return columns.get(index(name));
    }

    /**
     * The numbers of a column, in its own unit.
     *
     * @throws ReadingsFormatException  if a cell holds no number; the message names the first
     * @throws IllegalArgumentException if there is no such column
     */
    public double[] numbers(String name) {
        final TableColumn column = column(name);
        for (int row = 0; row < rowCount(); row++) {
            if (column.number(row).isEmpty()) {
                throw new ReadingsFormatException(RecordFinding.of(column.isAbsent(row) ? Fault.VALUE_MISSING
                    : Fault.NOT_A_NUMBER, cell(name, row), column.written(row), "column \"" + name
                        + "\" has no number here but \"" + column.written(row) + "\""));
            }
        }
        return column.values();
    }

    /**
     * The numbers of a column, converted.
     *
     * @throws ReadingsFormatException  if a cell holds no number
     * @throws IllegalArgumentException if the column has no unit, or one of another kind
     */
    public double[] numbers(String name, String unit) {
        final double[] own = numbers(name);
        final Unit<?> from = column(name).unit().orElseThrow(() -> new IllegalArgumentException("column \""
            + name + "\" of " + file + " states no unit: say it with Readings.tableReading(...).unit(...)"));
        final UnitConversion conversion = UnitConversion.between(from, UnitSymbols.parse(unit))
            .orElseThrow(() ->
            new IllegalArgumentException("column \"" + name + "\" of " + file + " is in "
                + UnitSymbols.symbol(from) + ", which cannot become " + unit));
        return conversion.isNone() ? own : Arrays.stream(own).map(conversion::applyTo).toArray();
    }

    /**
     * The cells of a column as text, as written.
     *
     * @throws IllegalArgumentException if there is no such column
     */
    public List<String> texts(String name) {
        final TableColumn column = column(name);
        return IntStream.range(0, rowCount()).mapToObj(column::written).toList();
    }

    /**
     * One number with its resolution, its text and its place.
     *
     * @throws ReadingsFormatException  if the cell holds no number
     * @throws IllegalArgumentException if there is no such column or row
     */
    public Entry entry(String name, int row) {
        final TableColumn column = column(name);
        final CellAddress at = cell(name, row);
        return new Entry(column.number(row).orElseThrow(() -> new ReadingsFormatException(RecordFinding.of(
            Fault.NOT_A_NUMBER, at, column.written(row), "no number but \"" + column.written(row) + "\""))),
            column.resolution(row), column.written(row), at);
    }

    /**
     * Where a cell stands in the file.
     *
     * @throws IllegalArgumentException if there is no such column or row
     */
    public CellAddress cell(String name, int row) {
        if (row < 0 || row >= rowCount()) {
            throw new IllegalArgumentException("row is " + row + ": out of range [0, " + rowCount() + ")");
        }
        return new CellAddress(file, sheet, lines[row], index(name) + 1);
    }

    /** What was repaired or is absent. */
    public List<RecordFinding> findings() {
        return findings;
    }

    /** Where every row went. */
    public RowAccount account() {
        return account;
    }

    /** As a notebook table: numbers and texts, an absent number missing. */
    public Table toTable() {
        return Table.create(file, columns.parallelStream().<Column<?>>map(TableColumn::toColumn).toList());
    }

    /** As a notebook table with the file and the line of each row in two further columns. */
    public Table toTracedTable() {
        final Table table = toTable();
        final String[] name = new String[rowCount()];
        Arrays.fill(name, file);
        return table.addColumns(StringColumn.create("file", name), IntColumn.create("line", lines));
    }

    /**
     * Writes comments, heads and cells as they were written: CSV in UTF-8, with semicolons where the decimal
     * sign is the comma. A cell that a spreadsheet would run as a formula gets an apostrophe in front, which
     * the reader takes off and lists.
     *
     * @throws java.io.UncheckedIOException if the file cannot be written
     * @throws IllegalArgumentException     if commas, semicolons and tabs stand in so many rows that no
     *                                      separator would be found again
     */
    public void writeCsv(Path target) {
        TableExport.csv(target, comments, rows(List.of(), TableColumn::written), columns.get(0).sign());
    }

    /**
     * As {@link #writeCsv}, as an XLSX workbook; formulas stay text there, numbers keep their decimals and
     * have no decimal comma, as a workbook shows the sign of its reader's country. A column of texts among
     * which numbers stand is to be read again with {@link TableReading#text}.
     *
     * @throws java.io.UncheckedIOException if the file cannot be written
     * @throws IllegalArgumentException     if there are more rows than a sheet holds
     */
    public void writeXlsx(Path target) {
        TableExport.xlsx(target, "table", rows(comments, (column, row) -> column.isNumeric() && column.sign()
            == DecimalSign.COMMA ? column.written(row).replace(',', '.') : column.written(row)));
    }

    private Iterable<List<String>> rows(List<String> before, BiFunction<TableColumn, Integer, String> cell) {
        return () -> Stream.concat(Stream.concat(before.stream().map(c -> List.of("# " + c)),
            Stream.of(columns.stream().map(TableColumn::head).toList())), IntStream.range(0, rowCount())
            .mapToObj(row -> columns.stream().map(c -> cell.apply(c, row)).toList())).iterator();
    }

    private int index(String name) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).head().equals(name) || columns.get(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException(file + " has no column \"" + name + "\", only "
            + columns.stream().map(c -> "\"" + c.head() + "\"").collect(Collectors.joining(", ")));
    }

    @Override
    public String toString() {
        return file + ": " + rowCount() + " rows; " + columns.stream().map(TableColumn::toString)
            .collect(Collectors.joining("; "));
    }
}
